"""Notches as they are cut: from the cutting line inwards, one for a front seam and two for a back seam.

Rule of the course for which is which (the custom, common practice, no source, has one for front and two for back): a
seam has two where every piece sewn in it is a back piece, and one otherwise, so that both its sides bear the same. Where
pieces change on the other side, the piece bears a notch; where it has its own corner there, the corner says as much and
no notch is cut.
"""

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass

from corsetkit.geometry.points import Point, cross, dot
from corsetkit.pattern.edge import Edge, Kind
from corsetkit.pattern.piece import Notch, Piece
from corsetkit.pattern.seam import CROWDED, Seam
from corsetkit.steps.block import Block

BETWEEN = 0.6
"""How far apart the two cuts of a double notch are, cm, evenly about its place: course convention."""
SHARE = 0.5
"""A notch is never deeper than this share of the allowance."""


@dataclass(frozen=True)
class CutNotch:
    """A notch on the cutting line.

    `point` lies on the cutting line, square to the sewing line's own mark; `inward` is the unit step from there towards
    the piece. `depth` is in cm, zero where the edge has no allowance: then it is marked and not cut. `count` is one or
    two; two stand BETWEEN apart along the edge.
    """

    point: Point
    inward: complex
    depth: float
    count: int
    seam: Seam
    edge: Edge
    along: float
    """Where its mark lies on the sewing line, cm along the edge."""


def notches(
    piece: Piece, cutting: Sequence[Point], depth: float, backs: Collection[int] = frozenset()
) -> tuple[CutNotch, ...]:
    """The piece's notches as they are cut.

    Args:
        piece: the `Piece`. cutting: its cutting line as a closed polyline. depth: how deep a notch is cut, cm.
        backs: the numbers of the seams with two notches, as `back_seams` gives them.
    """
    found = []
    for notch in piece.notches:
        if _at_corner(piece, notch):
            continue
        out = -1j * notch.tangent
        away = _to_line(notch.point, out, cutting)
        count = 2 if notch.seam.number in backs else 1
        found.append(
            CutNotch(notch.point + out * away, -out, min(depth, SHARE * away), count, notch.seam, notch.edge, notch.along)
        )
    return tuple(found)


def back_seams(pieces: Iterable[Piece], block: Block | None = None) -> frozenset[int]:
    """The numbers of the seams that have two notches: those all of whose pieces are back pieces."""
    seams = {edge.seam.number: edge.seam for piece in pieces for edge in piece.edges if edge.seam}
    return frozenset(number for number, seam in seams.items() if all(is_back(piece, block) for piece in seam.pieces))


def is_back(piece: Piece, block: Block | None = None) -> bool:
    """Whether the piece was cut from the back block; without a block, whether it has a lacing edge."""
    if block is None or not piece.parts:
        return any(edge.kind is Kind.LACING for edge in piece.edges)
    middle = (block.front.underarm.real + block.back.underarm.real) / 2
    points = [curve.start.real for part in piece.parts for curve in part.outline]
    return sum(points) / len(points) > middle


def _at_corner(piece: Piece, notch: Notch) -> bool:
    """Whether the notch falls on a corner of its own piece, where it would tell nothing."""
    if notch.along <= CROWDED:
        return not _runs_on(piece.beside(notch.edge, False), notch.edge)
    if notch.along >= notch.edge.length - CROWDED:
        return not _runs_on(notch.edge, piece.beside(notch.edge, True))
    return False


def _runs_on(first: Edge, second: Edge) -> bool:
    """Whether two neighbouring edges are one side of one seam."""
    return first.seam is not None and first.seam is second.seam and first.seam.side_of(first) == second.seam.side_of(second)


def _to_line(point: Point, tangent: complex, line: Sequence[Point]) -> float:
    """How far it is from `point` along the unit step `tangent` to the closed polyline, cm; zero where it begins on it."""
    nearest: float | None = None
    for p, q in zip(line, (*line[1:], line[0])):
        here, there = cross(tangent, p - point), cross(tangent, q - point)
        if here * there > 0 or abs(here - there) < 1e-12:
            continue
        along = dot(tangent, p + (q - p) * here / (here - there) - point)
        if along >= -1e-6 and (nearest is None or along < nearest):
            nearest = along
    return max(nearest or 0.0, 0.0)
