"""Truing: lines that no longer meet are made one, and corners round, without stretching a line.

Each gives a new line beside the old; how far it moved and by how much its length changed can be asked of both.
"""

import math
from collections.abc import Callable

from corsetkit.geometry import paths
from corsetkit.geometry.curve import Cubic, Curves, Line, curve
from corsetkit.geometry.points import turn_between, unit
from corsetkit.geometry.roots import root, root_near

SMOOTH_ENOUGH = 0.02
"""A corner of less than this, as the distance between the unit steps before and after it (about a degree), is left."""


def blended(first: Curves, second: Curves, reach: float) -> tuple[Curves, Curves, Curves]:
    """Two paths of which the second begins away from the first's end, made one smooth run.

    Both are left as they are but for the last and the first `reach` cm, and for no more than four fifths of
    the first and second; there one curve runs from where the first is undisturbed to where the second is.

    Returns:
        (path, before, after): the new path, the stretch replaced (with the step as a straight line), and the curve.
    """
    length_first, length_second = paths.path_length(first), paths.path_length(second)
    step = Line(paths.path_end(first), paths.path_start(second))
    if step.length < 1e-9:
        return (*first, *second), (), ()
    kept_first, cut_first = paths.cut_along(first, length_first - min(reach, 0.8 * length_first))
    cut_second, kept_second = paths.cut_along(second, min(reach, 0.8 * length_second))
    joint = curve(
        paths.path_start(cut_first), cut_first[0].tangent(0.0), cut_second[-1].tangent(1.0), paths.path_end(cut_second)
    )
    return (*kept_first, joint, *kept_second), (*cut_first, step, *cut_second), (joint,)


def squared(path: Curves, leaving: complex, aside: complex, reach: float, most: float) -> Curves:
    """A path whose start is turned: its first stretch is one curve that leaves along `leaving`, and as long as it was.

    Its start slides along `aside`, a unit step, by what the turned stretch would else be longer. The stretch is `reach` cm,
    shorter where the line would else move by more than `most` cm, and never more than four fifths of the path. A path that
    cannot be turned so far is given back as it is.
    """
    slope = abs(math.tan(math.radians(turn_between(leaving, path[0].tangent(0.0)))))
    if slope > 1e-9:
        # A cubic that leaves a straight line at a slope lies 4/27 of slope times length from it at most.
        reach = min(reach, most * 27 / 4 / slope)
    cut, kept = paths.cut_along(path, min(reach, 0.8 * paths.path_length(path)))
    length, end, arriving = paths.path_length(cut), paths.path_end(cut), cut[-1].tangent(1.0)

    def turned(slid: float) -> Cubic:
        return curve(paths.path_start(cut) + aside * slid, leaving, arriving, end)

    try:
        slid = root_near(lambda by: turned(by).length - length, 0.0, -0.3 * length, 0.3 * length, 1e-9)
    except ValueError:
        # A stretch too short to be turned so far stays as it was.
        return path
    return (turned(slid), *kept)


def rounded(first: Line | Cubic, second: Line | Cubic, roundness: float) -> tuple[Curves, float]:
    """Two curves that meet in a corner, made a smooth run of exactly the same length.

    The path leaves and arrives as the two curves do, so that what meets their ends still meets them; it passes the
    corner a little to its inner side, by as much as keeps the length. `roundness` is the length of its handles as a
    share of the two straight distances. Where the curves go smoothly on there is nothing to round.

    Returns:
        (run, to_corner): the path, and how far along it the corner's mark lies, the first curve's own length.

    Raises ValueError where no such run exists.
    """
    start, corner, end = first.start, first.end, second.end
    before, after = first.tangent(1.0), second.tangent(0.0)
    length = first.length + second.length
    inward = after - before
    if abs(inward) < SMOOTH_ENOUGH:
        return (first, second), first.length
    sharpness = abs(inward)
    inward, across = unit(inward), unit(before + after)
    leaving, arriving = first.tangent(0.0), second.tangent(1.0)

    def made(depth: float, roundness: float) -> Curves:
        middle = corner + inward * depth
        one, two = abs(middle - start) * roundness, abs(end - middle) * roundness
        return (
            Cubic(start, start + leaving * one, middle - across * one, middle),
            Cubic(middle, middle + across * two, end - arriving * two, end),
        )

    reach = min(0.45, sharpness) * min(abs(corner - start), abs(end - corner))
    for share in (1.0, 0.8, 0.6, 0.4, 0.2):
        # Long handles stand out farther than some corners give way: shorter ones then serve.
        def excess(depth: float, share: float = share) -> float:
            return paths.path_length(made(depth, roundness * share)) - length

        ends = _bracket(excess, reach)
        if ends:
            return made(root(excess, *ends), roundness * share), first.length
    # Where both curves hollow the same way, one curve between the same ends serves instead of two.
    span = abs(end - start)

    def hollow(handle: float) -> Cubic:
        return Cubic(start, start + leaving * handle, end - arriving * handle, end)

    handle = root(lambda h: hollow(h).length - length, 0.05 * span, 0.7 * span)
    return (hollow(handle),), first.length


def _bracket(excess: Callable[[float], float], reach: float) -> tuple[float, float] | None:
    """Two depths between which the excess length changes its sign: inward where it is too long, else outward."""
    last, at_last = 0.0, excess(0.0)
    step = reach / 8 if at_last > 0 else -reach / 8
    for number in range(1, 9):
        depth = number * step
        value = excess(depth)
        if (value > 0) != (at_last > 0):
            return min(last, depth), max(last, depth)
        last, at_last = depth, value
    return None
