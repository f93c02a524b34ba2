"""The two lacing edges as they stand on the body, and the back as it is laced, seen from behind."""

from dataclasses import dataclass
from functools import cached_property
from math import asin, cos, degrees, radians, tan

from corsetkit.drawing.canvas import Sheet, box_area, box_run, tick
from corsetkit.drawing.hatching import fill
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
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Cubic, Line
from corsetkit.geometry.move import slid, turned_about
from corsetkit.geometry.paths import flattened, path_length
from corsetkit.teaching.shared.close_up import paint_row, row_width
from corsetkit.units import CM_PER_INCH, say_length
from corsetkit.words import words_of

WORDS = words_of("07_back")
SHARED = words_of("shared")

EVEN = 0.32
"""Edges whose gaps differ by no more than this, cm (1/8 in), count as parallel: course convention."""
PARALLEL, WIDE_ABOVE, WIDE_BELOW = "parallel", "V", "inverted V"


@dataclass(frozen=True)
class Laced:
    """A `Back` laced, its lacing edges `gap_above` apart at the top and `gap_below` at the hem, cm.

    The centre back stands at zero across; the left half lies as it was drawn, slid and turned, the right one mirrored.
    `yoke` says whether the lacing runs up over the yoke.
    """

    back: object
    gap_above: float
    gap_below: float
    yoke: bool = True

    @property
    def foot(self):
        """The lacing edge's lower end as it was drawn."""
        return self.back.hem.edge

    @property
    def head(self):
        """Its upper end as it was drawn."""
        return self.back.neckline.edge if self.yoke else self.back.yoke_line.edge

    @property
    def length(self):
        return abs(self.head - self.foot)

    @cached_property
    def turn(self):
        """Degrees by which the left half leans outwards above, counter-clockwise."""
        return degrees(asin((self.gap_above - self.gap_below) / 2 / self.length))

    @cached_property
    def move(self):
        """The rigid move that lays the left half."""
        return turned_about(self.foot, self.turn).then(slid(complex(-self.gap_below / 2 - self.foot.real, 0.0)))

    @property
    def top(self):
        """The level of the edges' upper ends as they stand, cm above the waist."""
        return self.foot.imag + self.length * cos(radians(self.turn))

    def gap_at(self, y):
        """How far the edges are apart at the level `y`, cm."""
        return self.gap_below + 2 * (y - self.foot.imag) * tan(radians(self.turn))

    @property
    def shape(self):
        if abs(self.gap_above - self.gap_below) <= EVEN + 1e-9:
            return PARALLEL
        return WIDE_ABOVE if self.gap_above > self.gap_below else WIDE_BELOW

    @property
    def ends(self):
        """Between which levels the modesty panel has its whole width, for its ends may slope: the lower and the upper one."""
        low, _, high, _ = self.back.modesty
        return max(p.imag for p in (paths.path_start(low), paths.path_end(low))), min(
            p.imag for p in (paths.path_start(high), paths.path_end(high))
        )

    @property
    def panel_width(self):
        """How wide the modesty panel is, opened out, cm."""
        fold, side = self.back.modesty[1][0], self.back.modesty[3][0]
        return 2 * abs(fold.start.real - side.start.real)

    def under(self, y):
        """How far the modesty panel reaches under each edge at the level `y`, cm; below zero where skin shows."""
        return (self.panel_width - self.gap_at(y)) / 2

    @cached_property
    def half(self):
        """The left half's cloth beside the lacing edge, as named runs where they lie, counter-clockwise.

        It is torn off beyond what the modesty panel can ever reach, for the rest of the back says nothing here.
        """
        back, torn = self.back, self._torn
        hem, foot = _beyond(back.hem.kept, torn)
        if self.yoke:
            top, head = _beyond((Line(back.block.back.shoulder_tip, back.yoke_neck), *back.neckline.kept), torn)
        else:
            top, head = _beyond(back.yoke_line.kept, torn)
        all_paths = {
            "hem": hem,
            "lacing_edge": (Line(self.foot, self.head),),
            "neckline" if self.yoke else "top": paths.turned_round(top),
            "torn": (Line(head, foot),),
        }
        return {name: paths.moved(path, self.move) for name, path in all_paths.items()}

    @cached_property
    def seams(self):
        """The seams in that cloth: the back dart's, closed as it is sewn, and the yoke's where there is one."""
        back = self.back
        all_paths = {"dart_seam": (*back.upper_parting, *back.waist.legs[1], *back.lower_parting)}
        if self.yoke:
            all_paths["yoke_line"] = _beyond(back.yoke_line.kept, self._torn)[0]
        return {name: paths.moved(path, self.move) for name, path in all_paths.items()}

    @property
    def _torn(self):
        """How far from the side the cloth is torn off, on the block."""
        least = paths.path_start(self.back.yoke_line.kept).real + 0.3
        return max(least, min(self.foot.real - self.panel_width / 2, self.back.waist.axis) - 1.2)

    @property
    def panel(self):
        """The modesty panel's whole outline, opened out about the centre back."""
        low, _, high, side = (
            paths.moved(path, slid(complex(-self.back.block.back.waist_centre.real, 0.0))) for path in self.back.modesty
        )
        return (*low, *mirrored(low), *mirrored(side), *mirrored(high), *high, *side)


def _beyond(path, x):
    """What of the run, which runs away from the side, lies beyond `x`, and where that begins."""
    after = paths.cut_at(path, *paths.on_line(path, complex(x, 0.0), 1j)[0])[1]
    return after, paths.path_start(after)


