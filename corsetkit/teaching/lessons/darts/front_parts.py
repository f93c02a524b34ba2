"""The front below the overbust line as four parts of paper round the bust point, and their angles as a chart.

Closing a dart turns parts about the bust point, rigidly; what the closed dart gives, another dart takes.
"""

from dataclasses import dataclass
from functools import cached_property

from corsetkit.drawing.canvas import box_run
from corsetkit.drawing.hatching import fill
from corsetkit.drawing.lettering import CAPITALS
from corsetkit.drawing.pens import BEFORE, CUT_PAPER, FREE, LINE_WORDS, NAME, NEW, SMALL, WASTE
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.geometry.move import STAY, turned_about
from corsetkit.geometry.points import direction, heading, turn_between
from corsetkit.teaching.shared.clipping import arc
from corsetkit.units import say_number
from corsetkit.words import words_of

WORDS = words_of("04_darts")
SHARED = words_of("shared")

DARTS = (SHARED("tightening_dart"), SHARED("centre_front_dart"), SHARED("underbust_dart"), SHARED("side_dart"))
"""The darts, counter-clockwise: each lies behind the part of its number and before the next one."""
TIGHTENING, CENTRE_FRONT, UNDERBUST, SIDE = range(4)
OUTER_UPPER, INNER_UPPER, INNER_LOWER, OUTER_LOWER = range(4)

_CLOSED = 1e-9
"""A dart open by less than this, degrees, is closed but for rounding."""


@dataclass(frozen=True)
class Border:
    """One border of a part, run as the part's outline runs; `dart` is the number of the dart whose leg it is, or None."""

    name: str
    path: tuple
    dart: int | None = None


@dataclass(frozen=True)
class FrontPart:
    """A part of the paper: its borders counter-clockwise from the bust point, and the underbust line drawn on it."""

    borders: tuple
    underbust: tuple

    @cached_property
    def outline(self):
        return tuple(curve for border in self.borders for curve in border.path)

    @cached_property
    def points(self):
        return paths.flattened(self.outline, 0.05)

    @cached_property
    def legs(self):
        """The steps from the bust point along the clockwise leg and along the counter-clockwise one."""
        first, last = self.outline[0], self.outline[-1]
        return first.end - first.start, last.start - last.end

    @property
    def angle(self):
        """The paper's angle at the bust point, degrees."""
        return turn_between(*self.legs) % 360


@dataclass(frozen=True)
class Front:
    """The four parts round `point`, in the order outer upper, inner upper, inner lower, outer lower."""

    point: complex
    parts: tuple

    def darts(self, moves):
        """By how many degrees each dart stands open, the parts moved by `moves`."""
        found = []
        for number in range(4):
            after = (number + 1) % 4
            angle = turn_between(
                moves[number].turn * self.parts[number].legs[1], moves[after].turn * self.parts[after].legs[0]
            )
            found.append(0.0 if abs(angle) < _CLOSED else angle)
        return tuple(found)

    @cached_property
    def drawn(self):
        """Each dart's angle as it is drawn."""
        return self.darts((STAY,) * 4)

    def closed(self, front, side, above=1.0, pin=None):
        """The moves that close the centre-front dart by `front` and the side dart by `side` degrees.

        `above` is the share that the parts above these darts turn, so that the tightening dart opens; the parts below turn
        the rest, and the underbust dart opens. `pin` is the point turned about where that is not the bust point.
        """
        pin = self.point if pin is None else pin
        turns = {
            OUTER_UPPER: -side * above,
            INNER_UPPER: front * above,
            INNER_LOWER: -front * (1 - above),
            OUTER_LOWER: side * (1 - above),
        }
        return tuple(turned_about(pin, turns[number]) if turns[number] else STAY for number in range(4))

    def closed_in_turn(self, closings):
        """The moves that close darts one after another into the underbust dart, the inner lower part pinned down.

        `closings` are (dart, degrees) in their order: each turns all paper from that dart round to the underbust dart.
        """
        behind = {
            CENTRE_FRONT: (INNER_UPPER, OUTER_UPPER, OUTER_LOWER),
            TIGHTENING: (OUTER_UPPER, OUTER_LOWER),
            SIDE: (OUTER_LOWER,),
        }
        moves = [STAY] * 4
        for dart, degrees in closings:
            for number in behind[dart] if degrees else ():
                moves[number] = moves[number].then(turned_about(self.point, degrees))
        return tuple(moves)

    def moved_points(self, moves):
        """The parts' outlines as points, moved."""
        return [[move(p) for p in part.points] for part, move in zip(self.parts, moves)]

    def mark_width(self, moves):
        """How wide the underbust dart is where the underbust line meets its legs, cm, straight across."""
        return abs(self.across_mark(moves)[1] - self.across_mark(moves)[0])

    def across_mark(self, moves):
        """Where the underbust line meets the underbust dart's inner and outer leg, moved."""
        inner, outer = self.parts[INNER_LOWER].underbust, self.parts[OUTER_LOWER].underbust
        return moves[INNER_LOWER](paths.path_end(inner)), moves[OUTER_LOWER](paths.path_start(outer))


