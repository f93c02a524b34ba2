"""What is taken in at one level of the back, as numbers, as bars end to end, and on half the back."""

from dataclasses import dataclass

from corsetkit.drawing.canvas import Sheet, box_area, box_run, tick
from corsetkit.drawing.hatching import fill
from corsetkit.drawing.lettering import CAPITALS, text_width
from corsetkit.drawing.name_places import Clutter
from corsetkit.drawing.pens import (
    BEFORE,
    BODY,
    CUT_AWAY,
    FREE,
    GUIDE,
    HEADING,
    LEADER,
    LINE_WORDS,
    NAME,
    NEW,
    PAPER_TONE,
    RULE,
    SMALL,
    SPOT_WORDS,
    WASTE,
)
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.steps.underbust import level_width
from corsetkit.teaching.shared.close_up import paint_row
from corsetkit.units import CM_PER_INCH, say_length
from corsetkit.words import words_of

WORDS = words_of("07_back")
SHARED = words_of("shared")

TIE = 1e-7
"""Halves of a sixteenth are told upwards, by whatever rounding a length was reached: two equal shares read alike."""
NEAR = 0.16
"""A level this near to the waist, cm, is the waist: half of what the slider moves in."""


@dataclass(frozen=True)
class Taken:
    """One level of half the back, `y` cm above the waist.

    `block_side` and `side` are where it meets the block's side seam and the taken-in one; `legs` where it meets the back
    dart's legs, the one towards the side first, and `block_legs` the block's; both fall together on the dart's line where
    a dart takes nothing. `centre` is where the centre back stands.
    """

    y: float
    block_side: complex
    side: complex
    block_legs: tuple
    legs: tuple
    centre: float

    @property
    def at_side(self):
        """What the side seam takes, cm."""
        return abs(self.side - self.block_side)

    @property
    def in_dart(self):
        """What the back dart takes in all, cm."""
        return abs(self.legs[1] - self.legs[0])

    @property
    def in_block(self):
        """What the block's own dart takes, cm."""
        return abs(self.block_legs[1] - self.block_legs[0])

    @property
    def more_in_dart(self):
        """What the back dart takes beyond the block's, cm; below zero where the block's dart reaches deeper."""
        return self.in_dart - self.in_block

    @property
    def width(self):
        """How wide half the back is left, its dart closed, cm."""
        return abs(self.centre - self.side.real) - self.in_dart

    @property
    def all_round(self):
        """What both halves of the back are narrower than the block's, cm."""
        return 2 * (self.at_side + self.more_in_dart)


def taken_at(back, below_bust):
    """The `Taken` that lies `below_bust` cm below the back's bust level; one within `NEAR` of the waist is the waist.

    Args:
        back: the `Back`. below_bust: from zero down to `lowest(back)`.
    """
    half, waist = back.block.back, back.waist
    y = half.bust_level - min(max(below_bust, 0.0), lowest(back))
    if abs(y) <= NEAR:
        y = 0.0
    sides = [_at(path, y) for path in ((*half.side_waist, *half.side_hip), (*waist.side_waist, *waist.side_hip))]
    return Taken(y, *sides, _legs(half.dart_legs, half.dart_axis, y), _legs(waist.legs, waist.axis, y), half.waist_centre.real)


def lowest(back):
    """How far below the bust level the back's hem lies where it is highest, cm."""
    return back.block.back.bust_level - paths.path_end(back.side_below).imag


def told(cm, unit):
    """A length of what is taken, in words."""
    return say_length(cm + TIE, unit)


def _at(path, y):
    """Where the run meets the level; at the run's ends rounding must not miss it."""
    found = paths.at_level(path, y)
    return min((paths.path_start(path), paths.path_end(path)), key=lambda end: abs(end.imag - y)) if found is None else found


def _legs(legs, axis, y):
    found = [paths.at_level(leg, y) for leg in legs]
    none = complex(axis, y)
    return (none, none) if not found or None in found else tuple(found)


LARGER, SMALLER = 2.0, 0.5
"""How large patches and half waist are drawn beside the back: the ones are narrow, the other is long."""
PLACES = ("left_side", "left_dart", "right_dart", "right_side")
WIDEST = 3 * CM_PER_INCH * LARGER
"""How wide the largest reduction comes out, cm."""

_PATCH, _ROW = 1.6, 2.5
_HIGH = 7 * _ROW + 3.6
"""From the top of the patches to the top of the half waist."""
_TICKS = {"in": (CM_PER_INCH / 2, 2), "cm": (1.0, 5)}
"""From one tick of the tape to the next, cm, and how many ticks to a long one."""


