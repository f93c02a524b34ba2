"""Step 5, the two-part cup: the overbust dart trimmed away leaves an inner and an outer cup.

After this step the seam through the bust point is a smooth curve on both cups, each exactly as long as the two
straight legs it was, so that the cups meet from end to end and at the bust point's notch.

The curve stands out a little from each leg and cuts the corner at the bust point off: no line is stretched.
"""

from dataclasses import dataclass

from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.blend import rounded
from corsetkit.geometry.curve import Line
from corsetkit.geometry.points import turn_between
from corsetkit.pattern.piece import Blend


@dataclass(frozen=True)
class CupSeam:
    """The seam through the bust point on both cups, each path from its upper to its lower end.

    `inner` and `outer` are the shaped runs, each `length` cm long, on the cups as the closed darts leave them;
    the bust point's notch lies `to_bust_point` cm from the upper end.
    """

    inner: tuple
    outer: tuple
    length: float
    to_bust_point: float
    inner_blend: Blend
    outer_blend: Blend

    @property
    def fullness_left(self):
        """Degrees through which the two sewn edges turn towards each other: what of the darts' angles the shaped seam keeps."""
        return abs(paths.turning(self.inner)) + abs(paths.turning(self.outer))


@dataclass(frozen=True)
class TwoPartCup:
    """The two cups' seam; `inner_top` and `outer_top` are the ends of the overbust line on them.

    `inner_angle` and `outer_angle` are the cups' own angles at the bust point before the seam is shaped, in degrees.
    """

    darts: object
    seam: CupSeam
    inner_top: complex
    outer_top: complex
    inner_angle: float
    outer_angle: float

    @property
    def warnings(self):
        return ()


def two_part_cup(darts, style):
    """Part the cups at the overbust dart and the underbust dart and shape their seam.

    Args:
        darts: the `Darts`.
        style: reads cup_seam_roundness.

    Returns:
        A `TwoPartCup`.
    """
    overbust = darts.overbust
    inner_top, outer_top = darts.inner.close(overbust.top_left), darts.outer.close(overbust.top_right)
    seam = cup_seam(darts, inner_top, outer_top, style.cup_seam_roundness)
    point, below = overbust.bust_point, darts.underbust
    inner = turn_between(inner_top - point, below.inner - point) % 360
    outer = turn_between(below.outer - point, outer_top - point) % 360
    return TwoPartCup(darts, seam, inner_top, outer_top, inner, outer)


def cup_seam(darts, inner_top, outer_top, roundness):
    """The seam from two upper ends, equally far from the bust point, through it to the underbust line."""
    point, below = darts.overbust.bust_point, darts.underbust
    legs = [(Line(top, point), Line(point, low)) for top, low in ((inner_top, below.inner), (outer_top, below.outer))]
    try:
        (inner, up), (outer, _) = (rounded(*pair, roundness) for pair in legs)
    except ValueError:
        raise CorsetkitError("the cup seam cannot be rounded at the bust point: choose another cup seam roundness") from None
    return CupSeam(
        inner,
        outer,
        up + below.radius,
        up,
        *(Blend("the cup seam, rounded at the bust point", leg, path) for leg, path in zip(legs, (inner, outer))),
    )
