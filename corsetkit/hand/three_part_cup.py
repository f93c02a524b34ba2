"""Step 6 by hand: the cut across the closed tightening dart, and the lower cups' seam."""

from corsetkit.geometry import paths
from corsetkit.hand import block
from corsetkit.hand.block import BUST_POINT
from corsetkit.hand.darts import INNER_LINE, opening_end, placed
from corsetkit.hand.drafter import turned
from corsetkit.hand.overbust import ARMSCYE, ARMSCYE_TOP, FRONT_POINT, TOP_INNER, TOP_OUTER, UNDERARM
from corsetkit.hand.two_part_cup import draw_cup_seam
from corsetkit.hand.underbust import INNER, WAIST
from corsetkit.pattern.instructions import Square, Towards
from corsetkit.words import words_of

WORDS = words_of("hand")

KNEE, KNEE_OPEN = "cut's mark on the inner leg", "cut's mark on the outer leg"
AT_ARMSCYE, AT_FRONT = "cut's mark on the armscye", "cut's mark on the underbust line"


def draw(hand, cup, style):
    """Cut the upper cup off, the tightening dart closed."""
    inner_top, outer_top = turned(TOP_INNER), placed(hand, TOP_OUTER)
    depth = WORDS("cut_depth")
    hand.measure(inner_top, Towards(BUST_POINT), KNEE, paths.path_end(cup.cut_inner), depth)
    hand.measure(outer_top, Towards(BUST_POINT), KNEE_OPEN, paths.path_start(cup.seam.outer), depth)
    # Marked on the block and turned with the cup: from marks that are turned already it would be less sure.
    side_dart = turned(ARMSCYE_TOP) in hand
    up = paths.path_length((*cup.armscye_lower, *cup.darts.overbust.armscye_low_part))
    hand.square(
        WAIST,
        AT_ARMSCYE,
        cup.darts.outer.close.inverse(paths.path_end(cup.armscye_upper)),
        depth,
        hand.along(ARMSCYE, UNDERARM, up),
    )
    if side_dart:
        hand.turn(BUST_POINT, block.UPPER, block.LOWER, (AT_ARMSCYE,), cup.darts.outer.close, WORDS("cut_mark_turned"))
    before = placed(hand, AT_ARMSCYE)
    opening = tuple(placed(hand, name) for name in opening_end(hand, "outer"))
    hand.turn(
        BUST_POINT,
        outer_top,
        inner_top,
        (before, placed(hand, ARMSCYE_TOP), *opening),
        cup.close_top,
        WORDS("close_tightening_dart"),
    )
    hand.beside(
        turned(FRONT_POINT),
        INNER,
        AT_FRONT,
        cup.front_end,
        WORDS("cut_at_front"),
        hand.along((INNER_LINE,), turned(FRONT_POINT), paths.path_length(cup.upper_centre)),
    )
    square = Square(BUST_POINT, KNEE, left=False)
    hand.curve(AT_FRONT, KNEE, "cut across the inner cup", cup.cut_inner, WORDS("cut_inner"), 1, None, square)
    hand.curve(KNEE, turned(before), "cut across the outer cup", cup.cut_outer, WORDS("cut_outer"), 2, square)
    draw_cup_seam(hand, cup.seam, KNEE, KNEE_OPEN)
