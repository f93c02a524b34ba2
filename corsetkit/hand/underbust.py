"""Step 2 by hand: the hem, the underbust mark and the long dart's legs."""

from corsetkit.geometry import paths
from corsetkit.hand.block import AT_UNDERBUST_FRONT, BUST_POINT, LEVEL, LOWER
from corsetkit.hand.drafter import FRONT, fitted
from corsetkit.pattern.instructions import Along, Compass, Towards
from corsetkit.steps.shares import LetOut, top_girth_at
from corsetkit.words import words_of

WORDS = words_of("hand")

WAIST = "centre front waist"
MARK, INNER, OUTER = "underbust mark", "inner leg's underbust mark", "outer leg's underbust mark"
TAKEN_IN = "taken-in front waist at the side"
DART_END, PARTING = "front dart's end", "front parting at the hem"


def _side(hand, underbust):
    """The front's side seam taken in, where the front gives a part of the waist's reduction."""
    front, above, below = underbust.block.front, "taken-in front side seam above the waist", "taken-in front side seam"
    if underbust.side_waist == front.side_waist:
        return
    hand.square(WAIST, TAKEN_IN, paths.path_end(underbust.side_waist), WORDS("front_taken_in"))
    why = WORDS("taken_in_side")
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
    how = "fitted" if style.to_the_wearer else "guides"
    hand.square(WAIST, "centre front hem", paths.path_start(underbust.hem), WORDS(f"front_hem_centre_{how}", fit=raised))
    hand.square(
        WAIST, "front hem at the side", underbust.hem_side, WORDS("front_hem_side_as_before" if raised else "front_hem_side")
    )
    hand.curve("centre front hem", "front hem at the side", "front hem", underbust.hem, WORDS("front_hem"), 2, FRONT[0])
    measured = style.to_the_wearer and underbust.block.measurements.bust_point_to_fold is not None
    hand.measure(
        BUST_POINT, Compass.DOWN, MARK, underbust.mark, WORDS(f"underbust_mark_{'measured' if measured else how}", fit=lowered)
    )
    larger = fitting.underbust_girth + top_girth_at(style, underbust.level / underbust.block.bust_point.imag)
    change = fitting.underbust_girth and underbust.intake - style.underbust_dart
    fit = fitted(larger, "larger", "smaller") if style.to_the_wearer else fitted(change, "more", "less")
    why = WORDS(f"underbust_dart_{how}", fit=fit)
    for name, bearing, words, near in (
        (INNER, underbust.inner_tangent, "inner", FRONT[1]),
        (OUTER, underbust.outer_tangent, "outer", FRONT[0]),
    ):
        level = underbust.block.bust_point + bearing * (underbust.radius / -bearing.imag)
        hand.measure(MARK, near, f"{words} leg beside the underbust mark", level, why)
        point = underbust.inner if name == INNER else underbust.outer
        hand.measure(BUST_POINT, Towards(f"{words} leg beside the underbust mark"), name, point, WORDS("underbust_legs"))
        hand.join(BUST_POINT, name, f"{words} leg in the cup", WORDS("underbust_legs_straight"))
    hand.square(WAIST, DART_END, underbust.dart_end, WORDS("front_dart_end"))
    hand.square(WAIST, PARTING, paths.path_end(underbust.parting), WORDS("front_parting_end"))
    hand.join(DART_END, PARTING, "front parting", WORDS("front_parting"))
    own = Along(DART_END, PARTING)
    before = "" if underbust.block.let_out == LetOut() else WORDS("as_before")
    for name, leg, words in ((INNER, underbust.inner_leg, "inner"), (OUTER, underbust.outer_leg, "outer")):
        waist = f"{words} leg at the waist"
        hand.square(
            WAIST,
            waist,
            leg[0].end,
            WORDS("leg_at_waist_reduced" if style.reduction_at_front else "leg_at_waist", before=before),
        )
        hand.curve(
            name, waist, f"{words} leg down to the waist", leg[:1], WORDS("leg_to_waist"), 2, Along(BUST_POINT, name), own
        )
        hand.curve(waist, DART_END, f"{words} leg below the waist", leg[1:], WORDS("leg_below_waist"), 2, own, own)
    for words in ("inner", "outer"):
        hand.check(
            (f"{words} leg in the cup", f"{words} leg down to the waist", f"{words} leg below the waist"), WORDS("check_legs")
        )
