"""Lesson 06, the three-part cup: the tightening dart is closed instead of cut, and an upper cup is cut off across."""

from dataclasses import dataclass, replace

from corsetkit.drawing.svg import svg_text
from corsetkit.geometry import paths
from corsetkit.geometry.move import turned_about
from corsetkit.geometry.points import turn_between
from corsetkit.quantity import declared, quantities
from corsetkit.style import Style
from corsetkit.teaching.guess import Asked
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.play import Panel
from corsetkit.teaching.shared.cup_sheet import three_cups_sheet
from corsetkit.teaching.shared.cup_words import three_part_words
from corsetkit.teaching.shared.cups_lifted import (
    APART_MOST,
    cup_seams,
    cups_beside,
    cups_lifted,
    cups_of,
    gap_above,
    gap_below,
)
from corsetkit.teaching.shared.pattern_said import rounded_each
from corsetkit.teaching.shared.seam_walk import LONGEST, Seam, ending, kept_draft, walk_picture
from corsetkit.teaching.step_lesson import StepLesson, style_of
from corsetkit.units import CM_PER_INCH, Say, say_length, say_number
from corsetkit.words import words_of

WORDS = words_of("06_three_part_cup")
SHARED = words_of("shared")


def compared(two, three, unit):
    """Sentences on two patterns of one wearer: the one's cup has two parts, the other's three."""
    say = Say(unit)
    left = [say_number(pattern.steps.cup.seam.fullness_left, 1) for pattern in (two, three)]
    across = say_number(360 - corners_at_the_crossing(three.steps.cup), 1)
    return (
        WORDS("compared_both", two=_counted(two, say), three=_counted(three, say), rounded=rounded_each(unit)),
        WORDS("compared_fullness", two=left[0], three=left[1], across=across),
        WORDS("compared_bend", two=say(two.steps.cup.seam.radius), three=say(three.steps.cup.seam.radius)),
    )


def corners_at_the_crossing(cup):
    """The corners of the upper and both lower cups where the cut crosses the cup seam, together: 360 lie flat.

    `cup` is a `ThreePartCup`.
    """
    inner, outer = cup.seam.inner_blend.before[0].tangent(0.0), cup.seam.outer_blend.before[0].tangent(0.0)
    to_front, to_armscye = -cup.cut_inner[-1].tangent(1.0), cup.cut_outer[0].tangent(0.0)
    opened = cup.close_top.inverse.turn
    upper = turn_between(to_armscye, to_front) % 360
    return upper + turn_between(to_front, inner) % 360 + turn_between(outer, to_armscye * opened) % 360


def _counted(pattern, say):
    seams = cup_seams(pattern)
    sewn = sum(seam.lengths[0] for seam in seams)
    return WORDS.counted("compared_seams", len(seams), pieces=len(cups_of(pattern)), length=say(sewn))


CUP_SEAM, CUT, UNDERBUST = "cup seam", "cut across", "underbust line"


@dataclass(frozen=True)
class Lifted:
    """How the pieces of paper lie."""

    swing_the_outer_cup_up: float = declared(WORDS("swing_control"), unit="degrees", low=0, high=90, step=1, default=0)
    apart: float = declared(WORDS("apart_control"), unit="cm", low=0, high=APART_MOST, step=CM_PER_INCH / 8, default=0)


@dataclass(frozen=True)
class Walked:
    """Which seam is walked, and how far."""

    seam: str = declared(
        WORDS("walk_which"),
        unit="choice",
        choices=(CUP_SEAM, CUT, UNDERBUST),
        default=CUT,
        choice_words=("cup", "across", "underbust"),
    )
    walked: float = declared(WORDS("walk_control"), unit="cm", low=0, high=LONGEST, step=0.125, default=4 * CM_PER_INCH)