def mirrored(path):
    """The run on the other side of the centre back, run the other way round."""
    flip = lambda p: -p.conjugate()
    return tuple(
        Cubic(flip(c.end), flip(c.second), flip(c.first), flip(c.start))
        if isinstance(c, Cubic)
        else Line(flip(c.end), flip(c.start))
        for c in reversed(path)
    )


SCALE = 5.2
LACE = Pen("lace", 0.3, GRAPHITE)
BEHIND = Pen("behind", 0.26, GRAPHITE, (1.1, 0.8))
EYELET = Pen("eyelet", 0.22, INK)
TORN = Pen("torn", 0.16, GRAPHITE)

_KEY = ((NEW, WORDS("edge")), (BEHIND, WORDS("laced_key_modesty")), (LACE, WORDS("laced_key_lacing")))
_MARGIN = 2.4
_APART, _INSIDE, _ENDS = CM_PER_INCH, 0.9, 1.6
"""From eyelet to eyelet, from the edge in, and from the edge's ends, cm: a hint and no more."""
_CLOTH, _LAYER = 3.2, 1.1
"""How much cloth is drawn beyond the panel in a section, and how thick each layer, cm."""
_PENS = {"lacing_edge": NEW, "torn": TORN}
JUST = 0.08
"""Less than this, cm, of the panel under an edge reads as nothing."""
_CAPTION = (WORDS("cuts_title"), WORDS("cuts_title_more"))


def laced_sheet(title, laced, widest, unit, description):
    """The sheet of a `Laced`; `widest` is the widest gap to keep room for, cm, so that the drawing stands still."""
    half = laced.half
    flat = [laced.move.inverse(p) for path in half.values() for p in flattened(path, 0.1)]
    reach = widest / 2 + laced.foot.real - min(p.real for p in flat) + 3.0
    crown = max(max(p.imag for p in flat) + 1.0, laced.ends[1] + 0.55 * SCALE)
    section = max(widest, laced.panel_width) / 2 + _CLOTH
    words_at = reach + 3.5 + 2 * section
    bottom = min(p.imag for p in flat) - 1.2 * SCALE
    row = 0.62 * SCALE
    right = max(
        words_at + 0.5 * SCALE + text_width(WORDS("cut_under", far="10 15/16 in"), SPOT_WORDS, SCALE),
        row_width(_KEY, SCALE) - reach,
        reach + 2.0 + text_width(_CAPTION[1], SMALL, SCALE),
    )
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
    return (WORDS("cut_upper"), high), (SHARED("waist"), 0.0), (WORDS("cut_lower"), low)


def _paint_back(canvas, laced, half, unit):
    panel = laced.panel
    canvas.area(panel, CUT_PAPER)
    canvas.line(panel, FREE, _facts(WORDS("modesty"), laced.panel_width, unit, {}))
    outline = tuple(curve for path in half.values() for curve in path)
    for side, turn in (("left_half", lambda path: path), ("right_half", mirrored)):
        canvas.area(turn(outline), CUT_PAPER)
        for name, path in half.items():
            more = {"role": "new"} if name == "lacing_edge" else {}
            canvas.line(turn(path), _PENS.get(name, FREE), _facts(_called(name, side), path_length(path), unit, more))
        for name, path in laced.seams.items():
            canvas.line(turn(path), SEWN, _facts(_called(name, side), path_length(path), unit, {}))
    for bare in _bare(laced):
        fill(canvas, bare, WASTE)
    canvas.line(panel, BEHIND)
    _paint_lacing(canvas, laced)


def _called(name, side):
    """What people are told of a line of the cloth, on its side."""
    line = WORDS(f"cloth_{name}")
    return WORDS("left_half" if side == "left_half" else "right_half", line=line)


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
        canvas.line(
            (
                Line(at - gap / 2, at + gap / 2),
                Line(at - gap / 2 - bar, at - gap / 2 + bar),
                Line(at + gap / 2 - bar, at + gap / 2 + bar),
            ),
            RULE,
            {"name": WORDS("gap_between"), "length": say_length(gap, unit)},
        )
    size = NAME.size * SCALE / 10
    canvas.words(at + 1j * (0.28 * SCALE if up > 0 else -0.28 * SCALE - CAPITALS * size), say_length(gap, unit), NAME)


def _paint_section(canvas, laced, name, y, middle, words_at, unit):
    """The layers at one level as if cut through: the two edges above, the modesty panel under them."""
    gap, under, side = laced.gap_at(y), laced.under(y), laced.panel_width / 2
    outer = max(side, gap / 2) + _CLOTH
    with canvas.group("section"):
        cell = box_run(middle - side, y - _LAYER, middle + side, y)
        canvas.area(cell, CUT_PAPER)
        canvas.line(cell, FREE, _facts(WORDS("cut_modesty", level=name), laced.panel_width, unit, {}))
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
    canvas.words(at - 0.15j * line, WORDS("cut_gap", gap=say_length(gap, unit)), SPOT_WORDS, "start")
    if abs(under) < JUST:
        covered = WORDS("cut_just_meets")
    else:
        covered = WORDS("cut_under" if under > 0 else "cut_bare", far=say_length(abs(under), unit))
    canvas.words(at - 1.2j * line, covered, SPOT_WORDS, "start")


def _facts(name, cm, unit, more):
    return more | {"name": name, "length": say_length(cm, unit)}