def apart(front, moves, others):
    """The farthest that any point of the paper lies, moved by `moves`, from its place when moved by `others`, cm."""
    return max(
        abs(a - b) for one, other in zip(front.moved_points(moves), front.moved_points(others)) for a, b in zip(one, other)
    )


def front_parts(steps):
    """The `Front` of the draft after the step darts, cut off at the waist."""
    block, under, over, darts = steps.block, steps.underbust, steps.overbust, steps.darts
    point, half = block.bust_point, block.front
    inner, outer = under.inner_leg[0], under.outer_leg[0]
    outer_upper = FrontPart(
        (
            Border(WORDS("part_side_upper_leg"), (Line(point, block.mouth_upper),), SIDE),
            Border(WORDS("part_side_above"), paths.turned_round(half.side_above)),
            Border("armscye", paths.turned_round((*over.armscye_cup_part, *over.armscye_low_part))),
            Border(WORDS("part_overbust_outer"), paths.turned_round(over.top_outer)),
            Border(WORDS("part_tightening_outer_leg"), (Line(over.top_right, point),), TIGHTENING),
        ),
        darts.outer.moving,
    )
    inner_upper = FrontPart(
        (
            Border(WORDS("part_tightening_inner_leg"), (Line(point, over.top_left),), TIGHTENING),
            Border(WORDS("part_overbust_inner"), paths.turned_round(over.top_inner)),
            Border(WORDS("part_centre_taken_in"), (Line(over.front_point, over.dart_upper),)),
            Border(WORDS("part_centre_upper_leg"), (Line(over.dart_upper, point),), CENTRE_FRONT),
        ),
        darts.inner.moving,
    )
    inner_lower = FrontPart(
        (
            Border(WORDS("part_centre_lower_leg"), (Line(point, over.dart_lower),), CENTRE_FRONT),
            Border(SHARED("centre_front"), (Line(over.dart_lower, half.waist_centre),)),
            Border("waist", (Line(half.waist_centre, inner.end),)),
            Border(WORDS("part_underbust_inner_leg"), (inner.turned_round, Line(under.inner, point)), UNDERBUST),
        ),
        darts.inner.still,
    )
    outer_lower = FrontPart(
        (
            Border(WORDS("part_underbust_outer_leg"), (Line(point, under.outer), outer), UNDERBUST),
            Border("waist", (Line(outer.end, half.waist_side),)),
            Border(SHARED("side_seam"), paths.turned_round(half.side_waist)),
            Border(WORDS("part_side_lower_leg"), (Line(block.mouth_lower, point),), SIDE),
        ),
        darts.outer.still,
    )
    return Front(point, (outer_upper, inner_upper, inner_lower, outer_lower))


WIDE, HIGH = 7.4, 10.7
"""How much room the chart takes, cm as seen."""
_RADIUS = 2.0
_WHEEL_ROOM = 5.3
_ROW, _BAR = 0.86, 0.28
_NUMBER = 0.95
_GAP = 0.15


