"""Lesson 03, overbust: how high the cup reaches, its outline, and how its top edge is kept tight."""

import math

from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths as path
from corsetkit.geometry.curve import Line
from corsetkit.geometry.points import unit as step_of
from corsetkit.quantity import quantities
from corsetkit.showing.lessons.cup_guides import dart_sheet
from corsetkit.showing.lessons.overbust_sheet import overbust_sheet
from corsetkit.drawing.svg import svg_text
from corsetkit.teaching.course import Drafts
from corsetkit.teaching.guess import Asked
from corsetkit.teaching.parts.overbust_pictures import (
    COVERING,
    Pulling,
    asking,
    body_picture,
    depth_said,
    guides_picture,
    pulled_picture,
)
from corsetkit.teaching.parts.overbust_words import overbust_words
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.play import Panel
from corsetkit.teaching.parts.quarrel import quarrel
from corsetkit.teaching.step_lesson import StepLesson, style_of
from corsetkit.errors import sentence
from corsetkit.teaching.stored import Stored
from corsetkit.units import CM_PER_INCH, say_length, say_number

RAISED = CM_PER_INCH
"""By how much the guess raises the overbust mark, or lowers it where it is high already: course convention."""
HIGHEST = 3.5 * CM_PER_INCH
"""The highest overbust mark that is still raised, cm."""
HIGHER = "Laid off farther from the bust point, the same width makes a narrower wedge, and the higher cup comes out flatter."
LOWER = "Laid off nearer to the bust point, the same width makes a wider wedge, and the lower cup comes out rounder."


class OverbustLesson(StepLesson):
    name = "03_overbust"
    step = "overbust"
    panels = (
        Panel("Which lines follow when the cup covers more?", ("overbust_mark", "centre_front_dart", "centre_front_depth")),
    )  # fmt: skip

    def on_body(self):
        """The cups on the body, and how much they cover."""
        panel = Panel("How much does she want covered, and where does the edge then run?", COVERING)
        return self.drawn("on_body", (panel,), _two, lambda drafts, values: body_picture(*drafts, values), self.offered())

    def guides(self):
        """The cup's outline beside the guides."""
        panel = Panel("Which guides can be kept on this body, and which must give way?",
                      ("which_way", "bust_point_width", "least_strip"))
        # The way is chosen here for this drawing alone.
        offered = tuple(one for one in self.offered() if one.name != "way")
        return self.drawn("guides", (panel,), _two, lambda drafts, values: guides_picture(*drafts, values), offered,
                          lambda desk, drafts: asking(desk))

    def pulled(self):
        """What taking-in and tightening do to the top edge."""
        panel = Panel("By how much does the top edge become shorter?", ("dart_closed", "centre_taken_in"))
        return self.drawn("pulled", (panel,), Drafts, pulled_picture, self.offered(), declared=quantities(Pulling))

    def quarrel(self):
        """For which bodies the guides contradict each other."""
        return self._to_read("quarrel", "Which bodies the guides fit", lambda desk, drafts: _quarrel_read(desk))

    def _sheet(self, steps, unit, title, more=()):
        return overbust_sheet(steps, unit, title, more)

    def _words(self, steps):
        return overbust_words(steps)

    def _said(self, steps, unit):
        o, front = steps.overbust, steps.block.front
        say = lambda cm: say_length(cm, unit)  # noqa: E731
        inner, outer = path.run_length(o.top_inner), path.run_length(o.top_outer)
        return (
            f"The overbust mark lies {say(abs(o.mark - o.bust_point))} from the bust point, on the straight way to the "
            "middle of the shoulder.",
            f"There the tightening dart takes {say(o.top_intake)}; it opens {say_number(o.top_dart, 1)} degrees at the bust "
            "point.",
            f"The overbust line is {say(inner)} long before the dart and {say(outer)} behind it.",
            f"At the centre front the cups begin {say(front.neck_centre.imag - o.front_point.imag)} below the neck; "
            f"{say(o.front_point.real)} is taken in there.",
            *depth_said(steps, unit),
            f"The centre-front dart takes {say(abs(o.dart_upper - o.dart_lower))} and opens {say_number(o.front_dart, 1)} "
            "degrees.",
            f"At the bust level the cup leaves {say(o.guide_front.real)} to the centre front and {say(o.side_strip)} to the "
            "side seam.",
        )

    def _asked(self, name, steps, unit, drafts):
        o, style = steps.overbust, style_of(steps)
        mark = steps.style.overbust_mark
        other = mark + RAISED if mark <= HIGHEST else mark - RAISED
        place = min(mark, other)

        def at(value):
            return drafts.steps({**style, "overbust_mark": value}, self.step)[1]

        def move(part):
            now = at(mark + (other - mark) * part)
            sheet = dart_sheet(now, (Line(*_legs_at(now.overbust, place)),), unit, f"The tightening dart of {name}")
            return Picture(svg_text(sheet), sheet.description)

        say = lambda cm: say_length(cm, unit)  # noqa: E731
        start, right = _width_at(o, place), _width_at(at(other).overbust, place)
        raised = other > mark
        rule = ("By this course's rule (course convention)" if steps.style.to_the_wearer
                else "By the guides (common practice, no source)")
        return Asked(
            f"At {say(place)} from the bust point the tightening dart is {say(start)} wide. The overbust mark moves "
            f"{'up' if raised else 'down'} from {say(mark)} to {say(other)}. How wide is the dart then, at the same place?",
            "Width of the dart there", "cm", start, right, 0.25 * abs(right - start) + 0.05,
            (*(((start, "The dart still takes that much, but at its mark, and the mark has moved."),) if raised else ()),
             (start * start / right,
              "Perhaps you let the dart grow and shrink with the cup. What it takes at its mark stays the same.")),
            f"{rule}, what the dart takes at the mark does not depend on how high the mark lies. "
            f"{HIGHER if raised else LOWER} So the rule makes it; no body was measured for it.",
            move,
        )  # fmt: skip

    def _tape(self, steps, unit):
        o = steps.overbust
        say = lambda cm: say_length(cm, unit)  # noqa: E731
        return (
            f"From the bust point to the overbust line both legs of the tightening dart measure {say(o.top_radius)}.",
            "Fold the tightening dart closed: the two stretches of the overbust line should run into each other without a "
            "corner.",
            f"At the bust level the cup keeps {say(o.guide_front.real)} from the centre front and {say(o.side_strip)} from "
            f"the side seam; neither is less than {say(steps.style.least_strip)}.",
        )


def _two(desk):
    """Two drafts of one desk: one draws what is asked, the other what it is compared with."""
    return Drafts(desk), Drafts(desk)


def _legs_at(o, distance):
    """The points of the tightening dart's legs, drawn on straight, that far up the dart's own line from the bust point."""
    along = distance / math.cos(math.radians(o.top_dart / 2))
    return tuple(o.bust_point + along * step_of(leg - o.bust_point) for leg in (o.top_left, o.top_right))


def _width_at(o, distance):
    left, right = _legs_at(o, distance)
    return abs(right - left)


def _quarrel_read(desk):
    try:
        return quarrel(desk.demo.items(), desk.body(), desk.record.style, desk.record.unit)
    except CorsetkitError as error:
        words = sentence(f"Nothing to compare yet: the wearer's form is not finished; {error}")
        return Stored(f"<p>{words}</p>", (words,))


LESSON = OverbustLesson()
