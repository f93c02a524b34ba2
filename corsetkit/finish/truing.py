"""An edge lengthened or shortened at one end, and what lies beyond that end redrawn so that no sewn line changes its length.

Edges are runs of curves; nothing here knows pieces or seams. Where a line is carried along with its corner it keeps the
direction in which it meets it, and is undisturbed from a stated reach on.

Four ways, tried in this order. Where the edge beyond is free, the edge runs straight on, and the free edge is redrawn to its
new end. Where the edge beyond is sewn itself, the corner is moved, and both edges are redrawn so that the one beyond keeps
its length and still meets its partner. Where that one is too short to be redrawn, it is moved along as it is, and a free edge
next to it is redrawn. Where none of these can be, a line that is curved already is bent rounder between its two corners.
All of them are common practice, no source; their limits are course convention.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths, polygon
from corsetkit.geometry.curve import Cubic, Curves, Line, curve
from corsetkit.geometry.move import slid
from corsetkit.geometry.points import Point, cross, turn_between
from corsetkit.geometry.roots import root
from corsetkit.pattern.edge import Edge, Kind
from corsetkit.pattern.pattern import Pattern
from corsetkit.pattern.piece import Blend, Piece
from corsetkit.pattern.seam import sew
from corsetkit.pieces.proof import SHARPEST
from corsetkit.units import say_both

REACH = 5.0
"""How far from the moved corner an edge is redrawn, cm: course convention."""
SHARE = 0.8
"""And no more than this share of the edge, so that its other corner is left alone: course convention."""
STEEPEST = 0.5
"""A redrawn line leaves its old one by no more than this slope, about 27 degrees: course convention."""
EXACT = 1e-9
"""An edge that is to have a length has it within this, cm."""


Run: TypeAlias = tuple[Curves, Curves, Curves]
"""A redrawn path, the stretch of it that was redrawn, and what that became."""


def displaced(path: Iterable[Line | Cubic], step: complex, share: Callable[[float], tuple[float, float]]) -> Curves:
    """The run with each point moved by `step` times its share; runs that go on smoothly still do.

    `share(u)` gives the share at u, from 0 at the path's start to 1 at its end, and how fast it changes there.
    """
    whole, along, made = paths.path_length(path), 0.0, []
    for one in path:
        first, second = (one.first, one.second) if isinstance(one, Cubic) else (one.point(1 / 3), one.point(2 / 3))
        (here, rising), (there, falling) = share(along / whole), share((along + one.length) / whole)
        leaving, arriving = abs(first - one.start) / whole, abs(one.end - second) / whole
        made.append(
            Cubic(
                one.start + step * here,
                first + step * (here + rising * leaving),
                second + step * (there - falling * arriving),
                one.end + step * there,
            )
        )
        along += one.length
    return tuple(made)


def carried(path: Curves, step: complex, reach: float = REACH, most: float = SHARE) -> Run:
    """The run with its start moved by `step`, and it along with its start, less and less over `reach` cm.

    Returns:
        (path, before, after): the new path, the stretch that was redrawn, and what it became.
    """
    cut, kept = paths.cut_along(path, min(reach, most * paths.path_length(path)))
    drawn = displaced(cut, step, lambda u: (1 - u * u * (3 - 2 * u), -6 * u * (1 - u)))
    return (*drawn, *kept), cut, drawn


def bent(path: Curves, by: float) -> Curves:
    """The path bent to one side between its ends until it is `by` cm longer; both ends and their directions stay.

    It is bent to the side to which it bends already. Returns the new path.

    Raises ValueError where it is too straight to be made so much shorter.
    """
    chord = paths.path_end(path) - paths.path_start(path)
    aside = -1j * chord / abs(chord) * (1 if paths.turning(path) >= 0 else -1)
    parts = [part for one in path for part in (one.part(0.0, 0.5), one.part(0.5, 1.0))]

    def made(depth: float) -> Curves:
        return displaced(parts, aside * depth, lambda u: (16 * (u * (1 - u)) ** 2, 32 * u * (1 - u) * (1 - 2 * u)))

    wanted = paths.path_length(path) + by
    return made(_depth(lambda depth: paths.path_length(made(depth)) - wanted, by))


def corner_moved(path: Curves, beside: Curves, by: float, wanted: float, reach: float = REACH) -> tuple[Run, Run]:
    """Two paths that begin at one corner, redrawn from a new corner: the first `by` cm longer, the second `wanted` cm long.

    A cutter finds that corner with two arcs: the first edge tells how far out it lies, the second how far along.

    Returns:
        ((path, before, after), (beside, before, after)), each as `carried` gives them.

    Raises ValueError where there is no such corner.
    """
    goals = paths.path_length(path) + by, wanted

    def missed(step: complex) -> tuple[tuple[Run, Run], tuple[float, float]]:
        both = carried(path, step, reach), carried(beside, step, reach)
        return both, (paths.path_length(both[0][0]) - goals[0], paths.path_length(both[1][0]) - goals[1])

    step, tiny = 0j, 1e-5
    for _ in range(20):
        both, off = missed(step)
        if max(map(abs, off)) < EXACT:
            return both
        right, up = (tuple((a - b) / tiny for a, b in zip(missed(step + tangent)[1], off)) for tangent in (tiny, tiny * 1j))
        under = right[0] * up[1] - up[0] * right[1]
        if abs(under) < 1e-3:
            break
        step -= complex(off[0] * up[1] - up[0] * off[1], right[0] * off[1] - off[0] * right[1]) / under
        if abs(step) > 10 * abs(by) + 1.0:
            break
    raise ValueError("no corner serves both edges")


def run_on(path: Curves, free: Curves, by: float, reach: float = REACH) -> tuple[Curves, Run]:
    """The run with its end moved `by` cm straight on, or cut back, and the free run beyond redrawn from there.

    Returns:
        (run, (free, before, after)): both runs, the stretch replaced with the step to it, and the curve.
    """
    end, tangent = paths.path_end(path), path[-1].tangent(1.0)
    moved = (*path, Line(end, end + tangent * by)) if by > 0 else paths.cut_along(path, paths.path_length(path) + by)[0]
    return moved, redrawn_from(paths.path_end(moved), free, reach)


def redrawn_from(corner: Point, free: Curves, reach: float = REACH) -> Run:
    """A free run drawn from another corner: one curve that leaves it as the path did, and runs into the run within `reach`.

    Where that would make a hook, because the path is short, the whole of it is turned about its far end instead.

    Returns:
        (path, before, after): the path, the stretch replaced with the step to it, and what it became.
    """
    start = paths.path_start(free)
    cut, kept = paths.cut_along(free, min(reach, SHARE * paths.path_length(free)))
    leaving = cut[0].tangent(0.0)
    if steep(cross(leaving, corner - start), paths.path_length(cut)):
        drawn, cut, kept = displaced(free, corner - start, lambda u: (1 - u, -1.0)), free, ()
    else:
        drawn = (curve(corner, leaving, cut[-1].tangent(1.0), paths.path_end(cut)),)
    return (*drawn, *kept), (Line(corner, start), *cut), drawn


def steep(step: complex, length: float) -> bool:
    """Whether a line that is moved by `step` at one end, and by nothing `length` cm farther on, is too steep between.

    What fades out evenly is steepest in its middle: half as steep again as on the whole.
    """
    return 1.5 * abs(step) > STEEPEST * length


def _depth(excess: Callable[[float], float], by: float) -> float:
    """The depth at which the excess length is zero, looked for outward where the line is to be longer, else inward."""
    far = 0.02 if by > 0 else -0.02
    while (excess(far) > 0) == (excess(0.0) > 0):
        far *= 1.5
        if abs(far) > 20:
            raise ValueError("too straight to be made so much shorter")
    return root(excess, 0.0, far)


MOST = 2.0
"""An edge is trued by no more than this, cm; what is farther out was measured or cut amiss: course convention."""
STRAIGHT = (Kind.FOLD, Kind.CENTRE_FRONT, Kind.LACING)
"""Edges that have to stay as straight as they are: a corner on one of them is not moved."""
FARTHEST = 3.0
"""A corner is moved by no more than so many times what its edge gains: course convention."""
BENT_MOST = 0.8
"""A line is bent rounder by no more than this, cm: course convention."""


@dataclass(frozen=True)
class Redrawn:
    """What truing one end of an edge makes of a piece: `how` ("free", "corner", "along", "bent"),
    runs by edges' places, blends."""

    how: str
    edge_paths: Mapping[int, Curves]
    blends: tuple[Blend, ...]


