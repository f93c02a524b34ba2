"""A drawing set into a page: made smaller until it fits, its pens and letters as large as ever."""

from contextlib import contextmanager

from corsetkit.geometry import paths as path
from corsetkit.showing.canvas import NOTHING


class Inset:
    """Passes what is drawn on to a page's canvas: `scale` centimetres of the drawing are one of the page's."""

    def __init__(self, page, scale, low, corner):
        """`low` is the drawing's lower left corner, `corner` where that lies on the page."""
        self.scale = scale
        self._page, self._low, self._corner = page, low, corner

    def line(self, run, pen, facts=NOTHING):
        self._page.line(path.moved(run, self._at), pen, facts)

    def area(self, run, tone, facts=NOTHING):
        self._page.area(path.moved(run, self._at), tone, facts)

    def dot(self, at, radius, tone, pen=None):
        self._page.dot(self._at(at), radius, tone, pen)

    def words(self, at, text, letter, anchor="middle", turn=0.0):
        self._page.words(self._at(at), text, letter, anchor, turn)

    @contextmanager
    def group(self, name, facts=NOTHING):
        with self._page.group(name, facts):
            yield

    def _at(self, point):
        return self._corner + (point - self._low) / self.scale


def fitted_sheet(make, room, start):
    """The sheet that `make(scale)` gives at the scale at which it fills `room` (width and height, cm, as one complex).

    Margins and headings grow with the scale, so it is looked for in a few turns, from `start` on.
    """
    scale = start
    for _ in range(6):
        sheet = make(scale)
        needed = max(sheet.size.real / room.real, sheet.size.imag / room.imag)
        if needed <= scale <= needed * 1.01:
            break
        scale = needed * 1.002
    return sheet
