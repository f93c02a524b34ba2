"""Step 1 by hand: the two halves of the block and the bust point, measured from the two centres at the waist."""

from corsetkit.geometry import paths
from corsetkit.hand.drafter import BACK, FRONT, fitted
from corsetkit.pattern.instructions import Compass, Square
from corsetkit.words import words_of

WORDS = words_of("hand")

BUST_POINT = "bust point"
UPPER, LOWER = "side dart's upper end", "side dart's lower end"
LEVEL = "front bust level at the side"
AT_UNDERBUST, AT_UNDERBUST_FRONT = "back side seam's underbust mark", "front side seam's underbust mark"
WIDER, TAKEN = ("wider", "narrower"), ("more_taken_in", "less_taken_in")
FROM_CENTRE = ("farther_out", "nearer_in")


def draw(hand, block, style):
    """Draw front and back from the level of the waist."""
    let, fitting = block.let_out, style.fitting
    hand.begin("centre front waist", block.front.waist_centre, FRONT, WORDS("front_waist_place"), WORDS("front_waist"))
    hand.square("centre front waist", BUST_POINT, block.bust_point, WORDS("bust_point"))
    _half(
        hand,
        "front",
        block.front,
        (let.edge_top, let.edge_low - let.edge_top),
        WORDS("front_side_neck"),
        WORDS("front_neck"),
        WORDS(
            "front_underarm_fitted" if style.to_the_wearer else "front_underarm_guides", fit=fitted(block.front_added, *WIDER)
        ),
    )
    hand.begin("centre back waist", block.back.waist_centre, BACK, WORDS("back_waist_place"), WORDS("back_waist"))
    yoke = fitted(fitting.back_yoke, "higher", "lower")
    _half(
        hand,
        "back",
        block.back,
        (let.edge_top - let.seam_low, let.edge_low + let.seam_low - let.edge_top - let.seam_top),
        WORDS("back_side_neck", fit=yoke),
        WORDS("back_neck", fit=yoke),
        WORDS(
            "back_underarm_fitted" if style.to_the_wearer else "back_underarm_guides",
            fit=fitted(let.edge_top + let.seam_top - fitting.side_seam, *WIDER),
        ),
    )
    _darts(hand, block)
    _seams(hand, block)


def _darts(hand, block):
    """The waist darts as the block has them: the front's below the bust point, the back's on its own line."""
    for half, h, top, why in (
        ("front", block.front, BUST_POINT, WORDS("front_dart")),
        ("back", block.back, "back waist dart's top", WORDS("back_dart", fit=fitted(block.let_out.at_dart, *TAKEN))),
    ):
        if not h.dart_legs:
            continue
        start, end = f"centre {half} waist", f"{half} waist dart's end"
        if half == "back":
            hand.square(
                start,
                top,
                paths.path_start(h.dart_legs[0]),
                WORDS("back_dart_top", fit=fitted(block.let_out.at_dart / 2, *FROM_CENTRE)),
            )
        hand.square(start, end, paths.path_end(h.dart_legs[0]), WORDS("dart_end"))
        for words, leg in zip(("side", "centre"), h.dart_legs):
            name = f"{half} waist dart's {words} leg"
            draw_leg(hand, start, name, (top, end), leg, (why, WORDS("dart_above"), WORDS("dart_below")))


def draw_leg(hand, start, name, ends, leg, because):
    """A waist dart's leg from its top over the waist to its end, through the underbust where it is led there.

    `start` is the mark that is measured from, `ends` are the marks of top and end, and `because` the reasons of the place at
    the waist, of the line above it, and of the line below it.
    """
    (top, end), (why, above, below) = ends, because
    at, line = f"{name} at the waist", f"{name} above the waist"
    hand.square(start, at, leg[-2].end, why)
    if len(leg) == 3:
        beside = f"{name} at the underbust"
        hand.square(start, beside, leg[0].end, WORDS("underbust_back"))
        hand.through((top, beside, at), line, (leg[:1], leg[1:2]), above, 1, Compass.DOWN, Compass.DOWN)
    else:
        hand.curve(top, at, line, leg[:-1], above, 2, Compass.DOWN, Compass.DOWN)
    hand.curve(at, end, f"{name} below the waist", leg[-1:], below, 2, Compass.DOWN, Compass.DOWN)