def paint_chart(canvas, corner, front, moves):
    """Paint the chart with its upper left corner at `corner`."""
    scale = canvas.scale
    middle = corner + complex(WIDE / 2, -_WHEEL_ROOM / 2) * scale
    with canvas.group("wheel"):
        _wheel(canvas, middle, _RADIUS * scale, front, moves)
    with canvas.group("rows"):
        _rows(canvas, corner - 1j * (_WHEEL_ROOM + 0.5) * scale, front.drawn, front.darts(moves))


def chart_said(front, moves):
    """The chart in words."""
    darts = front.darts(moves)
    return WORDS(
        "chart_said",
        darts=", ".join(f"{name} {degrees(angle)}" for name, angle in zip(DARTS, darts)),
        all=degrees(sum(darts)),
        paper=", ".join(degrees(part.angle) for part in front.parts),
    )


def degrees(angle):
    """An angle as the lesson writes it, to a tenth of a degree."""
    return say_number(angle, 1)


def _tenths(angle):
    """An angle as it stands in a column of angles: always with its tenth."""
    return f"{abs(angle) if abs(angle) < 0.05 else angle:.1f}"


def _wheel(canvas, middle, radius, front, moves):
    scale = canvas.scale
    drop = CAPITALS / 2 * LINE_WORDS.size * scale / 10
    starts = [heading(move.turn * part.legs[0]) for part, move in zip(front.parts, moves)]
    darts = front.darts(moves)
    for number, (part, start) in enumerate(zip(front.parts, starts)):
        if darts[number] > 0.05:
            gap = _sector(middle, radius, start + part.angle, darts[number])
            fill(canvas, gap, WASTE)
        canvas.area(_sector(middle, radius, start, part.angle), CUT_PAPER)
    for part, start, move in zip(front.parts, starts, moves):
        canvas.line(_sector(middle, radius, start, part.angle), FREE if move.turn == 1 else NEW)
        at = middle + 0.66 * radius * direction(start + part.angle / 2)
        canvas.words(at - 1j * drop, _tenths(part.angle), LINE_WORDS)
    far, line = radius + 0.2 * scale, 1.3 * SMALL.size * scale / 10
    size = SMALL.size * scale / 10
    canvas.words(middle + 1j * far, DARTS[TIGHTENING], SMALL)
    canvas.words(middle - 1j * (far + 0.75 * size), DARTS[UNDERBUST], SMALL)
    for side, anchor, name in ((-far, "end", WORDS("wheel_centre_front")), (far, "start", WORDS("wheel_side"))):
        canvas.words(middle + side, name, SMALL, anchor)
        canvas.words(middle + side - 1j * line, WORDS("wheel_dart"), SMALL, anchor)


def _rows(canvas, top, drawn, now):
    scale = canvas.scale
    canvas.words(top, WORDS("chart_each"), NAME, "start")
    long = (WIDE - _NUMBER - _GAP) * scale / sum(drawn)
    names = [*DARTS, WORDS("chart_together")]
    for row, name in enumerate(names):
        base = top - 1j * ((row + 1) * _ROW + 0.1) * scale
        canvas.words(base + 1j * (_BAR + 0.1) * scale, name, SMALL, "start")
        whole = row == len(DARTS)
        before, after = (drawn, now) if whole else ((drawn[row],), (now[row],))
        _bars(canvas, base, before, long, BEFORE, False)
        changed = any(abs(a - b) > 0.05 for a, b in zip(before, after))
        _bars(canvas, base, after, long, NEW if changed else FREE, True)
        canvas.words(base + WIDE * scale + 0.04j * scale, _tenths(sum(after)), LINE_WORDS, "end")


def _bars(canvas, at, angles, long, pen, hatched):
    for angle in angles:
        if angle > 0.05:
            path = box_run(at.real, at.imag, at.real + angle * long, at.imag + _BAR * canvas.scale)
            if hatched:
                fill(canvas, path, WASTE)
            canvas.line(path, pen)
            at += angle * long


def _sector(middle, radius, start, angle):
    """A sector of a disc as a closed run, counter-clockwise; angles in degrees."""
    rim = arc(middle, middle + radius * direction(start), angle)
    return (Line(middle, rim[0].start), *rim, Line(rim[-1].end, middle))
