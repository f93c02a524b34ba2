"""Step 3 by hand: the tightening dart, and the cup's two lines around the bust point; the yoke follows in `yoke`."""

from corsetkit.geometry import paths
from corsetkit.geometry.points import dot, unit
from corsetkit.hand.block import BUST_POINT
from corsetkit.hand.drafter import FRONT, fitted
from corsetkit.hand.underbust import INNER, OUTER, WAIST
from corsetkit.pattern.instructions import Compass, Square, Towards

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
    hand.square(
        NECK,
        FRONT_POINT,
        overbust.front_point,
        "The depth below the neck is the {centre_front_depth}, or less "
        "where the centre-front dart lies near; "
        + (
            "more than the {centre_front_taking_in} is taken in there, or the closed dart would swing it past the "
            "centre front."
            if more
            else "the {centre_front_taking_in} is taken in there."
        ),
    )
    hand.join(NECK, FRONT_POINT, "centre front above the cups", "Nothing is taken in at the neck.")
    _centre_front_dart(hand, overbust, style)
    _tightening_dart(hand, overbust, style)
    _armscye(hand, overbust, style)
    _lines(hand, overbust, style)


def _centre_front_dart(hand, o, style):
    why = (
        "The dart's lower leg lies on the bust line, so that the bust keeps its girth."
        if style.to_the_wearer
        else "Half of the {centre_front_dart} lies above the bust line, half below."
    )
    hand.square(WAIST, LOWER, o.dart_lower, why)
    hand.swing(
        BUST_POINT,
        LOWER,
        UPPER,
        o.dart_upper,
        "Both legs are equally long; the width between their ends is the {centre_front_dart}.",
    )
    hand.join(BUST_POINT, LOWER, "centre-front dart's lower leg", "The dart's legs are straight.")
    hand.join(BUST_POINT, UPPER, "centre-front dart's upper leg", "The dart's legs are straight.")


def _tightening_dart(hand, o, style):
    hand.measure(
        BUST_POINT, Towards(SHOULDER), "overbust mark", o.mark, "How high the cup reaches is chosen with the {overbust_mark}."
    )
    takes = (
        "half of what the {bust_girth} has more than the {high_bust_girth}" if style.to_the_wearer else "the {overbust_dart}"
    )
    takes += fitted(style.fitting.tightening_dart, "more", "less")
    why = f"At the overbust mark the dart takes {takes}; laid off at the shoulder, a slip of the hand counts less."
    reach = abs(o.mid_shoulder - o.bust_point)
    for words, name, point, left in (("inner", TOP_INNER, o.top_left, True), ("outer", TOP_OUTER, o.top_right, False)):
        leg = point - o.bust_point
        far = o.bust_point + leg * (reach / dot(unit(o.mid_shoulder - o.bust_point), leg))
        aim = f"tightening dart's {words} aim"
        hand.measure(SHOULDER, Square(BUST_POINT, SHOULDER, left), aim, far, why)
        hand.measure(BUST_POINT, Towards(aim), name, point, "Both legs of the dart are equally long.")
        hand.join(BUST_POINT, name, f"tightening dart's {words} leg", "The dart's legs are straight.")
        hand.join(name, SHOULDER, f"yoke's {words} dart leg", "Above the overbust line the dart runs out to nothing.")
    hand.join(TOP_INNER, TOP_OUTER, "tightening dart's width", "It is drawn only to be measured.")
    hand.check(("tightening dart's width",), "This is what the dart takes at the overbust line.")


def _armscye(hand, o, style):
    for name, point, path, why in (
        (
            ARMSCYE_TOP,
            o.armscye_top,
            (*o.armscye_cup_part, *o.armscye_low_part),
            "The way along the armscye is the {overbust_armscye}, or less on a short one.",
        ),
        (
            ARMSCYE_LOW,
            o.armscye_low,
            o.armscye_low_part,
            "So far above the underarm, along the armscye, the cup starts: the {underarm_along}.",
        ),
    ):
        hand.square(WAIST, name, point, why, hand.along(ARMSCYE, UNDERARM, paths.path_length(path)))


def _lines(hand, o, style):
    wearer, reach = style.to_the_wearer, ("more", "less")
    to_front = fitted(style.fitting.cup_to_the_front, *reach)
    to_side = fitted(style.fitting.cup_to_the_side, *reach)
    # Where a fitting has made the front wider, the cup keeps its place.
    stood = ", as it stood before the fitting" if o.block.front_added else ""
    hand.measure(
        BUST_POINT,
        FRONT[1],
        GUIDE_FRONT,
        o.guide_front,
        "The reach is four fifths of the way to the centre front, which is half of the {bust_point_width}"
        f"{to_front}; a margin stays, never less than the {{least_strip}}."
        if wearer
        else f"The reach is the {{guide_to_front}}{to_front}; a margin stays at the centre front, never less than the "
        "{least_strip}.",
    )
    hand.measure(
        BUST_POINT,
        FRONT[0],
        GUIDE_SIDE,
        o.guide_side,
        f"The reach is two thirds of the way to the side{stood}{to_side}; a margin stays, never less than the {{least_strip}}."
        if wearer
        else f"The reach is the {{guide_to_side}}{to_side}; a margin stays at the side, never less than the {{least_strip}}.",
    )
    hand.curve(
        FRONT_POINT, TOP_INNER, "inner overbust line", o.top_inner, "The line bends evenly, like an arc of a circle.", 2
    )
    hand.curve(
        TOP_OUTER,
        ARMSCYE_TOP,
        "outer overbust line",
        o.top_outer,
        "The line runs on from the inner one when the dart is closed, and bends out a little at the armscye.",
        2,
    )
    hand.curve(
        FRONT_POINT,
        GUIDE_FRONT,
        "underbust line from the front point",
        o.under_inner[:1],
        "The line is upright where it passes the bust point.",
        1,
        None,
        Compass.DOWN,
    )
    hand.curve(
        GUIDE_FRONT,
        INNER,
        "underbust line to the inner leg",
        o.under_inner[1:],
        "The line meets the dart's leg squarely, so that it runs on when the dart is sewn.",
        1,
        Compass.DOWN,
        Square(BUST_POINT, INNER, left=True),
    )
    hand.curve(
        OUTER,
        GUIDE_SIDE,
        "underbust line from the outer leg",
        o.under_outer[:1],
        "The line leaves the dart's leg squarely and is upright where it passes the bust point.",
        1,
        Square(BUST_POINT, OUTER, left=True),
        Compass.UP,
    )
    hand.curve(
        GUIDE_SIDE,
        ARMSCYE_LOW,
        "underbust line to the armscye",
        o.under_outer[1:],
        "The line bends out a little at the armscye, so that the cup's corner there stays open.",
        2,
        Compass.UP,
    )
