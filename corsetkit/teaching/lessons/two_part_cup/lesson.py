"""Lesson 05, the two-part cup: a cut through the bust point becomes a seam, and the seam is walked."""

from dataclasses import dataclass

from corsetkit.drawing.svg import svg_text
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.quantity import declared, quantities
from corsetkit.teaching.guess import Asked
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.play import Panel
from corsetkit.teaching.shared.cup_sheet import two_cups_sheet
from corsetkit.teaching.shared.cup_words import two_part_words
from corsetkit.teaching.shared.cups_lifted import APART_MOST, cup_seams, cups_lifted, gap_above, gap_below
from corsetkit.teaching.shared.seam_walk import Seam, Walked, kept_draft, walk_picture, walked_to
from corsetkit.teaching.step_lesson import StepLesson, style_of
from corsetkit.units import CM_PER_INCH, Say, say_length, say_number

ROUND, SHORT = 0.51, 0.17
"""The roundness that the guess sets: the one that is farther from the present one."""


@dataclass(frozen=True)
class Lifted:
    """How far the two pieces of paper lie apart."""

    apart: float = declared(
        "how far the two cups are lifted apart: at nothing they lie as they were drawn",
        unit="cm",
        low=0,
        high=APART_MOST,
        step=CM_PER_INCH / 8,
        default=1.5 * CM_PER_INCH,
    )


class TwoPartCupLesson(StepLesson):
    name = "05_two_part_cup"
    step = "two_part_cup"
    title = "Two-part cup"
    fixed = {"cup_parts": 2}
    panels = (
        Panel("Which value bends the seam, and which one makes it longer?", ("cup_seam_roundness", "overbust_mark")),
    )  # fmt: skip

    def apart(self):
        """The two cups as paper, lifted apart along their seam."""
        panel = Panel("Where was the paper cut, and where will the cloth be sewn?", ("apart", "cup_seam_roundness"))
        return self.drawn("apart", (panel,), kept_draft, self._apart_picture, self._roundness(), declared=quantities(Lifted))

    def walk(self):
        """The seam, walked from its upper end."""
        panel = Panel("Where do the two edges meet, and what must the outer cup do meanwhile?",
                      ("walked", "cup_seam_roundness"))  # fmt: skip

        def own(desk, kept):
            pattern = kept.of({**desk.record.style, **self.fixed})[1]
            return walked_to(pattern.steps.cup.seam.length, desk.record.unit)

        return self.drawn("walk", (panel,), kept_draft, self._walk_picture, self._roundness(), own, quantities(Walked))

    def _apart_picture(self, kept, values):
        style = {**values, **self.fixed}
        apart = style.pop("apart", Lifted.apart)
        name, pattern = kept.of(style)
        unit = kept.drafts.desk.record.unit
        sheet = cups_lifted(pattern, apart, 0.0, unit, f"Lifted apart, for {name}")
        return Picture(svg_text(sheet), sheet.description, tuple(_apart_said(pattern.steps, unit)))

    def _walk_picture(self, kept, values):
        style = {**values, **self.fixed}
        walked = style.pop("walked", Walked.walked)
        name, pattern = kept.of(style)
        seam = Seam(cup_seams(pattern)[0], "cup seam", ((pattern.steps.cup.seam.to_bust_point, "bust point"),))
        return walk_picture(name, pattern, seam, walked, kept.drafts.desk.record.unit)

    def _roundness(self):
        return tuple(one for one in self.offered() if one.name == "cup_seam_roundness")

    def _sheet(self, steps, unit, title, more=()):
        return two_cups_sheet(steps, unit, title, more)

    def _words(self, steps):
        return two_part_words(steps)

    def _said(self, steps, unit):
        seam, point = steps.two_part_cup.seam, steps.darts.overbust.bust_point
        say = Say(unit)
        missed = [abs(paths.point_along(path, seam.to_bust_point) - point) for path in (seam.inner, seam.outer)]
        fine = Say(unit, part=32)
        return (
            # Whether it keeps that length is what the guess asks, so the straight cuts are told further on.
            f"The cup seam is {say(paths.path_length(seam.inner))} long on the inner cup and "
            f"{say(paths.path_length(seam.outer))} on the outer cup.",
            f"From its upper end to the bust point's notch it measures {say(seam.to_bust_point)} on both cups.",
            f"It cuts the corner at the bust point off: by {fine(missed[0])} on the inner cup, by {fine(missed[1])} on the "
            "outer cup.",
            _gaps(steps),
        )

    def _asked(self, name, steps, unit, drafts):
        seam, roundness = steps.two_part_cup.seam, steps.style.cup_seam_roundness
        other = ROUND if 2 * roundness < ROUND + SHORT + 1e-9 else SHORT
        style = style_of(steps)

        def at(value):
            return {**style, "cup_seam_roundness": value}

        def move(part):
            _, pattern = drafts.of(at(roundness + (other - roundness) * part))
            sheet = cups_lifted(pattern, CM_PER_INCH, 0.0, unit, f"The cup seam for {name}", lengths=part > 0)
            return Picture(svg_text(sheet), sheet.description)

        right, near = paths.path_length(drafts.steps(at(other), self.step)[1].two_part_cup.seam.outer), 0.15
        sooner = other > roundness
        return Asked(
            f"The cup seam is {say_length(seam.length, unit)} long on both cups. Its roundness is "
            f"{'raised' if sooner else 'lowered'} from {say_number(100 * roundness, 0)} % to {say_number(100 * other, 0)} %, so it "
            f"bends {'sooner' if sooner else 'later'} "
            f"and cuts {'more' if sooner else 'less'} of the corner off. How long is it then?",
            "The cup seam is then", "cm", seam.length, right, near,
            # Where hardly anything is cut off, a thought can lead to the very answer: then it is no slip.
            tuple(slip for slip in _slips(steps, roundness, other) if abs(slip[0] - right) > near),
            "Its length stays. The seam cuts the corner at the bust point off, which shortens it, and stands out from the "
            "straight cut above and below, which lengthens it by as much. So both cups keep the length they had, and "
            "whatever roundness you choose, they fit.",
            move,
        )  # fmt: skip

    def _tape(self, steps, unit):
        seam = steps.two_part_cup.seam
        return (
            f"Along the curve, from end to end, both cups measure {say_length(seam.length, unit)}; the straight cut "
            "measures the same.",
            "Walk the seam with the paper: the upper ends together, then the notches, then the lower ends.",
        )


