"""How the block shares the girths: bust between front and back, what bust has more than waist between seams and darts, and
what a fitting lets out above or below the waist between the seams at side and back."""

from dataclasses import dataclass

from corsetkit.measurements import Measurements
from corsetkit.steps.half import MOST_AT_UNDERBUST
from corsetkit.style import Style

FRONT_ARM_SHARE = 0.6
"""Of the girth under the arm the front takes three fifths: course convention."""
SIDE_LIMIT = 0.5
"""Fitted, the side seams take no more at the waist than this share of what bust has more than underbust, so that
the darts have something left to take at the underbust: course convention."""


def shares_of_bust(measurements: Measurements, style: Style) -> tuple[float, float]:
    """The widths at the bust of half the front and half the back, cm.

    With fixed guides half each. Fitted: what the across widths leave of half the girth lies under the
    arm, and the front takes three fifths of it, the back two (course convention).
    """
    half = (measurements.bust_girth + style.bust_ease) / 2
    if not style.to_the_wearer:
        return half / 2, half / 2
    front, back = measurements.across_front_width / 2, measurements.across_back_width / 2
    under_arm = half - front - back
    return front + FRONT_ARM_SHARE * under_arm, back + (1 - FRONT_ARM_SHARE) * under_arm


def shares_of_waist(measurements: Measurements, style: Style) -> tuple[float, float, float]:
    """What each side seam, the front dart and the back dart take at the waist, cm, on the half pattern.

    The side seam takes its share from front and back alike. Where bust has nothing more than waist, the
    darts take nothing and the side seams slant out.
    """
    surplus = (measurements.bust_girth + style.bust_ease - measurements.waist_girth - style.waist_ease) / 2
    if surplus <= 0:
        return surplus / 2, 0.0, 0.0
    side, back = style.waist_side_share * surplus, style.waist_back_share * surplus
    if style.to_the_wearer:
        side = min(side, SIDE_LIMIT * measurements.bust_minus_underbust / 2)
    return side / 2, surplus - side - back, back


@dataclass(frozen=True, kw_only=True)
class Reduction:
    """What half the waist's reduction takes at the waist of the half pattern, cm: at the side seam's edge and at the dart of
    front and back."""

    front_edge: float
    front_dart: float
    back_edge: float
    back_dart: float


def shares_of_reduction(style: Style) -> Reduction:
    """The front gives its share, by custom none, and the back the rest; in both the side seam takes its share and the dart
    what is left."""
    half, side = style.waist_reduction / 2, style.reduction_at_side
    front = style.reduction_at_front * half
    back = half - front
    return Reduction(
        front_edge=side * front, front_dart=front - side * front, back_edge=side * back, back_dart=back - side * back
    )


@dataclass(frozen=True, kw_only=True)
class UnderbustShares:
    """What front and back side seam's edge and the back dart take at the underbust level, cm on the half pattern; what is
    left over of the difference between bust and underbust is the cup's."""

    front_edge: float
    back_edge: float
    back_dart: float


def shares_of_underbust(
    measurements: Measurements, style: Style, front_edge: float, back_edge: float, back_dart: float
) -> UnderbustShares:
    """How half the difference between the drawn bust and the drawn underbust is shared, so that the cup gets what the breast
    makes of it, whatever the torso's length and however tight the waist is laced.

    `front_edge`, `back_edge` and `back_dart` are what these seams take at the waist; the back's two share in that ratio.
    """
    half = (measurements.bust_minus_underbust + style.bust_ease + style.underbust_reduction) / 2
    back = style.underbust_back_share * half / (max(back_edge, 0.0) + back_dart) if back_dart + back_edge > 0 else 0.0

    def taken(wanted: float, at_waist: float) -> float:
        return min(wanted, MOST_AT_UNDERBUST * at_waist) if at_waist > 0 else at_waist / 2

    return UnderbustShares(
        front_edge=taken(style.underbust_side_share * half, front_edge),
        back_edge=taken(back * back_edge, back_edge),
        back_dart=taken(back * back_dart, back_dart),
    )


@dataclass(frozen=True, kw_only=True)
class LetOut:
    """What a fitting lets out on the half body, cm, each zero at the waist.

    `edge_top` is each side seam's edge at the bust level and `edge_low` at the hip; `seam_top` and `seam_low` are both
    edges of the seam on the back dart's line together.
    """

    edge_top: float = 0.0
    seam_top: float = 0.0
    edge_low: float = 0.0
    seam_low: float = 0.0

    @property
    def at_dart(self) -> float:
        """What the back dart takes more at the waist, where the panels must stay as they are."""
        return self.seam_top + self.seam_low


def shares_of_fitting(style: Style, back_dart: float) -> LetOut:
    """How the fitting's top girth and hip girth are let out: evenly on the four edges of side seam and back seam.

    That is (difference) / (4k) an edge with k = 2 seams in the half body, never at the centre back: common practice, no
    source. The back dart, which takes `back_dart` at the waist, must give the waist back what its seam gains above and
    below; where it has too little for taking in, the side seam takes the rest.
    """
    top, low = style.fitting.top_girth / 2, style.fitting.hip_girth / 2
    wanted = (top + low) / 2
    share = max(wanted, -back_dart) / wanted if wanted else 1.0
    seam_top, seam_low = share * top / 2, share * low / 2
    return LetOut(edge_top=(top - seam_top) / 2, seam_top=seam_top, edge_low=(low - seam_low) / 2, seam_low=seam_low)


def top_girth_at(style: Style, share: float) -> float:
    """What of the fitting's top girth is left at a `share` of the height from the waist to the bust level, cm all round."""
    return style.fitting.top_girth * eased(share)


def eased(t: float) -> float:
    """How far an S has come at the share `t` of its height."""
    t = min(max(t, 0.0), 1.0)
    return t * t * (3 - 2 * t)
