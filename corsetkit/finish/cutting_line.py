"""What the cutting line is made from: a piece's sewing line as strokes,
and small loops left out of a line that crosses itself.

In a hollow that is tighter than the allowance is wide, the line parallel to the sewing line turns back and crosses
itself. What lies in that loop is nearer to the sewing line than the allowance asks: the cutting line goes on at the
crossing instead.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from corsetkit.geometry import paths
from corsetkit.geometry.curve import FLATNESS, Cubic, Curves, Line
from corsetkit.geometry.points import Point, cross, turn_between
from corsetkit.pattern.edge import Edge, Kind
from corsetkit.pattern.piece import Piece

KINK = 0.5
"""A path that turns towards the piece more sharply than this, degrees, has a corner there."""
_CLOSE = FLATNESS / 2
_FIRST, _FOLDED, _LAST = -1, 10_000, 20_000


@dataclass(frozen=True)
class Stroke:
    """A smooth stretch of one edge, with the allowance outside it in cm, and when it is sewn.

    `start` and `end` say whether it begins and ends where its edge does.
    """

    edge: Edge
    path: Curves
    width: float
    order: int
    start: bool
    end: bool

    @cached_property
    def length(self) -> float:
        return paths.path_length(self.path)

    def cut(self, before: float, after: float) -> "Stroke":
        """The stroke without its first `before` and its last `after` cm."""
        if before <= 0 and after <= 0:
            return self
        return replace(self, path=paths.stretch(self.path, max(before, 0.0), self.length - max(after, 0.0)))

    @cached_property
    def outside(self) -> list[Point]:
        """Points along the cutting line beside the stroke, within 0.001 cm of the true parallel line.

        In a hollow tighter than the allowance is wide it turns back on itself.
        """
        points: list[Point] = []
        for curve in self.path:
            beside = _beside(curve, self.width)
            points.extend(beside[1:] if points and abs(points[-1] - beside[0]) < 1e-9 else beside)
        return points


def order(edge: Edge) -> int:
    """When the edge is sewn: where two edges meet in a corner, the one that is sewn later runs across the other.

    The V at the centre front is closed first, then the seams in the order of their numbers; then the lacing edge is
    turned back, and the other free edges are finished last, all alike. A fold is there from the beginning.
    """
    if edge.kind is Kind.FOLD:
        return _FIRST - 1
    if edge.kind is Kind.CENTRE_FRONT:
        return _FIRST
    if edge.seam:
        return edge.seam.number
    return _FOLDED if edge.kind is Kind.LACING else _LAST


def strokes(piece: Piece, widths: Iterable[float]) -> list[Stroke]:
    """The piece's strokes counter-clockwise; `widths` are the allowances of its edges, in their order."""
    found: list[Stroke] = []
    for edge, width in zip(piece.edges, widths):
        all_paths = _smooth(edge.path)
        found.extend(
            Stroke(edge, path, width, order(edge), number == 0, number == len(all_paths) - 1)
            for number, path in enumerate(all_paths)
        )
    return found


def _smooth(path: Curves) -> list[Curves]:
    """The path in stretches without a corner towards the piece; a corner the other way is one with its arms."""
    made: list[list[Line | Cubic]] = [[path[0]]]
    for before, after in zip(path, path[1:]):
        if turn_between(before.tangent(1.0), after.tangent(0.0)) > KINK:
            made.append([])
        made[-1].append(after)
    return [tuple(one) for one in made]


def _beside(curve: Line | Cubic, width: float) -> list[Point]:
    """Points along the parallel line of one curve, `width` to its right."""
    if not width:
        return curve.flattened()

    def at(t: float) -> Point:
        return curve.point(t) - 1j * curve.tangent(t) * width

    if isinstance(curve, Line):
        return [at(0.0), at(1.0)]
    points = [at(0.0)]
    todo = [(0.75, 1.0), (0.5, 0.75), (0.25, 0.5), (0.0, 0.25)]
    while todo:
        low, high = todo.pop()
        start, end, middle = at(low), at(high), (low + high) / 2
        # Unevenly placed, for half an S would hide in evenly placed ones.
        if high - low > 1e-3 and max(_off(at(low + (high - low) * share), start, end) for share in (0.35, 0.6)) > _CLOSE:
            todo += [(middle, high), (low, middle)]
        else:
            points.append(end)
    return points


def _off(p: Point, a: Point, b: Point) -> float:
    """How far `p` lies from the straight line through `a` and `b`, or from `a` where the two are one."""
    step = b - a
    return abs(((p - a) * step.conjugate()).imag) / abs(step) if abs(step) > 1e-12 else abs(p - a)


_LOOP = 0.25
"""A loop longer than this share of the whole line is none that may be left out."""


def without_loops(points: Sequence[Point], owners: Sequence[int]) -> tuple[tuple[Point, ...], tuple[int, ...]]:
    """The closed polyline, its loops left out; `owners` says of each point what it belongs to.

    Returns:
        (points, owners), both tuples. The line may still cross itself where a loop is too long to be left out.
    """
    line, whose = list(points), list(owners)
    # Ends by itself: a loop that is left out takes at least two points with it and leaves one.
    while met := crossing(line):
        i, j = met
        if j == i + 1:
            break  # turned inside out, or folded back: between neighbours there is no loop
        at = _meet(line[i], line[i + 1], line[j], line[(j + 1) % len(line)])
        if at is None:
            break
        inner, whole = _length([at, *line[i + 1 : j + 1], at]), _length([*line, line[0]])
        if inner <= _LOOP * whole:
            line, whose = line[: i + 1] + [at] + line[j + 1 :], whose[: i + 1] + [whose[j]] + whose[j + 1 :]
        elif whole - inner <= _LOOP * whole:
            line, whose = [at, *line[i + 1 : j + 1]], [whose[i], *whose[i + 1 : j + 1]]
        else:
            break
    return tuple(line), tuple(whose)


def crossing(points: Sequence[Point]) -> tuple[int, int] | None:
    """The numbers of the first two sides of the closed polyline that share a point, neighbours aside; None where none do.

    A line that does not run counter-clockwise has turned inside out: its first two sides are named.
    """
    from shapely import LinearRing

    ring = LinearRing([(p.real, p.imag) for p in points])
    if ring.is_simple:
        return None if ring.is_ccw else (0, 1)
    return _first(points)


def _first(points: Sequence[Point]) -> tuple[int, int]:
    from shapely import STRtree, linestrings

    count = len(points)
    sides = linestrings([[(p.real, p.imag), (q.real, q.imag)] for p, q in zip(points, [*points[1:], points[0]])])
    pairs = STRtree(sides).query(sides, predicate="intersects").T
    found = [(int(i), int(j)) for i, j in pairs if i < j and j - i not in (1, count - 1)]
    # Two neighbours that fold back onto each other are not among them.
    return min(found, key=lambda pair: pair[1] - pair[0]) if found else (0, 1)


def _meet(a: Point, b: Point, c: Point, d: Point) -> Point | None:
    """Where the straight lines a-b and c-d meet; None where they are parallel."""
    ab, cd = b - a, d - c
    slant = cross(ab, cd)
    return a + ab * (cross(c - a, cd) / slant) if abs(slant) > 1e-12 else None


def _length(points: Sequence[Point]) -> float:
    return sum(abs(q - p) for p, q in zip(points, points[1:]))
