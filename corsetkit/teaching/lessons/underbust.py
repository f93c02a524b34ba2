"""Lesson 02, underbust: the hem, the underbust mark, and one dart from the bust point to below the waist."""

from dataclasses import dataclass

from corsetkit.geometry import path
from corsetkit.geometry.curve import Line
from corsetkit.geometry.points import between
from corsetkit.quantity import declared, quantities
from corsetkit.showing.step_lines import draft_so_far, near
from corsetkit.showing.step_sheet import Drawn, Spot
from corsetkit.showing.svg import svg_image, svg_text
from corsetkit.showing.vignette import vignette
from corsetkit.steps.underbust import level_width
from corsetkit.teaching.course import Drafts
from corsetkit.teaching.guess import Asked
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.play import Panel
from corsetkit.teaching.step_lesson import StepLesson, style_of
from corsetkit.teaching.word_cards import Word
from corsetkit.units import say_length, say_number

LOWERED = 0.5
"""By how much of the present share the guess takes less on the side's side: course convention."""


@dataclass(frozen=True)
class Looking:
    """Where on the dart one looks."""

    down_the_dart: float = declared(
        "how far down the dart the width is taken: 0 at the bust point, 1 where the dart ends",
        unit="share", low=0, high=1, step=0.02, default=0.4)


