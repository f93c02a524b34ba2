"""Step 7 by hand: the back waist taken in, hem and yoke, the lacing edge, and half the modesty panel."""

from corsetkit.geometry import paths
from corsetkit.hand.block import AT_UNDERBUST, FROM_CENTRE, TAKEN, UNDERBUST_BACK
from corsetkit.hand.drafter import BACK, fitted
from corsetkit.pattern.instructions import Compass, Square, Towards

WAIST, NECK = "centre back waist", "centre back neck point"
UNDERARM, SIDE_NECK = "back underarm point", "back side neck point"
TAKEN_IN, SIDE_MARK = "taken-in back waist at the side", "back side seam's waist mark"
ARMSCYE = ("lower back armscye", "upper back armscye")
TO_SIDE, TO_CENTRE = BACK


def draw(hand, back, style):
    """Draw the back's lines on the back block."""
    _side(hand, back)
    _dart(hand, back, style)
    _hem(hand, back, style)
    _yoke(hand, back, style)
    _partings(hand, back)
    _opening(hand, back)
    _modesty(hand, back)


def _side(hand, back):
    waist = back.waist
    before, bend = hand["back waist at the side"], "back bust level at the side"
    taken = before + (1 if back.block.back.waist_centre.real > before.real else -1) * waist.at_side
    hand.square(WAIST, TAKEN_IN, taken, "The side takes its {reduction_at_side} of half of the {waist_reduction}.")
    above, below = "taken-in back side seam above the waist", "taken-in back side seam below the waist"
    seam, hip = _parted((*waist.side_waist, *waist.side_hip), taken)
    even = "It is upright at the waist and runs out to the block's."
    # Where the block has said what is taken at the underbust, the seam is its own down to there.
    own = AT_UNDERBUST in hand
    if own:
        hand.curve(AT_UNDERBUST, TAKEN_IN, above, seam[1:], even, 2, None, Compass.DOWN)
    else:
        hand.curve(bend, TAKEN_IN, above, seam, even, 2, Compass.DOWN, Compass.DOWN)
    hand.curve(TAKEN_IN, "back hip at the side", below, hip, even, 2, Compass.DOWN, Compass.DOWN)
    lines = (*(("upper part of the back side seam",) if own else ()), above, below)
    hand.square(
        WAIST,
        SIDE_MARK,
        paths.path_start(waist.side_hip),
        "It is set so far down the new side seam that the seam above it is as long as the front's.",
        hand.along(lines, bend, paths.path_length(waist.side_waist)),
    )


def _parted(path, place):
    """The path's curves down to a place that is one of their ends, and those from there on."""
    number = next(k for k, curve in enumerate(path) if abs(curve.start - place) < 1e-6)
    return path[:number], path[number:]


def _dart(hand, back, style):
    waist, top, end = back.waist, "back dart's top", "back dart's end"
    let = back.block.let_out
    place = (
        f"The distance from the centre is the {{back_dart_place}} of the back's waist{fitted(let.at_dart / 2, *FROM_CENTRE)}"
    )
    hand.square(WAIST, top, waist.dart_top, place + "; the dart runs to nothing at the bust level.")
    hand.square(WAIST, end, waist.dart_end, place + "; the depth is the {dart_end} of the way to the hem.")
    for words, leg in zip(("side", "centre"), waist.legs):
        if len(leg) == 1:
            continue
        at = f"back dart's {words} leg at the waist"
        hand.square(
            WAIST,
            at,
            leg[-2].end,
            "The dart takes the {waist_back_share} of what the {bust_girth} has more than "
            "the {waist_girth}, and what the side leaves of half of the {waist_reduction}"
            f"{fitted(let.at_dart, *TAKEN)}.",
        )
        upright, line = "The leg is upright at both ends and at the waist.", f"back dart's {words} leg above the waist"
        if len(leg) == 3:
            beside = f"back dart's {words} leg at the underbust"
            hand.square(WAIST, beside, leg[0].end, UNDERBUST_BACK)
            hand.through((top, beside, at), line, (leg[:1], leg[1:2]), upright, 1, Compass.DOWN, Compass.DOWN)
        else:
            hand.curve(top, at, line, leg[:-1], upright, 2, Compass.DOWN, Compass.DOWN)
        hand.curve(at, end, f"back dart's {words} leg below the waist", leg[-1:], upright, 2, Compass.DOWN, Compass.DOWN)


def _hem(hand, back, style):
    hem, side, foot = back.hem, "back hem at the side", "centre back hem"
    hand.square(WAIST, side, paths.path_start(hem.kept), "As much side seam lies below the waist mark as on the front.")
    hand.square(WAIST, foot, paths.path_end(hem.whole), "At the centre the hem lies as far below the waist as on the front.")
    hand.curve(
        side,
        foot,
        "back hem",
        hem.whole,
        "The hem meets the side seam squarely and is level at the centre.",
        2,
        None,
        TO_CENTRE,
    )


