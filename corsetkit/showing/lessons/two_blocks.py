"""The block from one set of measurements over the block from another: grey what was, red what is elsewhere now."""

from corsetkit.geometry.paths import flattened, run_length
from corsetkit.units import say_length
from corsetkit.drawing.canvas import box_area, tick
from corsetkit.drawing.name_places import Clutter
from corsetkit.showing.lessons.key_row import paint_row, row_width
from corsetkit.drawing.lettering import around, text_width
from corsetkit.showing.lessons.moved_lines import lines_of
from corsetkit.drawing.pens import (
    BEFORE,
    BODY,
    CHALK,
    HEADING,
    LINE_WORDS,
    NEW,
    PAPER_TONE,
    SPOT,
    SPOT_TONE,
    SPOT_WORDS,
    Pen,
)
from corsetkit.drawing.canvas import Sheet

SCALE = 5.0
CAME_ALONG = Pen("came-along", 0.4, CHALK, (1.9, 1.0))
"""A line that lies elsewhere in the same shape."""
KEY = ((BEFORE, "as measured"), (NEW, "drawn anew"), (CAME_ALONG, "came along, same shape"))

_SEWN = {"front shoulder": ("shoulder", 1), "back shoulder": ("shoulder", 2),
         "front side seam": ("side seam", 1), "back side seam": ("side seam", 2)}
"""The seams of the block: each line's seam and its side of it."""
_MARGIN = 2.4
_CLEAR = 0.65
"""How far from the centre to the waist dart's own line a level's name may stand, as a share."""
_ROOM_ABOVE = 4.5
"""Paper kept above the block for lines that move up, so that the drawing stands still while they do."""


def two_blocks(title, before, lines, unit, description):
    """The sheet of the `Block` `before` and, over it, what of another lies elsewhere; `lines` are its `Compared`."""
    old = {name: run for word in ("front", "back") for name, run in lines_of(before, word).items()}
    points = [p for run in old.values() if run for p in flattened(run, 0.05)]
    left, bottom, right, top = around([(p.real, p.imag, p.real, p.imag) for p in points])
    row, head = 0.62 * SCALE, 1.1 * SCALE
    wide = max(right - left + 2 * _MARGIN, row_width(KEY, SCALE) + _MARGIN, text_width(title, HEADING, SCALE) + 2 * _MARGIN)
    spare = (wide - (right - left)) / 2
    ceiling = top + _ROOM_ABOVE
    low, high = complex(left - spare, bottom - _MARGIN - row), complex(right + spare, ceiling + head)
    clutter = Clutter((low.real + 0.5, bottom - _MARGIN + 0.2, high.real - 0.5, ceiling), SCALE)
    for run in old.values():
        if run:
            clutter.draw(flattened(run, 0.05))
    moved = [line for line in lines if line.differing]
    for line in moved:
        clutter.draw(flattened(line.after, 0.05), 3)
    places = []
    for line in moved:
        if line.name == "bust point":
            clutter.dot(line.after[0].end)
            places.append(clutter.beside(line.after[0].end, line.name, SPOT_WORDS))
    # A written name needs its line whole: of a line that stays in part, only the rest is named.
    places += [clutter.along(flattened(_longest(line.differing), 0.05), _written(line), LINE_WORDS)
               for line in moved if line.name != "bust point"]
    levels = tuple(_levels(before))
    # Towards the side the dart's leg lies on the bust line, so its name stands near the centre, well before the waist dart.
    places += [clutter.along((start, complex(_CLEAR * before.front.dart_axis, start.imag)), name, LINE_WORDS)
               for name, (start, _) in levels if name]

    def paint(canvas):
        box_area(canvas, (low.real, low.imag, high.real, high.imag), PAPER_TONE)
        canvas.words(complex(low.real + _MARGIN, high.imag - 0.85 * SCALE), title, HEADING, "start")
        for _, line in levels:
            tick(canvas, *line, BODY)
        for name, run in old.items():
            if run and name != "bust point":
                canvas.line(run, BEFORE, _facts("before", name, ", as measured", run, unit))
        for line in moved:
            if line.name == "bust point":
                canvas.dot(line.after[0].end, 0.75, SPOT_TONE, SPOT)
            else:
                pen = CAME_ALONG if line.came_along else NEW
                canvas.line(line.differing, pen, _facts("new", line.name, "", line.after, unit))
        for place in places:
            if place:
                canvas.words(*place)
        paint_row(canvas, complex(low.real + _MARGIN, low.imag + 0.55 * row), KEY)

    return Sheet(low, high, title, description, paint, SCALE)


def _levels(block):
    """The body's levels on both halves: (name, (start, end)), each name once."""
    for half, names in ((block.front, ("waist", "bust")), (block.back, ("", ""))):
        bust = 1j * half.bust_level
        lines = (half.waist_centre, half.waist_side), (half.waist_centre.real + bust, half.underarm.real + bust)
        yield from zip(names, lines)


def _written(line):
    """A line's name as it is written beside it: which half it belongs to is seen."""
    return line.name.removeprefix(f"{line.half} ")


def _longest(curves):
    return (max(curves, key=lambda curve: curve.length),)


def _facts(role, name, more, run, unit):
    facts = {"role": role, "name": name + more, "length": say_length(run_length(run), unit)}
    if name in _SEWN:
        # As measured and as moved are two blocks: their seams are sewn within each.
        facts |= {"seam": f"{_SEWN[name][0]}{more}", "side": _SEWN[name][1]}
    return facts
