"""Lesson 03, overbust: how high the cup reaches, its outline, and how its top edge is kept tight."""

import math

from corsetkit.drawing.step_sheet import Drawn, Spot
from corsetkit.drawing.svg import svg_text
from corsetkit.errors import CorsetkitError, sentence
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.geometry.points import unit as step_of
from corsetkit.quantity import quantities
from corsetkit.teaching.cells import Drafts
from corsetkit.teaching.guess import Asked
from corsetkit.teaching.lessons.overbust.overbust_sheet import overbust_sheet
from corsetkit.teaching.lessons.overbust.pictures import (
    COVERING,
    Pulling,
    asking,
    body_picture,
    depth_said,
    guides_picture,
    pulled_picture,
)
from corsetkit.teaching.lessons.overbust.quarrel import quarrel
from corsetkit.teaching.picture import Picture, Stored
from corsetkit.teaching.play import Panel
from corsetkit.teaching.shared.clipping import arc
from corsetkit.teaching.shared.cup_guides import cup_outline, dart_sheet
from corsetkit.teaching.shared.vignette import vignette
from corsetkit.teaching.step_lesson import StepLesson, style_of
from corsetkit.teaching.word_cards import Word
from corsetkit.units import CM_PER_INCH, Say, say_number


def overbust_words(steps):
    """The words of lesson 03, drawn from `steps`."""
    o, front = steps.overbust, steps.block.front
    point, mid = o.bust_point, o.mid_shoulder
    paper = Drawn(steps.block.front_paper, "before")
    under = [paper, *(Drawn(path, "before") for path in (o.top_inner, o.top_outer, o.under_inner, o.under_outer))]
    dart = [Drawn((Line(mid, end), Line(end, point)), "new") for end in (o.top_left, o.top_right)]
    here = Spot(point, "bust point", "before")
    upper = (-2, point.imag - 11, front.width + 3, front.neck_side.imag + 2)
    near = (-2, point.imag - 11, front.width + 3, point.imag + 13)
    centre = (-3, point.imag - 4, 13, front.neck_centre.imag + 1)
    return (
        Word("overbust mark", "how high the cup reaches, measured from the bust point towards the middle of the shoulder",
             vignette("Overbust mark", "a mark above the bust point on the way to the middle of the shoulder.",
                      [*under, Drawn((Line(point, o.mark),), "new"), Drawn((Line(o.mark, mid),), "guide")], upper,
                      (here, Spot(o.mark, "overbust mark")))),
        Word("overbust line", "the cup's upper edge, from the centre front over the breast to the armscye",
             vignette("Overbust line", "the cup's upper edge drawn strongly.",
                      [*under, Drawn(o.top_inner, "new"), Drawn(o.top_outer, "new")], near)),
        Word("tightening dart", "a dart above the bust point; sewn, it shortens the upper edge so that it lies close",
             vignette("Tightening dart", "a long narrow wedge from the bust point to the middle of the shoulder.",
                      [*under, Drawn(o.waste[3].outline, "waste"), *dart], upper)),
        Word("taking in", "drawing a seam inwards, so that the cloth becomes narrower there",
             vignette("Taking in", "the centre front drawn inwards where the cups begin.",
                      [*under, Drawn(o.waste[1].outline, "waste"), Drawn((Line(front.neck_centre, o.front_point),), "new")],
                      centre, (Spot(o.front_point, "taken in"),))),
        Word("guide", "a fixed length that is handed on as a custom and used for every body alike",
             vignette("Guide", "a circle of fixed size about the bust point.",
                      [*under, Drawn(arc(point, point + steps.style.overbust_mark, 360), "new")], near, (here,))),
        Word("yoke", "the piece above the cups; it covers chest and shoulder and holds the cups up",
             vignette("Yoke", "the piece between the overbust line and the shoulder.",
                      [paper, Drawn(cup_outline(o), "before"), Drawn(_yoke(o), "new")], upper)),
    )  # fmt: skip


def _yoke(o):
    """The yoke's border on the block, its dart open."""
    front, mid = o.block.front, o.mid_shoulder
    dart = (Line(o.top_left, mid), Line(mid, o.top_right))
    return (
        Line(front.neck_centre, o.front_point),
        *o.top_inner,
        *dart,
        *o.top_outer,
        *paths.turned_round(o.armscye_shoulder_part),
        Line(front.shoulder_tip, o.yoke_neck),
        *o.yoke_neckline,
    )


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
        panel = Panel(
            "Which guides can be kept on this body, and which must give way?", ("which_way", "bust_point_width", "least_strip")
        )
        # The way is chosen here for this drawing alone.
        offered = tuple(one for one in self.offered() if one.name != "method")
        return self.drawn(
            "guides",
            (panel,),
            _two,
            lambda drafts, values: guides_picture(*drafts, values),
            offered,
            lambda desk, drafts: asking(desk),
        )

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
        say = Say(unit)
        inner, outer = paths.path_length(o.top_inner), paths.path_length(o.top_outer)
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

        say = Say(unit)
        start, right = _width_at(o, place), _width_at(at(other).overbust, place)
        raised = other > mark
        rule = (
            "By this course's rule (course convention)"
            if steps.style.to_the_wearer
            else "By the guides (common practice, no source)"
        )
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
        say = Say(unit)
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
