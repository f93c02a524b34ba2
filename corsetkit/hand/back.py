"""Step 7 by hand: the back waist taken in, hem and yoke, the lacing edge, and half the modesty panel."""

from corsetkit.geometry import paths
from corsetkit.hand.block import AT_UNDERBUST, FROM_CENTRE, TAKEN, draw_leg
from corsetkit.hand.drafter import BACK, fitted
from corsetkit.pattern.instructions import Compass, Square, Towards
from corsetkit.words import words_of

WORDS = words_of("hand")

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
    hand.square(WAIST, TAKEN_IN, taken, WORDS("back_taken_in"))
    above, below = "taken-in back side seam above the waist", "taken-in back side seam below the waist"
    seam, hip = _parted((*waist.side_waist, *waist.side_hip), taken)
    even = WORDS("taken_in_side")
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
        WORDS("back_waist_mark"),
        hand.along(lines, bend, paths.path_length(waist.side_waist)),
    )


def _parted(path, place):
    """The path's curves down to a place that is one of their ends, and those from there on."""
    number = next(k for k, curve in enumerate(path) if abs(curve.start - place) < 1e-6)
    return path[:number], path[number:]


def _dart(hand, back, style):
    waist, top, end = back.waist, "back dart's top", "back dart's end"
    let = back.block.let_out
    farther = fitted(let.at_dart / 2, *FROM_CENTRE)
    hand.square(WAIST, top, waist.dart_top, WORDS("taken_in_dart_top", fit=farther))
    hand.square(WAIST, end, waist.dart_end, WORDS("taken_in_dart_end", fit=farther))
    for words, leg in zip(("side", "centre"), waist.legs):
        if len(leg) == 1:
            continue
        why, upright = WORDS("taken_in_dart", fit=fitted(let.at_dart, *TAKEN)), WORDS("taken_in_leg")
        draw_leg(hand, WAIST, f"back dart's {words} leg", (top, end), leg, (why, upright, upright))


def _hem(hand, back, style):
    hem, side, foot = back.hem, "back hem at the side", "centre back hem"
    hand.square(WAIST, side, paths.path_start(hem.kept), WORDS("back_hem_side"))
    hand.square(WAIST, foot, paths.path_end(hem.whole), WORDS("back_hem_centre"))
    hand.curve(side, foot, "back hem", hem.whole, WORDS("back_hem"), 2, None, TO_CENTRE)


def _yoke(hand, back, style):
    side, centre = "back yoke's mark on the armscye", "back yoke's mark at the centre"
    line, fit = back.yoke_line, fitted(style.fitting.back_yoke, "more", "less")
    hand.square(
        WAIST,
        side,
        paths.path_start(line.kept),
        WORDS("back_yoke_armscye"),
        hand.along(ARMSCYE, UNDERARM, paths.path_length(back.armscye_panel)),
    )
    hand.measure(NECK, Compass.DOWN, centre, paths.path_end(line.whole), WORDS("back_yoke_centre", fit=fit))
    hand.curve(side, centre, "back yoke line", line.whole, WORDS("back_yoke_line"), 2, None, TO_CENTRE)
    shoulder, nape = "yoke's neck mark on the back shoulder", "yoke's neck mark at the centre back"
    hand.measure(SIDE_NECK, Towards("back shoulder tip"), shoulder, back.yoke_neck, WORDS("back_yoke_neck"))
    hand.measure(NECK, Compass.DOWN, nape, paths.path_end(back.neckline.whole), WORDS("back_yoke_nape"))
    hand.curve(
        shoulder,
        nape,
        "back yoke's neckline",
        back.neckline.whole,
        WORDS("back_yoke_neckline"),
        (0.1, 0.3, 0.65),
        Square(SIDE_NECK, "back shoulder tip", left=True),
        TO_CENTRE,
    )
    edge = WORDS("lacing_edge")
    names = []
    for words, at in (("hem", back.hem), ("yoke line", line), ("neckline", back.neckline)):
        names.append(f"lacing edge at the {words}")
        hand.square(WAIST, names[-1], at.edge, edge)
    hand.join(names[0], names[1], "lacing edge of the panel", edge)
    hand.join(names[1], names[2], "lacing edge of the yoke", edge)


def _partings(hand, back):
    hand.square(WAIST, "back parting at the yoke line", paths.path_start(back.upper_parting), WORDS("upper_parting_end"))
    hand.join("back parting at the yoke line", "back dart's top", "upper back parting", WORDS("back_parting"))
    hand.square(WAIST, "back parting at the hem", paths.path_end(back.lower_parting), WORDS("lower_parting_end"))
    hand.join("back dart's end", "back parting at the hem", "lower back parting", WORDS("back_parting"))


def _opening(hand, back):
    if back.opening:
        start, end = "back opening's start on the yoke line", "back opening's end on the lacing edge"
        hand.square(WAIST, start, paths.path_start(back.opening), WORDS("back_opening_start"))
        hand.measure("lacing edge at the yoke line", Compass.UP, end, paths.path_end(back.opening), WORDS("back_opening_end"))
        hand.curve(start, end, "back opening", back.opening, WORDS("back_opening"), 2, None, TO_CENTRE)


def _modesty(hand, back):
    names = (
        "modesty panel's lower side corner",
        "modesty panel's lower corner on the fold",
        "modesty panel's upper corner on the fold",
        "modesty panel's upper side corner",
    )
    lines = ("lower edge", "fold", "upper edge", "side edge")
    shorter = WORDS("modesty_shorter")
    wider = WORDS("modesty_wider")
    for name, path, why in zip(names, back.modesty, (wider, shorter, shorter, wider)):
        hand.square(WAIST, name, paths.path_start(path), why)
    for k, (line, path) in enumerate(zip(lines, back.modesty)):
        ends, words = (names[k], names[(k + 1) % 4]), f"modesty panel's {line}"
        if k % 2:
            hand.join(*ends, words, WORDS("modesty_straight"))
        else:
            hand.curve(*ends, words, path, WORDS("modesty_copied"), 1, *((None, TO_CENTRE) if k == 0 else (TO_SIDE, None)))
