"""Step 6, the three-part cup: the overbust dart is closed instead, and an upper cup cut off across it.

After this step the upper cup's lower edge is exactly as long as the lower cups' upper edges, for it is the same
line; the lower cups part at the seam through the bust point, shaped as in the two-part cup.
"""

from dataclasses import dataclass

from corsetkit.geometry import paths
from corsetkit.geometry.curve import Curves, curve, even_arc
from corsetkit.geometry.move import Move, turned_about
from corsetkit.geometry.points import Point, between, turn_between, unit
from corsetkit.steps.cup_seam import CupSeam, cup_seam
from corsetkit.steps.darts import Darts
from corsetkit.style import Style
from corsetkit.units import say_both

LEAST_BELOW_CUT = 1.2
"""Cup seam kept between the cut and the bust point, cm."""
LEAST_ARMSCYE = 1.0
"""Armscye kept on the lower cup below the cut, cm."""
LEAST_FROM_DART = 2.5
"""Underbust line kept between the cut and the cup seam, cm."""


@dataclass(frozen=True, kw_only=True)
class ThreePartCup:
    """The cut across, and the lower cups' seam.

    `close_top` turns the outer cup about the bust point until the overbust dart is closed. `cut_inner` runs
    from `front_end` on the underbust line to the closed dart, `cut_outer` on from there to the armscye, both
    with the overbust dart closed. `upper_centre` is the underbust line's stretch that the upper cup keeps,
    `lower_inner` the rest of it; `armscye_upper` and `armscye_lower` part the cup's armscye in the same way,
    these with the overbust dart still open.
    """

    darts: Darts
    close_top: Move
    cut_inner: Curves
    cut_outer: Curves
    front_end: Point
    upper_centre: Curves
    lower_inner: Curves
    armscye_upper: Curves
    armscye_lower: Curves
    seam: CupSeam
    warnings: tuple[str, ...]

    def __repr__(self) -> str:
        cut = paths.path_length(self.cut_inner) + paths.path_length(self.cut_outer)
        return f"<ThreePartCup: seam {self.seam.length:.1f} cm, cut across {cut:.1f} cm>"


def three_part_cup(darts: Darts, style: Style) -> ThreePartCup:
    """Close the overbust dart and cut the upper cup off.

    Args:
        darts: the `Darts`.
        style: reads cut_depth, cut_at_front, cup_seam_roundness.

    Returns:
        A `ThreePartCup`; where an edge is too short for a mark, the mark is moved and a warning says so.
    """
    overbust = darts.overbust
    warnings: list[str] = []
    point = overbust.bust_point
    radius = overbust.top_radius
    depth = _moved(
        "cut depth along the cup seam",
        style.cut_depth,
        radius - LEAST_BELOW_CUT,
        (LEAST_BELOW_CUT, "from the bust point"),
        warnings,
    )
    inner_top, outer_top = darts.inner.close(overbust.top_left), darts.outer.close(overbust.top_right)
    # The darts closed before have opened this one by as much as they took.
    close_top = turned_about(point, turn_between(outer_top - point, inner_top - point))
    knee = between(inner_top, point, depth / radius)

    armscye = paths.moved(overbust.armscye_cup_part, darts.outer.close)
    along = _moved(
        "cut depth along the armscye",
        style.cut_depth,
        paths.path_length(armscye) - LEAST_ARMSCYE,
        (LEAST_ARMSCYE, "from the armscye's lower end"),
        warnings,
    )
    armscye_upper, armscye_lower = paths.cut_along(armscye, along)
    side_end = close_top(paths.path_end(armscye_upper))

    line = darts.inner.line
    start = _moved(
        "cut at front",
        style.cut_at_front,
        paths.path_length(line) - LEAST_FROM_DART,
        (LEAST_FROM_DART, "from the cup seam"),
        warnings,
    )
    upper_centre, lower_inner = paths.cut_along(line, start)
    front_end = paths.path_end(upper_centre)
    # The cut crosses the closed dart squarely, so that it neither nears the bust point nor leaves a corner.
    across = unit(knee - point) * -1j
    # It ends between its own straight way and square to the armscye, so that the lower cup's corner there stays open.
    outward = armscye_upper[-1].tangent(1.0) * 1j * close_top.turn
    cut_inner = even_arc(front_end, knee, arriving=across)
    cut_outer = curve(knee, across, unit(side_end - knee) + outward, side_end)
    seam = cup_seam(
        point,
        ((cut_inner.turned_round,), paths.turned_round(lower_inner)),
        ((cut_outer.moved(close_top.inverse),), darts.outer.line),
        style.cup_seam_roundness,
        "cut",
    )
    return ThreePartCup(
        darts=darts,
        close_top=close_top,
        cut_inner=(cut_inner,),
        cut_outer=(cut_outer,),
        front_end=front_end,
        upper_centre=upper_centre,
        lower_inner=lower_inner,
        armscye_upper=armscye_upper,
        armscye_lower=armscye_lower,
        seam=seam,
        warnings=(*warnings, *seam.warnings),
    )


def _moved(name: str, wanted: float, most: float, kept: tuple[float, str], warnings: list[str]) -> float:
    """The mark's place, no farther than the edge allows; `kept` are the cm kept free beyond it, and words for from where."""
    if wanted <= most:
        return wanted
    free, where = kept
    warnings.append(
        f"{name} is {say_both(wanted)}; the cut is kept {say_both(free)} {where}, so its mark is moved to {say_both(most)}"
    )
    return most
