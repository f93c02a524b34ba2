"""Step 5 by hand: the inner and the outer cup, and their seam through the bust point."""

from corsetkit.hand.cup_seam import draw_cup_seam
from corsetkit.hand.darts import placed
from corsetkit.hand.drafter import turned
from corsetkit.hand.overbust import TOP_INNER, TOP_OUTER


def draw(hand, cup, style):
    """Draw the cup seam on both cups."""
    draw_cup_seam(hand, cup.seam, turned(TOP_INNER), placed(hand, TOP_OUTER))
