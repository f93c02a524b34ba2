"""Lesson 02, underbust: the hem, the underbust mark, and one dart from the bust point to below the waist."""

from dataclasses import dataclass, replace

from corsetkit.drawing.step_lines import draft_so_far, near
from corsetkit.drawing.step_sheet import Drawn, Spot
from corsetkit.drawing.svg import svg_text
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.quantity import declared, quantities
from corsetkit.steps.underbust import level_width
from corsetkit.teaching.cells import Drafts
from corsetkit.teaching.guess import Asked
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.play import Panel
from corsetkit.teaching.shared.vignette import vignette
from corsetkit.teaching.step_lesson import StepLesson, style_of
from corsetkit.teaching.word_cards import Word
from corsetkit.units import CM_PER_INCH, Say, say_length, say_number

LOWERED = 0.5
"""By how much of the present share the guess takes less on the side's side: course convention."""


@dataclass(frozen=True)
class Looking:
    """Where on the dart one looks; the range is the wearer's."""

    below_the_bust_point: float = declared(
        "how far below the bust point the dart's width is taken",
        unit="cm",
        low=0,
        high=60,
        step=CM_PER_INCH / 4,
        default=4 * CM_PER_INCH,
    )


class UnderbustLesson(StepLesson):
    name = "02_underbust"
    step = "underbust"
    panels = (
        Panel("Which of the two panels gives the cloth that the dart takes?",
              ("dart_side_share", "underbust_reduction", "hem_raise")),
    )  # fmt: skip

    def down(self):
        """The dart's width from the bust point to its end."""
        panel = Panel("How wide is the dart here, and what is that width for?", ("below_the_bust_point",))
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
            Drawn((Line(complex(0, level), complex(found.block.front.width, level)),), "guide", "the level looked at", ""),
            Drawn((Line(inner, outer),), "new", "what the dart takes here", ""),
        ]
        sheet = draft_so_far(
            steps, self.step, unit, f"Down the dart of {name}", lines, (Spot(upright, ""),), near(steps, self.step)
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
            Word("underbust mark", "where the fold under the breast lies, straight below the bust point",
                 vignette("Underbust mark", "the bust point, and below it the underbust mark on the dart",
                          [*paper, *thin, Drawn((Line(point, found.mark),), "guide")], near,
                          (Spot(point, "bust point", "before"), Spot(found.mark, "underbust mark")))),
            Word("dart", "a wedge that is taken out of flat cloth, so that what is left stands up like a cone",
                 vignette("Dart", "the wedge between two lines that meet in a point",
                          [*paper, *legs, Drawn(found.waste[0].outline, "waste")], whole)),
            Word("dart leg", "one of a dart's two edges; the legs are sewn to each other, so they are equally long",
                 vignette("Dart leg", "one edge of the wedge drawn strongly", [*paper, *thin, legs[1]], whole)),
            Word("centre panel and side panel", "the two pieces of the lower front; the dart parts them, and its legs become "
                 "the seam between them",
                 vignette("Centre panel and side panel", "the lower front parted along the dart into two pieces",
                          [Drawn(block.front_paper, "before"), *legs, Drawn(found.hem, "new"), Drawn(found.parting, "new")],
                          whole, (Spot(complex(point.real * 0.35, 0.0), "centre", "before"),
                                  Spot(complex(block.front.width * 0.78, 0.0), "side", "before")))),
            Word("parting", "the line along which two panels are cut apart, below the end of the dart",
                 vignette("Parting", "the short line from the dart's end down to the hem",
                          [*paper, *thin, Drawn(found.hem, "before"), Drawn(found.parting, "new")],
                          (point.real - 9, found.hem_level - 4, point.real + 15, found.hem_level + 14))),
        )  # fmt: skip

    def _said(self, steps, unit):
        found = steps.underbust
        _, inner, outer = _across(found, found.radius)
        say = Say(unit)
        upright = found.block.bust_point.real
        lean = f"{say_number(abs(found.lean), 1)} degrees to the {'side' if found.lean > 0 else 'centre'}"
        return (
            f"The underbust mark lies {say(found.radius)} below the bust point.",
            f"At that level the dart takes {say(upright - inner.real)} from the centre panel and {say(outer.real - upright)} "
            "from the side panel, counted from the upright.",
            f"It opens {say_number(2 * found.half_angle, 1)} degrees at the bust point, and its fold line leans {lean}.",
            f"Its legs: inner {say(_leg(found, found.inner, found.inner_leg))}, "
            f"outer {say(_leg(found, found.outer, found.outer_leg))}, from the bust point to the dart's end.",
            f"Half the front is {say(level_width(found, found.level))} wide at that level, the dart taken out.",
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

        say = Say(unit)
        taken = lambda one: _across(one, one.radius)[2].real - one.block.bust_point.real
        right = taken(at(other).underbust)
        return Asked(
            f"At the level of the underbust mark the outer leg lies {say(taken(found))} beside the upright: "
            f"{say_number(100 * share, 0)} % of the dart are on that side. Now it is to be {say_number(100 * other, 0)} %. "
            "Where does the outer leg lie then?",
            "Beside the upright", "cm", taken(found), right, 0.16,
            ((2 * right, "that is nearly the whole dart, and the rest of it lies on the other side of the upright"),
             (taken(found) + right, "that is measured from the old place and not from the upright")),
            "The dart is about as wide as before; only its place changes. What the side panel keeps, the centre panel gives.",
            move,
        )  # fmt: skip

    def _tape(self, steps, unit):
        found = steps.underbust
        return (
            "Fold the paper along the dart's own line: the two legs should lie on each other from end to end.",
            f"From the bust point to the underbust line both legs measure {say_length(found.radius, unit)}.",
        )


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
    place = "above" if level >= 0 else "below"
    yield f"{say(point.imag - level)} below the bust point, {say(abs(level))} {place} the waist, the dart is {say(abs(outer - inner))} wide."
    if level > found.level:
        yield "Above the underbust mark it shapes the cup: the wedge that is gone lets the cup stand up over the breast."
    elif level > 0:
        yield "Between the underbust mark and the waist it makes two panels follow the ribs."
    else:
        yield "Below the waist it runs out to nothing, for the hip needs the width again."


LESSON = UnderbustLesson()
