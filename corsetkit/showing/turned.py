"""A canvas that moves all that is drawn on it: so that a piece can lie turned on its page."""

from corsetkit.geometry.paths import moved
from corsetkit.geometry.points import heading
from corsetkit.showing.canvas import NOTHING


class MovedCanvas:
    """Passes everything on to another canvas, moved rigidly; words turn with their piece."""

    def __init__(self, canvas, move):
        self.scale = canvas.scale
        self._canvas, self._move, self._turn = canvas, move, heading(move.turn)

    def line(self, run, pen, facts=NOTHING):
        self._canvas.line(moved(run, self._move), pen, facts)

    def area(self, run, tone, facts=NOTHING):
        self._canvas.area(moved(run, self._move), tone, facts)

    def dot(self, at, radius, tone, pen=None):
        self._canvas.dot(self._move(at), radius, tone, pen)

    def words(self, at, text, letter, anchor="middle", turn=0.0):
        self._canvas.words(self._move(at), text, letter, anchor, turn + self._turn)

    def group(self, name, facts=NOTHING):
        return self._canvas.group(name, facts)
