"""The body that is measured: its landmarks, where the tape runs for each measurement, and the table of them all.

The mistakes are common practice, no source. The measurements themselves, with names and meanings, are
declared in `measurements.py`; here is only how they are shown.
"""

from collections.abc import Callable
from contextlib import contextmanager
from dataclasses import dataclass
from html import escape

from corsetkit.drawing.canvas import NOTHING, Sheet
from corsetkit.drawing.pens import LEADER
from corsetkit.drawing.svg import svg_image, svg_text
from corsetkit.geometry.curve import Cubic, Line
from corsetkit.geometry.move import slid
from corsetkit.geometry.paths import moved
from corsetkit.measurements import Measurements
from corsetkit.quantity import quantities
from corsetkit.teaching.picture import Stored
from corsetkit.teaching.shared.body_figure import (
    AT,
    BEHIND,
    LEVEL,
    POINT,
    SCALE,
    TAPE,
    WORD,
    ground,
    paint_back,
    paint_front,
    paint_side,
    smooth,
    spot,
)
from corsetkit.words import words_of

WORDS = words_of("00_measuring")
SHARED = words_of("shared")

_BOX = (-27.0, -33.0, 190.0, 41.0)
_SIDE_AT, _BACK_AT = 79.0 + 0j, 136.0 + 0j
_HALF_LETTER = 1.0

# Words right of the front view and of the back view: the place they mean, the height they stand at.
_FRONT_WORDS = (
    (WORDS("side_neck_point"), AT.side_neck, 37.5),
    (WORDS("shoulder"), AT.shoulder_tip, 28.5),
    (WORDS("armscye_where_a"), 17.4 + 22j, 20.5),
    (WORDS("sleeve_would_be_set"), None, 17.2),
    (SHARED("bust_point"), AT.bust_point, 11.0),
)
_BACK_WORDS = ((WORDS("back_neck_point"), AT.back_neck, 37.5), (WORDS("underarm_level"), AT.underarm, 14.0))
_LEVELS = ((SHARED("bust"), 13.0), (SHARED("underbust"), AT.underbust), (SHARED("waist"), AT.waist), (SHARED("hip"), AT.hip))
_LEVEL_ENDS = (-14.5, 13.5)


@dataclass
class _Slid:
    """A canvas that everything is painted on a step further along."""

    canvas: object
    step: complex

    @property
    def scale(self):
        return self.canvas.scale

    def line(self, path, pen, facts=NOTHING):
        self.canvas.line(moved(path, slid(self.step)), pen, facts)

    def area(self, path, tone, facts=NOTHING):
        self.canvas.area(moved(path, slid(self.step)), tone, facts)

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
        complex(left, bottom), complex(right, top), WORDS("places"),
        WORDS("places_described", places=said, levels=levels),
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
        path = smooth(*points) if len(points) > 2 else (Line(*points),)
        canvas.line(path, TAPE)
        spot(canvas, points[0])
        spot(canvas, points[-1])

    return lay


_BUST = AT.bust_point
_WAIST_UNDER_BUST = complex(_BUST.real - 0.6, AT.waist)

