"""A drafting step as it is drawn on the block, and as it is drawn by hand with its marks numbered."""

from corsetkit.drawing.canvas import Sheet, box_area, tick
from corsetkit.drawing.hatching import fill
from corsetkit.drawing.lettering import around, text_box, text_width
from corsetkit.drawing.name_places import Clutter
from corsetkit.drawing.pens import (
    BEFORE,
    BODY,
    CUT_AWAY,
    GHOST,
    GRID,
    GUIDE,
    HEADING,
    LEADER,
    LINE_WORDS,
    NEW,
    PAPER_TONE,
    SMALL,
    SPOT,
    SPOT_TONE,
    SPOT_WORDS,
    WASTE,
)
from corsetkit.drawing.step_values import Drawn, Spot, seams_of
from corsetkit.geometry.curve import Line
from corsetkit.geometry.paths import flattened, path_length
from corsetkit.units import CM_PER_INCH, say_length

SCALE = 4.5
"""Of the block's centimetres, how many are meant to be seen as one: letters can be read where the whole of it is on a
laptop's screen."""

SEEN = 12.0
"""How high a window on the drawing is meant to be seen, cm."""

PENS = {"waste": CUT_AWAY, "body": BODY, "guide": GUIDE, "before": BEFORE, "ghost": GHOST, "new": NEW}
"""What a line can be in a step, in the order in which they are laid: the newest lies on top."""

_NAMED = ("new", "waste", "body", "guide")
"""Whose names are written, the most needed first: lines that were there before were named in their own step."""

_LEGEND = ("new", "ghost", "before", "guide", "waste", "body")
"""What the legend says, in its order."""

_MARGIN = 2.4
_SIDE = 4.6
"""Paper left of and right of the block, for names that stand beside its outermost marks."""
_SAID = {
    "before": "drawn before",
    "ghost": "as it starts",
    "new": "this step",
    "guide": "guide",
    "waste": "cut away",
    "body": "the body's levels",
}


def step_sheet(title, drawn, spots=(), unit="in", description="", scale=SCALE, window=None):
    """The step's sheet; lengths are said in `unit`. Names that find no clear place are told but not written.

    A `window` (left, bottom, right, top), cm, shows that much of the drawing and nothing beyond it, as large as it can.
    """
    polylines = [flattened(line.path, 0.05) for line in drawn]
    points = [p for line in polylines for p in line] + [spot.point for spot in spots]
    left, bottom, right, top = window or around([(p.real, p.imag, p.real, p.imag) for p in points])
    if window:
        scale = (top - bottom) / SEEN
    roles = [role for role in _LEGEND if any(one.role == role for one in drawn)]
    head = 1.1 * scale
    grid = 5.0 if unit == "cm" else 2 * CM_PER_INCH
    ruled = f"squares of {say_length(grid, unit)}"
    # A window may be wider than high, as its place on the page is.
    room = max(right - left, 1.7 * (top - bottom)) - 2 * _MARGIN if window else None
    # A window keeps its size once a slider has moved, and a line shows where the moved ones began.
    longest = _legend_rows([one for one in _LEGEND if one in roles or (window and one == "ghost")], ruled, room, scale)
    wording = max(sum(width for _, width in one) for one in longest)
    legend = _legend_rows(roles, ruled, wording if window else None, scale)
    row = 0.62 * scale * len(longest)
    # Text may stand beyond the drawn lines, so a border is left for it; the heading may be wider than the block.
    wide = max(right - left, text_width(title, HEADING, scale), wording + (2 * _MARGIN if window else 0.0))
    spare = wide - (right - left)
    # A window has its room for words beside the drawing, towards the other half.
    before, after = (0.0, spare) if window else (spare / 2 + _SIDE, spare / 2 + _SIDE)
    low, high = complex(left - before, bottom - _MARGIN - row), complex(right + after, top + _MARGIN + head)
    clutter = Clutter((low.real, bottom - _MARGIN, high.real, top + _MARGIN), scale)
    for line, path in zip(drawn, polylines):
        clutter.draw(path, 3 if line.role == "new" else 1)
    for spot in spots:
        clutter.dot(spot.point)
    names = [clutter.beside(spot.point, spot.name, SPOT_WORDS) if spot.name else None for spot in spots]
    seams = seams_of(drawn)
    lines = [
        _beside(clutter, line, path, seams)
        for role in _NAMED
        for line, path in zip(drawn, polylines)
        if line.role == role and line.written
    ]

    def paint(canvas):
        box_area(canvas, (low.real, low.imag, high.real, high.imag), PAPER_TONE)
        _grid(canvas, (low.real, bottom - _MARGIN, high.real, top + _MARGIN), grid)
        for role, pen in PENS.items():
            for line in drawn:
                if line.role == role:
                    if role == "waste":
                        fill(canvas, line.path, WASTE)
                    canvas.line(line.path, pen, _facts(line, unit, seams))
        for spot in spots:
            canvas.dot(spot.point, 0.75 if spot.role == "new" else 0.5, SPOT_TONE if spot.role == "new" else PAPER_TONE, SPOT)
        for spot, place in zip(spots, names):
            _lead(canvas, spot.point, place)
        for place in (*names, *lines):
            if place:
                canvas.words(*place)
        if window:
            # What runs on beyond the window ends under the strips for heading and legend.
            box_area(canvas, (low.real, top + _MARGIN, high.real, high.imag), PAPER_TONE)
            box_area(canvas, (low.real, low.imag, high.real, bottom - _MARGIN), PAPER_TONE)
        canvas.words(complex(low.real + _MARGIN, high.imag - 0.85 * scale), title, HEADING, "start")
        with canvas.group("legend"):
            for number, one in enumerate(legend):
                _legend(canvas, complex(low.real + _MARGIN, low.imag + row - (number + 0.45) * 0.62 * scale), one)

    return Sheet(low, high, title, description or _description(title, drawn, unit), paint, scale, bool(window))