def paint_bars(canvas, corner, back, taken, reduction, waist, unit):
    """Paint all bars with the upper left corner at `corner`: those of a `Taken`, and those of the waist's `Girth`."""
    _paint_patches(canvas, corner, taken, reduction, unit)
    _paint_half_waist(canvas, corner - 1j * _HIGH, back, waist, unit)


def _drop(canvas):
    """From the middle of capitals down to the line they stand on."""
    return CAPITALS / 2 * SPOT_WORDS.size * canvas.scale / 10 * 1j


def _paint_patches(canvas, corner, taken, reduction, unit):
    """What each place takes as a patch, each beginning where the one above it ends; their sum; a tape of the reduction."""
    parts = (taken.at_side, taken.more_in_dart, taken.more_in_dart, taken.at_side)
    drop = _drop(canvas)
    canvas.words(corner, WORDS("bars_taken"), NAME, "start")
    canvas.words(corner - 1.2j, WORDS("bars_taken_more"), SMALL, "start")
    at, start = corner - 2.2j, 0.0
    for place, part in zip(PLACES, parts):
        name = WORDS(f"bar_{place}")
        left, right = sorted((start, start + part * LARGER))
        at -= 1j * _ROW
        patch = box_run(at.real + left, at.imag, at.real + right, at.imag + _PATCH)
        facts = {"role": "new", "name": WORDS("what_bar_takes", place=name), "length": told(part, unit)}
        if abs(part) > 0.02:
            fill(canvas, patch, WASTE)
        canvas.line(patch, CUT_AWAY if part >= 0 else BEFORE, facts)
        words = f"{name} {told(part, unit)}"
        canvas.words(complex(at.real + max(right, start) + 0.6, at.imag + _PATCH / 2) - drop, words, SPOT_WORDS, "start")
        start += part * LARGER
    at -= 1j * (_ROW + 0.5)
    whole = box_run(at.real, at.imag, at.real + max(start, 0.0), at.imag + _PATCH)
    canvas.line(whole, NEW, {"role": "new", "name": WORDS("bars_together"), "length": told(sum(parts), unit)})
    words = f"{WORDS('bars_together')} {told(sum(parts), unit)}"
    canvas.words(complex(at.real + max(start, 0.0) + 0.6, at.imag + _PATCH / 2) - drop, words, NAME, "start")
    _paint_tape(canvas, at - 1j * (_ROW + 0.3), reduction, unit, drop)


def _paint_tape(canvas, at, reduction, unit, drop):
    step, long = _TICKS[unit]
    length = reduction * LARGER
    canvas.line(
        box_run(at.real, at.imag, at.real + length, at.imag + _PATCH),
        RULE,
        {"name": WORDS("bars_reduction"), "length": told(reduction, unit)},
    )
    for i in range(1, int(reduction / step - 1e-9) + 1):
        x = at.real + i * step * LARGER
        tick(canvas, complex(x, at.imag + _PATCH), complex(x, at.imag + _PATCH * (0.35 if i % long == 0 else 0.65)), RULE)
    words = f"{WORDS('bars_reduction')} {told(reduction, unit)}"
    canvas.words(complex(at.real + length + 0.6, at.imag + _PATCH / 2) - drop, words, SPOT_WORDS, "start")


def _paint_half_waist(canvas, corner, back, waist, unit):
    """Half the body's waist as a bar, and below it half the corset: front, side back, centre back, half the gap."""
    half, taken = back.block.back, back.waist
    drop = _drop(canvas)
    legs = sorted((taken.axis - taken.dart / 2, taken.axis + taken.dart / 2))
    side = paths.at_level((*taken.side_waist, *taken.side_hip), 0.0).real
    lacing, centre = back.hem.edge.real, half.waist_centre.real
    widths = (
        ("front", level_width(back.underbust, 0.0)),
        ("side_back", legs[0] - side),
        ("centre_back", lacing - legs[1]),
        ("half_gap", centre - lacing),
    )
    canvas.words(corner, WORDS("half_waist"), NAME, "start")
    canvas.words(corner - 1.2j, WORDS("half_waist_more"), SMALL, "start")
    at = corner - 1j * (2.2 + _ROW)
    length = waist.body / 2
    canvas.line(
        box_run(at.real, at.imag, at.real + length * SMALLER, at.imag + _PATCH),
        BEFORE,
        {"name": WORDS("half_waist_body"), "length": told(length, unit)},
    )
    words = WORDS("half_waist_body_words", length=told(length, unit))
    canvas.words(complex(at.real + length * SMALLER + 0.6, at.imag + _PATCH / 2) - drop, words, SPOT_WORDS, "start")
    at -= 1j * _ROW
    x = at.real
    for name, width in widths:
        cell = box_run(x, at.imag, x + width * SMALLER, at.imag + _PATCH)
        if name == "half_gap":
            fill(canvas, cell, WASTE)
        canvas.line(cell, FREE, {"name": WORDS("half_waist_line", part=WORDS(f"part_{name}")), "length": told(width, unit)})
        _paint_part(canvas, complex(x, at.imag), width * SMALLER, name)
        x += width * SMALLER
    words = WORDS("half_waist_corset_words", length=told(sum(width for _, width in widths), unit))
    canvas.words(complex(x + 0.6, at.imag + _PATCH / 2) - drop, words, NAME, "start")


