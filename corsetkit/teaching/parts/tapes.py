"""Where the tape runs for each measurement, and the mistake that is usually made with it.

The mistakes are common practice, no source. The measurements themselves, with names and meanings, are
declared in `measurements.py`; here is only how they are shown.
"""

from collections.abc import Callable
from dataclasses import dataclass

from corsetkit.geometry.curve import Cubic, Line
from corsetkit.measurements import Measurements
from corsetkit.quantity import quantities
from corsetkit.drawing.canvas import Sheet
from corsetkit.teaching.figure import AT, BEHIND, LEVEL, SCALE, TAPE, ground, paint_back, paint_front, smooth, spot

_MIDDLE = (-26.0, -19.0, 26.0, 26.0)
_UPPER = (-26.0, -5.0, 26.0, 40.0)
_LOWER = (-26.0, -32.0, 26.0, 13.0)


@dataclass(frozen=True)
class Tape:
    """One measurement on the figure: how it is painted, what is seen of the body, and the usual mistake."""

    body: Callable
    box: tuple[float, float, float, float]
    lay: Callable
    mistake: str


def _round(y, half, sag=1.7):
    """The tape round the body at a level: seen in front, hidden behind."""

    def lay(canvas):
        left, right = complex(-half, y), complex(half, y)
        down, up = -1j * sag, 1j * sag
        canvas.line((Cubic(left, left + up + half / 2, right + up - half / 2, right),), BEHIND)
        canvas.line((Cubic(left, left + down + half / 2, right + down - half / 2, right),), TAPE)

    return lay


def _along(*points, levels=()):
    """The tape over the body from the first to the last point; `levels` are faint lines it ends at."""

    def lay(canvas):
        for y, half in levels:
            canvas.line((Line(complex(-half, y), complex(half, y)),), LEVEL)
        run = smooth(*points) if len(points) > 2 else (Line(*points),)
        canvas.line(run, TAPE)
        spot(canvas, points[0])
        spot(canvas, points[-1])

    return lay


_BUST = AT.bust_point
_WAIST_UNDER_BUST = complex(_BUST.real - 0.6, AT.waist)

TAPES = {
    "bust_girth": Tape(paint_front, _UPPER, _round(13.2, 15.6),
        "The tape slips down at the back. Look in a mirror, or have someone look."),
    "underbust_girth": Tape(paint_front, _UPPER, _round(AT.underbust, 13.8),
        "Measured after breathing in. Breathe out first and leave the tape where the breasts end."),
    "waist_girth": Tape(paint_front, _MIDDLE, _round(AT.waist, 12.3),
        "The trousers’ waist is taken for the waist. Tie a cord round and bend: it rolls to the place."),
    "hip_girth": Tape(paint_front, _LOWER, _round(AT.hip, 17.8),
        "Taken too high. Slide the tape up and down until the number is largest."),
    "neck_base_girth": Tape(paint_front, _UPPER, _round(33.0, 6.4, 1.5),
        "Taken round the middle of the neck. The root lies where a necklace lies."),
    "shoulder_length": Tape(paint_front, _UPPER, _along(AT.side_neck, AT.shoulder_tip),
        "Measured on down the arm. Lift the arm: the dent at the end of the shoulder is where to stop."),
    "neck_to_bust_point": Tape(paint_front, _UPPER,
        _along(AT.side_neck, 7.4 + 25j, _BUST),
        "Started at the middle of the neck. Start at the side, where neck and shoulder meet."),
    "bust_point_width": Tape(paint_front, _UPPER, _along(-_BUST.conjugate(), _BUST),
        "The tape dips into the hollow between. Hold it straight, like a bridge."),
    "front_waist_length": Tape(paint_front, _UPPER,
        _along(AT.side_neck, 7.4 + 25j, _BUST, 8.1 + 7j, _WAIST_UNDER_BUST, levels=((AT.waist, 12.3),)),
        "Measured down the middle. It goes over the bust point, then straight down."),
    "back_waist_length": Tape(paint_back, _UPPER, _along(AT.back_neck, complex(0, AT.waist), levels=((AT.waist, 12.3),)),
        "Started too low. Bow the head: the bone that stands out is the start."),
    "armscye_depth": Tape(paint_back, _UPPER, _along(AT.back_neck, 18.4j, levels=((18.4, 15.6),)),
        "The underarm’s level is guessed. Hold a ruler level under the arm and mark the back."),
    "across_front_width": Tape(paint_front, _UPPER, _along(-15.2 + 22.6j, 15.2 + 22.6j),
        "The arms are held back, which widens the chest. Let them hang."),
    "across_back_width": Tape(paint_back, _UPPER, _along(-15.6 + 22.6j, 15.6 + 22.6j),
        "The arms are held forward, which widens the back. Let them hang."),
    "waist_to_hip": Tape(paint_front, _LOWER,
        _along(12.3 + 0j, 12.6 - 2.4j, 15.2 - 9j, 17.9 + AT.hip * 1j, levels=((AT.waist, 12.3), (AT.hip, 17.9))),
        "Taken to the top of the legs. It ends at the very level where the hip girth was taken."),
    "high_bust_girth": Tape(paint_front, _UPPER, _round(19.6, 15.6),
        "The tape slides onto the breasts. Keep it in the armpits and above them."),
}  # fmt: skip


def tape_sheet(name: str) -> Sheet:
    """The small drawing for one measurement."""
    one = next(quantity for quantity in quantities(Measurements) if quantity.name == name)
    tape = TAPES[name]
    left, bottom, right, top = tape.box

    def paint(canvas):
        ground(canvas, tape.box)
        tape.body(canvas)
        tape.lay(canvas)

    return Sheet(
        complex(left, bottom), complex(right, top), one.label.capitalize(), one.meaning.capitalize(), paint, SCALE
    )
