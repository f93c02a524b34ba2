"""The few words a student must know, written on the body from the front, the side and behind."""

from contextlib import contextmanager
from dataclasses import dataclass

from corsetkit.geometry.curve import Line
from corsetkit.geometry.move import slid
from corsetkit.geometry.paths import moved
from corsetkit.drawing.canvas import NOTHING
from corsetkit.drawing.pens import LEADER
from corsetkit.drawing.canvas import Sheet
from corsetkit.teaching.figure import AT, LEVEL, POINT, SCALE, WORD, ground, paint_back, paint_front, paint_side

_BOX = (-27.0, -33.0, 190.0, 41.0)
_SIDE_AT, _BACK_AT = 79.0 + 0j, 136.0 + 0j
_HALF_LETTER = 1.0

# Words right of the front view and of the back view: the place they mean, the height they stand at.
_FRONT_WORDS = (
    ("side neck point", AT.side_neck, 37.5),
    ("shoulder", AT.shoulder_tip, 28.5),
    ("armscye, where a", 17.4 + 22j, 20.5),
    ("sleeve would be set", None, 17.2),
    ("bust point", AT.bust_point, 11.0),
)
_BACK_WORDS = (
    ("back neck point", AT.back_neck, 37.5),
    ("underarm level", AT.underarm, 14.0),
)
_LEVELS = (("bust", 13.0), ("underbust", AT.underbust), ("waist", AT.waist), ("hip", AT.hip))
_LEVEL_ENDS = (-14.5, 13.5)


@dataclass
class _Slid:
    """A canvas that everything is painted on a step further along."""

    canvas: object
    step: complex

    @property
    def scale(self):
        return self.canvas.scale

    def line(self, run, pen, facts=NOTHING):
        self.canvas.line(moved(run, slid(self.step)), pen, facts)

    def area(self, run, tone, facts=NOTHING):
        self.canvas.area(moved(run, slid(self.step)), tone, facts)

    def dot(self, at, radius, tone, pen=None):
        self.canvas.dot(at + self.step, radius, tone, pen)

    def words(self, at, text, letter, anchor="middle", turn=0.0):
        self.canvas.words(at + self.step, text, letter, anchor, turn)

    @contextmanager
    def group(self, name, facts=NOTHING):
        with self.canvas.group(name, facts):
            yield


def landmarks_sheet() -> Sheet:
    """The three views with their words."""
    left, bottom, right, top = _BOX
    said = ", ".join(word for word, at, _ in _FRONT_WORDS + _BACK_WORDS if at)
    levels = ", ".join(name for name, _ in _LEVELS)
    return Sheet(
        complex(left, bottom), complex(right, top), "Places on the body",
        f"A body from the front, the side and behind. Marked are: {said}; and the levels of {levels}.",
        _paint, SCALE,
    )  # fmt: skip


def _paint(canvas):
    ground(canvas, _BOX)
    paint_front(canvas)
    _words(canvas, _FRONT_WORDS, 27.0)
    side = _Slid(canvas, _SIDE_AT)
    paint_side(side)
    for name, y in _LEVELS:
        side.line((Line(complex(_LEVEL_ENDS[0], y), complex(_LEVEL_ENDS[1], y)),), LEVEL)
        side.words(complex(_LEVEL_ENDS[1] + 1.2, y - _HALF_LETTER), name, WORD, "start")
    back = _Slid(canvas, _BACK_AT)
    paint_back(back)
    back.line((Line(-AT.underarm.conjugate(), AT.underarm),), LEVEL)
    _words(back, _BACK_WORDS, 26.0)


def _words(canvas, words, column):
    """Words in a column right of a view, each with a line to its place."""
    for text, at, y in words:
        canvas.words(complex(column, y - _HALF_LETTER), text, WORD, "start")
        if at:
            canvas.dot(at, 0.6, POINT)
            canvas.line((Line(at, complex(column - 0.8, y)),), LEADER)
