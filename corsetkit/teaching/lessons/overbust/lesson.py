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
from corsetkit.teaching.shared.vignette import card
from corsetkit.teaching.step_lesson import StepLesson, style_of
from corsetkit.units import CM_PER_INCH, Say, say_number
from corsetkit.words import words_of

WORDS = words_of("03_overbust")
SHARED = words_of("shared")


def overbust_words(steps):
    """The words of lesson 03, drawn from `steps`."""
    o, front = steps.overbust, steps.block.front
    point, mid = o.bust_point, o.mid_shoulder
    paper = Drawn(steps.block.front_paper, "before")
    under = [paper, *(Drawn(path, "before") for path in (o.top_inner, o.top_outer, o.under_inner, o.under_outer))]
    dart = [Drawn((Line(mid, end), Line(end, point)), "new") for end in (o.top_left, o.top_right)]
    here = Spot(point, SHARED("bust_point"), "before")
    upper = (-2, point.imag - 11, front.width + 3, front.neck_side.imag + 2)
    near = (-2, point.imag - 11, front.width + 3, point.imag + 13)
    centre = (-3, point.imag - 4, 13, front.neck_centre.imag + 1)
    return (
        card(
            WORDS,
            "mark",
            [*under, Drawn((Line(point, o.mark),), "new"), Drawn((Line(o.mark, mid),), "guide")],
            upper,
            (here, Spot(o.mark, WORDS("mark"))),
        ),
        card(WORDS, "line", [*under, Drawn(o.top_inner, "new"), Drawn(o.top_outer, "new")], near),
        card(WORDS, "tightening", [*under, Drawn(o.tightening_dart_waste.outline, "waste"), *dart], upper),
        card(
            WORDS,
            "taking_in",
            [*under, Drawn(o.centre_front_waste.outline, "waste"), Drawn((Line(front.neck_centre, o.front_point),), "new")],
            centre,
            (Spot(o.front_point, WORDS("taken_in")),),
        ),
        card(WORDS, "guide", [*under, Drawn(arc(point, point + steps.style.overbust_mark, 360), "new")], near, (here,)),
        card(WORDS, "yoke", [paper, Drawn(cup_outline(o), "before"), Drawn(_yoke(o), "new")], upper),
    )


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


class OverbustLesson(StepLesson):
    name = "03_overbust"
    step = "overbust"
    panels = (Panel(WORDS("ask_covering"), ("overbust_mark", "centre_front_dart", "centre_front_depth")),)

    def on_body(self):
        """The cups on the body, and how much they cover."""
        panel = Panel(WORDS("ask_on_body"), COVERING)
        return self.drawn("on_body", (panel,), _two, lambda drafts, values: body_picture(*drafts, values), self.offered())

    def guides(self):
        """The cup's outline beside the guides."""
        panel = Panel(WORDS("ask_guides"), ("which_method", "bust_point_width", "least_strip"))
        # The method is chosen here for this drawing alone.
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
        panel = Panel(WORDS("ask_pulled"), ("dart_closed", "centre_taken_in"))
        return self.drawn("pulled", (panel,), Drafts, pulled_picture, self.offered(), declared=quantities(Pulling))

    def quarrel(self):
        """For which bodies the guides contradict each other."""
        return self._to_read("quarrel", WORDS("quarrel_title"), lambda desk, drafts: _quarrel_read(desk))

    def _sheet(self, steps, unit, title, more=()):
        return overbust_sheet(steps, unit, title, more)

    def _words(self, steps):
        return overbust_words(steps)

    def _said(self, steps, unit):
        o, front = steps.overbust, steps.block.front
        say = Say(unit)
        inner, outer = paths.path_length(o.top_inner), paths.path_length(o.top_outer)
        return (
            WORDS("mark_lies", away=say(abs(o.mark - o.bust_point))),
            WORDS("dart_takes", taken=say(o.top_intake), angle=say_number(o.top_dart, 1)),
            WORDS("line_long", inner=say(inner), outer=say(outer)),
            WORDS("cups_begin", below=say(front.neck_centre.imag - o.front_point.imag), taken=say(o.front_point.real)),
            *depth_said(steps, unit),
            WORDS("front_dart_takes", taken=say(abs(o.dart_upper - o.dart_lower)), angle=say_number(o.front_dart, 1)),
            WORDS("cup_leaves", front=say(o.guide_front.real), side=say(o.side_strip)),
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
            sheet = dart_sheet(now, (Line(*_legs_at(now.overbust, place)),), unit, WORDS("guess_title", name=name))
            return Picture(svg_text(sheet), sheet.description)

        say = Say(unit)
        start, right = _width_at(o, place), _width_at(at(other).overbust, place)
        raised = other > mark
        rule = WORDS("guess_rule_fitted" if steps.style.to_the_wearer else "guess_rule_guides")
        return Asked(
            WORDS(
                "guess_question",
                place=say(place),
                start=say(start),
                way=WORDS("guess_up" if raised else "guess_down"),
                mark=say(mark),
                other=say(other),
            ),
            WORDS("guess_label"),
            "cm",
            start,
            right,
            0.25 * abs(right - start) + 0.05,
            (*(((start, WORDS("guess_slip_left")),) if raised else ()), (start * start / right, WORDS("guess_slip_scaled"))),
            WORDS("guess_why", rule=rule, shape=WORDS("guess_why_raised" if raised else "guess_why_lowered")),
            move,
        )

    def _tape(self, steps, unit):
        o = steps.overbust
        say = Say(unit)
        return (
            WORDS("tape_legs", radius=say(o.top_radius)),
            WORDS("tape_fold"),
            WORDS("tape_strips", front=say(o.guide_front.real), side=say(o.side_strip), least=say(steps.style.least_strip)),
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
        words = sentence(WORDS("quarrel_nobody", error=error))
        return Stored(f"<p>{words}</p>", (words,))


LESSON = OverbustLesson()