def _yoke(hand, back, style):
    side, centre = "back yoke's mark on the armscye", "back yoke's mark at the centre"
    line, fit = back.yoke_line, fitted(style.fitting.back_yoke, "more", "less")
    hand.square(
        WAIST,
        side,
        paths.path_start(line.kept),
        "The way along the armscye is the {back_yoke_armscye}.",
        hand.along(ARMSCYE, UNDERARM, paths.path_length(back.armscye_panel)),
    )
    hand.measure(
        NECK,
        Compass.DOWN,
        centre,
        paths.path_end(line.whole),
        f"The depth is the {{back_yoke_depth}}{fit}, or less where the yoke would reach the dart.",
    )
    hand.curve(side, centre, "back yoke line", line.whole, "The line is level at the centre back.", 2, None, TO_CENTRE)
    shoulder, nape = "yoke's neck mark on the back shoulder", "yoke's neck mark at the centre back"
    hand.measure(
        SIDE_NECK,
        Towards("back shoulder tip"),
        shoulder,
        back.yoke_neck,
        "The distance is the {yoke_shoulder}, as on the front.",
    )
    hand.measure(
        NECK,
        Compass.DOWN,
        nape,
        paths.path_end(back.neckline.whole),
        "A little is cut off at the neck so that the new neckline runs smoothly across the centre back.",
    )
    hand.curve(
        shoulder,
        nape,
        "back yoke's neckline",
        back.neckline.whole,
        "The neckline begins square to the shoulder and is level at the centre back.",
        (0.1, 0.3, 0.65),
        Square(SIDE_NECK, "back shoulder tip", left=True),
        TO_CENTRE,
    )
    edge = "Half of the {lacing_gap} is trimmed from each half of the back."
    names = []
    for words, at in (("hem", back.hem), ("yoke line", line), ("neckline", back.neckline)):
        names.append(f"lacing edge at the {words}")
        hand.square(WAIST, names[-1], at.edge, edge)
    hand.join(names[0], names[1], "lacing edge of the panel", edge)
    hand.join(names[1], names[2], "lacing edge of the yoke", edge)


def _partings(hand, back):
    hand.square(
        WAIST,
        "back parting at the yoke line",
        paths.path_start(back.upper_parting),
        "Above the dart the panels part along its upright.",
    )
    hand.join("back parting at the yoke line", "back dart's top", "upper back parting", "The panels part along the upright.")
    hand.square(
        WAIST,
        "back parting at the hem",
        paths.path_end(back.lower_parting),
        "Below the dart the panels part along its upright.",
    )
    hand.join("back dart's end", "back parting at the hem", "lower back parting", "The panels part along the upright.")


def _opening(hand, back):
    if back.opening:
        start, end = "back opening's start on the yoke line", "back opening's end on the lacing edge"
        hand.square(
            WAIST,
            start,
            paths.path_start(back.opening),
            "The width along the yoke line is the {back_opening_width}, or less on a narrow yoke.",
        )
        hand.measure(
            "lacing edge at the yoke line",
            Compass.UP,
            end,
            paths.path_end(back.opening),
            "The height is the {back_opening_height}, or less on a low yoke.",
        )
        hand.curve(
            start,
            end,
            "back opening",
            back.opening,
            "It leaves the yoke line squarely and is level at the lacing edge; how full it is is the {opening_roundness}.",
            2,
            None,
            TO_CENTRE,
        )


def _modesty(hand, back):
    names = (
        "modesty panel's lower side corner",
        "modesty panel's lower corner on the fold",
        "modesty panel's upper corner on the fold",
        "modesty panel's upper side corner",
    )
    lines = ("lower edge", "fold", "upper edge", "side edge")
    shorter = "Above and below the panel ends inside the back, by what is called {modesty_shorter}."
    wider = "Its reach under the lacing edge is the {modesty_overlap}."
    for name, path, why in zip(names, back.modesty, (wider, shorter, shorter, wider)):
        hand.square(WAIST, name, paths.path_start(path), why)
    for k, (line, path) in enumerate(zip(lines, back.modesty)):
        ends, words = (names[k], names[(k + 1) % 4]), f"modesty panel's {line}"
        if k % 2:
            hand.join(*ends, words, "It is straight.")
        else:
            hand.curve(
                *ends, words, path, "It copies the back's own line.", 1, *((None, TO_CENTRE) if k == 0 else (TO_SIDE, None))
            )
