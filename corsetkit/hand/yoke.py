"""The front yoke by hand: its neckline, its opening above the bust, and its tightening dart closed.

Beyond the neckline these are the yoke's own points, so they are asked of the piece and not of the step's value.
"""

from corsetkit.geometry import paths
from corsetkit.hand.overbust import ARMSCYE_TOP, FRONT_POINT, NECK, SHOULDER, TOP_INNER, TOP_OUTER
from corsetkit.pattern.instructions import Along, Square, Towards
from corsetkit.pieces import yokes
from corsetkit.words import words_of

WORDS = words_of("hand")

TIP, ACROSS = "front shoulder tip", "front across mark"
YOKE_NECK, DIP = "yoke's neck mark on the front shoulder", "yoke's neck mark at the centre front"
OPENING_ENDS = {words: f"front opening's end on the {words} overbust line" for words in ("inner", "outer")}
OPENING_TOPS = {words: f"front opening's top on the {words} dart leg" for words in ("inner", "outer")}


def draw(hand, overbust, style):
    """Draw the yoke's neckline and, where there is a yoke, its opening, and close its dart."""
    _neckline(hand, overbust)
    if style.yoke:
        opening = yokes.front_opening(overbust, style)
        if opening.inner:
            _opening(hand, overbust, opening)
        _close(hand, overbust, opening)


def with_yoke(name):
    """The name of a mark turned with the yoke's outer half; the cup turns its own tracing of some of them."""
    return f"{name} (turned with the yoke)"


def _neckline(hand, o):
    hand.measure("front side neck point", Towards(TIP), YOKE_NECK, o.yoke_neck, WORDS("yoke_neck"))
    hand.measure(NECK, Towards(FRONT_POINT), DIP, paths.path_end(o.yoke_neckline), WORDS("yoke_dip"))
    hand.curve(
        YOKE_NECK,
        DIP,
        "front yoke's neckline",
        o.yoke_neckline,
        WORDS("yoke_neckline"),
        2,
        Square("front side neck point", TIP, left=False),
        Square(NECK, FRONT_POINT, left=False),
    )


def _opening(hand, o, opening):
    """Both halves of the opening, drawn before the dart between them is closed."""
    shape = WORDS("front_opening")
    for words, corner, far, line, path, sewn, whole in (
        ("inner", TOP_INNER, FRONT_POINT, "inner overbust line", opening.inner, opening.sewn_inner, o.top_inner),
        ("outer", TOP_OUTER, ARMSCYE_TOP, "outer overbust line", opening.outer, opening.sewn_outer, o.top_outer),
    ):
        end, top = OPENING_ENDS[words], OPENING_TOPS[words]
        points = paths.path_start(path), paths.path_end(path)
        at_line, at_leg = points if words == "inner" else points[::-1]
        hand.beside(
            corner, far, end, at_line, WORDS("front_opening_end"), hand.along((line,), corner, paths.path_length(whole) - sewn)
        )
        hand.measure(corner, Towards(SHOULDER), top, at_leg, WORDS("front_opening_top"))
        # The stretch cut out of the overbust line is short, so its straight line shows the way at its end well enough.
        across, upright = Square(corner, SHOULDER, left=False), Square(end, corner, left=True)
        ends, bearings = ((end, top), (upright, across)) if words == "inner" else ((top, end), (across, upright))
        hand.curve(*ends, f"front opening, {words} half", path, shape, 2, *bearings)


def _close(hand, o, opening):
    """Turn the outer half about the mid-shoulder; redraw what the closed dart has bent."""
    yoke = yokes.front_yoke(o, opening)
    traced = [ARMSCYE_TOP, TIP]
    if any(abs(curve.end - hand[ACROSS]) < 1e-6 for curve in o.armscye_shoulder_part):
        traced.insert(1, ACROSS)
    if opening.outer:
        traced = [OPENING_TOPS["outer"], OPENING_ENDS["outer"], *traced]
    hand.turn(SHOULDER, TOP_OUTER, TOP_INNER, traced, yoke.close, WORDS("yoke_turned"), with_yoke)
    _armscye(hand, o, yoke)
    if not opening.outer:
        _redraw(
            hand,
            (FRONT_POINT, with_yoke(ARMSCYE_TOP)),
            (TOP_INNER, SHOULDER),
            "yoke's mark on the closed dart",
            "yoke's redrawn overbust line",
            yoke.overbust[0].path,
            None,
            None,
            WORDS("yoke_overbust"),
        )
    _redraw(
        hand,
        (with_yoke(TIP), YOKE_NECK),
        (SHOULDER, YOKE_NECK),
        "yoke's mark on the redrawn shoulder",
        "yoke's redrawn shoulder",
        yoke.shoulder.path,
        Along(with_yoke(TIP), SHOULDER),
        Along(SHOULDER, YOKE_NECK),
        WORDS("yoke_redrawn_shoulder"),
    )


def _armscye(hand, o, yoke):
    """The armscye of the turned half, so that the yoke has its border all round."""
    path, line = yoke.armscye.path, "yoke's turned armscye"
    start, end, middle = with_yoke(ARMSCYE_TOP), with_yoke(TIP), with_yoke(ACROSS)
    # Where the overbust line ends high on the armscye, only one of its curves is left.
    stretches = ((start, middle, path[:1]), (middle, end, path[1:])) if len(path) > 1 else ((start, end, path),)
    marks = [start]
    for number, (one, other, part) in enumerate(stretches):
        label = line if len(stretches) == 1 else f"{line} {('below', 'above')[number]} the across mark"
        marks += [*hand.helpers(one, other, label, part), other]
    hand.smooth(marks, line, path, WORDS("yoke_armscye"))


def _redraw(hand, ends, corner, joint, line, path, leaves, arrives, why):
    """A line through a corner that the closed dart has made, `corner[0]`, drawn smooth; `corner[1]` is where to measure to.

    A run of one curve passes the corner without a mark of its own there.
    """
    start, end = ends
    marks = [start]
    if len(path) == 1:
        stretches = ((start, end, path, f"{line}"),)
    else:
        middle = corner[0]
        if abs(path[0].end - hand[middle]) > 1e-6:
            hand.beside(*corner, joint, path[0].end, WORDS("yoke_joint"))
            middle = joint
        stretches = ((start, middle, path[:1], f"{line} before the dart"), (middle, end, path[1:], f"{line} behind the dart"))
    for one, other, part, label in stretches:
        marks += [*hand.helpers(one, other, label, part, 2), other]
    hand.smooth(marks, line, path, why, leaves, arrives)
    hand.check((line,), WORDS("check_redrawn"))
