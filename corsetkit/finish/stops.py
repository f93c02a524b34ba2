"""The stops of a seam that is walked: its start, its notches and its end, what lies there on either side, and their names.

A stop is known by its number along the seam, zero at its start.
"""

from typing import TypeAlias

from corsetkit.finish.truing import STRAIGHT
from corsetkit.geometry import paths
from corsetkit.pattern.edge import Edge
from corsetkit.pattern.piece import Piece
from corsetkit.pattern.seam import SAME_PLACE, Seam

WAIST_NEAR = 1.5
"""The notch nearest the waist level is the waist notch where it stands no farther off, cm, as a leaning dart's does."""


End: TypeAlias = tuple[Piece, Edge, Edge | None]
"""The piece and the edge on which a stretch ends, and the edge of that piece beyond its end where it ends there."""


def stops_of(seam: Seam) -> tuple[tuple[float, float], ...]:
    """Where a seam's start, its marks and its end lie on each side, cm from the start: a pair for each.

    A mark where a side's pieces change lies on that side exactly where they do.
    """
    first, second = map(_changes, seam.sides)
    marks = [(_placed(mark, first), _placed(mark, second)) for mark in seam.marks]
    return ((0.0, 0.0), *marks, seam.lengths)


def _placed(mark: float, changes: list[float]) -> float:
    """Where a seam's mark lies on a side with these changes of pieces."""
    near = min(changes, key=lambda change: abs(change - mark), default=mark)
    return near if abs(near - mark) <= SAME_PLACE else mark


def waist_of(seam: Seam) -> int | None:
    """The number of the stop at the waist: the mark that stands there on either side; None where there is none."""
    near = []
    for number, places in enumerate(zip(seam.places(0), seam.places(1)), 1):
        near.append((min(abs(paths.point_along(edge.path, along).imag) for edge, along in places), number))
    return min(near)[1] if near and min(near)[0] <= WAIST_NEAR else None


def _changes(side: tuple[Edge, ...]) -> list[float]:
    """The distances at which one edge of a side gives way to the next."""
    return [sum(edge.length for edge in side[:number]) for number in range(1, len(side))]


def _at(seam: Seam, side: int, at_end: bool) -> tuple[Edge, bool]:
    """The edge at a seam's start or end on one side, and whether the edge's own end lies there."""
    edge = seam.sides[side][-1 if at_end else 0]
    return edge, at_end != seam.against[side]


def _beyond(seam: Seam, side: int, at_end: bool) -> Edge:
    """The edge beyond a seam's start or end, of the piece that ends there."""
    edge, own_end = _at(seam, side, at_end)
    return edge.piece.beside(edge, own_end)


def bound(seam: Seam, at_end: bool) -> int:
    """How much a seam's end has to stay where it is: 2 on a line that must be straight, 1 where seams meet it, else 0."""
    beyond = [_beyond(seam, side, at_end) for side in (0, 1)]
    return 2 if any(one.kind in STRAIGHT for one in beyond) else int(any(one.seam for one in beyond))


def height(seam: Seam, at_end: bool) -> float:
    """How high the seam's start or end lies on its first side, cm above the waist."""
    edge, own_end = _at(seam, 0, at_end)
    return (paths.path_end if own_end else paths.path_start)(edge.path).imag


def named(seam: Seam, number: int, waist: int | None, begun: int, last: int) -> str:
    """A stop in words: the waist notch, a notch by its number, or what lies beyond the seam's end.

    Notches are counted from where a walk along the whole seam sets out; where it sets out from the waist, from its start.
    """
    if number == waist:
        return "the waist notch"
    if 0 < number < last:
        return f"notch {last - number if begun == last else number}"
    return f"the {_beyond(seam, 0, number == last).name}"


def ends(seam: Seam, near: int, far: int, last: int) -> tuple[End, ...]:
    """For each side the piece and edge on which a stretch ends, and the edge beyond where that piece ends there."""
    onward = far > near
    found: list[End] = []
    for side, against in enumerate(seam.against):
        edges = seam.sides[side]
        other: Edge | None
        if far in (0, last):
            edge, other = edges[-1 if onward else 0], None
        else:
            mark = stops_of(seam)[far][side]
            edge, other = seam.places(side)[far - 1][0], None
            for change, before, after in zip(_changes(edges), edges, edges[1:]):
                if abs(change - mark) <= SAME_PLACE:
                    edge, other = (before, after) if onward else (after, before)
        goes_on = 0 < far < last and (other is None or other.piece is edge.piece)
        found.append((edge.piece, edge, None if goes_on else edge.piece.beside(edge, onward != against)))
    return tuple(found)