def trued(pattern: Pattern, edge: Edge, by: float, at: Edge, reach: float = REACH) -> Pattern:
    """The pattern with one edge lengthened by `by` cm (shortened below zero) at the edge `at` of the same piece.

    A free `at` is redrawn as one curve over `reach` cm, and no more than four fifths of it, from its new end to where it is
    undisturbed. It leaves the corner as it did before. A sewn `at` keeps its length: the corner is moved, or the edge bent.
    The piece's blends say how far each line moved. All edges and seams are made anew; seams keep their marks.

    Returns:
        A new `Pattern`; the one given is as it was.

    Raises:
        CorsetkitError: where `at` does not lie beside the edge, or the edge cannot be trued there.
    """
    piece, at_end = edge.piece, edge.piece.beside(edge, True) is at
    if not at_end and piece.beside(edge, False) is not at:
        raise CorsetkitError(f"{at.name} does not lie beside {edge.name} on the {piece.name}: choose one of its neighbours")
    made = redrawn(piece, [one.path for one in piece.edges], piece.place_of(edge), at_end, by, reach)
    return resewn(pattern, {id(piece.edges[i]): path for i, path in made.edge_paths.items()}, {id(piece): made.blends})


def redrawn(piece: Piece, all_paths: Sequence[Curves], place: int, at_end: bool, by: float, reach: float = REACH) -> Redrawn:
    """How a piece's edge number `place` is made `by` cm longer at its end, or at its start, the piece being drawn as `runs`.

    Returns:
        A `Redrawn`.

    Raises:
        CorsetkitError: where `by` is more than can be trued, or none of the four ways serves.
    """
    edge, tangent = piece.edges[place], 1 if at_end else -1
    places = tuple((place + step * tangent) % len(all_paths) for step in (0, 1, 2))
    beyond, after = (piece.edges[number] for number in places[1:])
    if not -min(MOST, paths.path_length(all_paths[place]) / 2) <= by <= MOST:
        raise CorsetkitError(
            f"{edge.name} of the {piece.name} is to be trued by {say_both(by)}: allowed is at most "
            f"{say_both(MOST)}; measure it again"
        )
    remedies = []
    if beyond.kind not in STRAIGHT:
        remedies.append(("corner", _corner) if beyond.seam else ("free", _free))
        if beyond.seam and after.seam is None and after.kind not in STRAIGHT:
            remedies.append(("along", _along))
    # Each way looks at the piece as if the edge were trued at its end.
    ahead = [all_paths[number] if at_end else paths.turned_round(all_paths[number]) for number in places]
    for how, draw in (*remedies, ("bent", _bent)):
        try:
            found = draw(ahead, by, reach)
        except ValueError:
            continue
        made = {number: one[0] for number, one in zip(places, found)}
        blends = [(number, one[1], one[2]) for number, one in zip(places, found) if one[1]]
        if not at_end:
            made = {number: paths.turned_round(path) for number, path in made.items()}
            blends = [(number, paths.turned_round(was), paths.turned_round(now)) for number, was, now in blends]
        if _fits(piece, all_paths, made):
            return Redrawn(how, made, tuple(Blend(_why(piece.edges[number], edge), was, now) for number, was, now in blends))
    raise CorsetkitError(
        f"{edge.name} of the {piece.name} cannot be made {say_both(abs(by))} "
        f"{'longer' if by > 0 else 'shorter'} at the {beyond.name}: {_why_not(beyond)}; "
        "draw both sides of its seam again, alike"
    )


