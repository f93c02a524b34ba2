"""The front's and the back's side seam beside each other from waist to underarm, the paper torn off beyond."""

from dataclasses import dataclass
from functools import cached_property

from corsetkit.drawing.canvas import Sheet, box_area, box_run, tick
from corsetkit.drawing.hatching import fill
from corsetkit.drawing.lettering import CAPITALS, around, text_width
from corsetkit.drawing.pens import (
    BEFORE,
    BOARD_TONE,
    BODY,
    CUT_AWAY,
    CUT_PAPER,
    FREE,
    GUIDE,
    HEADING,
    LEADER,
    LINE_WORDS,
    NAME,
    NEW,
    SPOT,
    SPOT_TONE,
    SPOT_WORDS,
    WASTE,
)
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.geometry.move import slid, turned_about
from corsetkit.geometry.paths import flattened, moved
from corsetkit.geometry.points import between, unit
from corsetkit.units import say_length
from corsetkit.words import words_of

WORDS = words_of("01_block")

TOOTH, DEEP = 0.9, (0.32, 0.18, 0.26, 0.3, 0.14)
"""How long a tooth of the torn edge is about, and how deep one tooth after the other is, cm: no hand tears evenly."""


def torn(start, end):
    """A zigzag run from `start` to `end`: as many even teeth as have room there, at least one."""
    teeth = max(1, round(abs(end - start) / TOOTH))
    out = unit(end - start) * 1j
    points = [start]
    for number in range(teeth):
        deep = DEEP[number % len(DEEP)] * (1 if number % 2 else -1)
        points.append(between(start, end, (number + 0.5) / teeth) + out * deep)
    points.append(end)
    return tuple(Line(a, b) for a, b in zip(points, points[1:]))


SCALE = 3.0
_APART = 6.0
"""Board between the two halves and before the upright strips, cm."""
_STRIP = 1.6
_MARGIN = 2.0
_LEFT_OF_POINT = 2.5
"""Paper shown towards the centre front of the bust point, cm."""


@dataclass(frozen=True)
class Closing:
    """The block's side dart, closed by `closed` degrees: the paper above it is turned down about the bust point."""

    block: object
    closed: float

    @cached_property
    def move(self):
        return turned_about(self.block.bust_point, -self.closed)

    @property
    def still_open(self):
        """Degrees."""
        return self.block.side_dart - self.closed

    @cached_property
    def upper(self):
        """The front's side seam above the dart, from its mouth up to the underarm, as it lies."""
        return moved(paths.turned_round(self.block.front.side_above), self.move)

    @cached_property
    def lower(self):
        """The front's side seam below the dart, from the waist up to its mouth."""
        return paths.turned_round(self.block.front.side_waist)

    @property
    def mouth(self):
        """What is still open of the dart's mouth, straight across, cm."""
        return abs(paths.path_start(self.upper) - paths.path_end(self.lower))

    @property
    def front_length(self):
        """The front's edge from waist to underarm, the mouth counted as far as it is open, cm."""
        return paths.path_length(self.lower) + self.mouth + paths.path_length(self.upper)

    @cached_property
    def back(self):
        """The back's side seam from the waist up to the underarm."""
        half = self.block.back
        return paths.turned_round((*half.side_above, *half.side_waist))


def side_seams(title, closing, unit, description):
    """The sheet of a `Closing`."""
    block = closing.block
    front, back, point = block.front, block.back, block.bust_point
    flap = _flap(block)
    to_back = slid(front.underarm.real + _APART - _leftmost(back))
    paper = _turned(_back_paper(back), to_back)
    strips = max(p.real for p in flattened(paper[0], 0.1)) + _APART
    all_closed = _turned(flap, turned_about(point, -block.side_dart))
    everything = [p for lines, _ in (flap, _lower_paper(block), paper, all_closed) for p in flattened(lines, 0.1)]
    left, _, _, top = around([(p.real, p.imag, p.real, p.imag) for p in everything])
    longest = Closing(block, 0.0).front_length
    # The words above and below the two strips are wider than they are.
    room = text_width("00 00/00 in", LINE_WORDS, SCALE) + 0.2 * SCALE
    low = complex(left - _MARGIN, -1.3 * SCALE)
    high = complex(strips + 2 * room + _MARGIN, max(top, longest + 0.6 * SCALE) + 1.4 * SCALE)

    def paint(canvas):
        box_area(canvas, (low.real, low.imag, high.real, high.imag), BOARD_TONE)
        canvas.words(complex(low.real + _MARGIN, high.imag - 0.85 * SCALE), title, HEADING, "start")
        _paint_front(canvas, closing, flap, unit)
        _lay(canvas, paper)
        seam = moved(closing.back, to_back)
        canvas.line(seam, NEW, _facts("back side seam", paths.path_length(seam), unit, "side seam", 2))
        for place, word in ((complex(point.real + 2, 0), "front"), (complex(paths.path_start(seam).real + 2, 0), "back")):
            canvas.words(place - 0.9j * SCALE, word, NAME, "start")
        tick(canvas, complex(low.real + _MARGIN, 0), complex(high.real - _MARGIN, 0), BODY)
        middle = (front.waist_side.real + paths.path_start(seam).real) / 2
        canvas.words(complex(middle, -0.2 * SCALE - CAPITALS * LINE_WORDS.size * SCALE / 10), "waist", LINE_WORDS)
        level = paths.path_end(seam).imag
        tick(canvas, complex(point.real, level), complex(strips - 1, level), GUIDE)
        _paint_strips(canvas, closing, strips, room, unit)

    return Sheet(low, high, title, description, paint, SCALE)


