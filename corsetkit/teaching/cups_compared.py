"""The cup of two parts and the cup of three of one wearer, compared in numbers."""

from corsetkit.geometry import path
from corsetkit.geometry.points import turn_between
from corsetkit.showing.cups_lifted import cup_seams, cups_of
from corsetkit.units import say_length, say_number


def compared(two, three, unit):
    """Sentences on two patterns of one wearer: the one's cup has two parts, the other's three."""
    say = lambda cm: say_length(cm, unit)  # noqa: E731
    seams = two.steps.cup.seam, three.steps.cup.seam
    left = [say_number(seam.fullness_left, 1) for seam in seams]
    inner, outer = ([say_number(corner_angle(blend(seam)), 1) for seam in seams] for blend in (
        lambda seam: seam.inner_blend, lambda seam: seam.outer_blend))
    crossing = corners_at_the_crossing(three.steps.cup)
    off = [_cut_off(one, unit) for one in (two, three)]
    return (
        f"Two parts: {_counted(two, say)}. Three parts: {_counted(three, say)}.",
        f"Fullness in the seam through the bust point: {left[0]} degrees with two parts, {left[1]} with three.",
        f"Angle of the paper at the bust point before the seam is shaped: with two parts {inner[0]} degrees on the inner "
        f"cup and {outer[0]} on the outer, with three {inner[1]} and {outer[1]}.",
        f"Where the cut crosses the cup seam, the three corners make {say_number(crossing, 1)} degrees together: the cut "
        "takes nothing there.",
        f"The seam cuts the corner at the bust point off by {off[0]} with two parts, by {off[1]} with three (inner cup and "
        "outer cup).",
        f"With three parts the seam ends {say(_to_the_edge(two, three))} below the top edge; the upper cup has no seam.",
    )


def corner_angle(blend):
    """The paper's own angle at the corner of a line of two straight stretches, degrees."""
    before, after = blend.before
    return 180 - abs(turn_between(before.way(1.0), after.way(0.0)))


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


def _to_the_edge(two, three):
    """How far below the top edge the lower cups' seam ends: what the seam of two parts is longer by."""
    return two.steps.cup.seam.to_bust_point - three.steps.cup.seam.to_bust_point
