"""The tightening dart closed by turning the cup's outer half about the bust point, and the centre front taken in."""

from dataclasses import dataclass
from functools import cached_property

from ..geometry import path
from ..geometry.curve import Line
from ..geometry.move import turned_about
from ..geometry.points import between
from ..units import say_length, say_number
from .close_up import SEEN, Note, Patch, Stroke, close_up, whole
from .cup_guides import TINT, cup_halves, front_paper
from .drawn import Spot
from .pens import BEFORE, BODY, GRAPHITE, GUIDE, NEW, Pen

FLAT = Pen("flat", 0.3, GRAPHITE, (1.1, 0.8))
_BELOW = 3.0


@dataclass(frozen=True)
class Pulled:
    """The cup with `share` of its tightening dart closed; lengths in cm, of one cup."""

    overbust: object
    share: float

    @cached_property
    def turn(self):
        """The rigid move of the outer half."""
        return turned_about(self.overbust.bust_point, self.degrees)

    @property
    def degrees(self):
        return self.share * self.overbust.top_dart

    @cached_property
    def gap(self):
        """What is left open between the dart's legs at the overbust line."""
        return abs(self.turn(self.overbust.top_right) - self.overbust.top_left)

    @cached_property
    def sewn_edge(self):
        """The top edge from the cups' front point to the armscye, dart closed."""
        return path.run_length((*self.overbust.top_inner, *self.overbust.top_outer))

    @property
    def taken_in(self):
        return self.overbust.front_point.real

    @cached_property
    def flat_edge(self):
        """The same edge, from the straight centre front, on paper in which nothing is taken up."""
        return self.taken_in + self.sewn_edge + self.overbust.top_intake

    @property
    def edge_now(self):
        """The edge as it is pulled now, from the straight centre front less what is taken in."""
        return self.sewn_edge + self.gap

    @cached_property
    def opened(self):
        """How wide the underbust dart stands at its mark once the outer half has turned."""
        under = self.overbust.underbust
        return abs(self.turn(under.outer) - under.inner)


def pulled_sheet(steps, share, unit, title):
    """The sheet: the flat cup broken, the pulled one over it."""
    o = steps.overbust
    pulled, point, front = Pulled(o, share), o.bust_point, o.block.front
    say = lambda cm: whole(say_length(cm, unit))  # noqa: E731
    inner, outer = cup_halves(o)
    # The sheet has room for the dart wholly closed, so that it stands still while the dart closes.
    closed = path.flattened(path.moved(outer, Pulled(o, 1.0).turn), 0.1)
    low, high = point.imag - o.underbust.radius - _BELOW, max(o.front_point.imag, *(p.imag for p in closed)) + 2.0
    turned = path.moved(outer, pulled.turn)
    top_outer = path.moved(o.top_outer, pulled.turn)
    strokes = [*(Stroke(run, BEFORE, name) for name, run in front_paper(o, low, high)),
               Stroke((Line(1j * point.imag, complex(front.width, point.imag)),), BODY, "bust level", "body"),
               Stroke(outer, FLAT, "outer half, flat"), Stroke(inner, BEFORE), Stroke(turned, BEFORE),
               Stroke((Line(_down_to(front.neck_centre, o.front_point, high), o.front_point),), NEW,
                      "centre front, taken in", "new", 3),
               Stroke((Line(complex(0, o.front_point.imag), o.front_point),), GUIDE, "taken in at the centre front",
                      "guide"),
               Stroke(o.top_inner, NEW, "top edge, inner half", "new", 3),
               Stroke(top_outer, NEW, "top edge, outer half", "new", 3)]
    notes = [Note(o.front_point / 2 + 0.5j * o.front_point.imag, f"taken in: {say(pulled.taken_in)}", True),
             Note(path.point_along(o.top_inner, path.run_length(o.top_inner) * 0.45),
                  f"top edge, inner half: {say(path.run_length(o.top_inner))}", True),
             Note(path.point_along(top_outer, path.run_length(top_outer) * 0.6),
                  f"top edge, outer half: {say(path.run_length(top_outer))}")]
    open_top, open_low = pulled.turn(o.top_right), pulled.turn(o.underbust.outer)
    if pulled.gap > 0.05:
        strokes.append(Stroke((Line(o.top_left, open_top),), GUIDE, "still open in the top edge", "guide"))
        notes.append(Note(between(o.top_left, open_top, 0.5), f"still open: {say(pulled.gap)}"))
    strokes.append(Stroke((Line(o.underbust.inner, open_low),), GUIDE, "underbust dart at its mark", "guide"))
    notes.append(Note(between(o.underbust.inner, open_low, 0.6), f"underbust dart: {say(pulled.opened)}"))
    spots = (Spot(point, "bust point", "before"),)
    box = (-0.6, low - 0.2, front.width + 0.6, high + 0.2)
    key = ((NEW, "top edge as pulled"), (FLAT, "outer half, flat"), (GUIDE, "measured"))
    said = (f"{title}. The outer half of the cup is turned by {say_number(pulled.degrees, 1)} of the dart's "
            f"{say_number(o.top_dart, 1)} degrees about the bust point.")
    return close_up(title, said, box, (box[3] - box[1]) / SEEN, unit, [Patch(inner, TINT), Patch(turned, TINT)],
                    strokes, spots, notes, key)


def _down_to(start, end, level):
    """The point at which the way from `start` down to `end` passes the level, or `start` where it begins lower."""
    return start if start.imag <= level else between(start, end, (start.imag - level) / (start.imag - end.imag))