_PARTS = {
    "front": (0, "middle", 0.5),
    "side_back": (0, "middle", 0.45),
    "centre_back": (1, "middle", 0.65),
    "half_gap": (0, "start", 0.25),
}
"""Each part's name under it: in which row, how it is anchored, and at which share of the part. The narrow parts' names are
wider than they."""


def _paint_part(canvas, corner, width, name):
    row, anchor, share = _PARTS[name]
    at, down = corner + share * width, (0.36 + 0.34 * row) * canvas.scale
    if row:
        foot = corner + share * width
        tick(canvas, foot, foot - 1j * (down - 0.27 * canvas.scale), LEADER)
    canvas.words(at - 1j * down, WORDS(f"part_{name}"), SMALL, anchor)


SCALE = 3.2

_KEY = (
    (BEFORE, WORDS("taken_key_block")),
    (NEW, WORDS("taken_key_new")),
    (WASTE, WORDS("taken_key_cloth")),
    (BODY, WORDS("taken_key_levels")),
    (GUIDE, WORDS("look_level")),
)
_MARGIN = 2.0
_BESIDE_SEAM = 6.0
"""Paper left of the side seam, for what it takes."""
_BESIDE_LACING = 7.2
"""Paper right of the centre back, for its name."""
_BESIDE_BARS = 12.5
"""Room for the words beside a bar."""


def taken_sheet(title, back, taken, reduction, waist, unit, description):
    """The sheet of a `Taken` of the `Back`.

    Args:
        reduction: the waist reduction, cm. waist: the `Girth` at the waist.
    """
    half = back.block.back
    centre, top = half.waist_centre.real, half.underarm.imag + 3.0
    left = min(half.hip_side.real, half.underarm.real) - _BESIDE_SEAM
    bottom, row = back.underbust.hem_level - 1.2, 0.62 * SCALE
    low = complex(left - _MARGIN, bottom - _MARGIN - row)
    column = max(WIDEST, waist.body / 2 * SMALLER) + _BESIDE_BARS
    high = complex(centre + _BESIDE_LACING + column + _MARGIN, top + 1.5 * SCALE)
    clutter = Clutter((left - 0.5, bottom, centre + _BESIDE_LACING - 0.5, top), SCALE)
    lines = tuple(_lines(back, top))
    for path, pen, _ in lines:
        clutter.draw(paths.flattened(path, 0.05), 3 if pen is NEW else 1)
    strokes = [Line(taken.block_side, taken.side), Line(*taken.legs)]
    for stroke in strokes:
        clutter.draw([stroke.start, stroke.end], 3)
    clutter.draw([complex(left, taken.y), complex(centre, taken.y)])
    words = _words(clutter, back, taken, unit, centre)

    def paint(canvas):
        box_area(canvas, (low.real, low.imag, high.real, high.imag), PAPER_TONE)
        canvas.words(complex(low.real + _MARGIN, high.imag - 0.85 * SCALE), title, HEADING, "start")
        for cut in _cloth_taken(back):
            fill(canvas, cut, WASTE)
        for path, pen, name in lines:
            role = {"role": "new"} if pen is NEW else {}
            canvas.line(path, pen, role | {"name": name, "length": told(paths.path_length(path), unit)})
        canvas.line((Line(complex(left, taken.y), complex(centre, taken.y)),), GUIDE, {"name": WORDS("look_level")})
        for stroke, name in zip(strokes, (WORDS("takes_side"), WORDS("takes_dart"))):
            if stroke.length > 1e-6:
                _span(canvas, stroke, {"name": name, "length": told(stroke.length, unit)})
        for place in words:
            if place:
                canvas.words(*place)
        paint_bars(canvas, complex(centre + _BESIDE_LACING, top - 1.6), back, taken, reduction, waist, unit)
        paint_row(canvas, complex(low.real + _MARGIN, low.imag + 0.55 * row), _KEY)

    return Sheet(low, high, title, description, paint, SCALE)


