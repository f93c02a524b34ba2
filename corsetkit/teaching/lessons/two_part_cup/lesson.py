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
from corsetkit.words import words_of

WORDS = words_of("05_two_part_cup")
SHARED = words_of("shared")

ROUND, SHORT = 0.5, 0.3
"""The roundness that the guess sets: the one that is farther from the present one."""


@dataclass(frozen=True)
class Lifted:
    """How far the two pieces of paper lie apart."""

    apart: float = declared(
        WORDS("apart_control"), unit="cm", low=0, high=APART_MOST, step=CM_PER_INCH / 8, default=1.5 * CM_PER_INCH
    )


class TwoPartCupLesson(StepLesson):
    name = "05_two_part_cup"
    step = "two_part_cup"
    title = "Two-part cup"
    fixed = {"cup_parts": 2}
    panels = (Panel(WORDS("ask_drawing"), ("cup_seam_roundness", "overbust_mark")),)

    def apart(self):
        """The two cups as paper, lifted apart along their seam."""
        panel = Panel(WORDS("ask_apart"), ("apart", "cup_seam_roundness"))
        return self.drawn("apart", (panel,), kept_draft, self._apart_picture, self._roundness(), declared=quantities(Lifted))

    def walk(self):
        """The seam, walked from its upper end."""
        panel = Panel(WORDS("ask_walk"), ("walked", "cup_seam_roundness"))

        def own(desk, kept):
            pattern = kept.of({**desk.record.style, **self.fixed})[1]
            return walked_to(pattern.steps.cup.seam.length, desk.record.unit)

        return self.drawn("walk", (panel,), kept_draft, self._walk_picture, self._roundness(), own, quantities(Walked))

    def _apart_picture(self, kept, values):
        style = {**values, **self.fixed}
        apart = style.pop("apart", Lifted.apart)
        name, pattern = kept.of(style)
        unit = kept.drafts.desk.record.unit
        sheet = cups_lifted(pattern, apart, 0.0, unit, WORDS("apart_title", name=name))
        return Picture(svg_text(sheet), sheet.description, tuple(_apart_said(pattern.steps, unit)))

    def _walk_picture(self, kept, values):
        style = {**values, **self.fixed}
        walked = style.pop("walked", Walked.walked)
        name, pattern = kept.of(style)
        seam = Seam(cup_seams(pattern)[0], WORDS("cup_seam"), ((pattern.steps.cup.seam.to_bust_point, SHARED("bust_point")),))
        return walk_picture(name, pattern, seam, walked, kept.drafts.desk.record.unit)

    def _roundness(self):
        return tuple(one for one in self.offered() if one.name == "cup_seam_roundness")

    def _sheet(self, steps, unit, title, more=()):
        return two_cups_sheet(steps, unit, title, more)

    def _words(self, steps):
        return two_part_words(steps)

    def _said(self, steps, unit):
        seam, say = steps.two_part_cup.seam, Say(unit)
        fine = Say(unit, part=32)
        return (
            WORDS("seam_long", inner=say(paths.path_length(seam.inner)), outer=say(paths.path_length(seam.outer))),
            WORDS("notch_lies", along=say(seam.to_bust_point)),
            WORDS("passes_point", grown=fine(seam.grown), radius=say(seam.radius)),
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
            sheet = cups_lifted(pattern, CM_PER_INCH, 0.0, unit, WORDS("guess_title", name=name), lengths=part > 0)
            return Picture(svg_text(sheet), sheet.description)

        right, near = paths.path_length(drafts.steps(at(other), self.step)[1].two_part_cup.seam.outer), 0.15
        return Asked(
            WORDS(
                "guess_raised" if other > roundness else "guess_lowered",
                length=say_length(seam.length, unit),
                now=say_number(100 * roundness, 0),
                other=say_number(100 * other, 0),
            ),
            WORDS("guess_label"),
            "cm",
            seam.length,
            right,
            near,
            # Where hardly anything is cut off, a thought can lead to the very answer: then it is no slip.
            tuple(slip for slip in _slips(steps, roundness, other) if abs(slip[0] - right) > near),
            WORDS("guess_why"),
            move,
        )

    def _tape(self, steps, unit):
        seam, say = steps.two_part_cup.seam, Say(unit)
        return WORDS("tape_length", length=say(seam.length), cut=say(seam.length - seam.grown)), WORDS("tape_walk")


def _slips(steps, roundness, other):
    """What leads to another length, each with the thought behind it."""
    seam, point = steps.two_part_cup.seam, steps.darts.overbust.bust_point
    above, below = (Line(point, end) for end in (paths.path_start(seam.outer), paths.path_end(seam.outer)))
    share = max(roundness, other)
    straight_across = abs(above.point(share) - below.point(share)) - share * (above.length + below.length)
    return (
        (seam.length + straight_across, WORDS("slip_straight_across")),
        (abs(above.end - below.end), WORDS("slip_end_to_end")),
        (seam.length * other / roundness, WORDS("slip_by_roundness")),
    )


def _legs(steps):
    """The two straight cuts of each cup, from the upper end over the bust point to the underbust line."""
    seam = steps.two_part_cup.seam
    return seam.inner_blend.before, seam.outer_blend.before


def _gaps(steps):
    above, below = gap_above(steps), gap_below(steps)
    return WORDS("gaps", above=say_number(above, 1), below=say_number(below, 1), both=say_number(above + below, 1))


def _apart_said(steps, unit):
    seam = steps.two_part_cup.seam
    say = Say(unit)
    yield WORDS(
        "apart_seam",
        inner=say(paths.path_length(seam.inner)),
        outer=say(paths.path_length(seam.outer)),
        cut=say(paths.path_length(_legs(steps)[0])),
    )
    yield _gaps(steps)
    yield WORDS("apart_flat")


LESSON = TwoPartCupLesson()
