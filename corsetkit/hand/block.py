"""Step 1 by hand: the two halves of the block and the bust point, measured from the two centres at the waist."""

from corsetkit.geometry import paths
from corsetkit.hand.drafter import BACK, FRONT, fitted
from corsetkit.pattern.instructions import Compass, Square

BUST_POINT = "bust point"
UPPER, LOWER = "side dart's upper end", "side dart's lower end"
LEVEL = "front bust level at the side"
AT_UNDERBUST, AT_UNDERBUST_FRONT = "back side seam's underbust mark", "front side seam's underbust mark"
UNDERBUST_FRONT = (
    "At the underbust the front's side edge takes its {underbust_side_share} of half of what the {bust_girth} has more than "
    "the {underbust_girth}, or what lets the seam bend once."
)
UNDERBUST_BACK = (
    "At the underbust the back takes its {underbust_back_share} of half of what the {bust_girth} has more than the "
    "{underbust_girth}, or more on a short back."
)
WIDER, TAKEN = ("wider", "narrower"), ("more is taken in", "less is taken in")
FROM_CENTRE = ("farther from the centre", "nearer to the centre")


def draw(hand, block, style):
    """Draw front and back from the level of the waist."""
    let, fitting = block.let_out, style.fitting
    hand.begin(
        "centre front waist",
        block.front.waist_centre,
        FRONT,
        "near the left edge of the paper, as far above its lower edge as the hip lies below the waist",
        "Everything on the front is measured from here, so that small slips do not add up.",
    )
    hand.square(
        "centre front waist",
        BUST_POINT,
        block.bust_point,
        "The height is the {front_waist_length} less the {neck_to_bust_point}; the distance from the centre is "
        "half of the {bust_point_width}.",
    )
    shares = (
        (
            "the width is half of the {across_front_width}, and three fifths of what both across widths leave of half of "
            "the {bust_girth} with the {bust_ease}"
            if style.to_the_wearer
            else "the width is a quarter of the {bust_girth} with the {bust_ease}"
        )
        + fitted(block.front_added, *WIDER)
        + "."
    )
    _half(
        hand,
        "front",
        block.front,
        (let.edge_top, let.edge_low - let.edge_top),
        shares,
        "The distance from the centre is a sixth of the {neck_base_girth}; the straight way to the bust point is the "
        "{neck_to_bust_point}.",
        "The front neckline is what the back one leaves of half of the {neck_base_girth}.",
        "The height is the back underarm's, and what the {front_waist_length} has more than the back;",
    )
    hand.begin(
        "centre back waist",
        block.back.waist_centre,
        BACK,
        "on the same level, to the right of the front and clear of it",
        "Everything on the back is measured from here; its centre stands on the right.",
    )
    shares = (
        (
            "the width is half of the {across_back_width}, and two fifths of what both across widths leave of half of the "
            "{bust_girth} with the {bust_ease}"
            if style.to_the_wearer
            else "the width is a quarter of the {bust_girth} with the {bust_ease}"
        )
        + fitted(let.edge_top + let.seam_top - fitting.side_seam, *WIDER)
        + "."
    )
    yoke = fitted(fitting.back_yoke, "higher", "lower")
    _half(
        hand,
        "back",
        block.back,
        (let.edge_top - let.seam_low, let.edge_low + let.seam_low - let.edge_top - let.seam_top),
        shares,
        f"The height is the {{back_waist_length}} and {{1.905 cm}}{yoke}; the distance from the centre is a "
        "sixth of the {neck_base_girth} and {0.635 cm}.",
        f"The height is the {{back_waist_length}}{yoke}.",
        "The height is the {back_waist_length} less the {armscye_depth} and less the {underarm_drop};",
    )
    _darts(hand, block)
    _seams(hand, block)


