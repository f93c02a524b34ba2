"""A seam's end drawn large, from inside: the allowances pressed, what is covered, and what is said of it."""

import math
from dataclasses import dataclass

from corsetkit.drawing.canvas import Sheet, box_area, tick
from corsetkit.drawing.finished_view import closed
from corsetkit.drawing.hatching import fill
from corsetkit.drawing.lettering import text_width
from corsetkit.drawing.pens import BOARD_TONE, CHALK, CUT_PAPER, GRAPHITE, HEADING, NAME, NEW, SEWN, SMALL, WASTE, Pen, Tone
from corsetkit.drawing.svg import svg_text
from corsetkit.geometry.curve import Line
from corsetkit.geometry.points import dot
from corsetkit.quantity import declared, quantities
from corsetkit.teaching.lessons.finish.corner_folded import MANY, NOTHING, beyond_line, seam_corners, sticking_out
from corsetkit.teaching.lessons.finish.ready import ALLOWANCE_TONE
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.shared.close_up import paint_row, row_width
from corsetkit.teaching.shared.finished_drafts import Finishing, choices_in
from corsetkit.units import Say, say_length, say_number
from corsetkit.words import words_of

WORDS = words_of("08_finish")

_CLEAR = 0.04
"""What comes nearer to the border than this, cm, is seen as the border itself."""
_STEP = 0.05


def covered(strokes, points):
    """The parts of straight `strokes` that lie inside the closed polyline of `points` and clear of its border."""
    for stroke in strokes:
        count = max(1, round(abs(stroke.end - stroke.start) / _STEP))
        for i in range(count):
            a, b = (stroke.start + (stroke.end - stroke.start) * (i + more) / count for more in (0, 1))
            if _inside((a + b) / 2, points):
                yield Line(a, b)


def _inside(place, points):
    within = False
    for a, b in zip(points, (*points[1:], points[0])):
        if a == b:
            continue
        share = min(max(dot(place - a, b - a) / abs(b - a) ** 2, 0.0), 1.0)
        if abs(a + (b - a) * share - place) < _CLEAR:
            return False
        if (a.imag > place.imag) != (b.imag > place.imag):
            within ^= place.real < a.real + (b.real - a.real) * (place.imag - a.imag) / (b.imag - a.imag)
    return within


SEEN = 10.0
"""How wide the two pieces are seen together, cm."""
FLAP_TONE = Tone("flap", "#e3cfa4")
UNDER = Pen("under", 0.3, GRAPHITE, (1.1, 0.8))
CUTTING = Pen("cutting", 0.35, CHALK)
_KEY = ((NEW, WORDS("key_seam_cut")), (CUTTING, WORDS("key_others_cut")), (SEWN, WORDS("sewing_line")))
_HIDDEN, _OUT = (UNDER, WORDS("key_underneath")), (WASTE, WORDS("key_out"))


def corner_sheet(corners, seam, opened, pressed, plain, unit, title, description):
    """The sheet of the two `SeamCorner`s of a `seam`'s end.

    `opened` is how far the second piece is swung from under the first, `pressed` how far each allowance is pressed over to
    the first piece's side, degrees. `plain` shows the allowances with both cutting lines carried on to where they meet.
    """
    size = corners[0].seen
    scale = 2 * size / SEEN
    swing, *folded = (math.cos(math.radians(one)) for one in (opened, *pressed))
    flaps = [_across(one.plain if plain else one.flap, share) for one, share in zip(corners, folded)]
    foot = min(0.0, *(p.imag for flap in flaps for p in flap), *(p.imag for one in corners for p in one.body)) - 0.5 * scale
    foot = min(foot, -2.2 * max(max(one.width, one.later_width) for one in corners))
    wide = max(2 * size, row_width(_KEY, scale), text_width(title, HEADING, scale)) + 0.8 * scale
    low, high = complex(-wide / 2, foot - 1.75 * scale), complex(wide / 2, size + 2.1 * scale)
    first, second = corners
    under = swing > 0.0
    # Pressed to one side the second allowance lies on the first, as it lay under it before.
    lower, upper = (0, 1) if max(folded) < 0 else (1, 0)
    hidden = tuple(_hidden(first, second, swing)) if under else ()
    beneath = ()
    if folded[0] * folded[1] > 0:
        beneath = tuple(covered(_strokes(_border(corners[lower], plain), folded[lower]), flaps[upper]))
    out = plain and folded[0] < -0.99 and sticking_out(flaps[0], first) > NOTHING
    further = (*([_HIDDEN] if hidden or beneath else []), *([_OUT] if out else []))

    def paint(canvas):
        box_area(canvas, (low.real, low.imag, high.real, high.imag), BOARD_TONE)
        canvas.words(complex(low.real + 0.4 * scale, high.imag - 0.8 * scale), title, HEADING, "start")
        _paint_piece(canvas, second, swing)
        _paint_piece(canvas, first, 1.0)
        if hidden:
            canvas.line(hidden, UNDER)
        for number in (lower, upper):
            corner = corners[number]
            _paint_flap(
                canvas,
                corner,
                folded[number],
                plain,
                {
                    "role": "new",
                    "name": WORDS("allowance_on", seam=seam.name, piece=corner.piece.name),
                    "length": say_length(corner.width, unit),
                },
            )
        if beneath:
            canvas.line(beneath, UNDER)
        if out:
            fill(canvas, closed(beyond_line(flaps[0], first)), WASTE)
        tick(canvas, 0j, 1j * size, SEWN)
        names = complex(0, size + 0.35 * scale)
        canvas.words(names - 0.2 * scale, first.piece.name, NAME, "end")
        beside = WORDS("under_it", piece=second.piece.name) if under else second.piece.name
        canvas.words(names + 0.2 * scale, beside, NAME, "start")
        canvas.words(complex(0, foot - 0.25 * scale), WORDS("below", later=first.later), SMALL)
        for level, key in ((1.0, _KEY), (0.4, further)):
            paint_row(canvas, complex(low.real + 0.4 * scale, low.imag + level * scale), key)

    return Sheet(low, high, title, description, paint, scale)


