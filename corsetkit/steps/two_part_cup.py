"""Step 5, the two-part cup: the overbust dart trimmed away leaves an inner and an outer cup.

After this step the seam through the bust point is a smooth curve on both cups, each exactly as long as the two
straight legs it was, so that the cups meet from end to end and at the bust point's notch.

The curve stands out a little from each leg and cuts the corner at the bust point off: no line is stretched.
"""

from dataclasses import dataclass

from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.blend import rounded
from corsetkit.geometry.curve import Curves, Line
from corsetkit.geometry.points import Point, turn_between
from corsetkit.pattern.piece import Blend
from corsetkit.steps.darts import Darts
from corsetkit.style import Style


@dataclass(frozen=True, kw_only=True)
class CupSeam:
    """The seam through the bust point on both cups, each path from its upper to its lower end.

    `inner` and `outer` are the shaped runs, each `length` cm long, on the cups as the closed darts leave them;
    the bust point's notch lies `to_bust_point` cm from the upper end.
    """

    inner: Curves
    outer: Curves
    length: float
    to_bust_point: float
    inner_blend: Blend
    outer_blend: Blend

    def __repr__(self) -> str:
        return f"<CupSeam {self.length:.1f} cm, bust point {self.to_bust_point:.1f} cm from its upper end>"

    @property
    def fullness_left(self) -> float:
        """Degrees through which the two sewn edges turn towards each other: what the shaped seam keeps of the darts."""
        return abs(paths.turning(self.inner)) + abs(paths.turning(self.outer))


@dataclass(frozen=True, kw_only=True)
class TwoPartCup:
    """The two cups' seam; `inner_top` and `outer_top` are the ends of the overbust line on them.

    `inner_angle` and `outer_angle` are the cups' own angles at the bust point before the seam is shaped, in degrees.
    """

    darts: Darts
    seam: CupSeam
    inner_top: Point
    outer_top: Point
    inner_angle: float
    outer_angle: float

    def __repr__(self) -> str:
        angles = f"{self.inner_angle:.1f} and {self.outer_angle:.1f} degrees at the bust point"
        return f"<TwoPartCup: seam {self.seam.length:.1f} cm, inner and outer cup {angles}>"

    @property
    def warnings(self) -> tuple[str, ...]:
        return ()


def two_part_cup(darts: Darts, style: Style) -> TwoPartCup:
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
    return TwoPartCup(
        darts=darts,
        seam=seam,
        inner_top=inner_top,
        outer_top=outer_top,
        inner_angle=turn_between(inner_top - point, below.inner - point) % 360,
        outer_angle=turn_between(below.outer - point, outer_top - point) % 360,
    )


def cup_seam(darts: Darts, inner_top: Point, outer_top: Point, roundness: float) -> CupSeam:
    """The seam from two upper ends, equally far from the bust point, through it to the underbust line."""
    point, below = darts.overbust.bust_point, darts.underbust
    inner_legs = Line(inner_top, point), Line(point, below.inner)
    outer_legs = Line(outer_top, point), Line(point, below.outer)
    try:
        inner, up = rounded(*inner_legs, roundness)
        outer, _ = rounded(*outer_legs, roundness)
    except ValueError:
        raise CorsetkitError("the cup seam cannot be rounded at the bust point: choose another cup seam roundness") from None
    return CupSeam(
        inner=inner,
        outer=outer,
        length=up + below.radius,
        to_bust_point=up,
        inner_blend=Blend("the cup seam, rounded at the bust point", inner_legs, inner),
        outer_blend=Blend("the cup seam, rounded at the bust point", outer_legs, outer),
    )
