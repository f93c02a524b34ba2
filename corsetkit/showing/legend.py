"""The legend: what the kinds of line mean, which letter is which seam, and how long ten centimetres are here."""

from dataclasses import dataclass

from corsetkit.geometry.curve import Line
from corsetkit.units import CM_PER_INCH
from corsetkit.showing.canvas import tick
from corsetkit.showing.lettering import CAPITALS, text_width
from corsetkit.showing.painting import arrow, paint_mark
from corsetkit.showing.pens import FOLD, FREE, GRAIN, NOTCH, RULE, SEWN, SMALL
from corsetkit.showing.marks import RING_RADIUS, seam_letter

_KINDS = (("sewn edge", SEWN), ("finished edge", FREE), ("fold of the cloth", FOLD), ("grain of the cloth", GRAIN),
          ("notch", NOTCH))
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
        return max(bar, text_width(_NOTE, SMALL, self.scale),
                   _TEXT * self.scale + max(text_width(one, SMALL, self.scale) for one in words))

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
            for way, length, parts, words in ((1j, 10.0, 10, "10 cm"), (-1j, 4 * CM_PER_INCH, 4, "4 in")):
                self._bar(canvas, at + way * 0.08 * scale, way, length, parts, words)

    def _say(self, canvas, at, words):
        down = CAPITALS / 2 * SMALL.size * self.scale / 10
        canvas.words(at - 1j * down, words, SMALL, "start")

    def _bar(self, canvas, at, way, length, parts, words):
        """A bar of true length with its parts, its strokes rising along `way`."""
        strokes = [Line(at, at + length)]
        for part in range(parts + 1):
            foot = at + length * part / parts
            strokes.append(Line(foot, foot + way * (0.2 if part in (0, parts) else 0.11) * self.scale))
        canvas.line(tuple(strokes), RULE)
        self._say(canvas, at + length + 0.2 * self.scale + way * 0.12 * self.scale, words)


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
