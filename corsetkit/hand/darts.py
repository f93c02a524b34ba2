"""Step 4 by hand: the centre-front dart and the side dart closed with tracing paper, the underbust line redrawn."""

from corsetkit.hand import block, overbust
from corsetkit.hand.block import BUST_POINT
from corsetkit.hand.drafter import turned
from corsetkit.hand.overbust import (
    ARMSCYE_LOW,
    ARMSCYE_TOP,
    FRONT_POINT,
    GUIDE_FRONT,
    GUIDE_SIDE,
    TOP_INNER,
    TOP_OUTER,
    UNDERARM,
)
from corsetkit.hand.underbust import INNER, OUTER
from corsetkit.hand.yoke import OPENING_ENDS
from corsetkit.pattern.instructions import Square, Towards
from corsetkit.words import words_of

WORDS = words_of("hand")

INNER_LINE, OUTER_LINE = "redrawn inner underbust line", "redrawn outer underbust line"


def draw(hand, darts, style):
    """Close both darts about the bust point and redraw the underbust line across them."""
    front_upper, front_lower = _crossings(hand, darts.inner, "centre-front dart", overbust.UPPER, overbust.LOWER, GUIDE_FRONT)
    hand.turn(
        BUST_POINT,
        overbust.UPPER,
        overbust.LOWER,
        (FRONT_POINT, TOP_INNER, *opening_end(hand, "inner"), front_upper),
        darts.inner.close,
        WORDS("close_front_dart"),
    )
    hand.join(turned(FRONT_POINT), overbust.LOWER, "V at the centre front", WORDS("front_corner"))
    if darts.block.side_dart:
        side_upper, side_lower = _crossings(hand, darts.outer, "side dart", block.UPPER, block.LOWER, GUIDE_SIDE)
        hand.turn(
            BUST_POINT,
            block.UPPER,
            block.LOWER,
            (ARMSCYE_LOW, ARMSCYE_TOP, TOP_OUTER, *opening_end(hand, "outer"), UNDERARM, side_upper),
            darts.outer.close,
            WORDS("close_side_dart"),
        )
        side_upper = turned(side_upper)
    else:
        side_upper = side_lower = "underbust mark at the side level"
        hand.measure(BUST_POINT, Towards(block.LEVEL), side_upper, darts.outer.leg_lower, WORDS("no_side_dart"))
    _redrawn(
        hand,
        darts.inner,
        "inner",
        (turned(FRONT_POINT), turned(front_upper), front_lower, INNER),
        INNER_LINE,
        None,
        Square(BUST_POINT, INNER, left=True),
    )
    _redrawn(
        hand,
        darts.outer,
        "outer",
        (OUTER, side_lower, side_upper, placed(hand, ARMSCYE_LOW)),
        OUTER_LINE,
        Square(BUST_POINT, OUTER, left=True),
        None,
    )


def placed(hand, name):
    """The mark where the side dart's closing has left it: turned, or as it was where there is no side dart."""
    return turned(name) if turned(name) in hand else name


def opening_end(hand, words):
    """The mark up to which the yoke is sewn to this cup, on its block, where the yoke has an opening."""
    return tuple(name for name in (OPENING_ENDS[words],) if name in hand)


def _crossings(hand, line, dart, upper_end, lower_end, guide):
    """Mark where both legs of a dart cross the underbust line."""
    names = []
    for words, end, point in (("upper", upper_end, line.leg_upper), ("lower", lower_end, line.leg_lower)):
        name = f"underbust mark on the {dart}'s {words} leg"
        if abs(point - hand[guide]) < 1e-6:
            hand.same(guide, name, WORDS("crossing_at_guide"))
        else:
            hand.measure(BUST_POINT, Towards(end), name, point, WORDS("crossing"))
        names.append(name)
    return names


def _redrawn(hand, crossed, words, marks, line, leaves, arrives):
    """The underbust line through its stretch before the closed dart, across it, and after it."""
    start, leg_before, leg_after, end = marks
    path = crossed.line
    if crossed.blend is None:
        cut = next(k for k, curve in enumerate(path) if abs(curve.end - hand[leg_before]) < 1e-6) + 1
        stretches = ((start, leg_before, path[:cut]), (leg_before, end, path[cut:]))
        why = WORDS("underbust_line_kept")
    else:
        joint = crossed.blend.after[0]
        cut = path.index(joint)
        leave, meet = f"{words} redrawing's start", f"{words} redrawing's end"
        hand.beside(start, leg_before, leave, joint.start, WORDS("redrawn_from"))
        hand.beside(leg_after, end, meet, joint.end, WORDS("redrawn_to"))
        stretches = ((start, leave, path[:cut]), (leave, meet, (joint,)), (meet, end, path[cut + 1 :]))
        why = WORDS("underbust_line_redrawn")
    through = [start]
    for number, (one, other, part) in enumerate(stretches):
        label = ("before", "across", "behind")[number] if len(stretches) == 3 else ("before", "behind")[number]
        through += hand.helpers(one, other, f"{words} underbust line {label} the dart", part, 2)
        through.append(other)
    hand.smooth(through, line, path, why, leaves, arrives)
