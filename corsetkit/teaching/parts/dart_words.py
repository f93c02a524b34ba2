"""The words of lesson 04, drawn on one wearer's darts."""

from corsetkit.geometry import path
from corsetkit.geometry.curve import Line
from corsetkit.showing.lessons.arcs import arc
from corsetkit.showing.drawn import Drawn, Spot
from corsetkit.showing.lessons.front_parts import INNER_LOWER, INNER_UPPER, front_parts
from corsetkit.showing.lessons.vignette import vignette
from corsetkit.teaching.word_cards import Word


def dart_words(steps):
    """The `Word`s to know before darts are closed."""
    darts, over, front = steps.darts, steps.overbust, front_parts(steps)
    point, line, close = front.point, darts.inner, darts.inner.close
    part = front.parts[INNER_UPPER]
    turned = Drawn(path.moved(part.outline, close), "new")
    as_drawn = [Drawn(one.outline, "before") for one in front.parts]
    around = (-2.0, point.imag - 4.5, point.real + 6.5, point.imag + 10.5)
    swing = [Drawn(arc(point, corner, over.front_dart), "guide")
             for corner in (over.front_point, over.top_left, over.dart_upper)]
    at = line.leg_lower
    across = (at.real - 2.6, at.imag - 3.0, at.real + 3.4, at.imag + 2.6)
    leg = Drawn((Line(at - 2.0, point),), "before")
    broken = (path.moved(line.moving, close), line.still)
    return (
        Word("closing a dart", "laying one leg of the dart on the other, so that its wedge is gone from the paper",
             vignette("Closing a dart", "the paper above the centre-front dart, turned down on to the dart's lower leg",
                      [*as_drawn, turned], around)),
        Word("turn about a point", "a pin holds the paper at that point, and the paper swings round it without slipping",
             vignette("Turn about a point", "a pin in the bust point, and the arcs on which the corners swing round it",
                      [Drawn(part.outline, "before"), *swing, turned], around, (Spot(point, "pin"),))),
        Word("step", "the place where a line stops on one leg of a closed dart and goes on beside it on the other",
             vignette("Step", "the underbust line, broken where the closed dart crosses it",
                      [leg, *(Drawn(one, "new") for one in broken)], across)),
        Word("to redraw", "to draw one smooth line over the step, leaving and meeting the old line where it is sound",
             vignette("To redraw", "one smooth line over the broken one",
                      [leg, *(Drawn(one, "before") for one in broken), Drawn(line.line, "new")], across)),
        Word("V at the centre front", "the notch left open where the corner above a closed dart has swung off the centre",
             vignette("V at the centre front", "the slanting edge between the turned corner and the straight centre front",
                      [Drawn(front.parts[INNER_LOWER].outline, "before"), Drawn(turned.run, "before"),
                       Drawn((Line(darts.front_point, over.dart_lower),), "new")],
                      (-2.5, over.dart_lower.imag - 4.0, 5.5, over.dart_lower.imag + 4.5))),
    )  # fmt: skip
