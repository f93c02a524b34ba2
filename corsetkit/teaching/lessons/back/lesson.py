"""Lesson 07, back: the waist taken in, the lacing gap, the modesty panel; then the whole pattern, and both methods compared."""

from dataclasses import replace

from corsetkit.drawing.step_lines import lines_so_far
from corsetkit.drawing.step_sheet import Drawn, step_sheet
from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.geometry.move import slid
from corsetkit.quantity import quantities
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
from corsetkit.teaching.shared.vignette import vignette
from corsetkit.teaching.shared.whole_pattern import picture as whole_picture
from corsetkit.teaching.step_lesson import StepLesson, style_of
from corsetkit.teaching.word_cards import Word
from corsetkit.units import CM_PER_INCH, Say


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

    def card(word, meaning, told, lines, box=lower):
        return Word(word, meaning, vignette(word.capitalize(), told, lines, box))

    low, _, high, under = found.modesty
    opened = (low, high, under, *(_over(centre, path) for path in (low, high, under)))
    edge = Drawn(lacing, "before")
    return (
        card("waist reduction", "how much smaller than the body the laced corset is at the waist; half of it falls to each "
             "half of the back", "the taken-in side seam and the back dart drawn strongly.",
             [*panels, edge, Drawn((*waist.side_waist, *found.side_below), "new"),
              *(Drawn(leg, "new") for leg in waist.legs)]),
        card("side back and centre back", "the two panels of half the back; the back dart's seam parts them",
             "the seam between the two panels drawn strongly.",
             [*panels, edge, *(Drawn(one.path, "new") for one in parting)]),
        card("back yoke", "the back's part above the panels, up to the shoulder", "the piece above the panels drawn strongly.",
             [*panels, *(Drawn(path, "new") for path in yoke)], upper),
        card("lacing edge", "where the back ends and the eyelets will sit; the edges are laced together",
             "the straight edge beside the centre back drawn strongly.", [*panels, Drawn(lacing, "new")]),
        card("lacing gap", "the space left between the two lacing edges; it is part of the finished girth",
             "the strip between lacing edge and centre back, hatched.",
             [*panels, Drawn(lacing, "new"), Drawn(found.lacing_gap_waste.outline, "waste")]),
        card("modesty panel", "a strip of cloth behind the lacing that covers the gap and keeps the laces off the skin",
             "the strip that reaches under both lacing edges drawn strongly.",
             [*panels, edge, Drawn(_over(centre, lacing), "before"), *(Drawn(path, "new") for path in opened)], middle),
    )  # fmt: skip


def _over(centre, path):
    """The run mirrored over the centre back."""
    return paths.moved(mirrored(paths.moved(path, slid(-centre))), slid(centre))


ASKED = (3 * CM_PER_INCH, CM_PER_INCH)
"""The waist reductions the guess may ask for, cm: the first, unless the desk's is near it or this back has no room for it."""