class ThreePartCupLesson(StepLesson):
    name = "06_three_part_cup"
    step = "three_part_cup"
    title = "Three-part cup"
    fixed = {"cup_parts": 3}
    panels = (Panel(WORDS("ask_drawing"), ("cut_depth", "cut_at_front", "cup_seam_roundness")),)

    def apart(self):
        """The three cups as paper: the outer lower one swung until the cut closes, all lifted apart."""
        panel = Panel(WORDS("ask_apart"), ("swing_the_outer_cup_up", "apart"))
        swung, apart = quantities(Lifted)

        def own(desk, kept):
            steps = kept.of({**desk.record.style, **self.fixed})[1].steps
            return replace(swung, high=round(gap_above(steps) + 0.05, 1)), apart

        return self.drawn("apart", (panel,), kept_draft, self._apart_picture, own=own, declared=(swung, apart))

    def walk(self):
        """The cups' seams, walked."""
        panel = Panel(WORDS("ask_walk"), ("seam", "walked"))
        seam, walked = quantities(Walked)

        def own(desk, kept):
            pattern = kept.of({**desk.record.style, **self.fixed})[1]
            return seam, ending(walked, max(one.seam.lengths[0] for one in _seams(pattern).values()), desk.record.unit)

        return self.drawn("walk", (panel,), kept_draft, self._walk_picture, own=own, declared=(seam, walked))

    def two_or_three(self):
        """Both cups of the wearer, side by side."""
        names = ("cut_depth", "cut_at_front")
        panel = Panel(WORDS("ask_two_or_three"), names)
        return self.drawn(
            "two_or_three", (panel,), _Both, _Both.picture, tuple(one for one in self.offered() if one.name in names)
        )

    def _apart_picture(self, kept, values):
        style = {**values, **self.fixed}
        lifted = Lifted(**{one.name: style.pop(one.name, one.default) for one in quantities(Lifted)})
        name, pattern = kept.of(style)
        unit, steps = kept.drafts.desk.record.unit, pattern.steps
        swung = min(lifted.swing_the_outer_cup_up, gap_above(steps))
        sheet = cups_lifted(pattern, lifted.apart, swung, unit, WORDS("apart_title", name=name))
        return Picture(svg_text(sheet), sheet.description, tuple(_apart_said(steps, swung, unit)))

    def _walk_picture(self, kept, values):
        style = {**values, **self.fixed}
        asked = Walked(**{one.name: style.pop(one.name, one.default) for one in quantities(Walked)})
        name, pattern = kept.of(style)
        return walk_picture(name, pattern, _seams(pattern)[asked.seam], asked.walked, kept.drafts.desk.record.unit)

    def _sheet(self, steps, unit, title, more=()):
        return three_cups_sheet(steps, unit, title, more)

    def _words(self, steps):
        return three_part_words(steps)

    def _said(self, steps, unit):
        cup, point = steps.three_part_cup, steps.darts.overbust.bust_point
        say = Say(unit)
        inner, outer = paths.path_length(cup.cut_inner), paths.path_length(cup.cut_outer)
        return (
            WORDS("cut_long", whole=say(inner + outer), inner=say(inner), outer=say(outer)),
            WORDS("cut_crosses", above=say(abs(paths.path_end(cup.cut_inner) - point))),
            WORDS("cut_ends", front=say(paths.path_length(cup.upper_centre)), side=say(paths.path_length(cup.armscye_upper))),
            WORDS("seam_long", inner=say(paths.path_length(cup.seam.inner)), outer=say(paths.path_length(cup.seam.outer))),
            WORDS("dart_closed", angle=say_number(gap_above(steps), 1)),
        )

    def _asked(self, name, steps, unit, drafts):
        above, below = gap_above(steps), gap_below(steps)
        _, pattern = drafts.of(style_of(steps))

        def move(part):
            sheet = cups_lifted(pattern, 0.0, above * part, unit, WORDS("guess_title", title=self.title, name=name))
            return Picture(svg_text(sheet), sheet.description)

        return Asked(
            WORDS("guess_question", above=say_number(above, 1), below=say_number(below, 1)),
            WORDS("guess_label"),
            "degrees",
            below,
            _below_when_closed(steps),
            3.0,
            ((above, WORDS("slip_above")), (below, WORDS("slip_below")), (abs(above - below), WORDS("slip_difference"))),
            WORDS("guess_why"),
            move,
        )

    def _tape(self, steps, unit):
        cup = steps.three_part_cup
        say = Say(unit)
        inner, outer = paths.path_length(cup.cut_inner), paths.path_length(cup.cut_outer)
        return (
            WORDS("tape_upper", inner=say(inner), whole=say(inner + outer)),
            WORDS("tape_lower", inner=say(inner), outer=say(outer)),
        )


def _below_when_closed(steps):
    """Degrees between the lower legs once the outer cup is swung up, measured on the points so moved."""
    point, below = steps.darts.overbust.bust_point, steps.underbust
    swing = turned_about(point, gap_above(steps))
    return turn_between(below.inner - point, swing(below.outer) - point)


def _seams(pattern):
    """The seams that can be walked, by the names of the choice."""
    through, across = cup_seams(pattern)
    upper, *_ = cups_of(pattern)
    under = next(edge.seam for edge in upper.edges if edge.seam and len(edge.seam.sides[0]) > 2)
    notch = pattern.steps.cup.seam.to_bust_point
    return {
        CUP_SEAM: Seam(through, CUP_SEAM, ((notch, SHARED("bust_point")),)),
        CUT: Seam(across, CUT, ()),
        UNDERBUST: Seam(under, UNDERBUST, ()),
    }


def _apart_said(steps, swung, unit):
    above, below = gap_above(steps) - swung, gap_below(steps) + swung
    cut = paths.path_length((*steps.three_part_cup.cut_inner, *steps.three_part_cup.cut_outer))
    yield WORDS("apart_gaps", above=say_number(above, 1), below=say_number(below, 1), both=say_number(above + below, 1))
    yield WORDS("apart_closed", cut=say_length(cut, unit)) if above < 0.05 else WORDS("apart_open")
    yield WORDS("apart_takes_nothing")


class _Both:
    """The wearer's cup of two parts and her cup of three."""

    def __init__(self, desk):
        self.two, self.three = kept_draft(desk), kept_draft(desk)
        self.own = {one.name for one in quantities(Style) if one.only == ("cup_parts", 3)}

    def picture(self, style):
        # What belongs to the cut across alone does not bear on the two parts, so they are not drafted anew for it.
        name, two = self.two.of({**{one: value for one, value in style.items() if one not in self.own}, "cup_parts": 2})
        _, three = self.three.of({**style, "cup_parts": 3})
        unit = self.three.drafts.desk.record.unit
        sheet = cups_beside(two, three, unit, WORDS("compared_title", name=name))
        return Picture(svg_text(sheet), sheet.description, compared(two, three, unit), three.steps.three_part_cup.warnings)


LESSON = ThreePartCupLesson()
