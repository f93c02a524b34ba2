"""A corner of a piece moved on paper: what a cutter redraws so that one edge becomes longer and its neighbour fits still.

Edges are runs of curves; nothing here knows pieces or seams. Where a line is carried along with its corner it keeps the
direction in which it meets it, and is undisturbed from a stated reach on.
"""

from corsetkit.geometry import path
from corsetkit.geometry.curve import Cubic, Line, curve
from corsetkit.geometry.points import cross
from corsetkit.geometry.roots import root

REACH = 5.0
"""How far from the moved corner an edge is redrawn, cm: course convention."""
SHARE = 0.8
"""And no more than this share of the edge, so that its other corner is left alone: course convention."""
STEEPEST = 0.5
"""A redrawn line leaves its old one by no more than this slope, about 27 degrees: course convention."""
EXACT = 1e-9
"""An edge that is to have a length has it within this, cm."""


def displaced(run, step, share):
    """The run with each point moved by `step` times its share; runs that go on smoothly still do.

    `share(u)` gives the share at u, from 0 at the run's start to 1 at its end, and how fast it changes there.
    """
    whole, along, made = path.run_length(run), 0.0, []
    for one in run:
        first, second = (one.first, one.second) if isinstance(one, Cubic) else (one.point(1 / 3), one.point(2 / 3))
        (here, rising), (there, falling) = share(along / whole), share((along + one.length) / whole)
        leaving, arriving = abs(first - one.start) / whole, abs(one.end - second) / whole
        made.append(Cubic(one.start + step * here, first + step * (here + rising * leaving),
                          second + step * (there - falling * arriving), one.end + step * there))
        along += one.length
    return tuple(made)


def carried(run, step, reach=REACH, most=SHARE):
    """The run with its start moved by `step`, and it along with its start, less and less over `reach` cm.

    Returns:
        (run, before, after): the new run, the stretch that was redrawn, and what it became.
    """
    cut, kept = path.cut_along(run, min(reach, most * path.run_length(run)))
    drawn = displaced(cut, step, lambda u: (1 - u * u * (3 - 2 * u), -6 * u * (1 - u)))
    return (*drawn, *kept), cut, drawn


def bent(run, by):
    """The run bent to one side between its ends until it is `by` cm longer; both ends and their directions stay.

    It is bent to the side to which it bends already. Returns the new run.

    Raises ValueError where it is too straight to be made so much shorter.
    """
    chord = path.run_end(run) - path.run_start(run)
    aside = -1j * chord / abs(chord) * (1 if path.turning(run) >= 0 else -1)
    parts = [part for one in run for part in (one.part(0.0, 0.5), one.part(0.5, 1.0))]

    def made(depth):
        return displaced(parts, aside * depth, lambda u: (16 * (u * (1 - u)) ** 2, 32 * u * (1 - u) * (1 - 2 * u)))

    wanted = path.run_length(run) + by
    return made(_depth(lambda depth: path.run_length(made(depth)) - wanted, by))


def corner_moved(run, beside, by, wanted, reach=REACH):
    """Two runs that begin at one corner, redrawn from a new corner: the first `by` cm longer, the second `wanted` cm long.

    A cutter finds that corner with two arcs: the first edge tells how far out it lies, the second how far along.

    Returns:
        ((run, before, after), (beside, before, after)), each as `carried` gives them.

    Raises ValueError where there is no such corner.
    """
    goals = path.run_length(run) + by, wanted

    def missed(step):
        both = carried(run, step, reach), carried(beside, step, reach)
        return both, tuple(path.run_length(one[0]) - goal for one, goal in zip(both, goals))

    step, tiny = 0j, 1e-5
    for _ in range(20):
        both, off = missed(step)
        if max(map(abs, off)) < EXACT:
            return both
        right, up = (tuple((a - b) / tiny for a, b in zip(missed(step + way)[1], off)) for way in (tiny, tiny * 1j))
        under = right[0] * up[1] - up[0] * right[1]
        if abs(under) < 1e-3:
            break
        step -= complex(off[0] * up[1] - up[0] * off[1], right[0] * off[1] - off[0] * right[1]) / under
        if abs(step) > 10 * abs(by) + 1.0:
            break
    raise ValueError("no corner serves both edges")


def run_on(run, free, by, reach=REACH):
    """The run with its end moved `by` cm straight on, or cut back, and the free run beyond redrawn from there.

    Returns:
        (run, (free, before, after)): both runs, the stretch replaced with the step to it, and the curve.
    """
    end, way = path.run_end(run), run[-1].way(1.0)
    moved = (*run, Line(end, end + way * by)) if by > 0 else path.cut_along(run, path.run_length(run) + by)[0]
    return moved, redrawn_from(path.run_end(moved), free, reach)


def redrawn_from(corner, free, reach=REACH):
    """A free run drawn from another corner: one curve that leaves it as the run did, and runs into the run within `reach`.

    Where that would make a hook, because the run is short, the whole of it is turned about its far end instead.

    Returns:
        (run, before, after): the run, the stretch replaced with the step to it, and what it became.
    """
    start = path.run_start(free)
    cut, kept = path.cut_along(free, min(reach, SHARE * path.run_length(free)))
    leaving = cut[0].way(0.0)
    if steep(cross(leaving, corner - start), path.run_length(cut)):
        drawn, cut, kept = displaced(free, corner - start, lambda u: (1 - u, -1.0)), free, ()
    else:
        drawn = (curve(corner, leaving, cut[-1].way(1.0), path.run_end(cut)),)
    return (*drawn, *kept), (Line(corner, start), *cut), drawn


def steep(step, length):
    """Whether a line that is moved by `step` at one end, and by nothing `length` cm farther on, is too steep between.

    What fades out evenly is steepest in its middle: half as steep again as on the whole.
    """
    return 1.5 * abs(step) > STEEPEST * length


def _depth(excess, by):
    """The depth at which the excess length is nought, looked for outward where the line is to be longer, else inward."""
    far = 0.02 if by > 0 else -0.02
    while (excess(far) > 0) == (excess(0.0) > 0):
        far *= 1.5
        if abs(far) > 20:
            raise ValueError("too straight to be made so much shorter")
    return root(excess, 0.0, far)
