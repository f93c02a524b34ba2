"""A pattern made ready to cut: each piece with its cutting line, its notches, and the layers it is cut in."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from corsetkit.finish.allowances import Reaches, cutting_line, widths
from corsetkit.finish.choices import FOLDED, Finish
from corsetkit.finish.lacing import LacingStretch, lacing_stretches
from corsetkit.finish.notches import CutNotch, back_seams, notches
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Curves
from corsetkit.geometry.points import Point
from corsetkit.pattern.edge import Edge, Kind
from corsetkit.pattern.pattern import Pattern
from corsetkit.pattern.piece import Piece

if TYPE_CHECKING:
    from shapely import Polygon

SHELL, STRENGTH, LINING = "shell", "strength layer", "lining"
CLOTHS = (SHELL, STRENGTH, LINING)
"""The layers from outside inwards."""


@dataclass(frozen=True)
class Layer:
    """One cloth a piece is cut of: how many times, and how ("on the fold", "as a pair", or nothing to say)."""

    cloth: str
    count: int
    how: str = ""


@dataclass(frozen=True)
class Strip:
    """A straight strip cut by its measures, without a pattern piece; cm, allowances included."""

    name: str
    cloth: str
    count: int
    length: float
    width: float


@dataclass(frozen=True, eq=False)
class FinishedPiece:
    """One piece ready to cut.

    `allowances` are those of the piece's edges in their order, cm: zero on a fold, where the cloth runs on, and on a
    bound edge. `cutting` is the cutting line, a closed polyline without its first point doubled, counter-clockwise,
    within 0.001 cm; a piece on the fold is drawn as its half.
    """

    piece: Piece
    allowances: tuple[float, ...]
    cutting: tuple[Point, ...]
    notches: tuple[CutNotch, ...]
    layers: tuple[Layer, ...]

    def __repr__(self) -> str:
        cloths = ", ".join(f"{one.count} of {one.cloth}" for one in self.layers)
        return f'<FinishedPiece {self.piece.number} "{self.piece.name}", {len(self.notches)} notches, {cloths}>'

    @cached_property
    def outline(self) -> "Polygon":
        """What is cut, as a shapely Polygon in cm; of a piece on the fold the half."""
        from shapely import Polygon

        return Polygon([(p.real, p.imag) for p in self.cutting])


@dataclass(frozen=True, eq=False)
class Finished:
    """A whole pattern ready to cut: its pieces in their order, and the strips cut beside them."""

    pattern: Pattern
    choices: Finish
    pieces: tuple[FinishedPiece, ...]
    strips: tuple[Strip, ...]
    warnings: tuple[str, ...]

    def __repr__(self) -> str:
        return f"<Finished: {len(self.pieces)} pieces ready to cut, {len(self.strips)} strips, {len(self.warnings)} warnings>"


@dataclass(frozen=True)
class Unfolded:
    """A piece as it lies opened out: a closed cutting line, its edges as (edge, run) pairs, notches, and grainline.

    The fold is no edge of it. A half that was mirrored has its runs turned round, so that they still have the piece on
    their left.
    """

    cutting: tuple[Point, ...]
    edges: tuple[tuple[Edge, Curves], ...]
    notches: tuple[CutNotch, ...]
    grainline: tuple[Point, Point]


def finish(pattern: Pattern, choices: Finish | None = None) -> Finished:
    """Make a pattern ready to cut.

    Args:
        pattern: the `Pattern`. choices: a `Finish`; with its defaults where none is given.

    Returns:
        A `Finished`.

    Raises:
        CorsetkitError: one sentence, where an allowance makes a piece's cutting line cross itself.

    >>> from corsetkit import demo_wearers, draft
    >>> made = finish(draft(demo_wearers()[0][1]), Finish(hem_allowance=3))
    >>> made
    <Finished: 10 pieces ready to cut, 1 strips, 0 warnings>
    >>> made.pieces[0]
    <FinishedPiece 1 "upper cup", 4 notches, 2 of shell, 2 of lining>
    """
    choices = choices or Finish()
    return Finished(
        pattern,
        choices,
        finished_pieces(pattern, pattern.pieces, choices),
        facings(pattern.pieces, choices),
        tuple(pattern.warnings),
    )


def finished_pieces(pattern: Pattern, pieces: Iterable[Piece], choices: Finish) -> tuple[FinishedPiece, ...]:
    """Some of a pattern's pieces ready to cut, as `finish` makes all of them: a tuple of `FinishedPiece`s."""
    reaches = Reaches(pattern.pieces, choices)
    backs = back_seams(pattern.pieces, getattr(pattern.steps, "block", None))
    made = []
    for piece in pieces:
        line = cutting_line(piece, choices, reaches)
        made.append(
            FinishedPiece(piece, widths(piece, choices), line, notches(piece, line, choices.notch_depth, backs), layers(piece))
        )
    return tuple(made)


