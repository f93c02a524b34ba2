"""Lesson 02, underbust: the hem, the underbust mark, and one dart from the bust point to below the waist."""

from dataclasses import dataclass, replace

from corsetkit.drawing.step_lines import draft_so_far, near
from corsetkit.drawing.step_sheet import Drawn, Spot
from corsetkit.drawing.svg import svg_text
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.quantity import declared, quantities
from corsetkit.steps.underbust import level_width
from corsetkit.style import Style
from corsetkit.teaching.cells import Drafts
from corsetkit.teaching.guess import Asked
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.play import Panel
from corsetkit.teaching.shared.vignette import card
from corsetkit.teaching.step_lesson import StepLesson, style_of
from corsetkit.units import CM_PER_INCH, Say, say_length, say_number
from corsetkit.words import words_of

WORDS = words_of("02_underbust")
SHARED = words_of("shared")

MOST_LEAN = next(one.high for one in quantities(Style) if one.name == "dart_lean")
LOWERED = 0.5
"""By how much of the present share the guess takes less on the side's side: course convention."""


@dataclass(frozen=True)
class Looking:
    """Where on the dart one looks; the range is the wearer's."""

    below_the_bust_point: float = declared(
        WORDS("width_below"), unit="cm", low=0, high=60, step=CM_PER_INCH / 4, default=4 * CM_PER_INCH
    )


