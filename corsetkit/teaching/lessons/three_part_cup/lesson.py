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


def compared(two, three, unit):
    """Sentences on two patterns of one wearer: the one's cup has two parts, the other's three."""
    say = Say(unit)
    left = [say_number(pattern.steps.cup.seam.fullness_left, 1) for pattern in (two, three)]
    across = say_number(360 - corners_at_the_crossing(three.steps.cup), 1)
    off = [_cut_off(one, unit) for one in (two, three)]
    return (
        f"Two parts: {_counted(two, say)}. Three parts: {_counted(three, say)}. {rounded_each(unit)}",
        f"The angle taken out (we call it fullness): in the seam through the bust point {left[0]} degrees with two parts and "
        f"{left[1]} with three; in the cut across {across}.",
        f"The seam cuts the corner at the bust point off by {off[0]} with two parts, by {off[1]} with three (inner cup and "
        "outer cup).",
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
    pieces = len(cups_of(pattern))
    sewn = sum(seam.lengths[0] for seam in seams)
    return f"{pieces} pieces, {len(seams)} {'seam' if len(seams) == 1 else 'seams'} between them, {say(sewn)} to sew"


def _cut_off(pattern, unit):
    seam, point = pattern.steps.cup.seam, pattern.steps.darts.overbust.bust_point
    return " and ".join(
        say_length(abs(paths.point_along(path, seam.to_bust_point) - point), unit, part=32)
        for path in (seam.inner, seam.outer)
    )


CUP_SEAM, CUT, UNDERBUST = "cup seam", "cut across", "underbust line"


@dataclass(frozen=True)
class Lifted:
    """How the pieces of paper lie."""

    swing_the_outer_cup_up: float = declared(
        "how far the outer lower cup is swung up about the bust point, until the cut's edges meet",
        unit="degrees",
        low=0,
        high=90,
        step=1,
        default=0,
    )
    apart: float = declared(
        "how far the cups are lifted apart: at nothing they lie as they were drawn",
        unit="cm",
        low=0,
        high=APART_MOST,
        step=CM_PER_INCH / 8,
        default=0,
    )


@dataclass(frozen=True)
class Walked:
    """Which seam is walked, and how far."""

    seam: str = declared(
        "which is walked: cup seam, cut across, or underbust line",
        unit="choice",
        choices=(CUP_SEAM, CUT, UNDERBUST),
        default=CUT,
        choice_words=("cup", "across", "underbust"),
    )
    walked: float = declared(
        "how far from its start the seam is walked; the slider is as long as the longest of the three",
        unit="cm",
        low=0,
        high=LONGEST,
        step=0.125,
        default=4 * CM_PER_INCH,
    )


class ThreePartCupLesson(StepLesson):
    name = "06_three_part_cup"
    step = "three_part_cup"
    title = "Three-part cup"
    fixed = {"cup_parts": 3}
    panels = (
        Panel("Where does the upper cup end, and how near does the cut come to the bust point?",
              ("cut_depth", "cut_at_front", "cup_seam_roundness")),
    )  # fmt: skip

    def apart(self):
        """The three cups as paper: the outer lower one swung until the cut closes, all lifted apart."""
        panel = Panel("Which edges can meet while the paper lies flat, and where does a gap stay open?",
                      ("swing_the_outer_cup_up", "apart"))  # fmt: skip
        swung, apart = quantities(Lifted)

        def own(desk, kept):
            steps = kept.of({**desk.record.style, **self.fixed})[1].steps
            return replace(swung, high=round(gap_above(steps) + 0.05, 1)), apart

        return self.drawn("apart", (panel,), kept_draft, self._apart_picture, own=own, declared=(swung, apart))

    def walk(self):
        """The cups' seams, walked."""
        panel = Panel("Which piece must turn while it is laid along the other, and which need not?",
                      ("seam", "walked"))  # fmt: skip
        seam, walked = quantities(Walked)

        def own(desk, kept):
            pattern = kept.of({**desk.record.style, **self.fixed})[1]
            return seam, ending(walked, max(one.seam.lengths[0] for one in _seams(pattern).values()), desk.record.unit)

        return self.drawn("walk", (panel,), kept_draft, self._walk_picture, own=own, declared=(seam, walked))

    def two_or_three(self):
        """Both cups of the wearer, side by side."""
        names = ("cut_depth", "cut_at_front")
        panel = Panel("What changes when the cut is moved, and what stays as it is?", names)
        return self.drawn(
            "two_or_three", (panel,), _Both, _Both.picture, tuple(one for one in self.offered() if one.name in names)
        )

    def _apart_picture(self, kept, values):
        style = {**values, **self.fixed}
        lifted = Lifted(**{one.name: style.pop(one.name, one.default) for one in quantities(Lifted)})
        name, pattern = kept.of(style)
        unit, steps = kept.drafts.desk.record.unit, pattern.steps
        swung = min(lifted.swing_the_outer_cup_up, gap_above(steps))
        sheet = cups_lifted(pattern, lifted.apart, swung, unit, f"Three parts, for {name}")
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
            f"The cut is {say(inner + outer)} long: {say(inner)} on the inner lower cup, {say(outer)} on the outer; the "
            "upper cup's lower edge is the same line.",
            f"It crosses the cup seam {say(abs(paths.path_end(cup.cut_inner) - point))} above the bust point.",
            f"It begins {say(paths.path_length(cup.upper_centre))} from the centre-front point along the underbust line and "
            f"ends {say(paths.path_length(cup.armscye_upper))} down the cup's armscye.",
            f"The lower cups' seam is {say(paths.path_length(cup.seam.inner))} long on the inner and "
            f"{say(paths.path_length(cup.seam.outer))} on the outer.",
            f"To close the tightening dart, the upper cup's outer part is turned through {say_number(gap_above(steps), 1)} "
            "degrees.",
        )

    def _asked(self, name, steps, unit, drafts):
        above, below = gap_above(steps), gap_below(steps)
        _, pattern = drafts.of(style_of(steps))

        def move(part):
            sheet = cups_lifted(pattern, 0.0, above * part, unit, f"{self.title} for {name}")
            return Picture(svg_text(sheet), sheet.description)

        return Asked(
            f"The cups lie as they were drawn. Above the bust point they stand open by {say_number(above, 1)} degrees, "
            f"below it by {say_number(below, 1)}. The outer lower cup is swung up about the bust point, until its upper edge "
            "lies along the upper cup. How wide is the gap below the bust point then?",
            "Below the bust point the gap is then", "degrees", below, _below_when_closed(steps), 3.0,
            ((above, "that is what the gap above had; it is added to what was open below already"),
             (below, "the gap below seems to have nothing to do with the gap above; but one stiff piece lies between them"),
             (abs(above - below), "the one was taken from the other; the gap below gains what the gap above gives up")),
            "The outer cup is one stiff piece of paper. By as much as its upper leg comes nearer, its lower leg goes away. "
            "No cloth is gained or lost: both gaps together stay the same.",
            move,
        )  # fmt: skip

    def _tape(self, steps, unit):
        cup = steps.three_part_cup
        say = Say(unit)
        inner, outer = paths.path_length(cup.cut_inner), paths.path_length(cup.cut_outer)
        return (
            f"The upper cup's lower edge: {say(inner)} to the notch where the lower cups meet, {say(inner + outer)} in all.",
            f"The lower cups' upper edges: inner {say(inner)}, outer {say(outer)}, one after the other.",
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
        CUP_SEAM: Seam(through, CUP_SEAM, ((notch, "bust point"),)),
        CUT: Seam(across, CUT, ()),
        UNDERBUST: Seam(under, UNDERBUST, ()),
    }


def _apart_said(steps, swung, unit):
    above, below = gap_above(steps) - swung, gap_below(steps) + swung
    cut = paths.path_length((*steps.three_part_cup.cut_inner, *steps.three_part_cup.cut_outer))
    yield (
        f"The gap above the bust point: {say_number(above, 1)} degrees; the gap below it: {say_number(below, 1)}; "
        f"together {say_number(above + below, 1)}."
    )
    if above < 0.05:
        yield (
            f"The cut's edges lie on each other from end to end, {say_length(cut, unit)}, and the paper lies flat. So "
            "the upper cup can be cut in one piece."
        )
    else:
        yield "The outer lower cup's upper edge stands away from the upper cup; swing it up until they meet."
    yield (
        "The cut takes nothing away from the cup: it only parts the paper. All that makes the cup stand up is in the gap "
        "of the cup seam."
    )


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
        sheet = cups_beside(two, three, unit, f"Two or three parts, for {name}")
        return Picture(svg_text(sheet), sheet.description, compared(two, three, unit), three.steps.three_part_cup.warnings)


LESSON = ThreePartCupLesson()