def layers(piece: Piece) -> tuple[Layer, ...]:
    """The cloths a piece is cut of: panels that reach the hem carry the strain and have the strength layer too.

    Common practice, no source.
    """
    how = "on the fold" if piece.on_fold else "as a pair" if piece.pair else ""
    strained = not piece.copied and any(edge.kind is Kind.HEM for edge in piece.edges)
    cloths = CLOTHS if strained else (SHELL, LINING)
    return tuple(Layer(cloth, piece.cut, how) for cloth in cloths)


def facings(pieces: Iterable[Piece], choices: Finish) -> tuple[Strip, ...]:
    """The facing of the lacing edges: one straight strip of the strength layer's cloth for each stretch, left and right.

    A strip is as long as its stretch with the allowances above and below it, and as wide as the facing with the lacing
    edge's allowance; its other long edge lies flat under the lining, so it has none. Where the facing is the lacing
    edge's own allowance folded back there is no strip. Common practice, no source.
    """
    if choices.facing == FOLDED:
        return ()
    return tuple(
        Strip(
            "facing, " + " and ".join(stretch.names),
            STRENGTH,
            2,
            stretch.length + _ends(stretch, choices),
            choices.facing_width + choices.lacing_allowance,
        )
        for stretch in lacing_stretches(pieces)
    )


def _ends(stretch: LacingStretch, choices: Finish) -> float:
    """The allowances beyond a stretch's top and foot, cm."""
    total = 0.0
    for (piece, edge), step in ((stretch.parts[0], 1), (stretch.parts[-1], -1)):
        total += widths(piece, choices)[piece.place_of(piece.beside(edge, step > 0))]
    return total


def unfolded(finished_piece: FinishedPiece) -> Unfolded:
    """The whole piece opened out as an `Unfolded`; a piece that is not on the fold as it is."""
    piece = finished_piece.piece
    number = next((i for i, edge in enumerate(piece.edges) if edge.kind is Kind.FOLD), None)
    if number is None:
        return Unfolded(
            finished_piece.cutting, tuple((edge, edge.path) for edge in piece.edges), finished_piece.notches, piece.grainline
        )
    fold = piece.edges[number]
    kept = tuple((edge, edge.path) for edge in (*piece.edges[number + 1 :], *piece.edges[:number]))
    start, tangent = paths.path_start(fold.path), fold.path[0].tangent(0.0)

    def mirror(point: Point) -> Point:
        return start + tangent * ((point - start) / tangent).conjugate()

    half = _off_the_fold(finished_piece.cutting, start, tangent)
    whole = (*half, *(mirror(p) for p in reversed(half) if abs(((p - start) / tangent).imag) > 1e-5))
    edges = (*kept, *((edge, paths.turned_round(paths.moved(path, mirror))) for edge, path in reversed(kept)))
    marks = (
        *finished_piece.notches,
        *(
            CutNotch(
                mirror(one.point),
                mirror(one.point + one.inward) - mirror(one.point),
                one.depth,
                one.count,
                one.seam,
                one.edge,
                one.along,
            )
            for one in finished_piece.notches
        ),
    )
    return Unfolded(whole, edges, marks, piece.grainline)


def _off_the_fold(cutting: Sequence[Point], start: Point, tangent: complex) -> list[Point]:
    """The half's cutting line as an open line from one end of the fold to the other; what lies on the fold is left out."""

    def on_fold(point: Point) -> bool:
        return abs(((point - start) / tangent).imag) <= 1e-5

    count = len(cutting)
    first = next(i for i in range(count) if on_fold(cutting[i]) and not on_fold(cutting[(i + 1) % count]))
    turned = [*cutting[first:], *cutting[:first]]
    last = max(i for i in range(count) if not on_fold(turned[i])) + 1
    return turned[: last + 1] if last < count else [*turned, turned[0]]