def _lines(back, top):
    """Run, pen and name of each line of the half back, cut off at the level `top`."""
    half, waist = back.block.back, back.waist
    centre, foot = half.waist_centre.real, paths.path_end(back.hem.whole)
    yield _side_down(back), BEFORE, WORDS("line_block_side")
    for leg, word in zip(half.dart_legs, ("side", "centre")):
        yield leg, BEFORE, WORDS(f"line_block_dart_{word}")
    yield (Line(complex(centre, top), foot),), BEFORE, WORDS("line_centre_back")
    yield (Line(half.waist_side, half.waist_centre),), BODY, SHARED("waist")
    bust = complex(centre, half.bust_level)
    yield (Line(complex(half.underarm.real, half.bust_level), bust),), BODY, SHARED("bust_level")
    yield _below(back.armscye_panel, top), BEFORE, WORDS("line_armscye")
    yield half.side_above, FREE, WORDS("line_side_above")
    yield back.hem.kept, FREE, WORDS("line_hem")
    yield (Line(complex(back.hem.edge.real, top), back.hem.edge),), FREE, WORDS("edge")
    parting = complex(waist.axis, min(top, paths.path_start(back.upper_parting).imag))
    yield (Line(parting, waist.dart_top),), FREE, WORDS("line_parting_above")
    yield back.lower_parting, FREE, WORDS("line_parting_below")
    yield (*waist.side_waist, *back.side_below), NEW, WORDS("line_side_new")
    if waist.dart > 1e-9:
        for leg, word in zip(waist.legs, ("side", "centre")):
            yield leg, NEW, WORDS(f"line_dart_{word}")


def _side_down(back):
    """The block's side seam from the bust level down to the hem's level."""
    half = back.block.back
    side, level = (*half.side_waist, *half.side_hip), paths.path_end(back.side_below).imag
    return paths.cut_at(side, *paths.on_line(side, 1j * level, 1 + 0j)[0])[0]


def _below(path, level):
    """The run without what lies above the level before it first comes down to it."""
    found = paths.on_line(path, 1j * level, 1 + 0j)
    return paths.cut_at(path, *found[0])[1] if found else path


def _cloth_taken(back):
    """The hatched stretches: the back dart, and what lies between the block's side seam and the taken-in one."""
    waist, old = back.waist, _side_down(back)
    new = (*waist.side_waist, *back.side_below)
    if waist.at_side > 1e-9:
        yield (*old, Line(paths.path_end(old), paths.path_end(new)), *paths.turned_round(new))
    if waist.dart > 1e-9:
        yield (*waist.legs[0], *paths.turned_round(waist.legs[1]))


def _words(clutter, back, taken, unit, centre):
    """Where what is taken is written, and the names of the few lines that need one."""
    half = back.block.back
    above = 0.42j * SCALE
    for at, text in (
        (taken.block_side, told(taken.at_side, unit)),
        (min(taken.legs, key=lambda p: p.real), _dart_words(taken, unit)),
    ):
        middle = at + above - 0.3 * SCALE - text_width(text, SPOT_WORDS, SCALE) / 2
        yield clutter.on(middle, text, SPOT_WORDS)
    upright = lambda x: (Line(complex(x, half.underarm.imag), complex(x, back.hem.edge.imag)),)
    for path, name in (
        (upright(back.hem.edge.real), WORDS("edge")),
        (upright(centre), WORDS("line_centre_back")),
        (back.hem.kept, WORDS("note_hem")),
        (back.waist.legs[0], WORDS("note_dart")),
        ((Line(complex(half.underarm.real, half.bust_level), complex(centre, half.bust_level)),), SHARED("bust_level")),
        ((Line(half.waist_side, half.waist_centre),), SHARED("waist")),
    ):
        yield clutter.along(paths.flattened(path, 0.05), name, LINE_WORDS)


def _dart_words(taken, unit):
    """What the back dart takes: what the block's took already, and what is new."""
    if not taken.in_block:
        return told(taken.in_dart, unit)
    if told(taken.in_block, unit) == told(abs(taken.more_in_dart), unit) == told(0.0, unit):
        return told(0.0, unit)
    sign = "+" if taken.more_in_dart >= 0 else "\u2212"
    return f"{told(taken.in_block, unit)} {sign} {told(abs(taken.more_in_dart), unit)}"


def _span(canvas, stroke, facts):
    """A stroke with a short bar across each end: so wide is what is taken here."""
    bar = 0.22j * SCALE
    canvas.line((stroke, Line(stroke.start - bar, stroke.start + bar), Line(stroke.end - bar, stroke.end + bar)), RULE, facts)
