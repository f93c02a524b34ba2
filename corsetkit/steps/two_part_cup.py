"""Step 5, the two-part cup: the overbust dart trimmed away leaves an inner and an outer cup.

After this step the seam through the bust point is a smooth line on both cups, convex from end to end, and the two are
equally long above the bust point and below it, so that the cups meet from end to end and at its notch.
"""

from dataclasses import dataclass

from corsetkit.geometry import paths
from corsetkit.geometry.points import Point, turn_between
from corsetkit.steps.cup_seam import CupSeam, cup_seam
from corsetkit.steps.darts import Darts
from corsetkit.style import Style


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
        return self.seam.warnings


def two_part_cup(darts: Darts, style: Style) -> TwoPartCup:
    """Part the cups at the overbust dart and the underbust dart and shape their seam.

    Args:
        darts: the `Darts`.
        style: reads cup_seam_roundness.

    Returns:
        A `TwoPartCup`.
    """
    overbust = darts.overbust
    top_inner = paths.turned_round(paths.moved(overbust.top_inner, darts.inner.close))
    top_outer = paths.moved(overbust.top_outer, darts.outer.close)
    inner_top, outer_top = paths.path_start(top_inner), paths.path_start(top_outer)
    point, below = overbust.bust_point, darts.underbust
    seam = cup_seam(
        point,
        (top_inner, paths.turned_round(darts.inner.line)),
        (top_outer, darts.outer.line),
        style.cup_seam_roundness,
        "overbust line",
    )
    return TwoPartCup(
        darts=darts,
        seam=seam,
        inner_top=inner_top,
        outer_top=outer_top,
        inner_angle=turn_between(inner_top - point, below.inner - point) % 360,
        outer_angle=turn_between(below.outer - point, outer_top - point) % 360,
    )