def _darts(hand, block):
    """The waist darts as the block has them: the front's below the bust point, the back's on its own line."""
    taken = "what the {bust_girth} has more than the {waist_girth}"
    for half, h, top, why in (
        (
            "front",
            block.front,
            BUST_POINT,
            f"The front dart takes what side seams and back dart leave of {taken}; in the "
            "next step it becomes one with the underbust dart.",
        ),
        (
            "back",
            block.back,
            "back waist dart's top",
            f"The back dart takes its {{waist_back_share}} of {taken}"
            f"{fitted(block.let_out.at_dart, *TAKEN)}; the last step takes in more.",
        ),
    ):
        if not h.dart_legs:
            continue
        start, end = f"centre {half} waist", f"{half} waist dart's end"
        if half == "back":
            hand.square(
                start,
                top,
                paths.path_start(h.dart_legs[0]),
                "It stands at its {back_dart_place} of the back's waist"
                f"{fitted(block.let_out.at_dart / 2, *FROM_CENTRE)} and runs to nothing at the bust level.",
            )
        hand.square(
            start,
            end,
            paths.path_end(h.dart_legs[0]),
            "Below the waist the dart runs to nothing three fifths of the {waist_to_hip} down.",
        )
        for words, leg in zip(("side", "centre"), h.dart_legs):
            at, name = f"{half} waist dart's {words} leg at the waist", f"{half} waist dart's {words} leg"
            hand.square(start, at, leg[-2].end, why)
            above = "The legs leave the top along the dart's line and are upright at the waist."
            if len(leg) == 3:
                beside = f"{name} at the underbust"
                hand.square(start, beside, leg[0].end, UNDERBUST_BACK)
                hand.through(
                    (top, beside, at), f"{name} above the waist", (leg[:1], leg[1:2]), above, 1, Compass.DOWN, Compass.DOWN
                )
            else:
                hand.curve(top, at, f"{name} above the waist", leg[:-1], above, 2, Compass.DOWN, Compass.DOWN)
            hand.curve(
                at,
                end,
                f"{name} below the waist",
                leg[-1:],
                "The legs meet again along the dart's line.",
                2,
                Compass.DOWN,
                Compass.DOWN,
            )


def _half(hand, half, h, let, shares, neck, neck_depth, underarm):
    """One half; `let` is what a fitting takes in more at its side waist, and by how much more it widens hip than bust."""
    to_side = (FRONT if half == "front" else BACK)[0]
    start, centre_out = f"centre {half} waist", to_side.step
    side_neck, tip, across, under = (
        f"{half} {name}" for name in ("side neck point", "shoulder tip", "across mark", "underarm point")
    )
    centre_neck = f"centre {half} neck point"
    hand.square(start, side_neck, h.neck_side, neck)
    hand.square(start, centre_neck, h.neck_centre, neck_depth)
    hand.square(
        side_neck,
        tip,
        h.shoulder_tip,
        "The shoulder's length is the {shoulder_length}; its {shoulder_slope} is laid off as a fall and a run.",
    )
    hand.halve(side_neck, tip, f"{half} mid-shoulder mark", "The middle of the shoulder serves later lines.")
    hand.square(start, under, h.underarm, f"{underarm} {shares}")
    hand.square(
        start,
        across,
        h.across,
        f"The width is half of the {{across_{half}_width}}, two fifths of the way up from underarm to shoulder.",
    )
    hand.square(
        start,
        f"{half} waist at the side",
        h.waist_side,
        "The side seam takes its {waist_side_share}, or less where the darts need the rest, of what the "
        "{bust_girth} has more than the {waist_girth} with the {waist_ease}; where it has less, the seam slants out"
        f"{fitted(let[0], *TAKEN)}.",
    )
    hand.square(start, f"centre {half} hip", h.hip_centre, "The depth is the {waist_to_hip}.")
    hand.square(
        start,
        f"{half} hip at the side",
        h.hip_side,
        "The width is the bust's, and a quarter of what the "
        f"{{hip_girth}} with the {{hip_ease}} has more{fitted(let[1], *WIDER)}.",
    )
    hand.join(
        centre_neck,
        f"centre {half} hip",
        f"centre {half}",
        "The centre is straight: it lies on a fold, or is cut along the straight of the cloth.",
    )
    hand.join(f"centre {half} hip", f"{half} hip at the side", f"{half} hip line", "The block ends at the hip.")
    hand.join(side_neck, tip, f"{half} shoulder", "The shoulder seam is straight.")
    hand.check((f"{half} shoulder",), "It must come to the {shoulder_length}.")
    out = Square(side_neck, tip, left=centre_out.real < 0)
    hand.curve(
        side_neck,
        centre_neck,
        f"{half} neckline",
        h.neckline,
        "The neckline begins square to the shoulder and is level at the centre, so that it runs on across both.",
        2,
        out,
        FRONT[1] if half == "front" else BACK[1],
    )
    # Both curves of the armscye end in the across mark, where the arm's crease runs upright.
    hand.curve(
        tip,
        across,
        f"upper {half} armscye",
        h.armscye[:1],
        "The armscye begins square to the shoulder and is upright at the across mark.",
        1,
        out,
        Compass.DOWN,
    )
    hand.curve(
        across,
        under,
        f"lower {half} armscye",
        h.armscye[1:],
        "The armscye meets the side seam squarely.",
        (0.4, 0.8),
        Compass.DOWN,
        to_side,
    )