class UnderbustLesson(StepLesson):
    name = "02_underbust"
    step = "underbust"
    panels = (Panel(WORDS("ask_panels"), ("dart_side_share", "dart_lean", "underbust_reduction")),)

    def down(self):
        """The dart's width from the bust point to its end."""
        panel = Panel(WORDS("ask_width"), ("below_the_bust_point",))
        (one,) = quantities(Looking)

        def hers(desk, drafts):
            return (replace(one, high=_depth(drafts.steps(desk.record.style, self.step)[1].underbust)),)

        return self.drawn("down", (panel,), Drafts, self._width_picture, own=hers, declared=(one,))

    def _width_picture(self, drafts, values):
        style = dict(values)
        below = style.pop("below_the_bust_point", Looking.below_the_bust_point)
        name, steps = drafts.steps(style, self.step)
        found, unit = steps.underbust, drafts.desk.record.unit
        level, inner, outer = _across(found, min(below, _depth(found)))
        upright = complex(found.block.bust_point.real, level)
        lines = [
            Drawn((Line(complex(0, level), complex(found.block.front.width, level)),), "guide", WORDS("level_looked_at"), ""),
            Drawn((Line(inner, outer),), "new", WORDS("taken_here"), ""),
        ]
        sheet = draft_so_far(
            steps, self.step, unit, WORDS("down_title", name=name), lines, (Spot(upright, ""),), near(steps, self.step)
        )
        return Picture(svg_text(sheet), sheet.description, tuple(_width_said(found, level, inner, outer, unit)))

    def _words(self, steps):
        found, block = steps.underbust, steps.block
        point, _radius = block.bust_point, found.radius
        whole = (-2, found.hem_level - 3, block.front.width + 4, point.imag + 8)
        near = (point.real - 8, found.level - 6, point.real + 12, point.imag + 8)
        legs = [Drawn((Line(point, found.inner), *found.inner_leg), "new"),
                Drawn((Line(point, found.outer), *found.outer_leg), "new")]  # fmt: skip
        paper = [Drawn(block.front_paper, "before")]
        thin = [Drawn(line.path, "before") for line in legs]
        return (
            card(
                WORDS,
                "mark",
                [*paper, *thin, Drawn((Line(point, found.mark),), "guide")],
                near,
                (Spot(point, SHARED("bust_point"), "before"), Spot(found.mark, WORDS("mark"))),
            ),
            card(WORDS, "dart", [*paper, *legs, Drawn(found.dart_waste.outline, "waste")], whole),
            card(WORDS, "leg", [*paper, *thin, legs[1]], whole),
            card(
                WORDS,
                "panels",
                [Drawn(block.front_paper, "before"), *legs, Drawn(found.hem, "new"), Drawn(found.parting, "new")],
                whole,
                (
                    Spot(complex(point.real * 0.35, 0.0), WORDS("panel_centre"), "before"),
                    Spot(complex(block.front.width * 0.78, 0.0), WORDS("panel_side"), "before"),
                ),
            ),
            card(
                WORDS,
                "parting",
                [*paper, *thin, Drawn(found.hem, "before"), Drawn(found.parting, "new")],
                (point.real - 9, found.hem_level - 4, point.real + 15, found.hem_level + 14),
            ),
        )

    def _said(self, steps, unit):
        found = steps.underbust
        _, inner, outer = _across(found, found.radius)
        say = Say(unit)
        upright = found.block.bust_point.real
        return (
            WORDS("mark_lies", below=say(found.radius)),
            WORDS("dart_takes", centre=say(upright - inner.real), side=say(outer.real - upright)),
            WORDS(
                "opens_to_the_side" if found.lean > 0 else "opens_to_the_centre",
                angle=say_number(2 * found.half_angle, 1),
                lean=say_number(abs(found.lean), 1),
            ),
            WORDS(
                "legs",
                inner=say(_leg(found, found.inner, found.inner_leg)),
                outer=say(_leg(found, found.outer, found.outer_leg)),
            ),
            WORDS("front_wide", wide=say(level_width(found, found.level))),
        )

    def _asked(self, name, steps, unit, drafts):
        found = steps.underbust
        taken = lambda one: _across(one, one.radius)[2].real - one.block.bust_point.real
        _, inner, outer = _across(found, found.radius)
        # The share as it is drawn, which the lean may have limited.
        share = taken(found) / (outer - inner).real
        other = max(0.37, round(share - LOWERED / 2, 2)) if share > 0.57 else 0.75
        style = {**style_of(steps), "dart_lean": MOST_LEAN}

        def at(value):
            return drafts.steps({**style, "dart_side_share": value}, self.step)[1]

        def move(part):
            now = at(share + (other - share) * part)
            sheet = self._sheet(now, unit, SHARED("title_for", lesson=self.title, name=name))
            return Picture(svg_text(sheet), sheet.description)

        say = Say(unit)
        right = taken(at(other).underbust)
        return Asked(
            WORDS(
                "guess_question", beside=say(taken(found)), share=say_number(100 * share, 0), other=say_number(100 * other, 0)
            ),
            WORDS("guess_label"),
            "cm",
            taken(found),
            right,
            0.16,
            ((2 * right, WORDS("guess_slip_whole")), (taken(found) + right, WORDS("guess_slip_old_place"))),
            WORDS("guess_why"),
            move,
        )

    def _tape(self, steps, unit):
        found = steps.underbust
        return (WORDS("tape_fold"), WORDS("tape_legs", radius=say_length(found.radius, unit)))


def _depth(found):
    """How far below the bust point the dart ends, cm."""
    return found.block.bust_point.imag - found.dart_end.imag


def _across(found, below):
    """The level so far below the bust point, and the legs' points there; at both ends of the dart they meet."""
    point = found.block.bust_point
    level = point.imag - below
    legs = ((Line(point, found.inner), *found.inner_leg), (Line(point, found.outer), *found.outer_leg))
    inner, outer = (paths.at_level(leg, level) for leg in legs)
    end = point if below <= 0 else found.dart_end
    return level, end if inner is None else inner, end if outer is None else outer


def _leg(found, start, leg):
    return abs(start - found.block.bust_point) + paths.path_length(leg)


def _width_said(found, level, inner, outer, unit):
    say = Say(unit)
    point = found.block.bust_point
    yield WORDS(
        "width_above_the_waist" if level >= 0 else "width_below_the_waist",
        below=say(point.imag - level),
        waist=say(abs(level)),
        wide=say(abs(outer - inner)),
    )
    if level > found.level:
        yield WORDS("shapes_cup")
    elif level > 0:
        yield WORDS("shapes_panels")
    else:
        yield WORDS("shapes_nothing")


LESSON = UnderbustLesson()
