"""A pattern or one piece of it as a notebook shows it: an image that is seen also where nothing is trusted or run."""

from corsetkit.drawing.canvas import Canvas, Sheet, box_area
from corsetkit.drawing.lettering import around, grown
from corsetkit.drawing.painting import paint_piece
from corsetkit.drawing.pattern_sheet import pattern_sheet
from corsetkit.drawing.pens import BOARD_TONE
from corsetkit.drawing.svg import svg_image, svg_text
from corsetkit.drawing.views import view
from corsetkit.pattern.pattern import Pattern
from corsetkit.pattern.piece import Piece
from corsetkit.pattern.shown import Shown

_SEEN = 12.0
"""How wide or high one piece is seen, cm, whichever is more."""
_PIXELS = 96 / 2.54
"""Of a page's pixels, how many are a centimetre (source: CSS Values and Units)."""


def piece_sheet(piece: Piece, unit: str = "cm") -> Sheet:
    """One piece with its label, grainline, notches and seam marks; lengths are said in `unit`."""
    left, bottom, right, top = around(
        [(p.real, p.imag, p.real, p.imag) for curve in piece.path for p in curve.flattened(0.05)]
    )
    scale = max(right - left, top - bottom) / _SEEN
    laid_out = view(piece, scale, (piece.cloth,))
    box = grown(laid_out.box, 0.4 * scale)
    title = f"{piece.number} {piece.name}"

    def paint(canvas: Canvas) -> None:
        box_area(canvas, box, BOARD_TONE)
        paint_piece(canvas, laid_out, 0j, unit)

    edges = ", ".join(edge.name for edge in piece.edges)
    return Sheet(complex(box[0], box[1]), complex(box[2], box[3]), title, f"{title}: {edges}.", paint, scale)


def html_of(value: Shown) -> str:
    """A `Pattern` or a `Piece` as an image in HTML, lengths in centimetres as its values are."""
    if isinstance(value, Pattern):
        return svg_image(svg_text(pattern_sheet(value, "cm")))
    if isinstance(value, Piece):
        sheet = piece_sheet(value)
        return svg_image(svg_text(sheet), f"{sheet.size.real / sheet.scale * _PIXELS:.0f}px")
    raise TypeError(f"a {type(value).__name__} is not drawn")
