"""Step 2 by hand: the hem, the underbust mark and the long dart's legs."""

from corsetkit.geometry import paths
from corsetkit.hand.block import AT_UNDERBUST_FRONT, BUST_POINT, LEVEL, LOWER
from corsetkit.hand.drafter import FRONT, fitted
from corsetkit.pattern.instructions import Along, Compass, Towards
from corsetkit.steps.shares import LetOut, top_girth_at

WAIST = "centre front waist"
MARK, INNER, OUTER = "underbust mark", "inner leg's underbust mark", "outer leg's underbust mark"
TAKEN_IN = "taken-in front waist at the side"
DART_END, PARTING = "front dart's end", "front parting at the hem"


def _side(hand, underbust):
    """The front's side seam taken in, where the front gives a part of the waist's reduction."""
    front, above, below = underbust.block.front, "taken-in front side seam above the waist", "taken-in front side seam"
    if underbust.side_waist == front.side_waist:
        return
    hand.square(
        WAIST,
        TAKEN_IN,
        paths.path_end(underbust.side_waist),
        "The front gives its {reduction_at_front} of half of the {waist_reduction}, its side the {reduction_at_side} of that.",
    )
    why = "It is upright at the waist and runs out to the block's."
    start = AT_UNDERBUST_FRONT if AT_UNDERBUST_FRONT in hand else LOWER if underbust.block.side_dart else LEVEL
    hand.curve(start, TAKEN_IN, above, underbust.side_waist[-1:], why, (1 / 3, 2 / 3), None, Compass.DOWN)
    hand.curve(
        TAKEN_IN, "front hip at the side", f"{below} below the waist", underbust.side_hip, why, 2, Compass.DOWN, Compass.DOWN
    )


def draw(hand, underbust, style):
    """Draw the hem and the dart on the front."""
    fitting = style.fitting
    _side(hand, underbust)
    raised, lowered = fitted(fitting.hem_at_the_front, "higher", "lower"), fitted(fitting.underbust_line, "lower", "higher")
    hem_why = (
        "The depth is the {hem_share} of the {waist_to_hip}"
        if style.to_the_wearer
        else "From the shoulder over the bust point down to the hem is the {corset_length}"
    ) + f"{raised}."
    hand.square(WAIST, "centre front hem", paths.path_start(underbust.hem), hem_why)
    hand.square(
        WAIST,
        "front hem at the side",
        underbust.hem_side,
        "Towards the side the hem rises by the {hem_raise}"
        f"{', from where its centre lay before the fitting' if raised else ''}.",
    )
    hand.curve(
        "centre front hem",
        "front hem at the side",
        "front hem",
        underbust.hem,
        "The hem is level at the centre front and meets the side seam squarely.",
        2,
        FRONT[0],
    )
    hand.measure(
        BUST_POINT,
        Compass.DOWN,
        MARK,
        underbust.mark,
        f"The distance is the {{bust_point_to_fold}}{lowered}."
        if style.to_the_wearer and underbust.block.measurements.bust_point_to_fold is not None
        else f"The more the {{bust_girth}} has beyond the {{underbust_girth}}, the lower the breast's fold lies{lowered}."
        if style.to_the_wearer
        else f"The distance is the {{underbust_mark}}: {{7.62 cm}} for a small bust, {{8.89 cm}} for a full one{lowered}.",
    )
    larger = fitting.underbust_girth + top_girth_at(style, underbust.level / underbust.block.bust_point.imag)
    change = fitting.underbust_girth and underbust.intake - style.underbust_dart
    why = (
        "The dart takes what the front has too much for the {underbust_girth} less the {underbust_reduction}"
        f"{fitted(larger, 'larger all round', 'smaller all round')}"
        if style.to_the_wearer
        else f"The dart's width is the {{underbust_dart}}{fitted(change, 'more', 'less')}"
    ) + "; its {dart_side_share} lies towards the side"
    why += ", or less, so that it leans by no more than its {dart_lean}." if style.to_the_wearer else "."
    for name, bearing, words, near in (
        (INNER, underbust.inner_tangent, "inner", FRONT[1]),
        (OUTER, underbust.outer_tangent, "outer", FRONT[0]),
    ):
        level = underbust.block.bust_point + bearing * (underbust.radius / -bearing.imag)
        hand.measure(MARK, near, f"{words} leg beside the underbust mark", level, why)
        point = underbust.inner if name == INNER else underbust.outer
        hand.measure(
            BUST_POINT,
            Towards(f"{words} leg beside the underbust mark"),
            name,
            point,
            "On both legs the underbust line is as far from the bust point as on the upright.",
        )
        hand.join(BUST_POINT, name, f"{words} leg in the cup", "Down to the underbust line the dart's legs are straight.")
    hand.square(
        WAIST,
        DART_END,
        underbust.dart_end,
        "The depth is the {dart_end} of the way from waist to hem; the end lies on the line that halves the dart.",
    )
    hand.square(WAIST, PARTING, paths.path_end(underbust.parting), "The panels part along the dart's own line to the hem.")
    hand.join(DART_END, PARTING, "front parting", "Below the dart the panels part along its own line.")
    own = Along(DART_END, PARTING)
    given = ", and the front's part of the {waist_reduction} less its side's" if style.reduction_at_front else ""
    for name, leg, words in ((INNER, underbust.inner_leg, "inner"), (OUTER, underbust.outer_leg, "outer")):
        waist = f"{words} leg at the waist"
        hand.square(
            WAIST,
            waist,
            leg[0].end,
            "At the waist the dart takes what side seam and back dart leave of what "
            f"the {{bust_girth}} has more than the {{waist_girth}}"
            f"{given}{'' if underbust.block.let_out == LetOut() else ', as it was before the fitting'}.",
        )
        hand.curve(
            name,
            waist,
            f"{words} leg down to the waist",
            leg[:1],
            "The leg runs on from the bust point and bends until it runs as the dart's own line.",
            2,
            Along(BUST_POINT, name),
            own,
        )
        hand.curve(
            waist,
            DART_END,
            f"{words} leg below the waist",
            leg[1:],
            "Below the waist the dart runs out to nothing.",
            2,
            own,
            own,
        )
    for words in ("inner", "outer"):
        hand.check(
            (f"{words} leg in the cup", f"{words} leg down to the waist", f"{words} leg below the waist"),
            "Both legs of the dart must be equally long, for they are sewn together.",
        )
