"""A seam's end drawn large, from inside: the pieces opened out, their allowances pressed, and what sticks out."""

import math

from corsetkit.geometry.curve import Line
from corsetkit.units import say_length
from corsetkit.drawing.canvas import box_area, tick
from corsetkit.showing.lessons.corner_folded import NOTHING, beyond_line, sticking_out
from corsetkit.showing.lessons.covered import covered
from corsetkit.drawing.finished_view import closed
from corsetkit.drawing.hatching import fill
from corsetkit.showing.lessons.key_row import paint_row, row_width
from corsetkit.drawing.lettering import text_width
from corsetkit.drawing.pens import (
    BOARD_TONE,
    CHALK,
    CUT_PAPER,
    GRAPHITE,
    HEADING,
    NAME,
    NEW,
    SEWN,
    SMALL,
    WASTE,
    Pen,
    Tone,
)
from corsetkit.showing.lessons.ready_piece import ALLOWANCE_TONE
from corsetkit.drawing.canvas import Sheet

SEEN = 10.0
"""How wide the two pieces are seen together, cm."""
FLAP_TONE = Tone("flap", "#e3cfa4")
UNDER = Pen("under", 0.3, GRAPHITE, (1.1, 0.8))
CUTTING = Pen("cutting", 0.35, CHALK)
_KEY = ((NEW, "seam's cutting line"), (CUTTING, "other cutting lines"), (SEWN, "sewing line"))
_HIDDEN, _OUT = (UNDER, "lies underneath"), (WASTE, "sticks out")


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
            _paint_flap(canvas, corner, folded[number], plain, {
                "role": "new", "name": f"{seam.name}, allowance on the {corner.piece.name}",
                "length": say_length(corner.width, unit)})
        if beneath:
            canvas.line(beneath, UNDER)
        if out:
            fill(canvas, closed(beyond_line(flaps[0], first)), WASTE)
        tick(canvas, 0j, 1j * size, SEWN)
        names = complex(0, size + 0.35 * scale)
        canvas.words(names - 0.2 * scale, first.piece.name, NAME, "end")
        canvas.words(names + 0.2 * scale, f"{'under it: ' if under else ''}{second.piece.name}", NAME, "start")
        canvas.words(complex(0, foot - 0.25 * scale), f"below: the {first.later}, sewn later", SMALL)
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
    """The points with their distance from the seam shortened to `share` of it; below nought they lie on its other side."""
    return tuple(complex(p.real * share, p.imag) for p in points)


def _strokes(lines, share):
    return tuple(Line(*_across(one, share)) for one in lines)
