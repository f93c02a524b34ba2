"""The back as it is laced, seen from behind: two edges, the gap, and the modesty panel under it at three levels."""

from corsetkit.geometry.curve import Line
from corsetkit.geometry.paths import flattened, run_length
from corsetkit.units import CM_PER_INCH, say_length
from corsetkit.drawing.canvas import box_area, box_run, tick
from corsetkit.drawing.hatching import fill
from corsetkit.showing.lessons.key_row import paint_row, row_width
from corsetkit.showing.lessons.laced import mirrored
from corsetkit.drawing.lettering import CAPITALS, text_width
from corsetkit.drawing.pens import (
    BOARD_TONE,
    CUT_PAPER,
    FREE,
    GRAPHITE,
    GUIDE,
    HEADING,
    INK,
    MARK_TONE,
    NAME,
    NEW,
    RULE,
    SEWN,
    SMALL,
    SPOT_WORDS,
    WASTE,
    Pen,
)
from corsetkit.drawing.canvas import Sheet

SCALE = 5.2
LACE = Pen("lace", 0.3, GRAPHITE)
BEHIND = Pen("behind", 0.26, GRAPHITE, (1.1, 0.8))
EYELET = Pen("eyelet", 0.22, INK)
TORN = Pen("torn", 0.16, GRAPHITE)

_KEY = ((NEW, "lacing edge"), (BEHIND, "modesty panel, behind"), (LACE, "lacing, only hinted"))
_MARGIN = 2.4
_APART, _INSIDE, _ENDS = CM_PER_INCH, 0.9, 1.6
"""From eyelet to eyelet, from the edge in, and from the edge's ends, cm: a hint and no more."""
_CLOTH, _LAYER = 3.2, 1.1
"""How much cloth is drawn beyond the panel in a section, and how thick each layer, cm."""
_PENS = {"lacing edge": NEW, "torn": TORN}
_CALLED = {"torn": "edge of the drawing"}
"""What people are told of a line that has another name here."""
JUST = 0.08
"""Less than this, cm, of the panel under an edge reads as nothing."""
_CAPTION = ("Cut through at three levels", "the two edges, and under them the modesty panel")


def laced_sheet(title, laced, widest, unit, description):
    """The sheet of a `Laced`; `widest` is the widest gap to keep room for, cm, so that the drawing stands still."""
    half = laced.half
    flat = [laced.move.back(p) for run in half.values() for p in flattened(run, 0.1)]
    reach = widest / 2 + laced.foot.real - min(p.real for p in flat) + 3.0
    crown = max(max(p.imag for p in flat) + 1.0, laced.ends[1] + 0.55 * SCALE)
    section = max(widest, laced.panel_width) / 2 + _CLOTH
    words_at = reach + 3.5 + 2 * section
    bottom = min(p.imag for p in flat) - 1.2 * SCALE
    row = 0.62 * SCALE
    right = max(words_at + 0.5 * SCALE + text_width("under each edge 10 15/16 in", SPOT_WORDS, SCALE),
                row_width(_KEY, SCALE) - reach, reach + 2.0 + text_width(_CAPTION[1], SMALL, SCALE))
    high = complex(right, crown + 2.2 * SCALE) + _MARGIN
    low = complex(-reach - _MARGIN, bottom - _MARGIN - row)

    def paint(canvas):
        box_area(canvas, (low.real, low.imag, high.real, high.imag), BOARD_TONE)
        canvas.words(complex(low.real + _MARGIN, high.imag - 0.95 * SCALE), title, HEADING, "start")
        for down, (words, letter) in enumerate(zip(_CAPTION, (NAME, SMALL))):
            canvas.words(complex(reach + 2.0, high.imag - (1.65 + 0.36 * down) * SCALE), words, letter, "start")
        levels = levels_of(laced)
        for _, y in levels:
            tick(canvas, complex(-reach, y), complex(words_at - 1.0, y), GUIDE)
        _paint_back(canvas, laced, half, unit)
        _paint_gap(canvas, laced.gap_above, laced.top, 1.0, unit)
        _paint_gap(canvas, laced.gap_below, laced.foot.imag, -1.0, unit)
        for name, y in levels:
            _paint_section(canvas, laced, name, y, reach + 2.0 + section, words_at, unit)
        paint_row(canvas, complex(low.real + _MARGIN, low.imag + 0.55 * row), _KEY)

    return Sheet(low, high, title, description, paint, SCALE)


def levels_of(laced):
    """The three levels at which the layers are shown, from above to below: name and height."""
    low, high = laced.ends
    return ("the panel's upper end", high), ("waist", 0.0), ("the panel's lower end", low)


