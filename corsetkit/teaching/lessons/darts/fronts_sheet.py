"""The front's four parts laid on the board, turned, once or side by side; and where wanted the chart of their angles."""

import math
from dataclasses import dataclass

from corsetkit.drawing.canvas import Sheet, box_area
from corsetkit.drawing.lettering import CAPITALS, around, text_width
from corsetkit.drawing.name_places import Clutter
from corsetkit.drawing.pens import (
    BEFORE,
    BOARD_TONE,
    BODY,
    CUT_PAPER,
    FREE,
    HEADING,
    LINE_WORDS,
    NEW,
    SEWN,
    SPOT,
    SPOT_TONE,
    SPOT_WORDS,
    THREAD,
    Pen,
)
from corsetkit.geometry.curve import Line
from corsetkit.geometry.move import slid
from corsetkit.geometry.paths import flattened, moved, path_length
from corsetkit.geometry.points import direction, heading
from corsetkit.teaching.lessons.darts.front_parts import DARTS, HIGH, WIDE, degrees, paint_chart
from corsetkit.teaching.shared.close_up import paint_row, row_width
from corsetkit.teaching.shared.laid_paper import SHADOW
from corsetkit.units import say_length
from corsetkit.words import words_of

WORDS = words_of("04_darts")
SHARED = words_of("shared")

SEEN = 20.0
"""How wide the drawing is seen, cm."""
MEASURE = Pen("measure", 0.4, THREAD, (1.6, 1.0))
"""A straight distance that is spoken of."""
_THICK = 0.07
_CLEAR = 0.09
"""How far a dart's degrees keep from its legs, cm as seen."""
_NUMBER_AT = tuple(3.0 + 0.5 * number for number in range(20))
"""How far from the bust point a dart's degrees are written, cm: where they first have room between the straight legs."""


@dataclass(frozen=True)
class Laying:
    """One front as it lies: the parts' moves, a caption above it, and marks with names; `numbers` whether its darts' degrees
    are written between their legs, `guides` straight strokes to be shown on it."""

    moves: tuple
    caption: str = ""
    spots: tuple = ()
    numbers: bool = True
    guides: tuple = ()


def frame_of(front, many):
    """The box that holds the front's parts moved by each of `many` moves."""
    return around([(p.real, p.imag, p.real, p.imag) for moves in many for path in front.moved_points(moves) for p in path])


def fronts_sheet(title, front, layings, frame, unit, description, chart=False):
    """The sheet of `Laying`s side by side, each in its own `frame` (left, bottom, right, top), which stands still.

    With `chart` the angles of the last one stand beside it.
    """
    left, bottom, right, top = frame
    items = [(NEW, "turned"), (BEFORE, WORDS("line_key_before")), (SEWN, SHARED("underbust_line"))]
    # The chart's width counts in centimetres as seen, the paper's in its own.
    scale = (len(layings) * (right - left + 2.0)) / (SEEN - (WIDE + 1.0) * chart)
    pitch = right - left + 1.0 * scale / 2
    head, caption = 1.2 * scale, 0.7 * scale if any(one.caption for one in layings) else 0.0
    spare = max(0.0, HIGH * scale - (top - bottom)) / 2 if chart else 0.0
    wide = len(layings) * pitch + (WIDE + 0.6) * scale * chart
    wide = max(wide, row_width(items, scale), text_width(title, HEADING, scale))
    low = complex(left - 0.5 * scale, bottom - spare - 1.2 * scale)
    high = complex(left + wide + 0.3 * scale, top + spare + head + caption)
    steps = [number * pitch for number in range(len(layings))]
    written = [
        _written(front, one, step, (low.real, low.imag + 0.8 * scale, high.real, top + 0.2 * scale), scale)
        for one, step in zip(layings, steps)
    ]

    def paint(canvas):
        box_area(canvas, (low.real, low.imag, high.real, high.imag), BOARD_TONE)
        canvas.words(complex(low.real + 0.4 * scale, high.imag - 0.8 * scale), title, HEADING, "start")
        for one, step, places in zip(layings, steps, written):
            if one.caption:
                canvas.words(complex(left + step, top + 0.35 * scale), one.caption, SPOT_WORDS, "start")
            _paint_front(canvas, front, one, step, unit, tuple(places))
        if chart:
            corner = complex(left + len(layings) * pitch + 0.3 * scale, top + spare)
            paint_chart(canvas, corner, front, layings[-1].moves)
        paint_row(canvas, complex(low.real + 0.4 * scale, low.imag + 0.45 * scale), items)

    return Sheet(low, high, title, description, paint, scale)


