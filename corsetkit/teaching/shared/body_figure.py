"""The body figure on which the tape is shown: front, back and side, drawn for this course.

Centimetres, y up, the waist at zero and the middle of the body (seen from the side: the ear) at zero
across. A person of no particular size; nothing is measured from it.
"""

from dataclasses import dataclass

from corsetkit.drawing.canvas import box_area
from corsetkit.drawing.pens import BOARD_TONE, CHALK, GRAPHITE, INK, PAPER, Letter, Pen, Tone
from corsetkit.geometry.curve import Cubic, Line

SCALE = 11
"""Of the figure's centimetres, how many are seen as one in the small drawings."""

CONTOUR = Pen("contour", 0.3, GRAPHITE)
FEATURE = Pen("feature", 0.2, GRAPHITE)
LEVEL = Pen("level", 0.18, GRAPHITE, (0.9, 0.7))
TAPE = Pen("tape", 0.8, CHALK)
BEHIND = Pen("tape-behind", 0.5, CHALK, (0.9, 0.9))
SKIN = Tone("skin", PAPER)
POINT = Tone("point", INK)
END = Tone("tape-end", CHALK)
WORD = Letter("word", 2.6, False, INK)


def smooth(*points, closed=False):
    """A smooth run through points."""
    count = len(points)
    ring = (lambda i: points[i % count]) if closed else (lambda i: points[max(0, min(count - 1, i))])
    return tuple(
        Cubic(a, a + (b - ring(i - 1)) / 6, b - (ring(i + 2) - a) / 6, b)
        for i in range(count if closed else count - 1)
        for a, b in [(ring(i), ring(i + 1))]
    )


def mirrored(path):
    """The run on the other side of the middle, run the other way round."""
    flip = lambda p: -p.conjugate()
    return tuple(
        Cubic(flip(c.end), flip(c.second), flip(c.first), flip(c.start))
        if isinstance(c, Cubic)
        else Line(flip(c.end), flip(c.start))
        for c in reversed(path)
    )


# The half body seen from the front, on the right of the drawing: neck, shoulder, arm, trunk, leg.
_NECK = smooth(5.4 + 40j, 5.2 + 37j, 6.2 + 34.4j, 9.5 + 32.4j, 14.5 + 30.4j, 18.4 + 28.2j)
_ARM = smooth(18.4 + 28.2j, 20.8 + 25j, 21.9 + 20j, 22.4 + 12j, 23.4 + 4j, 24.2 - 3j)
_ARM_IN = smooth(20.0 - 3j, 18.8 + 5j, 17.6 + 12j, 15.6 + 18.4j)
_TRUNK = smooth(15.6 + 18.4j, 15.5 + 13j, 14.0 + 8j, 12.4 + 1.5j, 12.5 - 2j, 15.2 - 9j, 17.8 - 18j, 18.0 - 24j, 17.0 - 32j)
_LEG_IN = smooth(1.2 - 32j, 0.8 - 29j, 0 - 27.5j)

_SIDE = smooth(
    -4.2 + 40j, -3.9 + 37j, -4.6 + 33.4j, -7.4 + 28j, -10.2 + 21j, -13.2 + 15.4j, -13.6 + 12.8j, -11.6 + 9.4j,
    -9.4 + 6.6j, -8.4 + 1j, -8.8 - 4j, -10.2 - 11j, -9.6 - 19j, -8.6 - 25j, -8.2 - 32j,
)  # fmt: skip
_SIDE_BACK = smooth(
    8.6 - 32j, 9.6 - 26j, 12.4 - 20j, 12.2 - 14j, 8.6 - 6j, 6.6 + 1j, 7.4 + 8j, 9.6 + 16j, 10.4 + 23j, 8.4 + 30j,
    5.8 + 34.6j, 4.8 + 37j, 4.9 + 40j,
)  # fmt: skip


@dataclass(frozen=True)
class Landmarks:
    """Places that measurements run between, on the front or the back view; the wearer's left is right here."""

    side_neck: complex = 6.3 + 34.2j
    shoulder_tip: complex = 18.2 + 28.3j
    bust_point: complex = 8.2 + 13.6j
    back_neck: complex = 34.4j
    front_neck: complex = 31.6j
    underarm: complex = 15.6 + 18.4j
    waist: float = 0.0
    underbust: float = 7.2
    hip: float = -18.5


AT = Landmarks()


def paint_front(canvas):
    """The body from the front."""
    _paint_half_and_half(canvas)
    for path in (
        smooth(3.2 + 10.4j, 5.2 + 8.4j, 8.4 + 7.8j, 11.8 + 8.6j, 14.2 + 11.6j),
        smooth(2.2 + 30.6j, 6 + 30.9j, 11 + 31j),
    ):
        canvas.line(path, FEATURE)
        canvas.line(mirrored(path), FEATURE)
    canvas.line(smooth(-0.5 - 3.2j, 0 - 3.5j, 0.5 - 3.2j), FEATURE)
    _dots(canvas, AT.bust_point, -AT.bust_point.conjugate())


def paint_back(canvas):
    """The body from behind."""
    _paint_half_and_half(canvas)
    blade = smooth(4.6 + 25j, 6.6 + 20.5j, 9.4 + 18.4j)
    canvas.line(blade, FEATURE)
    canvas.line(mirrored(blade), FEATURE)
    canvas.line(smooth(0 + 31j, 0.2 + 16j, 0 + 1j), FEATURE)
    canvas.line((Line(-20.5j, -27.5j),), FEATURE)
    _dots(canvas, AT.back_neck)


def paint_side(canvas):
    """The body from its right side, looking to the left of the drawing; the arm left out."""
    path = _SIDE + (Line(-8.2 - 32j, 8.6 - 32j),) + _SIDE_BACK
    canvas.area(path, SKIN)
    canvas.line(_SIDE, CONTOUR)
    canvas.line(_SIDE_BACK, CONTOUR)
    canvas.line(smooth(0.6 + 30j, -3 + 25j, -2.6 + 19.6j, 0.6 + 18.2j, 3.8 + 20j, 4 + 25j, closed=True), FEATURE)


def spot(canvas, at):
    """An end of the tape."""
    canvas.dot(at, 0.9, END)


def ground(canvas, box):
    box_area(canvas, box, BOARD_TONE)


def _paint_half_and_half(canvas):
    right = _NECK + _ARM + (Line(24.2 - 3j, 20.0 - 3j),) + _ARM_IN + _TRUNK + (Line(17 - 32j, 1.2 - 32j),) + _LEG_IN
    canvas.area(right + mirrored(right) + (Line(-5.4 + 40j, 5.4 + 40j),), SKIN)
    for path in (_NECK + _ARM, _ARM_IN + _TRUNK, _LEG_IN):
        canvas.line(path, CONTOUR)
        canvas.line(mirrored(path), CONTOUR)


def _dots(canvas, *places):
    for at in places:
        canvas.dot(at, 0.55, POINT)