def _flap(block):
    """The paper above the dart: its lines from the bust point to the armscye, and the torn border back."""
    front, point = block.front, block.bust_point
    lines = (Line(point, block.mouth_upper), *paths.turned_round(front.side_above), *paths.turned_round(front.armscye[1:]))
    return lines, torn(front.across, point)


def _lower_paper(block):
    """The paper below the dart: its lines from the waist to the bust point, and the torn border back."""
    front, point = block.front, block.bust_point
    corner, start = complex(point.real - _LEFT_OF_POINT, 0.0), complex(point.real - _LEFT_OF_POINT, point.imag)
    lines = (Line(corner, front.waist_side), *paths.turned_round(front.side_waist), Line(block.mouth_lower, point))
    return lines, (*torn(point, start), *torn(start, corner))


def _back_paper(back):
    """The back's paper: its lines from the armscye to the waist, and the torn border back."""
    inner = complex(back.across.real, 0.0)
    lines = (*back.armscye[1:], *back.side_above, *back.side_waist, Line(back.waist_side, inner))
    return lines, torn(inner, back.across)


def _lay(canvas, paper):
    """Paint cut paper: what is a line of the block, and more thinly what is only torn off."""
    lines, torn = paper
    canvas.area((*lines, *torn), CUT_PAPER)
    canvas.line(lines, FREE)
    canvas.line(torn, LEADER)


def _turned(paper, move):
    return tuple(moved(path, move) for path in paper)


def _leftmost(half):
    return min(p.real for p in flattened(half.side_above + half.side_waist, 0.1))


def _paint_front(canvas, closing, flap, unit):
    block, point = closing.block, closing.block.bust_point
    _lay(canvas, _lower_paper(block))
    if closing.closed and block.side_dart:
        canvas.line(flap[0], BEFORE, {"name": WORDS("seams_paper_lay")})
    _lay(canvas, _turned(flap, closing.move))
    mouth = paths.path_start(closing.upper)
    if closing.still_open > 1e-6:
        wedge = (Line(point, block.mouth_lower), Line(block.mouth_lower, mouth), Line(mouth, point))
        fill(canvas, wedge, WASTE)
        canvas.line(wedge, CUT_AWAY, {"role": "waste", "name": WORDS("seams_dart_open")})
    if block.side_dart:
        for number, (leg, end) in enumerate((("upper leg", mouth), ("lower leg", block.mouth_lower)), 1):
            canvas.line((Line(point, end),), FREE, _facts(f"side dart, {leg}", abs(end - point), unit, "side dart", number))
    for where, path in (("below", closing.lower), ("above", closing.upper)):
        canvas.line(path, NEW, _facts(f"front side seam {where} the dart", paths.path_length(path), unit, "side seam", 1))
    canvas.dot(point, 0.8, SPOT_TONE, SPOT)
    canvas.words(point - complex(_LEFT_OF_POINT - 0.4, 0.8 * SCALE), "bust point", SPOT_WORDS, "start")


def _paint_strips(canvas, closing, left, room, unit):
    """Both seams drawn out straight, upright beside each other; what is open of the dart is hatched."""
    half = _STRIP / 2
    lower, gap = paths.path_length(closing.lower), closing.mouth
    front, back = left + room / 2, left + 1.5 * room
    stretches = [
        (front, 0.0, lower, WORDS("seams_front_below")),
        (front, lower + gap, closing.front_length, WORDS("seams_front_above")),
        (back, 0.0, paths.path_length(closing.back), WORDS("seams_back")),
    ]
    for at, bottom, top, name in stretches:
        cell = box_run(at - half, bottom, at + half, top)
        canvas.area(cell, CUT_PAPER)
        canvas.line(cell, NEW, _facts(WORDS("seams_straight", name=name), top - bottom, unit))
    if gap > 1e-6:
        cell = box_run(front - half, lower, front + half, lower + gap)
        fill(canvas, cell, WASTE)
        canvas.line(cell, CUT_AWAY, _facts(WORDS("seams_mouth"), gap, unit))
    for at, top, word in ((front, closing.front_length, "front"), (back, paths.path_length(closing.back), "back")):
        canvas.words(complex(at, top + 0.2 * SCALE), word, SPOT_WORDS)
        canvas.words(complex(at, -0.2 * SCALE - CAPITALS * LINE_WORDS.size * SCALE / 10), say_length(top, unit), LINE_WORDS)


def _facts(name, cm, unit, seam="", side=0):
    facts = {"role": "new", "name": name, "length": say_length(cm, unit)}
    return facts | {"seam": seam, "side": side} if seam else facts
