"""Step 5 by hand: the inner and the outer cup, and the seam through the bust point, alike for two parts and for three."""

from corsetkit.geometry import paths
from corsetkit.hand.block import BUST_POINT
from corsetkit.hand.darts import placed
from corsetkit.hand.drafter import turned
from corsetkit.hand.overbust import TOP_INNER, TOP_OUTER
from corsetkit.hand.underbust import INNER, OUTER
from corsetkit.pattern.instructions import Along, Towards


def draw_cup_seam(hand, seam, inner_top, outer_top):
    """Draw the seam on both cups, from the marks at its upper ends to the underbust line."""
    for words, path, top, low in (("inner", seam.inner, inner_top, INNER), ("outer", seam.outer, outer_top, OUTER)):
        line, notch = f"{words} cup's seam", f"{words} cup's bust point notch"
        upper, lower = paths.cut_along(path, seam.to_bust_point)
        hand.beside(
            top,
            low,
            notch,
            paths.path_end(upper),
            "The seam cuts the corner off a little; here both cups meet at the bust point, as far along the seam "
            "as it was along the leg.",
        )
        marks = (
            top,
            *hand.helpers(top, notch, f"{words} cup's seam above the notch", upper),
            notch,
            *hand.helpers(notch, low, f"{words} cup's seam below the notch", lower),
            low,
        )
        hand.smooth(
            marks,
            line,
            path,
            "It is as long as the two straight legs; how soon it bends is the {cup_seam_roundness}.",
            Towards(BUST_POINT),
            Along(BUST_POINT, low),
        )
        hand.check((line,), "Both cups' seams must be equally long, for they are sewn together.")


def draw(hand, cup, style):
    """Draw the cup seam on both cups."""
    draw_cup_seam(hand, cup.seam, turned(TOP_INNER), placed(hand, TOP_OUTER))