def resewn(
    pattern: Pattern,
    all_paths: Mapping[int, Curves],
    blends: Mapping[int, tuple[Blend, ...]] | None = None,
    marks: Mapping[int, tuple[float, ...]] | None = None,
) -> Pattern:
    """The pattern made anew with some edges' runs replaced.

    `runs` are kept by edges' ids, tuples of `blends` by pieces' ids, and new `marks` by seams' ids.
    """
    blends, marks = blends or {}, marks or {}
    fresh = {
        id(edge): Edge(edge.name, all_paths.get(id(edge), edge.path), edge.kind)
        for piece in pattern.pieces
        for edge in piece.edges
    }
    pieces = tuple(
        replace(
            piece, edges=tuple(fresh[id(edge)] for edge in piece.edges), blends=(*piece.blends, *blends.get(id(piece), ()))
        )
        for piece in pattern.pieces
    )
    seams = tuple(
        sew(
            seam.name,
            seam.number,
            [fresh[id(edge)] for edge in seam.sides[0]],
            [fresh[id(edge)] for edge in seam.sides[1]],
            *seam.against,
            ease=seam.ease,
            marks=marks.get(id(seam), seam.marks),
        )
        for seam in pattern.seams
    )
    return replace(pattern, pieces=pieces, seams=seams)