def _paint_piece(canvas, corner, swing):
    _, cut, sewn = corner.lines
    with canvas.group("piece", {"name": corner.piece.name}):
        canvas.area(closed(_across(corner.body, swing)), ALLOWANCE_TONE)
        canvas.area(closed(_across(corner.sewn, swing)), CUT_PAPER)
        for lines, pen in ((sewn, SEWN), (cut, CUTTING)):
            canvas.line(_strokes(lines, swing), pen)


def _paint_flap(canvas, corner, share, plain, facts):
    if abs(share) > 0.01:
        canvas.area(closed(_across(corner.plain if plain else corner.flap, share)), FLAP_TONE)
    canvas.line(_strokes(_border(corner, plain), share), NEW, facts)


def _border(corner, plain):
    """The allowance's own stretches of the cutting line, as (point, point)."""
    return tuple(zip(corner.plain[:3], corner.plain[1:3])) if plain else corner.lines[0]


def _hidden(first, second, swing):
    """What of the second piece's lines the first piece covers."""
    for lines in second.lines[1:]:
        yield from covered(_strokes(lines, swing), first.body)


def _across(points, share):
    """The points with their distance from the seam shortened to `share` of it; below zero they lie on its other side."""
    return tuple(complex(p.real * share, p.imag) for p in points)


def _strokes(lines, share):
    return tuple(Line(*_across(one, share)) for one in lines)


@dataclass(frozen=True)
class Pressed:
    """How the two pieces and their allowances lie."""

    opened: float = declared(WORDS("opened_control"), unit="degrees", low=0, high=180, step=5, default=0)
    first_allowance: float = declared(WORDS("first_allowance_control"), unit="degrees", low=0, high=180, step=5, default=0)
    second_allowance: float = declared(WORDS("second_allowance_control"), unit="degrees", low=0, high=180, step=5, default=0)
    seam_end: int = declared(WORDS("seam_end_control"), unit="count", low=1, high=MANY, step=1, default=1)
    plain_corner: bool = declared(WORDS("plain_corner_control"), unit="yes or no", default=False)


class Corners:
    """The seam ends of the drafts' wearer, found anew only where her pattern or an allowance is another."""

    def __init__(self, drafts: Finishing):
        self.drafts = drafts
        self._asked: tuple | None = None
        self._found: tuple = ()

    def picture(self, values: dict) -> Picture:
        """The picture for values of style, finish and `Pressed`."""
        lie = Pressed(**{one.name: values[one.name] for one in quantities(Pressed) if one.name in values})
        (name, pattern), choices = self.drafts.pattern(values), choices_in(values)
        if self._asked is None or self._asked[0] is not pattern or self._asked[1] != choices:
            self._asked, self._found = (pattern, choices), seam_corners(pattern, choices)
        words, seam, corners = self._found[min(lie.seam_end, len(self._found)) - 1]
        unit = self.drafts.desk.record.unit
        told = tuple(_said(words, corners, lie, unit))
        title = WORDS("corners_title", corner=words[:1].upper() + words[1:], name=name)
        # Seen from inside the second one's lies below: what swings it over swings the first one's before it.
        pressed = max(lie.first_allowance, lie.second_allowance), lie.second_allowance
        sheet = corner_sheet(
            corners, seam, lie.opened, pressed, lie.plain_corner, unit, title, WORDS("described", title=title, told=told[0])
        )
        return Picture(svg_text(sheet), sheet.description, told)


def _said(words, corners, lie, unit):
    say = Say(unit)
    first, second = corners
    yield WORDS(
        "corners_angles",
        first=first.piece.name,
        first_angle=say_number(first.angle, 1),
        second=second.piece.name,
        second_angle=say_number(second.angle, 1),
    )
    yield WORDS("corners_widths", width=say(first.width), later=first.later, later_width=say(first.later_width))
    reach = [one.reach(lie.plain_corner) for one in corners]
    longer, shorter = (first, second) if reach[0] > reach[1] else (second, first)
    if abs(reach[0] - reach[1]) < NOTHING:
        yield WORDS("corners_alike")
    else:
        yield WORDS(
            "corners_not_alike", longer=longer.piece.name, farther=say(abs(reach[0] - reach[1])), shorter=shorter.piece.name
        )
    flap = first.plain if lie.plain_corner else first.flap
    out = sticking_out([complex(-p.real, p.imag) for p in flap], first)
    if out < NOTHING:
        yield WORDS("pressed_within", piece=first.piece.name, later=first.later)
    else:
        yield WORDS("pressed_out", piece=first.piece.name, out=say(out), later=first.later)