def _slips(steps, roundness, other):
    """What leads to another length, each with the thought behind it."""
    seam, point = steps.two_part_cup.seam, steps.darts.overbust.bust_point
    above, below = (Line(point, end) for end in (paths.path_start(seam.outer), paths.path_end(seam.outer)))
    share = max(roundness, other)
    straight_across = abs(above.point(share) - below.point(share)) - share * (above.length + below.length)
    return (
        (seam.length + straight_across, "a seam that only cuts the corner off, straight across, would be about that long; "
         "this one also stands out from the straight cut above and below, and so makes up for what it cuts off"),
        (abs(above.end - below.end), "that is the straight way from the outer cup's upper end to its lower end; the seam "
         "goes round by the bust point"),
        (seam.length * other / roundness, "that changes as the roundness does; the roundness says how soon the seam bends, "
         "not how long it is"),
    )  # fmt: skip


def _legs(steps):
    """The two straight cuts of each cup, from the upper end over the bust point to the underbust line."""
    seam = steps.two_part_cup.seam
    return seam.inner_blend.before, seam.outer_blend.before


def _gaps(steps):
    above, below = gap_above(steps), gap_below(steps)
    return (
        f"Between the cups the paper stands open by {say_number(above, 1)} degrees above the bust point and by "
        f"{say_number(below, 1)} below it: {say_number(above + below, 1)} in all."
    )


def _apart_said(steps, unit):
    seam = steps.two_part_cup.seam
    say = Say(unit)
    yield (
        f"Cup seam, along the curve: inner cup {say(paths.path_length(seam.inner))}, outer cup "
        f"{say(paths.path_length(seam.outer))}. Each straight cut was {say(paths.path_length(_legs(steps)[0]))}."
    )
    yield _gaps(steps)
    yield (
        "Slid together, the two papers meet at the bust point alone. Only sewing closes both gaps, and then the cup "
        "cannot lie flat."
    )


LESSON = TwoPartCupLesson()
