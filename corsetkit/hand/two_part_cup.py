"""Step 5 by hand: the inner and the outer cup, and the seam through the bust point, alike for two parts and for three."""

from corsetkit.hand.block import BUST_POINT
from corsetkit.hand.darts import placed
from corsetkit.hand.drafter import turned
from corsetkit.hand.overbust import TOP_INNER, TOP_OUTER
from corsetkit.hand.underbust import INNER, OUTER
from corsetkit.words import words_of

WORDS = words_of("hand")


def draw_cup_seam(hand, seam, inner_top, outer_top):
    """Draw the seam on both cups, from the marks at its upper ends to the underbust line."""
    for words, path, top, low in (("inner", seam.inner, inner_top, INNER), ("outer", seam.outer, outer_top, OUTER)):
        line, notch = f"{words} cup's seam", f"{words} cup's bust point notch"
        hand.same(BUST_POINT, notch, WORDS("seam_notch"))
        hand.through((top, notch, low), line, (path[:1], path[1:]), WORDS("cup_seam"), 1)
        hand.check((line,), WORDS("check_cup_seams"))


def draw(hand, cup, style):
    """Draw the cup seam on both cups."""
    draw_cup_seam(hand, cup.seam, turned(TOP_INNER), placed(hand, TOP_OUTER))