TAPES = {
    "bust_girth": Tape(paint_front, _UPPER, _round(13.2, 15.6),
        WORDS("mistake_bust_girth")),
    "underbust_girth": Tape(paint_front, _UPPER, _round(AT.underbust, 13.8),
        WORDS("mistake_underbust_girth")),
    "waist_girth": Tape(paint_front, _MIDDLE, _round(AT.waist, 12.3),
        WORDS("mistake_waist_girth")),
    "hip_girth": Tape(paint_front, _LOWER, _round(AT.hip, 17.8),
        WORDS("mistake_hip_girth")),
    "neck_base_girth": Tape(paint_front, _UPPER, _round(33.0, 6.4, 1.5),
        WORDS("mistake_neck_base_girth")),
    "shoulder_length": Tape(paint_front, _UPPER, _along(AT.side_neck, AT.shoulder_tip),
        WORDS("mistake_shoulder_length")),
    "neck_to_bust_point": Tape(paint_front, _UPPER,
        _along(AT.side_neck, 7.4 + 25j, _BUST),
        WORDS("mistake_neck_to_bust_point")),
    "bust_point_width": Tape(paint_front, _UPPER, _along(-_BUST.conjugate(), _BUST),
        WORDS("mistake_bust_point_width")),
    "front_waist_length": Tape(paint_front, _UPPER,
        _along(AT.side_neck, 7.4 + 25j, _BUST, 8.1 + 7j, _WAIST_UNDER_BUST, levels=((AT.waist, 12.3),)),
        WORDS("mistake_front_waist_length")),
    "back_waist_length": Tape(paint_back, _UPPER, _along(AT.back_neck, complex(0, AT.waist), levels=((AT.waist, 12.3),)),
        WORDS("mistake_back_waist_length")),
    "armscye_depth": Tape(paint_back, _UPPER, _along(AT.back_neck, 18.4j, levels=((18.4, 15.6),)),
        WORDS("mistake_armscye_depth")),
    "across_front_width": Tape(paint_front, _UPPER, _along(-15.2 + 22.6j, 15.2 + 22.6j),
        WORDS("mistake_across_front_width")),
    "across_back_width": Tape(paint_back, _UPPER, _along(-15.6 + 22.6j, 15.6 + 22.6j),
        WORDS("mistake_across_back_width")),
    "waist_to_hip": Tape(paint_front, _LOWER,
        _along(12.3 + 0j, 12.6 - 2.4j, 15.2 - 9j, 17.9 + AT.hip * 1j, levels=((AT.waist, 12.3), (AT.hip, 17.9))),
        WORDS("mistake_waist_to_hip")),
    "high_bust_girth": Tape(paint_front, _UPPER, _round(19.6, 15.6),
        WORDS("mistake_high_bust_girth")),
    "bust_point_to_fold": Tape(paint_front, _UPPER,
        _along(_BUST, complex(_BUST.real + 0.3, _BUST.imag - 3), complex(_BUST.real - 0.2, AT.underbust)),
        WORDS("mistake_bust_point_to_fold")),
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

    return Sheet(complex(left, bottom), complex(right, top), one.label.capitalize(), one.meaning.capitalize(), paint, SCALE)


_HEADS = ("", WORDS("head_measurement"), WORDS("head_how"), WORDS("head_mistake"))


def reference() -> Stored:
    """How each measurement is taken: a drawing, its meaning, the usual mistake, limits and the standard's term."""
    rows, sentences = [], []
    for one in quantities(Measurements):
        mistake = TAPES[one.name].mistake
        more = f" {WORDS('may_be_left_out')}" if one.optional else ""
        meaning = f"{one.meaning[0].upper()}{one.meaning[1:]}.{more}"
        sentences.append(WORDS("taken", measurement=one.label.capitalize(), meaning=one.meaning, more=more, mistake=mistake))
        # Styles in the cells, for in a stored page nothing else is allowed to set them.
        standard = f"<br><small>{escape(one.standard)}</small>" if one.standard else ""
        rows.append(
            f'<tr><td style="width:150px">{svg_image(svg_text(tape_sheet(one.name)))}</td>'
            f'<th scope="row" style="text-align:left;font-weight:normal"><b>{one.label.capitalize()}</b>{standard}</th>'
            f'<td style="text-align:left">{escape(meaning)}<br><small>{escape(one.allowed)}</small></td>'
            f'<td style="text-align:left">{escape(mistake)}</td></tr>'
        )
    heads = "".join(f'<th scope="col" style="text-align:left">{head}</th>' for head in _HEADS)
    return Stored(
        "<table><caption>"
        f"{escape(WORDS('caption'))}</caption><thead><tr>{heads}</tr></thead><tbody>{''.join(rows)}</tbody></table>",
        sentences,
    )
