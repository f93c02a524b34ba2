"""The one long dart on the front, from the bust point through the underbust and the waist to its end above the hem.

Its legs are mirror images about its own line: at the underbust mark they run on as the cup's legs do, so that the
underbust line stays smooth where the panels are sewn; at the waist and at the end they run along the dart's line.
"""

import math
from dataclasses import dataclass

from corsetkit.geometry import paths
from corsetkit.geometry.curve import Cubic, Curves, Line
from corsetkit.geometry.points import Point, direction
from corsetkit.geometry.roots import root_near
from corsetkit.steps.block import Block

LEAVES, ARRIVES = 0.45, 0.36
"""The handles of a leg from the underbust mark to the waist, as shares of their distance: long enough that a bone in the seam
follows it, for no place then bends tighter than `LEAST_RADIUS`: course convention."""
LEAST_RADIUS = 4.0
"""No seam that carries a bone bends tighter than this, cm: course convention."""


@dataclass(frozen=True, kw_only=True)
class LongDart:
    """The dart as drawn for one intake: what its own line leans from upright towards the side, half its angle, degrees, its
    legs from the underbust mark over the waist, and the end where both come together."""

    lean: float
    half_angle: float
    inner_leg: Curves
    outer_leg: Curves
    end: Point

    def __repr__(self) -> str:
        return f"<LongDart of {2 * self.half_angle:.1f} degrees, leaning {self.lean:.1f} degrees>"

    def width_at(self, y: float) -> float:
        """What the dart takes at the level `y` from the underbust mark down to its end, cm."""
        return paths.reached_at(self.outer_leg, y).real - paths.reached_at(self.inner_leg, y).real


def long_dart(
    block: Block, radius: float, intake: float, at_waist: float, side_share: float, end_level: float, most_lean: float = 90.0
) -> LongDart:
    """The dart of a given intake at the mark and at the waist, its own line leaning no more than `most_lean` degrees to either
    side."""
    to_side = math.degrees(math.atan2(intake * side_share, radius))
    to_front = math.degrees(math.atan2(intake * (1 - side_share), radius))
    lean, half_angle = (to_side - to_front) / 2, (to_side + to_front) / 2
    if abs(lean) > most_lean:
        lean = math.copysign(most_lean, lean)
        half_angle = _leaning(intake / radius, lean)
    down, across = direction(-90 + lean), direction(lean)
    point = block.bust_point
    end = point + down * ((point.imag - end_level) / math.cos(math.radians(lean)))
    waist = point + down * (point.imag / math.cos(math.radians(lean)))

    def dart(width: float) -> LongDart:
        legs = []
        for sign in (-1, 1):
            leaving = direction(-90 + lean + sign * half_angle)
            top, low = point + radius * leaving, waist + sign * width / 2 * across
            span = abs(low - top)
            upper = Cubic(top, top + leaving * LEAVES * span, low - down * ARRIVES * span, low)
            reach = 0.35 * abs(end - low)
            lower = Cubic(low, low + down * reach, end - down * reach, end) if width > 1e-9 else Line(low, end)
            legs.append((upper, lower))
        inner, outer = legs
        return LongDart(lean=lean, half_angle=half_angle, inner_leg=inner, outer_leg=outer, end=end)

    width = 0.0
    if at_waist > 1e-9:

        def missing(width: float) -> float:
            return abs(dart(width).width_at(0.0)) - at_waist

        width = root_near(missing, at_waist, 0.5 * at_waist, 1.5 * at_waist)
    return dart(width)


def _leaning(slope: float, lean: float) -> float:
    """Half the angle of a dart that leans by `lean` degrees and takes `slope` of its height, level, both in all.

    The two sides' tangents, of half angle plus and less the lean, add up to the slope: a sine of twice the half angle.
    """
    offset = math.atan2(slope, 2)
    share = slope * math.cos(math.radians(2 * lean)) / math.hypot(2, slope)
    return math.degrees(offset + math.asin(share)) / 2