def _half(hand, half, h, let, neck, neck_depth, underarm):
    """One half; `let` is what a fitting takes in more at its side waist, and by how much more it widens hip than bust."""
    to_side = (FRONT if half == "front" else BACK)[0]
    start, centre_out = f"centre {half} waist", to_side.step
    side_neck, tip, across, under = (
        f"{half} {name}" for name in ("side neck point", "shoulder tip", "across mark", "underarm point")
    )
    centre_neck = f"centre {half} neck point"
    hand.square(start, side_neck, h.neck_side, neck)
    hand.square(start, centre_neck, h.neck_centre, neck_depth)
    hand.square(side_neck, tip, h.shoulder_tip, WORDS("shoulder_tip"))
    hand.halve(side_neck, tip, f"{half} mid-shoulder mark", WORDS("mid_shoulder"))
    hand.square(start, under, h.underarm, underarm)
    hand.square(start, across, h.across, WORDS("across_front" if half == "front" else "across_back"))
    hand.square(start, f"{half} waist at the side", h.waist_side, WORDS("side_waist", fit=fitted(let[0], *TAKEN)))
    hand.square(start, f"centre {half} hip", h.hip_centre, WORDS("centre_hip"))
    hand.square(start, f"{half} hip at the side", h.hip_side, WORDS("side_hip", fit=fitted(let[1], *WIDER)))
    hand.join(centre_neck, f"centre {half} hip", f"centre {half}", WORDS("centre_line"))
    hand.join(f"centre {half} hip", f"{half} hip at the side", f"{half} hip line", WORDS("hip_line"))
    hand.join(side_neck, tip, f"{half} shoulder", WORDS("shoulder_line"))
    hand.check((f"{half} shoulder",), WORDS("check_shoulder"))
    out = Square(side_neck, tip, left=centre_out.real < 0)
    hand.curve(
        side_neck,
        centre_neck,
        f"{half} neckline",
        h.neckline,
        WORDS("neckline"),
        2,
        out,
        FRONT[1] if half == "front" else BACK[1],
    )
    # Both curves of the armscye end in the across mark, where the arm's crease runs upright.
    hand.curve(tip, across, f"upper {half} armscye", h.armscye[:1], WORDS("upper_armscye"), 1, out, Compass.DOWN)
    hand.curve(
        across, under, f"lower {half} armscye", h.armscye[1:], WORDS("lower_armscye"), (0.4, 0.8), Compass.DOWN, to_side
    )


def _seams(hand, block):
    front, back = block.front, block.back
    hand.square("centre back waist", "back bust level at the side", back.side_above[-1].end, WORDS("back_bust_level"))
    hand.join(
        "back underarm point",
        "back bust level at the side",
        "back side seam above the bust level",
        WORDS("side_to_bust_level"),
    )
    upper = front.side_above[-1].end
    top = UPPER if block.side_dart else LEVEL
    hand.square("centre front waist", top, upper, WORDS("side_dart_upper" if block.side_dart else "side_to_bust_level"))
    hand.join("front underarm point", top, "front side seam above the bust level", WORDS("side_to_here"))
    start = top
    leaves = Compass.DOWN
    if block.side_dart:
        hand.swing(BUST_POINT, UPPER, LOWER, block.mouth_lower, WORDS("side_dart_lower"))
        for end, name in ((UPPER, "side dart's upper leg"), (LOWER, "side dart's lower leg")):
            hand.join(BUST_POINT, end, name, WORDS("dart_legs"))
        start = LOWER
        # The seam leaves the lower leg as it comes to the upper one, so that it is smooth when the dart is closed.
        leaves = None if abs(upper.imag - block.bust_point.imag) > 1e-9 else Square(BUST_POINT, LOWER, left=False)
    for half, h, begin, bearing in (
        ("front", front, start, leaves),
        ("back", back, "back bust level at the side", Compass.DOWN),
    ):
        swings = WORDS("side_to_waist")
        line, waist = f"{half} side seam down to the waist", f"{half} waist at the side"
        if len(h.side_waist) == 2:
            beside = AT_UNDERBUST if half == "back" else AT_UNDERBUST_FRONT
            hand.square(
                f"centre {half} waist",
                beside,
                h.side_waist[0].end,
                WORDS("underbust_back" if half == "back" else "underbust_front"),
            )
            upper, lower = h.side_waist[:1], h.side_waist[1:]
            if half == "back":
                # The last step leads it on from here to another place at the waist, so it is two lines.
                hand.curve(begin, beside, "upper part of the back side seam", upper, swings, 1, bearing)
                hand.curve(beside, waist, line, lower, swings, 1, None, Compass.DOWN)
            else:
                hand.through((begin, beside, waist), line, (upper, lower), swings, 1, bearing, Compass.DOWN)
        else:
            hand.curve(begin, waist, line, h.side_waist, swings, 2 if bearing else (1 / 3, 2 / 3), bearing, Compass.DOWN)
        hand.curve(
            f"{half} waist at the side",
            f"{half} hip at the side",
            f"{half} side seam down to the hip",
            h.side_hip,
            WORDS("side_to_hip"),
            2,
            Compass.DOWN,
            Compass.DOWN,
        )
    hand.check(
        ("front side seam above the bust level", "front side seam down to the waist"),
        WORDS("check_side" if block.side_dart or not block.let_out.seam_low else "check_side_later"),
    )
    hand.check(("front neckline", "back neckline"), WORDS("check_necklines"))
