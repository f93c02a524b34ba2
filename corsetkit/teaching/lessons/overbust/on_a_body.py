"""The cup's outline on the front of a body: a sketch in the wearer's own measures, the paper laid round an oval.

Heights are the paper's, which the tape took over the breast. Sideways the paper's bust line goes round the front of an
oval three quarters as deep as it is wide (course convention); towards the shoulder it lies flatter and flatter. The
cup's darts are closed and what is taken in at the centre front is drawn together.
"""

import math
from bisect import bisect_left
from functools import cache

from corsetkit.drawing.pens import BODY, CHALK, GUIDE, NEW, Pen, Tone
from corsetkit.drawing.step_values import Spot
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line, curve
from corsetkit.geometry.points import between, direction, heading
from corsetkit.geometry.points import unit as step_of
from corsetkit.teaching.shared.body_figure import CONTOUR, FEATURE, mirrored, smooth
from corsetkit.teaching.shared.close_up import SEEN, Note, Patch, Stroke, close_up
from corsetkit.teaching.shared.cup_guides import TINT
from corsetkit.units import Say
from corsetkit.words import words_of

WORDS = words_of("03_overbust")
SHARED = words_of("shared")

DEPTH = 0.75
SKIN = Tone("skin", "#f3eee3")
USUAL = Pen("usual", 0.34, CHALK, (1.3, 0.9))
_NECK, _BELOW_WAIST = 4.5, 5.0
"""How much of the neck and of what lies below the waist is sketched, cm."""


class Front:
    """Where the points of the front's paper are seen on the body, cm from the body's middle and from the waist."""

    def __init__(self, overbust):
        self.o = overbust
        self.half = overbust.block.front.width / _oval()[-1]
        point, under, m = overbust.bust_point, overbust.underbust, overbust.block.measurements
        self.lean = (1 - m.underbust_girth / m.bust_girth) / (point.imag - under.level)
        tangent = lambda p: heading(p - point)
        # Directions from the bust point on the paper, and where they point once the darts are closed: what lies on the
        # armscye and at the centre front keeps its own.
        top, side, centre = tangent(overbust.mark), tangent(overbust.armscye_top), tangent(overbust.front_point)
        self.above = (
            (0.0, 0.0),
            (side, side),
            (tangent(overbust.top_right), top),
            (tangent(overbust.top_left), top),
            (centre, centre),
            (180.0, 180.0),
        )
        self.below = ((-180.0, -180.0), (tangent(under.inner), -90.0), (tangent(under.outer), -90.0), (0.0, 0.0))

    def __call__(self, p):
        point, tip = self.o.bust_point, self.o.block.front.shoulder_tip
        # How far up from the bust to the shoulder: there the body is as flat as the paper.
        flat = min(max((p.imag - point.imag) / (tip.imag - point.imag), 0.0), 1.0)
        # Below the bust the body grows narrower, down to its underbust girth.
        half = self.half * (1 - self.lean * max(point.imag - p.imag, 0.0))
        return complex((1 - flat) * half * _across(max(p.real, 0.0) / self.half) + flat * p.real, p.imag)

    def sewn(self, p):
        """A point of the cup as it lies once darts and taking-in are sewn, on the paper still."""
        point, front_point = self.o.bust_point, self.o.front_point
        away = p - point
        if abs(away) > 1e-9:
            angle = heading(away)
            p = point + abs(away) * direction(_on_nodes(angle, self.above if angle >= 0 else self.below))
        if p.real < point.real and p.imag > point.imag:
            up = min(1.0, (p.imag - point.imag) / (front_point.imag - point.imag))
            # Drawn together wholly at the cups' point and less and less down to the bust level, without a corner.
            p -= front_point.real * up**1.6 * (point.real - p.real) / (point.real - front_point.real)
        return p

    def top(self):
        """The top edge as seen: smooth through the cups' point, the middle of its inner half, the place over the breast and
        its end on the armscye. Laid on the body point by point it would have steps that no sewn edge has."""
        o = self.o
        middle = paths.point_along(o.top_inner, paths.path_length(o.top_inner) / 2)
        start, middle, over, end = (self(self.sewn(p)) for p in (o.front_point, middle, edge_over(o), o.armscye_top))
        bend = 2 * middle - (start + over) / 2
        chord = step_of(end - over)
        arriving = step_of(step_of(over - bend) + chord)
        return curve(start, bend - start, arriving, over), curve(over, arriving, chord, end)

    def cup(self):
        """The cup's outline as seen, a closed run of short straight lines."""
        o = self.o
        under = (paths.turned_round(path) for path in (o.under_outer, o.under_inner))
        points = paths.flattened(self.top(), 0.02)
        points += [self(self.sewn(p)) for path in (o.armscye_cup_part, *under) for p in paths.flattened(path, 0.02)]
        return tuple(Line(a, b) for a, b in zip(points, points[1:] + points[:1]) if abs(b - a) > 1e-6)

    def run(self, path):
        points = [self(p) for p in paths.flattened(path, 0.02)]
        return tuple(Line(a, b) for a, b in zip(points, points[1:]))


