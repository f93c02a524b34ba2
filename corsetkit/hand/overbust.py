"""Step 3 by hand: the tightening dart, and the cup's two lines around the bust point; the yoke follows in `yoke`."""

from corsetkit.geometry import paths
from corsetkit.geometry.points import dot, unit
from corsetkit.hand.block import BUST_POINT
from corsetkit.hand.drafter import FRONT, fitted
from corsetkit.hand.underbust import INNER, OUTER, WAIST
from corsetkit.pattern.instructions import Compass, Square, Towards
from corsetkit.words import words_of

WORDS = words_of("hand")

NECK, UNDERARM = "centre front neck point", "front underarm point"
FRONT_POINT = "cup's front point"
UPPER, LOWER = "centre-front dart's upper end", "centre-front dart's lower end"
SHOULDER = "front mid-shoulder mark"
TOP_INNER, TOP_OUTER = "tightening dart's inner overbust mark", "tightening dart's outer overbust mark"
ARMSCYE_TOP, ARMSCYE_LOW = "overbust mark on the armscye", "underbust mark on the armscye"
GUIDE_FRONT, GUIDE_SIDE = "cup's guide towards the front", "cup's guide towards the side"
ARMSCYE = ("lower front armscye", "upper front armscye")


def draw(hand, overbust, style):
    """Draw the cup's lines on the front."""
    more = overbust.front_point.real > style.centre_front_taking_in + 1e-9
    hand.square(NECK, FRONT_POINT, overbust.front_point, WORDS("front_point_more" if more else "front_point"))
    hand.join(NECK, FRONT_POINT, "centre front above the cups", WORDS("centre_front"))
    _centre_front_dart(hand, overbust, style)
    _tightening_dart(hand, overbust, style)
    _armscye(hand, overbust, style)
    _lines(hand, overbust, style)


def _centre_front_dart(hand, o, style):
    hand.square(
        WAIST, LOWER, o.dart_lower, WORDS("front_dart_lower_fitted" if style.to_the_wearer else "front_dart_lower_guides")
    )
    hand.swing(BUST_POINT, LOWER, UPPER, o.dart_upper, WORDS("front_dart_upper"))
    hand.join(BUST_POINT, LOWER, "centre-front dart's lower leg", WORDS("dart_legs"))
    hand.join(BUST_POINT, UPPER, "centre-front dart's upper leg", WORDS("dart_legs"))


def _tightening_dart(hand, o, style):
    hand.measure(BUST_POINT, Towards(SHOULDER), "overbust mark", o.mark, WORDS("overbust_mark"))
    why = WORDS(
        "tightening_dart_fitted" if style.to_the_wearer else "tightening_dart_guides",
        fit=fitted(style.fitting.tightening_dart, "more", "less"),
    )
    reach = abs(o.mid_shoulder - o.bust_point)
    for words, name, point, left in (("inner", TOP_INNER, o.top_left, True), ("outer", TOP_OUTER, o.top_right, False)):
        leg = point - o.bust_point
        far = o.bust_point + leg * (reach / dot(unit(o.mid_shoulder - o.bust_point), leg))
        aim = f"tightening dart's {words} aim"
        hand.measure(SHOULDER, Square(BUST_POINT, SHOULDER, left), aim, far, why)
        hand.measure(BUST_POINT, Towards(aim), name, point, WORDS("tightening_dart_legs"))
        hand.join(BUST_POINT, name, f"tightening dart's {words} leg", WORDS("dart_legs"))
        hand.join(name, SHOULDER, f"yoke's {words} dart leg", WORDS("yoke_dart_leg"))
    hand.join(TOP_INNER, TOP_OUTER, "tightening dart's width", WORDS("tightening_dart_width"))
    hand.check(("tightening dart's width",), WORDS("check_tightening_dart"))


def _armscye(hand, o, style):
    for name, point, path, why in (
        (ARMSCYE_TOP, o.armscye_top, (*o.armscye_cup_part, *o.armscye_low_part), WORDS("cup_armscye_top")),
        (ARMSCYE_LOW, o.armscye_low, o.armscye_low_part, WORDS("cup_armscye_low")),
    ):
        hand.square(WAIST, name, point, why, hand.along(ARMSCYE, UNDERARM, paths.path_length(path)))


def _lines(hand, o, style):
    how, reach = "fitted" if style.to_the_wearer else "guides", ("more", "less")
    to_front = fitted(style.fitting.cup_to_the_front, *reach)
    to_side = fitted(style.fitting.cup_to_the_side, *reach)
    # Where a fitting has made the front wider, the cup keeps its place.
    stood = "_as_before" if style.to_the_wearer and o.block.front_added else ""
    hand.measure(BUST_POINT, FRONT[1], GUIDE_FRONT, o.guide_front, WORDS(f"guide_front_{how}", fit=to_front))
    hand.measure(BUST_POINT, FRONT[0], GUIDE_SIDE, o.guide_side, WORDS(f"guide_side_{how}{stood}", fit=to_side))
    hand.curve(FRONT_POINT, TOP_INNER, "inner overbust line", o.top_inner, WORDS("inner_overbust_line"), 2)
    hand.curve(TOP_OUTER, ARMSCYE_TOP, "outer overbust line", o.top_outer, WORDS("outer_overbust_line"), 2)
    hand.curve(
        FRONT_POINT,
        GUIDE_FRONT,
        "underbust line from the front point",
        o.under_inner[:1],
        WORDS("underbust_from_front"),
        1,
        None,
        Compass.DOWN,
    )
    hand.curve(
        GUIDE_FRONT,
        INNER,
        "underbust line to the inner leg",
        o.under_inner[1:],
        WORDS("underbust_to_leg"),
        1,
        Compass.DOWN,
        Square(BUST_POINT, INNER, left=True),
    )
    hand.curve(
        OUTER,
        GUIDE_SIDE,
        "underbust line from the outer leg",
        o.under_outer[:1],
        WORDS("underbust_from_leg"),
        1,
        Square(BUST_POINT, OUTER, left=True),
        Compass.UP,
    )
    hand.curve(
        GUIDE_SIDE,
        ARMSCYE_LOW,
        "underbust line to the armscye",
        o.under_outer[1:],
        WORDS("underbust_to_armscye"),
        2,
        Compass.UP,
    )
