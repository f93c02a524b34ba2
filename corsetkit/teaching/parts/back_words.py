"""The words of the lesson on the back, each with its small drawing."""

from corsetkit.geometry import paths as path
from corsetkit.geometry.curve import Line
from corsetkit.geometry.move import slid
from corsetkit.showing.lessons.laced import mirrored
from corsetkit.drawing.step_sheet import Drawn
from corsetkit.showing.lessons.vignette import vignette
from corsetkit.teaching.word_cards import Word


def back_words(steps):
    """The `Word`s, drawn from `steps` up to the back."""
    found, half = steps.back, steps.block.back
    waist, centre = found.waist, half.waist_centre.real
    side = (*half.side_above, *waist.side_waist, *found.side_below)
    lacing = (Line(found.hem.edge, found.neckline.edge),)
    parting = [Drawn(run, "before") for run in (found.upper_parting, *waist.legs, found.lower_parting)]
    panels = [Drawn(found.hem.kept, "before"), Drawn(found.yoke_line.kept, "before"), Drawn(side, "before"),
              Drawn(found.armscye_panel, "before"), *parting]
    yoke = [found.yoke_line.kept, (Line(found.yoke_line.edge, found.neckline.edge),), found.neckline.kept,
            (Line(found.yoke_neck, half.shoulder_tip),), found.armscye_yoke]
    left, hem, top = path.run_start(found.hem.kept).real - 1.5, found.underbust.hem_level - 1.5, found.yoke_line.edge.imag
    lower, upper = (left, hem, centre + 2.0, top + 4.0), (left - 2.0, top - 6.0, centre + 4.0, half.neck_side.imag + 2.0)
    middle = (waist.axis - 12.0, hem, centre + 14.0, top + 4.0)

    def card(word, meaning, told, lines, box=lower):
        return Word(word, meaning, vignette(word.capitalize(), told, lines, box))

    gap = next(cut.outline for cut in found.waste if cut.name == "lacing gap")
    low, _, high, under = found.modesty
    opened = (low, high, under, *(_over(centre, run) for run in (low, high, under)))
    edge = Drawn(lacing, "before")
    return (
        card("waist reduction", "how much smaller than the body the laced corset is at the waist; half of it falls to each "
             "half of the back", "the taken-in side seam and the back dart drawn strongly.",
             [*panels, edge, Drawn((*waist.side_waist, *found.side_below), "new"),
              *(Drawn(leg, "new") for leg in waist.legs)]),
        card("side back and centre back", "the two panels of half the back; the back dart's seam parts them",
             "the seam between the two panels drawn strongly.",
             [*panels, edge, *(Drawn(one.run, "new") for one in parting)]),
        card("back yoke", "the back's part above the panels, up to the shoulder", "the piece above the panels drawn strongly.",
             [*panels, *(Drawn(run, "new") for run in yoke)], upper),
        card("lacing edge", "where the back ends and the eyelets will sit; the edges are laced together",
             "the straight edge beside the centre back drawn strongly.", [*panels, Drawn(lacing, "new")]),
        card("lacing gap", "the space left between the two lacing edges; it is part of the finished girth",
             "the strip between lacing edge and centre back, hatched.",
             [*panels, Drawn(lacing, "new"), Drawn(gap, "waste")]),
        card("modesty panel", "a strip of cloth behind the lacing that covers the gap and keeps the laces off the skin",
             "the strip that reaches under both lacing edges drawn strongly.",
             [*panels, edge, Drawn(_over(centre, lacing), "before"), *(Drawn(run, "new") for run in opened)], middle),
    )  # fmt: skip


def _over(centre, run):
    """The run mirrored over the centre back."""
    return path.moved(mirrored(path.moved(run, slid(-centre))), slid(centre))