def body_sheet(steps, usual, unit, title):
    """The sheet; `usual` is the `Overbust` drawn broken for comparison, or None."""
    o, seen = steps.overbust, Front(steps.overbust)
    say = Say(unit, unbroken=True)
    body, cup = _body(seen, steps.measurements), seen.cup()
    other = Front(usual).cup() if usual else ()
    mark, start = seen(edge_over(o)), complex(0, o.front_point.imag)
    spots = (Spot(seen(o.bust_point), "", "before"), Spot(-seen(o.bust_point).conjugate(), "", "before"), Spot(mark, ""),
             Spot(start, ""))  # fmt: skip
    wide = max(p.real for path in body for p in paths.flattened(path, 0.1)) + 0.8
    box = (-wide, -_BELOW_WAIST - 0.4, wide, o.block.front.neck_side.imag + _NECK + 0.4)
    key = ((NEW, WORDS("body_key")), *(((USUAL, WORDS("body_key_usual")),) if usual else ()))
    below = say(o.block.front.neck_centre.imag - start.imag)
    said = WORDS("body_described", title=title, below=below, over=say(edge_over(o).imag - o.bust_point.imag))
    patches = [Patch(_closed(body), SKIN), Patch(cup, TINT), Patch(mirrored(cup), TINT)]
    return close_up(title, said, box, (box[3] - box[1]) / SEEN, unit, patches, _strokes(seen, body, cup, other, mark),
                    spots, _notes(seen, mark, say), key)  # fmt: skip


def _strokes(seen, body, cup, other, mark):
    """All lines. Only what is as long as on the paper has a name, for whoever points at a line is told its length."""
    o, front = seen.o, seen.o.block.front
    bust = seen(complex(front.width, o.bust_point.imag))
    lines = [(path, CONTOUR) for path in body] + [(seen.run(front.neckline), FEATURE)]
    lines += [(other, USUAL)] if other else []
    return [*(Stroke(one, pen) for path, pen in lines for one in (path, mirrored(path))),
            Stroke((Line(-bust.conjugate(), bust),), BODY), Stroke((Line(seen(o.bust_point), mark),), GUIDE),
            Stroke((Line(front.neck_centre, complex(0, o.front_point.imag)),), GUIDE, WORDS("body_depth"), "guide"),
            Stroke(cup, NEW), Stroke(mirrored(cup), NEW)]  # fmt: skip


def _notes(seen, mark, say):
    o = seen.o
    neck, start = o.block.front.neck_centre.imag, o.front_point.imag
    up = paths.path_length((*o.armscye_cup_part, *o.armscye_low_part))
    bust = seen(complex(o.block.front.width, o.bust_point.imag))
    return (
        Note(mark, WORDS("body_note_edge", away=say(o.top_radius))),
        Note(seen(o.armscye_top), WORDS("body_note_end", up=say(up))),
        Note(complex(0, (neck + start) / 2), WORDS("body_note_begin", below=say(neck - start)), True),
        Note(-bust.conjugate(), SHARED("bust_level"), True),
        Note(_half_at(seen, "waist_girth") + 0j, SHARED("waist")),
    )


def edge_over(o):
    """Where the top edge passes over the breast once the tightening dart's legs are sewn together, on the paper."""
    return o.bust_point + step_of(o.mark - o.bust_point) * o.top_radius


def _body(seen, m):
    """The right half of the body's contour, from the neck down, as runs end to end."""
    o, front = seen.o, seen.o.block.front
    side, tip, neck = front.neck_side, front.shoulder_tip, 0.8 * front.neck_side.real
    above = smooth(complex(neck, side.imag + _NECK), complex(neck, side.imag + 2.2),
                   complex(0.9 * side.real, side.imag + 0.7), between(side, tip, 0.08), between(side, tip, 0.3),
                   tip)  # fmt: skip
    waist, hip = _half_at(seen, "waist_girth"), _half_at(seen, "hip_girth")
    low = waist + (hip - waist) * _BELOW_WAIST / m.waist_to_hip
    trunk = smooth(
        seen(front.underarm),
        complex(seen.half, o.bust_point.imag),
        complex(_half_at(seen, "underbust_girth"), o.underbust.level),
        waist + 0j,
        complex(low, -_BELOW_WAIST),
    )
    return above, seen.run(front.armscye), trunk


def _closed(body):
    """Both halves of the body as one closed run."""
    half = tuple(curve for path in body for curve in path)
    start, end = half[0].start, half[-1].end
    return (*half, Line(end, -end.conjugate()), *mirrored(half), Line(-start.conjugate(), start))


def _half_at(seen, girth):
    """Half the body's width where it has that girth, for the oval of the bust grown or shrunk alike."""
    m = seen.o.block.measurements
    return seen.half * getattr(m, girth) / m.bust_girth


@cache
def _oval():
    """Lengths along a quarter of an oval of half width one, from its front on, at even steps of its own angle."""
    steps, total, lengths = 120, 0.0, [0.0]
    for i in range(steps):
        angle = math.pi / 2 * (i + 0.5) / steps
        total += math.hypot(math.cos(angle), DEPTH * math.sin(angle)) * math.pi / 2 / steps
        lengths.append(total)
    return tuple(lengths)


def _across(length):
    """How far from the middle a point is seen that lies `length` along an oval of half width one."""
    lengths = _oval()
    at = min(max(bisect_left(lengths, length), 1), len(lengths) - 1)
    share = min(1.0, (length - lengths[at - 1]) / (lengths[at] - lengths[at - 1]))
    return math.sin(math.pi / 2 * (at - 1 + share) / (len(lengths) - 1))


def _on_nodes(angle, nodes):
    """Where an angle comes to lie, evenly between the nodes (before, after)."""
    for (a, to_a), (b, to_b) in zip(nodes, nodes[1:]):
        if angle <= b:
            return to_a + (to_b - to_a) * (angle - a) / (b - a) if b > a else to_b
    return angle
