"""Where the waist is taken in: half the back with a level across it, and what all four places take there, end to end."""

from corsetkit.geometry import paths as path
from corsetkit.geometry.curve import Line
from corsetkit.drawing.canvas import box_area
from corsetkit.drawing.name_places import Clutter
from corsetkit.drawing.hatching import fill
from corsetkit.showing.lessons.key_row import paint_row
from corsetkit.drawing.lettering import text_width
from corsetkit.drawing.pens import (
    BEFORE,
    BODY,
    FREE,
    GUIDE,
    HEADING,
    LINE_WORDS,
    NEW,
    PAPER_TONE,
    RULE,
    SPOT_WORDS,
    WASTE,
)
from corsetkit.drawing.canvas import Sheet
from corsetkit.showing.lessons.taken_bars import SMALLER, WIDEST, paint_bars
from corsetkit.showing.lessons.taken_in import told

SCALE = 3.2

_KEY = ((BEFORE, "the block"), (NEW, "taken in"), (WASTE, "cloth taken"), (BODY, "bust level and waist"),
        (GUIDE, "the level looked at"))
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
    for run, pen, _ in lines:
        clutter.draw(path.flattened(run, 0.05), 3 if pen is NEW else 1)
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
        for run, pen, name in lines:
            role = {"role": "new"} if pen is NEW else {}
            canvas.line(run, pen, role | {"name": name, "length": told(path.run_length(run), unit)})
        canvas.line((Line(complex(left, taken.y), complex(centre, taken.y)),), GUIDE, {"name": "the level looked at"})
        for stroke, name in zip(strokes, ("what the side seam takes here", "what the back dart takes here")):
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
    centre, foot = half.waist_centre.real, path.run_end(back.hem.whole)
    yield _side_down(back), BEFORE, "side seam of the block"
    for leg, word in zip(half.dart_legs, ("side", "centre")):
        yield leg, BEFORE, f"back dart of the block, {word} leg"
    yield (Line(complex(centre, top), foot),), BEFORE, "centre back"
    yield (Line(half.waist_side, half.waist_centre),), BODY, "waist"
    bust = complex(centre, half.bust_level)
    yield (Line(complex(half.underarm.real, half.bust_level), bust),), BODY, "bust level"
    yield _below(back.armscye_panel, top), BEFORE, "armscye"
    yield half.side_above, FREE, "side seam above the bust level"
    yield back.hem.kept, FREE, "back hem"
    yield (Line(complex(back.hem.edge.real, top), back.hem.edge),), FREE, "lacing edge"
    parting = complex(waist.axis, min(top, path.run_start(back.upper_parting).imag))
    yield (Line(parting, waist.dart_top),), FREE, "back parting, above the dart"
    yield back.lower_parting, FREE, "back parting, below the dart"
    yield (*waist.side_waist, *back.side_below), NEW, "side seam, taken in"
    if waist.dart > 1e-9:
        for leg, word in zip(waist.legs, ("side", "centre")):
            yield leg, NEW, f"back dart, {word} leg"


def _side_down(back):
    """The block's side seam from the bust level down to the hem's level."""
    half = back.block.back
    side, level = (*half.side_waist, *half.side_hip), path.run_end(back.side_below).imag
    return path.cut_at(side, *path.on_line(side, 1j * level, 1 + 0j)[0])[0]


def _below(run, level):
    """The run without what lies above the level before it first comes down to it."""
    found = path.on_line(run, 1j * level, 1 + 0j)
    return path.cut_at(run, *found[0])[1] if found else run


def _cloth_taken(back):
    """The hatched stretches: the back dart, and what lies between the block's side seam and the taken-in one."""
    waist, old = back.waist, _side_down(back)
    new = (*waist.side_waist, *back.side_below)
    if waist.at_side > 1e-9:
        yield (*old, Line(path.run_end(old), path.run_end(new)), *path.turned_round(new))
    if waist.dart > 1e-9:
        yield (*waist.legs[0], *path.turned_round(waist.legs[1]))


def _words(clutter, back, taken, unit, centre):
    """Where what is taken is written, and the names of the few lines that need one."""
    half = back.block.back
    above = 0.42j * SCALE
    for at, text in ((taken.block_side, told(taken.at_side, unit)),
                     (min(taken.legs, key=lambda p: p.real), _dart_words(taken, unit))):
        middle = at + above - 0.3 * SCALE - text_width(text, SPOT_WORDS, SCALE) / 2
        yield clutter.on(middle, text, SPOT_WORDS)
    upright = lambda x: (Line(complex(x, half.underarm.imag), complex(x, back.hem.edge.imag)),)  # noqa: E731
    for run, name in ((upright(back.hem.edge.real), "lacing edge"), (upright(centre), "centre back"),
                      (back.hem.kept, "hem"), (back.waist.legs[0], "back dart"),
                      ((Line(complex(half.underarm.real, half.bust_level), complex(centre, half.bust_level)),), "bust level"),
                      ((Line(half.waist_side, half.waist_centre),), "waist")):
        yield clutter.along(path.flattened(run, 0.05), name, LINE_WORDS)


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
