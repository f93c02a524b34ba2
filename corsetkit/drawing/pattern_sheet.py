"""The whole pattern on one sheet, as it is seen while it is drafted, with its legend."""

from dataclasses import dataclass

from corsetkit.drawing.arrange import CUPS, PANELS, YOKES, beside, rows
from corsetkit.drawing.canvas import Sheet, box_area, tick
from corsetkit.drawing.lettering import CAPITALS, fitted, one_line, text_width
from corsetkit.drawing.marks import RING_RADIUS, seam_letter
from corsetkit.drawing.painting import arrow, paint_mark, paint_piece
from corsetkit.drawing.pens import BOARD_TONE, FOLD, FREE, GRAIN, HEADING, NOTCH, RULE, SEWN, SMALL
from corsetkit.drawing.views import view
from corsetkit.geometry.curve import Line
from corsetkit.units import CM_PER_INCH, say_length

_KINDS = (
    ("sewn edge", SEWN),
    ("finished edge", FREE),
    ("fold of the cloth", FOLD),
    ("grain of the cloth", GRAIN),
    ("notch", NOTCH),
)
_SAMPLE, _TEXT, _ROW, _SPACE, _BARS = 1.1, 1.35, 0.235 * RING_RADIUS, 0.25, 0.75
"""A sample's length, where its words begin, a row's height, the space between groups, the bars' height: cm as seen."""

_NOTE = "a letter in a ring: sew it to the same"


@dataclass(frozen=True)
class Legend:
    """The legend as one column, measured in cm at the given scale: kinds of line, seams, and a bar of true length."""

    seams: tuple
    scale: float

    @property
    def width(self):
        bar = 4 * CM_PER_INCH + 0.2 * self.scale + text_width("10 cm", SMALL, self.scale)
        words = [*(words for words, _ in _KINDS), *(seam.name for seam in self.seams)]
        return max(
            bar,
            text_width(_NOTE, SMALL, self.scale),
            _TEXT * self.scale + max(text_width(one, SMALL, self.scale) for one in words),
        )

    @property
    def height(self):
        return ((len(_KINDS) + len(self.seams) + 1) * _ROW + 2 * _SPACE + _BARS) * self.scale

    def paint(self, canvas, corner):
        """Paint with the upper left corner at `corner`."""
        scale, at = self.scale, corner - 0.5j * _ROW * self.scale
        with canvas.group("legend"):
            for words, pen in _KINDS:
                _line_sample(canvas, at, pen)
                self._say(canvas, at + _TEXT * scale, words)
                at -= 1j * _ROW * scale
            at -= 1j * _SPACE * scale
            self._say(canvas, at, _NOTE)
            for seam in self.seams:
                at -= 1j * _ROW * scale
                paint_mark(canvas, at + _SAMPLE / 2 * scale, seam_letter(seam.number))
                self._say(canvas, at + _TEXT * scale, seam.name)
            at -= 1j * (_ROW / 2 + _SPACE + _BARS / 2) * scale
            for tangent, length, parts, words in ((1j, 10.0, 10, "10 cm"), (-1j, 4 * CM_PER_INCH, 4, "4 in")):
                self._bar(canvas, at + tangent * 0.08 * scale, tangent, length, parts, words)

    def _say(self, canvas, at, words):
        down = CAPITALS / 2 * SMALL.size * self.scale / 10
        canvas.words(at - 1j * down, words, SMALL, "start")

    def _bar(self, canvas, at, tangent, length, parts, words):
        """A bar of true length with its parts, its strokes rising along `tangent`."""
        strokes = [Line(at, at + length)]
        for part in range(parts + 1):
            foot = at + length * part / parts
            strokes.append(Line(foot, foot + tangent * (0.2 if part in (0, parts) else 0.11) * self.scale))
        canvas.line(tuple(strokes), RULE)
        self._say(canvas, at + length + 0.2 * self.scale + tangent * 0.12 * self.scale, words)


def _line_sample(canvas, at, pen):
    end = at + _SAMPLE * canvas.scale
    if pen is NOTCH:
        middle = (at + end) / 2
        tick(canvas, at, end, SEWN)
        tick(canvas, middle - 0.17j * canvas.scale, middle + 0.17j * canvas.scale, NOTCH)
        return
    tick(canvas, at, end, pen)
    if pen is GRAIN:
        arrow(canvas, end, 1 + 0j, GRAIN)
        arrow(canvas, at, -1 + 0j, GRAIN)


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
    places = [(one, step + 1j * (lower_height + _GAP)) for one, step in upper] + lower
    high = top + 0.75 * SCALE + _MARGIN

    def paint(canvas):
        box_area(canvas, (-_MARGIN, -_MARGIN, width + _MARGIN, high), BOARD_TONE)
        line = complex(0, top + 0.45 * SCALE)
        canvas.words(line, short, HEADING, "start")
        canvas.words(line + width, said, SMALL, "end")
        for one, step in places:
            paint_piece(canvas, one, step, unit)
        legend.paint(canvas, complex(width - legend.width, (lower_height + legend.height) / 2))

    return Sheet(
        complex(-_MARGIN, -_MARGIN), complex(width + _MARGIN, high), heading, _description(pattern, unit), paint, SCALE
    )


def _placed(views):
    """The views side by side with their steps, and the width and height they take."""
    steps, width, height = beside([one.box for one in views], _GAP)
    return list(zip(views, steps)), width, height


def _description(pattern, unit):
    """The sheet in words, for those who do not see it."""
    pieces = "; ".join(f"{piece.number} {piece.name}" for piece in pattern.pieces)
    seams = "; ".join(f"{seam.name} {say_length(seam.lengths[0], unit)}" for seam in pattern.seams)
    return f"{len(pattern.pieces)} pieces: {pieces}. Seams: {seams}."