def _seams(hand, block):
    front, back = block.front, block.back
    hand.square(
        "centre back waist",
        "back bust level at the side",
        back.side_above[-1].end,
        "As much side seam lies above the bust level as on the front.",
    )
    hand.join(
        "back underarm point",
        "back bust level at the side",
        "back side seam above the bust level",
        "Down to the bust level the side seam is upright.",
    )
    upper = front.side_above[-1].end
    top = UPPER if block.side_dart else LEVEL
    hand.square(
        "centre front waist",
        top,
        upper,
        "The side dart points at the bust point from its level, or from lower "
        "where less than {2.54 cm} of side seam would stay above it."
        if block.side_dart
        else "Down to the bust level the side seam is upright.",
    )
    hand.join("front underarm point", top, "front side seam above the bust level", "Down to here the side seam is upright.")
    start = top
    leaves = Compass.DOWN
    if block.side_dart:
        hand.swing(
            BUST_POINT,
            UPPER,
            LOWER,
            block.mouth_lower,
            "Both legs of the side dart are equally long, and the dart takes what the front's side seam has more "
            "than the back's.",
        )
        for end, name in ((UPPER, "side dart's upper leg"), (LOWER, "side dart's lower leg")):
            hand.join(BUST_POINT, end, name, "The dart's legs are straight.")
        start = LOWER
        # The seam leaves the lower leg as it comes to the upper one, so that it is smooth when the dart is closed.
        leaves = None if abs(upper.imag - block.bust_point.imag) > 1e-9 else Square(BUST_POINT, LOWER, left=False)
    for half, h, begin, bearing in (
        ("front", front, start, leaves),
        ("back", back, "back bust level at the side", Compass.DOWN),
    ):
        swings = "Between bust and waist the side seam swings in or out and is upright at the waist."
        line, waist = f"{half} side seam down to the waist", f"{half} waist at the side"
        if len(h.side_waist) == 2:
            beside = AT_UNDERBUST if half == "back" else AT_UNDERBUST_FRONT
            hand.square(
                f"centre {half} waist", beside, h.side_waist[0].end, UNDERBUST_BACK if half == "back" else UNDERBUST_FRONT
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
            "Between waist and hip the side seam swings out and is upright at both.",
            2,
            Compass.DOWN,
            Compass.DOWN,
        )
    hand.check(
        ("front side seam above the bust level", "front side seam down to the waist"),
        "Less the dart the front's side seam is as long as the back's."
        if block.side_dart or not block.let_out.seam_low
        else "The back's side seam is made as long when the back waist is taken in.",
    )
    hand.check(("front neckline", "back neckline"), "Front and back neckline are half of the {neck_base_girth}.")
