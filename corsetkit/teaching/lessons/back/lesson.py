"""Lesson 07, back: the waist taken in, the lacing gap, the modesty panel; the whole pattern, and both methods compared."""

from dataclasses import replace

from corsetkit.drawing.step_lines import lines_so_far
from corsetkit.drawing.step_sheet import Drawn, step_sheet
from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.geometry.move import slid
from corsetkit.quantity import quantities
from corsetkit.steps.shares import shares_of_reduction
from corsetkit.steps.underbust import level_width
from corsetkit.style import Style
from corsetkit.teaching.cells import Drafts
from corsetkit.teaching.guess import Asked
from corsetkit.teaching.lessons.back.all_wearers import all_wearers
from corsetkit.teaching.lessons.back.both_methods import methods_beside
from corsetkit.teaching.lessons.back.laced import mirrored
from corsetkit.teaching.lessons.back.said import (
    gaps_from,
    laced_picture,
    looking_at,
    seam_table,
    taken_picture,
    waist_girth,
    waist_said,
)
from corsetkit.teaching.lessons.back.taken_in import taken_at
from corsetkit.teaching.play import Panel
from corsetkit.teaching.shared.vignette import card
from corsetkit.teaching.shared.whole_pattern import picture as whole_picture
from corsetkit.teaching.step_lesson import StepLesson, style_of
from corsetkit.units import CM_PER_INCH, Say
from corsetkit.words import words_of

WORDS = words_of("07_back")


def back_words(steps):
    """The `Word`s, drawn from `steps` up to the back."""
    found, half = steps.back, steps.block.back
    waist, centre = found.waist, half.waist_centre.real
    side = (*half.side_above, *waist.side_waist, *found.side_below)
    lacing = (Line(found.hem.edge, found.neckline.edge),)
    parting = [Drawn(path, "before") for path in (found.upper_parting, *waist.legs, found.lower_parting)]
    panels = [
        Drawn(found.hem.kept, "before"),
        Drawn(found.yoke_line.kept, "before"),
        Drawn(side, "before"),
        Drawn(found.armscye_panel, "before"),
        *parting,
    ]
    yoke = [
        found.yoke_line.kept,
        (Line(found.yoke_line.edge, found.neckline.edge),),
        found.neckline.kept,
        (Line(found.yoke_neck, half.shoulder_tip),),
        found.armscye_yoke,
    ]
    left, hem, top = paths.path_start(found.hem.kept).real - 1.5, found.underbust.hem_level - 1.5, found.yoke_line.edge.imag
    lower, upper = (left, hem, centre + 2.0, top + 4.0), (left - 2.0, top - 6.0, centre + 4.0, half.neck_side.imag + 2.0)
    middle = (waist.axis - 12.0, hem, centre + 14.0, top + 4.0)

    low, _, high, under = found.modesty
    opened = (low, high, under, *(_over(centre, path) for path in (low, high, under)))
    edge = Drawn(lacing, "before")
    return (
        card(
            WORDS,
            "reduction",
            [*panels, edge, Drawn((*waist.side_waist, *found.side_below), "new"), *(Drawn(leg, "new") for leg in waist.legs)],
            lower,
        ),
        card(WORDS, "panels", [*panels, edge, *(Drawn(one.path, "new") for one in parting)], lower),
        card(WORDS, "yoke", [*panels, *(Drawn(path, "new") for path in yoke)], upper),
        card(WORDS, "edge", [*panels, Drawn(lacing, "new")], lower),
        card(WORDS, "gap", [*panels, Drawn(lacing, "new"), Drawn(found.lacing_gap_waste.outline, "waste")], lower),
        card(
            WORDS,
            "modesty",
            [*panels, edge, Drawn(_over(centre, lacing), "before"), *(Drawn(path, "new") for path in opened)],
            middle,
        ),
    )


def _over(centre, path):
    """The run mirrored over the centre back."""
    return paths.moved(mirrored(paths.moved(path, slid(-centre))), slid(centre))


ASKED = (3 * CM_PER_INCH, CM_PER_INCH)
"""The waist reductions the guess may ask for, cm: the first, unless the desk's is near it or this back has no room for it."""


