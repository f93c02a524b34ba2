"""The words to know of the overbust lesson, each with its small drawing."""

from corsetkit.geometry import paths as path
from corsetkit.geometry.curve import Line
from corsetkit.showing.lessons.arcs import arc
from corsetkit.showing.lessons.cup_guides import cup_outline
from corsetkit.drawing.step_sheet import Drawn, Spot
from corsetkit.showing.lessons.vignette import vignette
from corsetkit.teaching.word_cards import Word


def overbust_words(steps):
    """The words of lesson 03, drawn from `steps`."""
    o, front = steps.overbust, steps.block.front
    point, mid = o.bust_point, o.mid_shoulder
    paper = Drawn(steps.block.front_paper, "before")
    under = [paper, *(Drawn(run, "before") for run in (o.top_inner, o.top_outer, o.under_inner, o.under_outer))]
    dart = [Drawn((Line(mid, end), Line(end, point)), "new") for end in (o.top_left, o.top_right)]
    here = Spot(point, "bust point", "before")
    upper = (-2, point.imag - 11, front.width + 3, front.neck_side.imag + 2)
    near = (-2, point.imag - 11, front.width + 3, point.imag + 13)
    centre = (-3, point.imag - 4, 13, front.neck_centre.imag + 1)
    return (
        Word("overbust mark", "how high the cup reaches, measured from the bust point towards the middle of the shoulder",
             vignette("Overbust mark", "a mark above the bust point on the way to the middle of the shoulder.",
                      [*under, Drawn((Line(point, o.mark),), "new"), Drawn((Line(o.mark, mid),), "guide")], upper,
                      (here, Spot(o.mark, "overbust mark")))),
        Word("overbust line", "the cup's upper edge, from the centre front over the breast to the armscye",
             vignette("Overbust line", "the cup's upper edge drawn strongly.",
                      [*under, Drawn(o.top_inner, "new"), Drawn(o.top_outer, "new")], near)),
        Word("tightening dart", "a dart above the bust point; sewn, it shortens the upper edge so that it lies close",
             vignette("Tightening dart", "a long narrow wedge from the bust point to the middle of the shoulder.",
                      [*under, Drawn(o.waste[3].outline, "waste"), *dart], upper)),
        Word("taking in", "drawing a seam inwards, so that the cloth becomes narrower there",
             vignette("Taking in", "the centre front drawn inwards where the cups begin.",
                      [*under, Drawn(o.waste[1].outline, "waste"), Drawn((Line(front.neck_centre, o.front_point),), "new")],
                      centre, (Spot(o.front_point, "taken in"),))),
        Word("guide", "a fixed length that is handed on as a custom and used for every body alike",
             vignette("Guide", "a circle of fixed size about the bust point.",
                      [*under, Drawn(arc(point, point + steps.style.overbust_mark, 360), "new")], near, (here,))),
        Word("yoke", "the piece above the cups; it covers chest and shoulder and holds the cups up",
             vignette("Yoke", "the piece between the overbust line and the shoulder.",
                      [paper, Drawn(cup_outline(o), "before"), Drawn(_yoke(o), "new")], upper)),
    )  # fmt: skip


def _yoke(o):
    """The yoke's border on the block, its dart open."""
    front, mid = o.block.front, o.mid_shoulder
    dart = (Line(o.top_left, mid), Line(mid, o.top_right))
    return (Line(front.neck_centre, o.front_point), *o.top_inner, *dart, *o.top_outer,
            *path.turned_round(o.armscye_shoulder_part), Line(front.shoulder_tip, o.yoke_neck), *o.yoke_neckline)