def _free(ahead: Sequence[Curves], by: float, reach: float) -> tuple[Run, ...]:
    """The edge run on and the free edge redrawn, each as (path, before, after); the edge is no blend, for it only runs on."""
    path, free, _ = ahead
    moved, other = run_on(path, free, by, reach)
    return (moved, (), ()), other


def _corner(ahead: Sequence[Curves], by: float, reach: float) -> tuple[Run, ...]:
    """The corner moved and both edges redrawn, each as (path, before, after)."""
    path, beside, _ = ahead
    back = paths.turned_round(path)
    first, second = corner_moved(back, beside, by, paths.path_length(beside), reach)
    step = abs(paths.path_start(first[0]) - paths.path_start(back))
    shortest = min(paths.path_length(before) for _, before, _ in (first, second))
    if step > FARTHEST * abs(by) or steep(step, shortest):
        raise ValueError("the corner would be moved too far")
    redrawn_edge, was, now = map(paths.turned_round, first)
    return (redrawn_edge, was, now), second


def _along(ahead: Sequence[Curves], by: float, reach: float) -> tuple[Run, ...]:
    """The edge run on, the sewn edge beyond moved along as it is, and the free edge next to it redrawn."""
    path, beside, free = ahead
    step = path[-1].tangent(1.0) * by
    path, _ = run_on(path, beside, by, reach)
    there = paths.moved(beside, slid(step))
    joint, was, now = redrawn_from(paths.path_end(there), free, reach)
    return (path, (), ()), (there, beside, there), (joint, was, now)


def _bent(ahead: Sequence[Curves], by: float, reach: float) -> tuple[Run, ...]:
    """The edge alone, bent rounder."""
    path = bent(ahead[0], by)
    if Blend("", ahead[0], path).largest_move > BENT_MOST:
        raise ValueError("the line would be bent too far")
    return ((path, ahead[0], path),)


def _why(redrawn_edge: Edge, edge: Edge) -> str:
    return f"{edge.name} trued" if redrawn_edge is edge else f"{redrawn_edge.name} redrawn to the trued {edge.name}"


def _fits(piece: Piece, all_paths: Sequence[Curves], made: Mapping[int, Curves]) -> bool:
    """Whether the piece's outline is simple still, and has no corner too sharp to sew."""
    drawn = [made.get(i, path) for i, path in enumerate(all_paths)]
    whole = tuple(curve for path in drawn for curve in path)
    return (
        polygon.area(whole) > 0
        and polygon.is_simple(whole)
        and all(
            abs(turn_between(before[-1].tangent(1.0), after[0].tangent(0.0))) <= 180 - SHARPEST
            for before, after in zip(drawn, drawn[1:] + drawn[:1])
        )
    )


def _why_not(beyond: Edge) -> str:
    if beyond.kind in STRAIGHT:
        return f"the {beyond.name} has to stay as it is"
    if beyond.seam is None:
        return f"the {beyond.name} would cross another line of the piece"
    return f"the {beyond.name} is sewn itself, and cannot follow within reason and keep its length"