class BackLesson(StepLesson):
    name = "07_back"
    step = "back"
    panels = (Panel(WORDS("ask_drawing"), ("waist_reduction", "reduction_at_front", "reduction_at_side")),)

    # The cells of its own.

    def taken_in(self):
        """What side seam and back dart take at each level."""
        names = ("waist_reduction", "reduction_at_side")
        panel = Panel(WORDS("ask_taken"), ("below_the_bust", *names))
        return self.drawn(
            "taken_in",
            (panel,),
            Drafts,
            self._taken,
            _named(*names),
            lambda desk, drafts: looking_at(drafts.steps(desk.record.style, self.step)[1].back),
            looking_at(None),
        )

    def laced(self):
        """The two edges as laced, and the modesty panel behind them."""
        panel = Panel(WORDS("ask_laced"), ("gap_at_the_top", "gap_at_the_hem", "modesty_overlap"))
        return self.drawn(
            "laced",
            (panel,),
            Drafts,
            self._laced,
            _named("modesty_overlap", "modesty_shorter"),
            lambda desk, drafts: gaps_from(Style(**desk.record.style).lacing_gap),
        )

    def whole(self):
        """The whole pattern."""
        panel = Panel(WORDS("ask_whole"), ("cup_parts", "side_panels", "yoke"))
        return self.drawn("whole", (panel,), Drafts, whole_picture, quantities(Style))

    def seams(self):
        """The whole pattern's seams as a table."""
        return self._to_read("seams", WORDS("seams_title"), lambda desk, drafts: seam_table(drafts, desk.record.style))

    def side_by_side(self):
        """One wearer drafted by both methods."""
        return self._to_read("side_by_side", WORDS("beside_title"), lambda desk, drafts: methods_beside(desk))

    def all_wearers(self):
        """Both methods over all demo wearers."""
        return self._to_read("all_wearers", WORDS("all_title"), lambda desk, drafts: all_wearers(desk.record.unit))

    # How they are made.

    def _taken(self, drafts, values):
        style = dict(values)
        below = style.pop("below_the_bust", None)
        return taken_picture(*drafts.steps(style, self.step), drafts.desk.record.unit, below)

    def _laced(self, drafts, values):
        style = dict(values)
        gaps = [style.pop(name, None) for name in ("gap_at_the_top", "gap_at_the_hem")]
        return laced_picture(*drafts.steps(style, self.step), drafts.desk.record.unit, *gaps)

    # What the form of the lessons asks for.

    def _sheet(self, steps, unit, title, more=()):
        drawn, _ = lines_so_far(steps, self.step)
        back = steps.block.back
        left = min(back.hip_side.real, back.underarm.real) - 1.0
        # The front is told and not written on: nothing is new there.
        lines = [
            one if max(p.real for p in paths.flattened(one.path, 0.5)) > left else replace(one, label="") for one in drawn
        ]
        return step_sheet(title, [*lines, *more], (), unit)

    def _words(self, steps):
        return back_words(steps)

    def _said(self, steps, unit):
        found, style = steps.back, steps.style
        waist, say = found.waist, Say(unit)
        # By custom the back gives all of the reduction; what the front gives is told besides.
        front = shares_of_reduction(style)
        given = front.front_edge + front.front_dart
        at_front = WORDS("reduction_front", half=say(given), side=say(front.front_edge), dart=say(front.front_dart))
        return (
            WORDS(
                "reduction_shared",
                reduction=say(style.waist_reduction),
                half=say(style.waist_reduction / 2 - given),
                side=say(waist.at_side),
                dart=say(waist.dart - found.block.back.waist_dart),
            ),
            *((at_front,) if given else ()),
            WORDS("dart_now", block=say(found.block.back.waist_dart), dart=say(waist.dart)),
            WORDS("front_dart", dart=say(steps.underbust.intake)),
            waist_said(waist_girth(steps), style.lacing_gap, unit),
            WORDS("edge_stands", beside=say(style.lacing_gap / 2), long=say(abs(found.neckline.edge - found.hem.edge))),
            WORDS("modesty_wide", wide=say(style.lacing_gap + 2 * style.modesty_overlap), under=say(style.modesty_overlap)),
        )

    def _asked(self, name, steps, unit, drafts):
        style, waist, block = steps.style, steps.back.waist, steps.block.back.waist_dart
        now, kept = style.waist_reduction, style_of(steps)

        def at(value):
            return drafts.steps({**kept, "waist_reduction": value}, self.step)[1]

        other = _another(at, now)
        say = Say(unit)
        right, more = at(other).back.waist.dart, other - now
        slips = [(waist.dart + more / 2, WORDS("slip_no_side")), (waist.dart + more, WORDS("slip_one_dart"))]
        if block > 0.5:
            slips.append((right - block, WORDS("slip_new_only")))
        return Asked(
            WORDS(
                "guess_question",
                now=say(now),
                dart=say(waist.dart),
                block=say(block),
                share=round(100 * style.reduction_at_side),
                other=say(other),
            ),
            WORDS("guess_label"),
            "cm",
            waist.dart,
            right,
            0.2,
            tuple(one for one in slips if one[0] > 0),
            WORDS("guess_why", half=say(abs(more) / 2), dart=say(abs(right - waist.dart))),
            lambda part: taken_picture(name, at(now + more * part), unit),
        )

    def _tape(self, steps, unit):
        found, gap = steps.back, steps.style.lacing_gap
        say = Say(unit)
        front = level_width(found.underbust, 0.0)
        back = taken_at(found, found.block.back.bust_level).width - gap / 2
        return (
            WORDS("tape_waist", front=say(front), back=say(back), gap=say(gap), waist=say(waist_girth(steps).finished)),
            WORDS("tape_yoke", edge=say(paths.path_length(found.yoke_line.kept))),
            WORDS("tape_edge", half=say(gap / 2)),
            WORDS(
                "tape_modesty",
                half=say(gap / 2 + steps.style.modesty_overlap),
                whole=say(gap + 2 * steps.style.modesty_overlap),
            ),
        )


def _named(*names):
    """The style values of these names."""
    return tuple(one for one in quantities(Style) if one.name in names)


def _another(at, now):
    """The reduction to ask for: one that differs enough from the present one, and can be drawn."""
    *first, last = [one for one in ASKED if abs(one - now) >= CM_PER_INCH / 2]
    for one in first:
        try:
            at(one)
            return one
        except CorsetkitError:
            continue
    return last


LESSON = BackLesson()