def _beside(clutter, line, polyline, seams):
    """Where the line's name goes: beside it, or beside its partner where only that has room and no name of its own."""
    place = clutter.along(polyline, line.written, LINE_WORDS)
    if not place and id(line.pair) in seams:
        for other in seams[id(line.pair)][1][3 - line.side]:
            if not other.written and not place:
                place = clutter.along(flattened(other.path, 0.05), line.written, LINE_WORDS)
    return place


def _lead(canvas, point, place):
    """A thin line from a mark to its name, where other words kept the name away from it."""
    if place:
        left, bottom, right, top = text_box(*place, 0.0, canvas.scale)
        nearest = complex(min(max(point.real, left), right), min(max(point.imag, bottom), top))
        if abs(nearest - point) > 0.5 * canvas.scale:
            tick(canvas, point, nearest, LEADER)


def _length(line, unit):
    return say_length(path_length(line.path), unit)


def _facts(line, unit, seams):
    facts = {"role": line.role, "name": line.name, "length": _length(line, unit)}
    if line.pair and id(line.pair) in seams:
        number, sides = seams[id(line.pair)]
        facts |= {"seam": number, "side": line.side, "partner": "; ".join(other.name for other in sides[3 - line.side])}
    return facts


def _grid(canvas, box, side):
    """Faint squares from zero, so that distances can be judged by eye."""
    left, bottom, right, top = box
    strokes = [
        Line(complex(side * i, bottom), complex(side * i, top)) for i in range(int(left // side) + 1, int(right // side) + 1)
    ]
    strokes += [
        Line(complex(left, side * i), complex(right, side * i)) for i in range(int(bottom // side) + 1, int(top // side) + 1)
    ]
    canvas.line(tuple(strokes), GRID)


def _legend_rows(roles, ruled, room, scale):
    """What the legend says, in rows no wider than `room` (one row where it is None): (role, width), the ruling last.

    The ruling has no role but its own words.
    """
    said = [(role, (1.1 + 0.3 + 0.6) * scale + text_width(_SAID[role], SMALL, scale)) for role in roles]
    said.append((ruled, text_width(ruled, SMALL, scale)))
    rows, used = [[]], 0.0
    for one in said:
        if room is not None and rows[-1] and used + one[1] > room:
            rows.append([])
            used = 0.0
        rows[-1].append(one)
        used += one[1]
    return rows


def _legend(canvas, at, row):
    """One row of the legend, from `at` to the right."""
    scale = canvas.scale
    down = -0.36j * SMALL.size * scale / 10
    for role, width in row:
        if role not in PENS:
            canvas.words(at + down, role, SMALL, "start")
            continue
        if role == "waste":
            half = 0.2j * scale
            patch = (
                Line(at - half, at + 1.1 * scale - half),
                Line(at + 1.1 * scale - half, at + 1.1 * scale + half),
                Line(at + 1.1 * scale + half, at + half),
                Line(at + half, at - half),
            )
            fill(canvas, patch, WASTE)
            canvas.line(patch, CUT_AWAY)
        else:
            tick(canvas, at, at + 1.1 * scale, PENS[role])
        canvas.words(at + 1.4 * scale + down, _SAID[role], SMALL, "start")
        at += width


def _description(title, drawn, unit):
    """The step in words: what is new, with lengths; lines that are sewn to each other are told together."""
    new = [line for line in drawn if line.role == "new" and line.name]
    seams, told = seams_of(new), {}
    for line in new:
        if id(line.pair) in seams:
            told[id(line.pair)] = _both(line.pair, seams[id(line.pair)][1], unit)
        else:
            told[id(line)] = f"{line.name} {_length(line, unit)}"
    return f"{title}. New in this step: {'; '.join(told.values())}." if told else f"{title}."


def _both(pair, sides, unit):
    (first, one), (second, other) = (
        (word, "; ".join(_length(line, unit) for line in sides[side])) for side, word in enumerate(pair.sides, 1)
    )
    if one == other:
        return f"{pair.name}, {first} and {second}, {one} each"
    return f"{pair.name}, {first} {one} and {second} {other}"


HAND_SCALE = 3.0
"""As large as a page shows it: the numbers are few and stand beside their marks."""


def hand_sheet(made, numbers, unit="in", title="By hand", scale=HAND_SCALE):
    """The sheet of the last step of `made`.

    Args:
        made: a list of `ByHand`s, one for each step from the first; the last is the one that is drawn now.
        numbers: for each of its marks that is written, the number beside it: a dict from the mark's name.
        unit: "in" or "cm". title: the heading. scale: how many centimetres are seen as one.
    """
    *before, now = made
    drawn = [Drawn(path, "before") for step in before for _, path in step.lines]
    drawn += [Drawn(path, "new") for _, path in now.lines]
    spots = [Spot(mark.point, str(numbers[mark.name])) for mark in now.marks if mark.name in numbers]
    # Helpers of curves: where they lie shows, but their numbers would hide the rest.
    spots += [Spot(mark.point, "", "before") for mark in now.marks if mark.name not in numbers]
    told = "; ".join(f"{numbers[mark.name]} {mark.name}" for mark in now.marks if mark.name in numbers)
    return step_sheet(title, drawn, spots, unit, f"{title}. Each number is the move that makes the mark: {told}.", scale)