class BackLesson(StepLesson):
    name = "07_back"
    step = "back"
    panels = (
        Panel("Where does the cloth go when the waist is taken in, and what follows on the front?",
              ("waist_reduction", "reduction_at_side", "lacing_gap")),
    )  # fmt: skip

    # The cells of its own.

    def taken_in(self):
        """What side seam and back dart take at each level."""
        names = ("waist_reduction", "reduction_at_side")
        panel = Panel("Where is the waist taken in most, and where not at all?", ("below_the_bust", *names))
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
        panel = Panel(
            "Which shape do the edges make, and is the gap still covered?",
            ("gap_at_the_top", "gap_at_the_hem", "modesty_overlap"),
        )
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
        panel = Panel("Which pieces come and go, and which numbers stay as they are?", ("cup_parts", "side_panels", "yoke"))
        return self.drawn("whole", (panel,), Drafts, whole_picture, quantities(Style))

    def seams(self):
        """The whole pattern's seams as a table."""
        return self._to_read("seams", "The seams", lambda desk, drafts: seam_table(drafts, desk.record.style))

    def side_by_side(self):
        """One wearer drafted both ways."""
        return self._to_read("side_by_side", "Both ways, side by side", lambda desk, drafts: methods_beside(desk))

    def all_wearers(self):
        """Both ways over all demo wearers."""
        return self._to_read("all_wearers", "Both ways, all demo wearers", lambda desk, drafts: all_wearers(desk.record.unit))

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
        waist, half = found.waist, style.waist_reduction / 2
        say = Say(unit)
        return (
            f"The waist reduction is {say(style.waist_reduction)} all round, so {say(half)} for each half of the back: "
            f"{say(waist.at_side)} at the side seam, {say(half - waist.at_side)} in the back dart.",
            f"The block's own back dart took {say(found.block.back.waist_dart)} at the waist; the back dart takes "
            f"{say(waist.dart)} now.",
            f"The front's underbust dart takes {say(steps.underbust.intake)} at the underbust mark.",
            waist_said(waist_girth(steps), style.lacing_gap, unit),
            f"The lacing edge stands {say(style.lacing_gap / 2)} beside the centre back and is "
            f"{say(abs(found.neckline.edge - found.hem.edge))} long from neckline to hem.",
            f"The modesty panel is {say(style.lacing_gap + 2 * style.modesty_overlap)} wide and reaches "
            f"{say(style.modesty_overlap)} under each lacing edge.",
        )

    def _asked(self, name, steps, unit, drafts):
        style, waist, block = steps.style, steps.back.waist, steps.block.back.waist_dart
        now, kept = style.waist_reduction, style_of(steps)

        def at(value):
            return drafts.steps({**kept, "waist_reduction": value}, self.step)[1]

        other = _another(at, now)
        say = Say(unit)
        right, more = at(other).back.waist.dart, other - now
        slips = [
            (waist.dart + more / 2, "that leaves nothing of the change to the side seam; it takes its share"),
            (
                waist.dart + more,
                "that puts the whole change into one dart; it is shared by both halves of the back, and "
                "in each by side seam and dart",
            ),
        ]
        if block > 0.5:
            slips.append((right - block, "that is what is new; the dart the block had at the waist is still in it"))
        return Asked(
            f"The waist reduction is {say(now)}. At the waist the back dart takes {say(waist.dart)}; {say(block)} of it was "
            f"the block's own. Of what each half of the back gives, the side seam has {round(100 * style.reduction_at_side)} %. "
            f"Now the waist reduction is set to {say(other)}. How much does the back dart take then?",
            "The back dart then takes", "cm", waist.dart, right, 0.2, tuple(one for one in slips if one[0] > 0),
            f"Half of the change, {say(abs(more) / 2)}, falls to each half of the back; of that the side seam has its share, "
            f"and the back dart the rest, {say(abs(right - waist.dart))}.",
            lambda part: taken_picture(name, at(now + more * part), unit),
        )  # fmt: skip

    def _tape(self, steps, unit):
        found, gap = steps.back, steps.style.lacing_gap
        say = Say(unit)
        front = level_width(found.underbust, 0.0)
        back = taken_at(found, found.block.back.bust_level).width - gap / 2
        return (
            f"At the waist the front panels together measure {say(front)}, the back panels {say(back)}. Twice their sum, and "
            f"the gap of {say(gap)}, is {say(waist_girth(steps).finished)}.",
            f"The back yoke's lower edge measures {say(paths.path_length(found.yoke_line.kept))}, and so do the tops of both "
            "panels together.",
            f"From the lacing edge to the centre back it is {say(gap / 2)}, at the neckline and at the hem.",
            f"The modesty panel is {say(gap / 2 + steps.style.modesty_overlap)} wide from fold to side edge "
            f"({say(gap + 2 * steps.style.modesty_overlap)} opened).",
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
