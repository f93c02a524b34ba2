"""The tightening dart closed by turning the cup's outer half about the bust point, and the centre front taken in."""

from dataclasses import dataclass
from functools import cached_property

from corsetkit.geometry import paths as path
from corsetkit.geometry.curve import Line
from corsetkit.geometry.move import turned_about
from corsetkit.geometry.points import between
from corsetkit.units import say_length, say_number
from corsetkit.showing.lessons.close_up import SEEN, Note, Patch, Stroke, close_up, whole
from corsetkit.showing.lessons.cup_guides import TINT, cup_halves, front_paper
from corsetkit.drawing.step_values import Spot
from corsetkit.drawing.pens import BEFORE, BODY, GRAPHITE, GUIDE, NEW, Pen

FLAT = Pen("flat", 0.3, GRAPHITE, (1.1, 0.8))
_BELOW = 3.0


@dataclass(frozen=True)
class Pulled:
    """The cup with `share` of its tightening dart closed and `drawn_in` of its taking-in drawn in at the centre front, each
    0 to 1; lengths in cm, of one cup."""

    overbust: object
    share: float
    drawn_in: float

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
    def taking_in(self):
        """What is taken in at the centre front in all."""
        return self.overbust.front_point.real

    @property
    def taken_in(self):
        """What is taken in there now."""
        return self.drawn_in * self.taking_in

    @property
    def edge_start(self):
        """Where the edge begins now, level with the cups' point: on the straight centre front, or drawn in from there."""
        return complex(self.taken_in, self.overbust.front_point.imag)

    @cached_property
    def flat_edge(self):
        """The same edge on flat paper: level from the straight centre front to the cups' point, on over the open dart."""
        return self.taking_in + self.sewn_edge + self.overbust.top_intake

    @property
    def edge_now(self):
        """The edge as it is pulled now: what is still open of the dart and not yet drawn in at the centre counts."""
        return self.sewn_edge + self.gap + self.taking_in - self.taken_in

    @cached_property
    def opened(self):
        """How wide the underbust dart stands at its mark once the outer half has turned."""
        under = self.overbust.underbust
        return abs(self.turn(under.outer) - under.inner)


def pulled_sheet(steps, share, drawn_in, unit, title):
    """The sheet: the flat cup broken, the pulled one over it."""
    o = steps.overbust
    pulled, point, front = Pulled(o, share, drawn_in), o.bust_point, o.block.front
    say = lambda cm: whole(say_length(cm, unit))  # noqa: E731
    inner, outer = cup_halves(o)
    # The sheet has room for the dart wholly closed, so that it stands still while the dart closes.
    closed = path.flattened(path.moved(outer, Pulled(o, 1.0, 0.0).turn), 0.1)
    low, high = point.imag - o.underbust.radius - _BELOW, max(o.front_point.imag, *(p.imag for p in closed)) + 2.0
    turned = path.moved(outer, pulled.turn)
    top_outer = path.moved(o.top_outer, pulled.turn)
    strokes = [*(Stroke(run, BEFORE, name) for name, run in front_paper(o, low, high)),
               Stroke((Line(1j * point.imag, complex(front.width, point.imag)),), BODY, "bust level", "body"),
               Stroke(outer, FLAT, "outer half, flat"), Stroke(inner, BEFORE), Stroke(turned, BEFORE),
               Stroke((Line(_down_to(front.neck_centre, pulled.edge_start, high), pulled.edge_start),), BEFORE,
                      "centre front, drawn in so far"),
               Stroke(o.top_inner, NEW, "top edge, inner half", "new", 3),
               Stroke(top_outer, NEW, "top edge, outer half", "new", 3)]
    if pulled.taking_in - pulled.taken_in > 0.05:
        strokes.append(Stroke((Line(pulled.edge_start, o.front_point),), NEW, "top edge, not drawn in yet", "new", 3))
    if pulled.taken_in > 0.05:
        strokes.append(Stroke((Line(1j * pulled.edge_start.imag, pulled.edge_start),), GUIDE, "taken in at the centre front",
                              "guide"))
    notes = [Note(pulled.edge_start, f"taken in: {say(pulled.taken_in)}", True),
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
            f"{say_number(o.top_dart, 1)} degrees about the bust point; at the centre front "
            f"{say_length(pulled.taken_in, unit)} of {say_length(pulled.taking_in, unit)} are taken in.")
    return close_up(title, said, box, (box[3] - box[1]) / SEEN, unit, [Patch(inner, TINT), Patch(turned, TINT)],
                    strokes, spots, notes, key)


def _down_to(start, end, level):
    """The point at which the way from `start` down to `end` passes the level, or `start` where it begins lower."""
    return start if start.imag <= level else between(start, end, (start.imag - level) / (start.imag - end.imag))