def _paint_front(canvas, front, laying, step, unit, places):
    at = [move.then(slid(step)) for move in laying.moves]
    turned = [move.turn != 1 for move in laying.moves]
    order = sorted(range(4), key=lambda number: turned[number])
    with canvas.group("front", {"name": laying.caption}):
        for number in order:
            outline = moved(front.parts[number].outline, at[number])
            canvas.area(moved(outline, slid(complex(1, -1) * _THICK * canvas.scale)), SHADOW)
            canvas.area(outline, CUT_PAPER)
        for number in order:
            if turned[number]:
                canvas.line(moved(front.parts[number].outline, slid(step)), BEFORE)
        for number in order:
            part = front.parts[number]
            for border in part.borders:
                pen = BODY if border.name == "waist" and not turned[number] else NEW if turned[number] else FREE
                canvas.line(moved(border.path, at[number]), pen, _facts(front, border, unit, step, turned[number]))
            canvas.line(
                moved(part.underbust, at[number]),
                SEWN,
                {"role": "before", "name": SHARED("underbust_line"), "length": say_length(path_length(part.underbust), unit)},
            )
        for start, end in laying.guides:
            canvas.line((Line(start + step, end + step),), MEASURE)
        for spot in laying.spots:
            canvas.dot(spot.point + step, 0.75, SPOT_TONE, SPOT)
        for place in places:
            canvas.words(*place)


def _facts(front, border, unit, step, turned):
    """What is told of a border; the two legs of a dart name each other. Each front on the sheet keeps its seams its own."""
    facts = {"role": "new" if turned else "before", "name": border.name, "length": say_length(path_length(border.path), unit)}
    if border.dart is not None:
        legs = [one for part in front.parts for one in part.borders if one.dart == border.dart]
        side = legs.index(border)
        facts |= {
            "seam": f"{DARTS[border.dart]} {step:.0f}" if step else DARTS[border.dart],
            "side": side + 1,
            "partner": legs[1 - side].name,
        }
    return facts


def _written(front, laying, step, box, scale):
    """Where the darts' degrees and the marks' names stand."""
    clutter = Clutter(box, scale)
    for part, move in zip(front.parts, laying.moves):
        if move.turn != 1:
            clutter.draw([p + step for p in part.points])
        clutter.draw([move(p) + step for p in part.points], 2)
        clutter.draw([move(p) + step for p in flattened(part.underbust, 0.1)], 2)
    for spot in laying.spots:
        clutter.dot(spot.point + step)
    places = []
    if laying.numbers:
        for number, angle in enumerate(front.darts(laying.moves)):
            at = _between_legs(front, laying.moves, number, angle, scale)
            if at is not None:
                places.append(clutter.on(at + step, degrees(angle), LINE_WORDS))
    places += [clutter.beside(spot.point + step, spot.name, SPOT_WORDS) for spot in laying.spots if spot.name]
    return [place for place in places if place]


def _between_legs(front, moves, number, angle, scale):
    """Where a dart's degrees first have room between its legs and clear of where they lay before; None where nowhere.

    All these legs are rays from the bust point, so the text has room where its corners' headings lie between two of them.
    """
    here, there = front.parts[number], front.parts[(number + 1) % 4]
    start = heading(moves[number].turn * here.legs[1])
    before = [(heading(leg) - start) % 360 for leg in (here.legs[1], there.legs[0])]
    rays = sorted([0.0, angle, *(one for one in before if 0.1 < one < angle - 0.1)])
    low, high = max(zip(rays, rays[1:]), key=lambda pair: pair[1] - pair[0])
    middle = direction(start + (low + high) / 2)
    half = complex(text_width(degrees(angle), LINE_WORDS, scale) / 2, CAPITALS * LINE_WORDS.size * scale / 20)
    corners = (half, half.conjugate(), -half, -half.conjugate())
    shortest = min(abs(here.legs[1]), abs(there.legs[0])) - abs(half)
    for reach in (one for one in _NUMBER_AT if one < shortest):
        spread = max(abs(heading((middle * reach + corner) / middle)) for corner in corners)
        if spread + math.degrees(_CLEAR * scale / reach) < (high - low) / 2:
            return front.point + middle * reach
    return None
