"""The lower front's further panels by hand: straight cuts from even places on the hem to places even across on
the underbust line.

Their points are the panels' own, so they are asked of the pieces. The even places are taken on the line as it was drawn
first; each cut then ends where it meets the redrawn line.
"""

from corsetkit.geometry import paths
from corsetkit.hand.darts import INNER_LINE, OUTER_LINE
from corsetkit.hand.drafter import LEAST
from corsetkit.hand.underbust import INNER, OUTER, WAIST
from corsetkit.pattern.instructions import Along, Towards
from corsetkit.pieces import lower_front
from corsetkit.words import words_of

WORDS = words_of("hand")

CENTRE_LINES = ("underbust line to the inner leg", "underbust line from the front point")
SIDE_LINES = ("underbust line from the outer leg", "underbust line to the armscye")


def draw(hand, cup, style):
    """Cut the lower front further on both sides of the dart, where the style has more than one panel there."""
    darts = cup.darts
    centre = lower_front.centre_panels(darts, style.centre_panels)
    _cuts(hand, centre, darts.inner.still, WORDS("centre_cuts"), "centre front hem", False, CENTRE_LINES, INNER_LINE, INNER)
    side = lower_front.side_panels(darts, style.side_panels)
    _cuts(hand, side, darts.outer.still, WORDS("side_cuts"), "front hem at the side", True, SIDE_LINES, OUTER_LINE, OUTER)


def between(panels, number):
    """What a cut parts, in words: the panels before and after it."""
    return f"between {panels[number - 1].name} and {panels[number].name.rsplit(' ', 1)[1]}"


def _cuts(hand, panels, still, why, hem_start, at_side, lines, redrawn, leg):
    """The cuts between panels that lie in order from front to side.

    A tape runs along hem and underbust line from their ends: `hem_start` is the hem's, at the side or not, `leg` the
    underbust line's on the long dart, which is the side panels' near end and the centre panels' far one.
    """
    whole, left, right = paths.path_length(still), paths.path_start(still).real, paths.path_end(still).real
    for number in range(1, len(panels)):
        where = between(panels, number)
        foot, even, top = f"hem mark {where}", f"even place {where}", f"underbust mark {where}"
        cut = panels[number - 1].towards_side.path[0]
        before, after = panels[:number], panels[number:]
        from_end, to_leg = (after, before) if at_side else (before, after)
        hand.square(
            WAIST, foot, cut.start, why, hand.along(("front hem",), hem_start, sum(panel.hem.length for panel in from_end))
        )
        across = complex(left + (right - left) * number / len(panels), 0.0)
        ahead = paths.path_length(paths.cut_at(still, *paths.on_line(still, across, 1j)[0])[0])
        hand.square(
            WAIST, even, paths.point_along(still, ahead), why, hand.along(lines, leg, ahead if at_side else whole - ahead)
        )
        # A cut that needs no more than a hair to the redrawn line already ends on it.
        near = abs(cut.end - hand[even]) < LEAST
        start, bearing = (even, Along(foot, even)) if near else (foot, Towards(even))
        hand.measure(
            start,
            bearing,
            top,
            cut.end,
            WORDS("cut_top"),
            hand.along((redrawn,), leg, sum(panel.top.length for panel in to_leg)),
        )
        hand.join(foot, top, f"panel seam {where}", WORDS("cut_line"))
