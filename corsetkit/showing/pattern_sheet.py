"""The whole pattern on one sheet, as it is seen while it is drafted."""

from corsetkit.units import say_length
from corsetkit.showing.arrange import CUPS, PANELS, YOKES, beside, rows
from corsetkit.showing.canvas import box_area
from corsetkit.showing.legend import Legend
from corsetkit.showing.lettering import fitted, one_line, text_width
from corsetkit.showing.painting import owners_of, paint_piece
from corsetkit.showing.pens import BOARD_TONE, HEADING, SMALL
from corsetkit.showing.sheet import Sheet
from corsetkit.showing.views import view

SCALE = 3.5
"""Of the sheet's centimetres, how many are meant to be seen as one: a whole pattern on a laptop's screen."""

_GAP, _MARGIN = 2.6, 2.2


def pattern_sheet(pattern, unit="in", wearer=""):
    """All pieces side by side without overlap, each with its label, grainline, notches and seam marks.

    The cups lie above between front and back yoke, the panels below them from centre front to centre back, as they
    are worn. Lengths are said in `unit`; `wearer` is the name in the heading.
    """
    groups = [[view(piece, SCALE) for piece in row] for row in rows(pattern.pieces)]
    yokes, cups = groups[YOKES], groups[CUPS]
    upper, upper_width, upper_height = _placed([*yokes[:1], *cups, *yokes[1:]])
    lower, lower_width, lower_height = _placed(groups[PANELS])
    legend = Legend(pattern.seams, SCALE)

    lower_height = max(lower_height, legend.height)
    width = max(upper_width, lower_width + _GAP + legend.width)
    top = lower_height + _GAP + upper_height
    name = one_line(wearer)
    heading = f"Corset pattern for {name}" if name else "Corset pattern"
    said = "Sewing lines; allowances are added when cutting."
    short = fitted(heading, HEADING, width - text_width(said, SMALL, SCALE) - _GAP, SCALE)
    owners = owners_of(pattern.pieces)
    places = [(one, step + 1j * (lower_height + _GAP)) for one, step in upper] + lower
    high = top + 0.75 * SCALE + _MARGIN

    def paint(canvas):
        box_area(canvas, (-_MARGIN, -_MARGIN, width + _MARGIN, high), BOARD_TONE)
        line = complex(0, top + 0.45 * SCALE)
        canvas.words(line, short, HEADING, "start")
        canvas.words(line + width, said, SMALL, "end")
        for one, step in places:
            paint_piece(canvas, one, step, unit, owners)
        legend.paint(canvas, complex(width - legend.width, (lower_height + legend.height) / 2))

    return Sheet(complex(-_MARGIN, -_MARGIN), complex(width + _MARGIN, high), heading, _description(pattern, unit),
                 paint, SCALE)


def _placed(views):
    """The views side by side with their steps, and the width and height they take."""
    steps, width, height = beside([one.box for one in views], _GAP)
    return list(zip(views, steps)), width, height


def _description(pattern, unit):
    """The sheet in words, for those who do not see it."""
    pieces = "; ".join(f"{piece.number} {piece.name}" for piece in pattern.pieces)
    seams = "; ".join(f"{seam.name} {say_length(seam.lengths[0], unit)}" for seam in pattern.seams)
    return f"{len(pattern.pieces)} pieces: {pieces}. Seams: {seams}."
