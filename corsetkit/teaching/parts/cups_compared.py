"""The cup of two parts and the cup of three of one wearer, compared in numbers."""

from corsetkit.geometry import paths as path
from corsetkit.geometry.points import turn_between
from corsetkit.showing.lessons.cups_lifted import cup_seams, cups_of
from corsetkit.teaching.said import rounded_each
from corsetkit.units import say_length, say_number


def compared(two, three, unit):
    """Sentences on two patterns of one wearer: the one's cup has two parts, the other's three."""
    say = lambda cm: say_length(cm, unit)  # noqa: E731
    left = [say_number(pattern.steps.cup.seam.fullness_left, 1) for pattern in (two, three)]
    across = say_number(360 - corners_at_the_crossing(three.steps.cup), 1)
    off = [_cut_off(one, unit) for one in (two, three)]
    return (
        f"Two parts: {_counted(two, say)}. Three parts: {_counted(three, say)}. {rounded_each(unit)}",
        f"The angle taken out (we call it fullness): in the seam through the bust point {left[0]} degrees with two parts and "
        f"{left[1]} with three; in the cut across {across}.",
        f"The seam cuts the corner at the bust point off by {off[0]} with two parts, by {off[1]} with three (inner cup and "
        "outer cup).",
    )


def corners_at_the_crossing(cup):
    """The corners of the upper and both lower cups where the cut crosses the cup seam, together: 360 lie flat.

    `cup` is a `ThreePartCup`.
    """
    inner, outer = cup.seam.inner_blend.before[0].way(0.0), cup.seam.outer_blend.before[0].way(0.0)
    to_front, to_armscye = -cup.cut_inner[-1].way(1.0), cup.cut_outer[0].way(0.0)
    opened = cup.close_top.back.turn
    upper = turn_between(to_armscye, to_front) % 360
    return upper + turn_between(to_front, inner) % 360 + turn_between(outer, to_armscye * opened) % 360


def _counted(pattern, say):
    seams = cup_seams(pattern)
    pieces = len(cups_of(pattern))
    sewn = sum(seam.lengths[0] for seam in seams)
    return f"{pieces} pieces, {len(seams)} {'seam' if len(seams) == 1 else 'seams'} between them, {say(sewn)} to sew"


def _cut_off(pattern, unit):
    seam, point = pattern.steps.cup.seam, pattern.steps.darts.overbust.bust_point
    return " and ".join(say_length(abs(path.point_along(run, seam.to_bust_point) - point), unit, part=32)
                        for run in (seam.inner, seam.outer))