class UnderbustLesson(StepLesson):
    name = "02_underbust"
    step = "underbust"
    panels = (
        Panel("Which of the two panels gives the cloth that the dart takes?",
              ("dart_side_share", "underbust_reduction", "hem_raise")),
    )  # fmt: skip

    def down(self):
        """The dart's width from the bust point to its end."""
        return self.show(
            "down", lambda desk: self._width_picture(Drafts(desk), desk.record.style).stored(svg_image), self._down_alive)

    def _down_alive(self, desk, key):
        drafts = Drafts(desk)
        panel = Panel("How wide is the dart here, and what is that width for?", ("down_the_dart",))
        return self.table(desk, key, (panel,), self.offered(), lambda values: self._width_picture(drafts, values),
                          lambda: quantities(Looking))

    def _width_picture(self, drafts, values):
        style = dict(values)
        looking = Looking(style.pop("down_the_dart", Looking.down_the_dart))
        name, steps = drafts.steps(style, self.step)
        found, unit = steps.underbust, drafts.desk.record.unit
        level, inner, outer = _across(found, looking.down_the_dart)
        upright = complex(found.block.bust_point.real, level)
        lines = [
            Drawn((Line(complex(0, level), complex(found.block.front.width, level)),), "guide", "the level looked at"),
            Drawn((Line(inner, outer),), "new", "what the dart takes here"),
        ]
        sheet = draft_so_far(steps, self.step, unit, f"Down the dart of {name}", lines, (Spot(upright, ""),), near(steps, self.step))
        return Picture(svg_text(sheet), sheet.description, tuple(_width_said(found, level, inner, outer, unit)))

    def _words(self, steps):
        found, block = steps.underbust, steps.block
        point, radius = block.bust_point, found.radius
        whole = (-2, found.hem_level - 3, block.front.width + 4, point.imag + 8)
        near = (point.real - 8, found.level - 6, point.real + 12, point.imag + 8)
        legs = [Drawn((Line(point, found.inner), *found.inner_leg), "new"),
                Drawn((Line(point, found.outer), *found.outer_leg), "new")]  # fmt: skip
        paper = [Drawn(block.front_paper, "before")]
        thin = [Drawn(line.run, "before") for line in legs]
        return (
            Word("underbust mark", "where the fold under the breast lies, straight below the bust point",
                 vignette("Underbust mark", "the bust point, and below it the underbust mark on the dart",
                          [*paper, *thin, Drawn((Line(point, found.mark),), "guide")], near,
                          (Spot(point, "bust point", "before"), Spot(found.mark, "underbust mark")))),
            Word("dart", "a wedge that is taken out of flat cloth, so that what is left stands up like a cone",
                 vignette("Dart", "the wedge between two lines that meet in a point",
                          [*paper, *legs, Drawn(found.waste[0].outline, "waste")], whole)),
            Word("dart leg", "one of a dart's two edges; the legs are sewn to each other, so they are equally long",
                 vignette("Dart leg", "one edge of the wedge drawn strongly", [*paper, *thin, legs[1]], whole)),
            Word("parting", "the line along which two panels are cut apart, below the end of the dart",
                 vignette("Parting", "the short line from the dart's end down to the hem",
                          [*paper, *thin, Drawn(found.hem, "before"), Drawn(found.parting, "new")],
                          (point.real - 9, found.hem_level - 4, point.real + 15, found.hem_level + 14))),
        )  # fmt: skip

    def _said(self, steps, unit):
        found = steps.underbust
        level, inner, outer = _across(found, found.radius / (found.block.bust_point.imag - found.dart_end.imag))
        say = lambda cm: say_length(cm, unit)  # noqa: E731
        upright = found.block.bust_point.real
        return (
            f"The underbust mark lies {say(found.radius)} below the bust point.",
            f"At that level the dart takes {say((outer - inner).real)}: {say(upright - inner.real)} from the centre panel, "
            f"{say(outer.real - upright)} from the side panel.",
            f"It opens {say_number(2 * found.half_angle, 1)} degrees at the bust point and leans "
            f"{say_number(found.lean, 1)} degrees to the side.",
            f"Its legs: inner {say(_leg(found, found.inner, found.inner_leg))}, "
            f"outer {say(_leg(found, found.outer, found.outer_leg))}, from the bust point to the dart's end.",
            f"Half the front is {say(level_width(found, found.level))} wide at the mark's level, the dart taken out.",
        )

    def _asked(self, name, steps, unit, drafts):
        found = steps.underbust
        share = steps.style.dart_side_share
        other = max(0.37, round(share - LOWERED / 2, 2)) if share > 0.6 else 0.9
        style = style_of(steps)

        def at(value):
            return drafts.steps({**style, "dart_side_share": value}, self.step)[1]

        def move(part):
            now = at(share + (other - share) * part)
            sheet = self._sheet(now, unit, f"{self.title} for {name}")
            return Picture(svg_text(sheet), sheet.description)

        say = lambda cm: say_length(cm, unit)  # noqa: E731
        taken = lambda one: one.outer.real - one.block.bust_point.real  # noqa: E731
        right = taken(at(other).underbust)
        return Asked(
            f"The outer leg crosses the underbust {say(taken(found))} beside the upright through the bust point, for "
            f"{say_number(100 * share, 0)} % of the dart lie on the side's side. The share is set to "
            f"{say_number(100 * other, 0)} %. How far beside the upright does the outer leg cross then?",
            "It crosses beside the upright at", "cm", taken(found), right, 0.16,
            ((found.intake, "that is the whole dart, and part of it lies on the other side of the upright"),
             (taken(found) + right, "that is measured from the old place and not from the upright")),
            "The dart's width at the mark stays nearly the same; only its share on each side of the upright changes. The "
            "mark is measured down the leg, and a leg that leans more crosses a little nearer than the share alone would say.",
            move,
        )  # fmt: skip

    def _tape(self, steps, unit):
        found = steps.underbust
        return (
            f"Fold the paper along the dart's own line: the two legs should lie on each other from end to end.",
            f"From the bust point to the underbust line both legs measure {say_length(found.radius, unit)}.",
        )


def _across(found, share):
    """The level at that share of the way from the bust point to the dart's end, and the legs' points there."""
    point = found.block.bust_point
    level = between(point, found.dart_end, share).imag
    legs = ((Line(point, found.inner), *found.inner_leg), (Line(point, found.outer), *found.outer_leg))
    inner, outer = (path.at_level(leg, level) for leg in legs)
    end = point if share <= 0 else found.dart_end
    return level, end if inner is None else inner, end if outer is None else outer


def _leg(found, start, leg):
    return abs(start - found.block.bust_point) + path.run_length(leg)


def _width_said(found, level, inner, outer, unit):
    say = lambda cm: say_length(cm, unit)  # noqa: E731
    point = found.block.bust_point
    place = "above" if level >= 0 else "below"
    yield f"{say(point.imag - level)} below the bust point, {say(abs(level))} {place} the waist, the dart is {say(abs(outer - inner))} wide."
    if level > found.level:
        yield "Above the underbust mark it shapes the cup: the wedge that is gone lets the cup stand up over the breast."
    elif level > 0:
        yield "Between the underbust mark and the waist it makes two panels follow the ribs."
    else:
        yield "Below the waist it runs out to nothing, for the hip needs the width again."


LESSON = UnderbustLesson()
