"""What is printed: anything with a border that is laid out clear of joins, turned, and painted where it came to lie."""

from collections.abc import Callable
from dataclasses import dataclass, field

from corsetkit.drawing.canvas import NOTHING
from corsetkit.drawing.lettering import around
from corsetkit.geometry.move import STAY, Move, slid
from corsetkit.geometry.paths import flattened, moved
from corsetkit.geometry.points import heading


class MovedCanvas:
    """Passes everything on to another canvas, moved rigidly; words turn with their piece."""

    def __init__(self, canvas, move):
        self.scale = canvas.scale
        self._canvas, self._move, self._turn = canvas, move, heading(move.turn)

    def line(self, path, pen, facts=NOTHING):
        self._canvas.line(moved(path, self._move), pen, facts)

    def area(self, path, tone, facts=NOTHING):
        self._canvas.area(moved(path, self._move), tone, facts)

    def dot(self, at, radius, tone, pen=None):
        self._canvas.dot(self._move(at), radius, tone, pen)

    def words(self, at, text, letter, anchor="middle", turn=0.0):
        self._canvas.words(self._move(at), text, letter, anchor, turn + self._turn)

    def group(self, name, facts=NOTHING):
        return self._canvas.group(name, facts)


@dataclass(frozen=True, eq=False)
class Item:
    """One thing to print.

    `border` is a closed path around all that has to be seen. `lay_out(boxes)` gives a view whose words stand clear of the
    boxes and whose `label` says where its middle is; `paint(canvas, view, step)` draws it. `turn` is how it lies on its
    page: `lay_out` and `paint` know nothing of it.
    """

    piece: object
    border: tuple
    lay_out: Callable = field(repr=False)
    paint: Callable = field(repr=False)
    turn: Move = STAY

    @property
    def line(self):
        """The border as it lies, as points within 0.02 cm."""
        return flattened(moved(self.border, self.turn), 0.02)


@dataclass(frozen=True, eq=False)
class Shown:
    """An item laid out, in the coordinates in which it lies on its page."""

    item: Item
    view: object

    @property
    def piece(self):
        return self.item.piece

    @property
    def border(self):
        return moved(self.item.border, self.item.turn)

    @property
    def heart(self):
        """Where its name stands."""
        return self.item.turn(self.view.label[0][0])

    @property
    def crowded(self):
        """Whether its words found no room in it."""
        return bool(getattr(self.view, "leader", ()))

    @property
    def turned(self):
        """Whether it lies turned."""
        return self.item.turn != STAY

    def paint(self, canvas, step):
        if not self.turned:
            self.item.paint(canvas, self.view, step)
        else:
            self.item.paint(MovedCanvas(canvas, self.item.turn.then(slid(step))), self.view, 0j)


def shown(item, boxes=()):
    """The item laid out clear of the boxes, which are given as it lies."""
    back = item.turn.inverse
    return Shown(item, item.lay_out([_box_moved(box, back) for box in boxes]))


def box_around(points):
    """The box around points."""
    return around([(p.real, p.imag, p.real, p.imag) for p in points])


def _box_moved(box, move):
    return box_around([move(complex(x, y)) for x in (box[0], box[2]) for y in (box[1], box[3])])