def _paint_back(canvas, laced, half, unit):
    panel = laced.panel
    canvas.area(panel, CUT_PAPER)
    canvas.line(panel, FREE, _facts("modesty panel", laced.panel_width, unit, {}))
    outline = tuple(curve for run in half.values() for curve in run)
    for side, turn in (("left", lambda run: run), ("right", mirrored)):
        canvas.area(turn(outline), CUT_PAPER)
        for name, run in half.items():
            more = {"role": "new"} if name == "lacing edge" else {}
            canvas.line(turn(run), _PENS.get(name, FREE), 
                        _facts(f"{_CALLED.get(name, name)}, {side} half", run_length(run), unit, more))
        for name, run in laced.seams.items():
            canvas.line(turn(run), SEWN, _facts(f"{name}, {side} half", run_length(run), unit, {}))
    for bare in _bare(laced):
        fill(canvas, bare, WASTE)
    canvas.line(panel, BEHIND)
    _paint_lacing(canvas, laced)


def _bare(laced):
    """What shows of the skin: closed runs between the panel's side and the lacing edge, level by level."""
    (_, head), *_, (_, foot) = levels_of(laced)
    count = 40
    stops = [foot + (head - foot) * i / count for i in range(count + 1)]
    side = laced.panel_width / 2
    open_ = [y for y in stops if laced.under(y) < -1e-9]
    if len(open_) < 2:
        return ()
    # The edges are straight, so the bare strip is one stretch with straight borders.
    a, b = open_[0], open_[-1]
    corners = (complex(side, a), complex(laced.gap_at(a) / 2, a), complex(laced.gap_at(b) / 2, b), complex(side, b))
    strip = tuple(Line(p, q) for p, q in zip(corners, corners[1:] + corners[:1]))
    return strip, mirrored(strip)


def _paint_lacing(canvas, laced):
    count = max(2, round((laced.length - 2 * _ENDS) / _APART) + 1)
    spread = (laced.length - 2 * _ENDS) / (count - 1)
    left = [laced.move(laced.foot + complex(-_INSIDE, _ENDS + i * spread)) for i in range(count)]
    right = [-p.conjugate() for p in left]
    with canvas.group("lacing"):
        strokes = [Line(left[0], right[0])]
        strokes += [Line(a, b) for i in range(count - 1) for a, b in ((left[i], right[i + 1]), (right[i], left[i + 1]))]
        canvas.line(tuple(strokes), LACE)
        for at in (*left, *right):
            canvas.dot(at, 0.55, MARK_TONE, EYELET)


def _paint_gap(canvas, gap, y, up, unit):
    """The gap's width over or under the edges' ends."""
    at = complex(0.0, y + up * 0.5 * SCALE)
    if gap > 1e-9:
        bar = 0.2j * SCALE
        canvas.line((Line(at - gap / 2, at + gap / 2), Line(at - gap / 2 - bar, at - gap / 2 + bar),
                     Line(at + gap / 2 - bar, at + gap / 2 + bar)), RULE, {"name": "gap", "length": say_length(gap, unit)})
    size = NAME.size * SCALE / 10
    canvas.words(at + 1j * (0.28 * SCALE if up > 0 else -0.28 * SCALE - CAPITALS * size), say_length(gap, unit), NAME)


def _paint_section(canvas, laced, name, y, middle, words_at, unit):
    """The layers at one level as if cut through: the two edges above, the modesty panel under them."""
    gap, under, side = laced.gap_at(y), laced.under(y), laced.panel_width / 2
    outer = max(side, gap / 2) + _CLOTH
    with canvas.group("section"):
        cell = box_run(middle - side, y - _LAYER, middle + side, y)
        canvas.area(cell, CUT_PAPER)
        canvas.line(cell, FREE, _facts(f"modesty panel at {name}", laced.panel_width, unit, {}))
        for left, right in ((-outer, -gap / 2), (gap / 2, outer)):
            cell = box_run(middle + left, y, middle + right, y + _LAYER)
            canvas.area(cell, CUT_PAPER)
            canvas.line(cell, SEWN)
        if under < -JUST:
            for left, right in ((-gap / 2, -side), (side, gap / 2)):
                fill(canvas, box_run(middle + left, y - _LAYER, middle + right, y + _LAYER), WASTE)
    line = 1.35 * SPOT_WORDS.size * SCALE / 10
    at = complex(words_at, y)
    canvas.words(at + 0.9j * line, name, SMALL, "start")
    canvas.words(at - 0.15j * line, f"gap {say_length(gap, unit)}", SPOT_WORDS, "start")
    if abs(under) < JUST:
        covered = "it just meets the edges"
    else:
        covered = f"{'under each edge' if under > 0 else 'bare on each side'} {say_length(abs(under), unit)}"
    canvas.words(at - 1.2j * line, covered, SPOT_WORDS, "start")


def _facts(name, cm, unit, more):
    return more | {"name": name, "length": say_length(cm, unit)}
