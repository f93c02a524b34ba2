"""Step 3, the overbust: the cup's two lines, the centre front, the tightening dart and the yoke.

After this step both legs of the tightening dart are equally far from the bust point and from the
mid-shoulder where the overbust line meets them; the cup's outline touches the centre front in one point and
the side seam nowhere, and keeps at least the stated strip from both.

Fitted, the tightening dart takes half of what bust has more than high bust (as an old rule for a
brassiere's top dart does with the girth above the bust; no closed line goes round the body there), the
outline reaches four fifths of the way from the bust point to the centre front and two thirds of the way to
the side (what the guides give for a medium figure), and the centre-front dart's lower leg lies on the bust
line, so that the bust keeps its girth.
"""

import math
from dataclasses import dataclass
from functools import cached_property

from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Curves, Line, curve, even_arc, quarter
from corsetkit.geometry.move import turned_about
from corsetkit.geometry.points import Point, direction, unit
from corsetkit.measurements import Measurements
from corsetkit.pattern.pattern import Waste
from corsetkit.steps.block import Block
from corsetkit.steps.necklines import yoke_neckline
from corsetkit.steps.underbust import Underbust
from corsetkit.style import Style
from corsetkit.units import CM_PER_INCH, say_both

REACH_TO_FRONT = 0.8
REACH_TO_SIDE = 2 / 3
LEAST_ABOVE_DART = 1.0
"""How far above the centre-front dart's upper leg the cups begin at least, cm."""
LEAST_V = 0.1
"""How far from the centre front the cups' point lies at least once the centre-front dart is closed, cm."""
NECK_DIP = 0.7
"""How far the new neckline is dipped at the centre front, cm: it must leave the taken-in centre front squarely to
run smoothly across it, and would otherwise rise above the block's own neck: course convention."""
LEAST_CUP_ARMSCYE = 1.5
"""Armscye of the cup at least, between the underbust and the overbust line, cm."""
LEAST_ARMSCYE = 4.0
"""Armscye left above the overbust line at least, cm."""
WORTH_SAYING = 0.6
"""A mark moved by less than this, cm, is moved without a warning."""
SIDE_STRIP = 1.75 * CM_PER_INCH
"""What the guides leave between cup and side seam, cm: common practice, no source. Beside the guide to side it can only be
a check, for the two agree on one figure alone (a quarter bust of 9 in with bust points 7 1/2 in apart)."""
LEAST_OF_GUIDE = 2 / 3
"""How much of its guide a cup keeps at least when it is shortened: course convention."""
LEAST_MOVE = 0.1
"""The least that a fitting moves the cup's outline where the strip stops it, cm: course convention."""
LEAST_REACH = 3.0
"""The least a cup reaches from the bust point, cm."""
SMALLEST_TOP_DART = 0.3
"""The least tightening dart that a fitting leaves, cm: course convention."""
WIDEST_TOP_DART = 55.0
"""The widest tightening dart that still makes a cup, degrees: course convention."""


@dataclass(frozen=True, kw_only=True)
class Overbust:
    """The cup's lines on the front.

    The cup lies between `top_inner` (from `front_point` to `top_left`, the tightening dart's inner leg),
    `top_outer` (from `top_right`, on its outer leg, to `armscye_top`) above, and `under_inner` (from
    `front_point` to the underbust dart's inner leg), `under_outer` (from its outer leg to `armscye_low`)
    below. The centre-front dart runs from the bust point to `dart_upper` and `dart_lower`. `top_dart` and
    `front_dart` are the angles of the two darts in degrees; `mid_shoulder` is where the tightening dart ends.
    """

    underbust: Underbust
    front_point: Point
    dart_upper: Point
    dart_lower: Point
    front_dart: float
    mark: Point
    mid_shoulder: Point
    top_left: Point
    top_right: Point
    top_dart: float
    top_intake: float
    top_inner: Curves
    top_outer: Curves
    under_inner: Curves
    under_outer: Curves
    guide_front: Point
    guide_side: Point
    armscye_top: Point
    armscye_low: Point
    armscye_shoulder_part: Curves
    armscye_cup_part: Curves
    armscye_low_part: Curves
    yoke_neck: Point
    yoke_neckline: Curves
    warnings: tuple[str, ...]

    def __repr__(self) -> str:
        darts = f"tightening dart {self.top_dart:.1f} degrees, centre-front dart {self.front_dart:.1f} degrees"
        return f"<Overbust: {darts}, {self.side_strip:.1f} cm between cup and side seam>"

    @property
    def block(self) -> Block:
        return self.underbust.block

    @property
    def bust_point(self) -> Point:
        return self.underbust.block.bust_point

    @property
    def top_radius(self) -> float:
        """How far from the bust point the overbust line meets the dart's legs, cm."""
        return abs(self.top_left - self.bust_point)

    @property
    def side_strip(self) -> float:
        """What is left between the cup's outline and the side seam at bust level, cm: the check of the guides."""
        return self.block.front.width - self.guide_side.real

    @property
    def neck_waste(self) -> Waste:
        """What lies between the block's neckline and the yoke's."""
        front = self.block.front
        dipped = paths.path_end(self.yoke_neckline)
        neck = (
            Line(front.neck_side, self.yoke_neck),
            *self.yoke_neckline,
            Line(dipped, front.neck_centre),
            *paths.turned_round(front.neckline),
        )
        return Waste("neck", "overbust", paths.turned_round(neck))

    @property
    def centre_front_waste(self) -> Waste:
        """What is taken in at the centre front, above the cups' point and below it."""
        corners = [self.block.front.neck_centre, self.front_point, self.dart_upper]
        if self.dart_upper.real > 1e-9:
            corners.append(self.dart_lower)
        centre = tuple(Line(a, b) for a, b in zip(corners, corners[1:] + corners[:1]))
        return Waste("centre front, taken in", "overbust", paths.turned_round(centre))

    @property
    def centre_front_dart_waste(self) -> Waste:
        """The centre-front dart, from the bust point to the centre front."""
        point = self.bust_point
        return Waste(
            "centre-front dart",
            "overbust",
            (Line(point, self.dart_upper), Line(self.dart_upper, self.dart_lower), Line(self.dart_lower, point)),
        )

    @property
    def tightening_dart_waste(self) -> Waste:
        """The tightening dart, from the bust point to the mid-shoulder."""
        point = self.bust_point
        return Waste(
            "tightening dart",
            "overbust",
            (
                Line(point, self.top_right),
                Line(self.top_right, self.mid_shoulder),
                Line(self.mid_shoulder, self.top_left),
                Line(self.top_left, point),
            ),
        )

    @cached_property
    def waste(self) -> tuple[Waste, ...]:
        """What this step cuts away."""
        return self.neck_waste, self.centre_front_waste, self.centre_front_dart_waste, self.tightening_dart_waste


def overbust(underbust: Underbust, style: Style) -> Overbust:
    """Draw the cup's lines, the centre front, the tightening dart and the yoke's neckline.

    Args:
        underbust: the `Underbust`.
        style: reads its "overbust" values, and what a fitting adds to dart and outline.

    Returns:
        An `Overbust`.

    Raises:
        CorsetkitError: where a line cannot be drawn on this block; with fixed guides the sentence names the
            fitted method where that would serve.
    """
    block = underbust.block
    warnings: list[str] = []
    front, point = block.front, block.bust_point
    lower = 0.0 if style.to_the_wearer else math.degrees(math.atan2(style.centre_front_dart / 2, point.real))
    front_dart = 2 * math.degrees(math.atan2(style.centre_front_dart / 2, point.real))
    reach = point.real / math.cos(math.radians(lower))
    dart_lower = point + reach * direction(180 + lower)
    dart_upper = point + reach * direction(180 + lower - front_dart)
    front_point = _front_point(block, style, front_dart - lower, front_dart, warnings)

    mid = front.mid_shoulder
    upward = unit(mid - point)
    intake = _top_intake(block.measurements, style)
    mark = point + upward * style.overbust_mark
    if abs(mid - mark) < 5:
        raise CorsetkitError(
            f"overbust mark is {say_both(style.overbust_mark)} above the bust point, less than 2 in below this "
            f"wearer's shoulder: allowed is at most {say_both(abs(mid - point) - 5)}"
        )
    side = upward * -1j
    top_left, top_right = mark - side * intake / 2, mark + side * intake / 2
    top_dart = 2 * math.degrees(math.atan2(intake / 2, style.overbust_mark))
    if top_dart > WIDEST_TOP_DART:
        raise CorsetkitError(
            f"the tightening dart would take {top_dart:.0f} degrees, more than {WIDEST_TOP_DART:.0f}: choose a higher "
            "overbust mark, or measure high bust girth again"
        )

    whole = paths.path_length(front.armscye)
    up = style.overbust_armscye
    if up > whole - LEAST_ARMSCYE:
        up = whole - LEAST_ARMSCYE
        warnings.append(
            f"overbust armscye of {say_both(style.overbust_armscye)} is more than this armscye has; the "
            f"overbust line ends {say_both(up)} along it"
        )
    if up < style.underarm_along + LEAST_CUP_ARMSCYE:
        raise CorsetkitError(
            f"overbust armscye is {say_both(style.overbust_armscye)}: on this armscye of "
            f"{say_both(whole)} allowed are {say_both(style.underarm_along + LEAST_CUP_ARMSCYE)} to "
            f"{say_both(whole - LEAST_ARMSCYE)}"
        )
    above, rest = paths.cut_along(front.armscye, whole - up)
    cup_part, low_part = paths.cut_along(rest, up - style.underarm_along)
    armscye_top, armscye_low = paths.path_end(above), paths.path_end(cup_part)

    guide_front, guide_side = _guides(block, style, warnings)
    # Both lines reach the armscye between their straight way and square to it, so that no cup ends in a spike there.
    out_top, out_low = (part[0].tangent(0.0) * 1j for part in (cup_part, low_part))
    top_inner, top_outer = _top(point, front_point, top_left, top_right, armscye_top, out_top, top_dart)
    under_inner = (
        even_arc(front_point, guide_front, arriving=-1j),
        quarter(guide_front, -1j, underbust.inner, underbust.inner_tangent * 1j),
    )
    under_outer = (
        quarter(underbust.outer, underbust.outer_tangent * 1j, guide_side, 1j),
        curve(guide_side, 1j, unit(armscye_low - guide_side) + out_low, armscye_low),
    )

    half = front.shoulder[0].length / 2
    if style.yoke_shoulder > half - 0.8:
        raise CorsetkitError(
            f"yoke shoulder is {say_both(style.yoke_shoulder)}: on this shoulder allowed is at most "
            f"{say_both(half - 0.8)}, so that the tightening dart ends inside the yoke"
        )
    yoke_neck = paths.point_along(front.shoulder, style.yoke_shoulder)
    down = unit(front_point - front.neck_centre)
    neckline = yoke_neckline(yoke_neck, front.shoulder[0].tangent(0), front.neck_centre + down * NECK_DIP, down * 1j)
    return Overbust(
        underbust=underbust,
        front_point=front_point,
        dart_upper=dart_upper,
        dart_lower=dart_lower,
        front_dart=front_dart,
        mark=mark,
        mid_shoulder=mid,
        top_left=top_left,
        top_right=top_right,
        top_dart=top_dart,
        top_intake=intake,
        top_inner=top_inner,
        top_outer=top_outer,
        under_inner=under_inner,
        under_outer=under_outer,
        guide_front=guide_front,
        guide_side=guide_side,
        armscye_top=armscye_top,
        armscye_low=armscye_low,
        armscye_shoulder_part=above,
        armscye_cup_part=cup_part,
        armscye_low_part=low_part,
        yoke_neck=yoke_neck,
        yoke_neckline=neckline,
        warnings=tuple(warnings),
    )


def _top_intake(m: Measurements, style: Style) -> float:
    """What the tightening dart takes in all at the overbust mark, cm."""
    drawn = max(0.6, (m.bust_girth - m.high_bust) / 2) if style.to_the_wearer else style.overbust_dart
    intake = drawn + style.fitting.tightening_dart
    if intake < SMALLEST_TOP_DART:
        raise CorsetkitError(
            f"the tightening dart takes {say_both(drawn)} and the fitting lets out "
            f"{say_both(-style.fitting.tightening_dart)}: allowed is to leave at least {say_both(SMALLEST_TOP_DART)}; "
            "let out less"
        )
    return intake


def _front_point(block: Block, style: Style, upper: float, angle: float, warnings: list[str]) -> Point:
    """The cups' point at the centre front, at least a little above the centre-front dart's upper leg.

    The leg rises by `upper` degrees from level, and the dart closes by `angle` degrees.
    """
    front, point = block.front, block.bust_point
    x = style.centre_front_taking_in
    wanted = front.neck_centre.imag - style.centre_front_depth
    least = point.imag + (point.real - x) * math.tan(math.radians(upper)) + LEAST_ABOVE_DART
    if least > front.neck_centre.imag - 4:
        raise CorsetkitError("the centre-front dart reaches the neck on this wearer: choose a smaller centre front dart")
    if wanted < least - WORTH_SAYING:
        warnings.append(
            f"centre front depth of {say_both(style.centre_front_depth)} would begin the cups below the "
            f"centre-front dart; they begin {say_both(front.neck_centre.imag - least)} below the neck"
        )
    y = max(wanted, least)
    # The closed dart swings this point towards the centre front: it must not come to lie beyond the fold.
    turn = math.radians(angle)
    needed = point.real - (point.real - LEAST_V - (y - point.imag) * math.sin(turn)) / math.cos(turn)
    if needed > x + 0.02:
        warnings.append(
            f"centre front taking in of {say_both(x)} would bring the cups past the centre front when the centre-front dart "
            f"is closed; {say_both(needed)} is taken in"
        )
    return complex(max(x, needed), y)


def _guides(block: Block, style: Style, warnings: list[str]) -> tuple[Point, Point]:
    """The places at bust level where the cup's outline passes the bust point, towards front and side."""
    point, width, strip = block.bust_point, block.front.width, style.least_strip
    if style.to_the_wearer:
        to_front, to_side = REACH_TO_FRONT * point.real, REACH_TO_SIDE * (width - block.front_added - point.real)
    else:
        to_front, to_side = style.guide_to_front, style.guide_to_side
    found = []
    for name, reach, room, more in (
        ("guide to front", to_front, point.real - strip, style.fitting.cup_to_the_front),
        ("guide to side", to_side, width - point.real - strip, style.fitting.cup_to_the_side),
    ):
        if not style.to_the_wearer and room < LEAST_OF_GUIDE * reach:
            raise CorsetkitError(
                f"{name} is {say_both(reach)} and does not fit in {say_both(max(room, 0))}, all that lies between this "
                "wearer's bust point and the strip to be kept: allowed is to lose a third at most; draft it fitted "
                '(method "wearer")'
            )
        if room < LEAST_REACH:
            raise CorsetkitError(
                f"least strip is {say_both(strip)}, which leaves the cup only {say_both(max(room, 0))} beside the bust point: "
                f"allowed is at least {say_both(LEAST_REACH)}; choose a smaller least strip, or measure bust point width again"
            )
        # A fitting moves the outline from where it lay, which is no farther than the strip.
        lay, reach = min(reach, room), (min(reach, room) if more else reach) + more
        if more > 0 and room < lay + LEAST_MOVE:
            raise CorsetkitError(
                f"least strip is {say_both(strip)}, and the cup already reaches it, so that a fitting cannot move its "
                "outline farther: allowed is what the strip leaves; choose a smaller least strip"
            )
        if more and reach < LEAST_REACH:
            raise CorsetkitError(
                f"{name} would be {say_both(reach)} after the fitting: allowed is at least {say_both(LEAST_REACH)}"
            )
        if reach > room:
            place = "centre front" if name == "guide to front" else "side seam"
            warnings.append(
                f"the cup would come nearer to the {place} than {say_both(strip)}: it reaches "
                f"{say_both(room)} from the bust point instead of {say_both(reach)}"
            )
        found.append(min(reach, room))
    left = width - point.real - found[1]
    if not style.to_the_wearer and abs(left - SIDE_STRIP) > WORTH_SAYING:
        warnings.append(
            f"the guides also ask for {say_both(SIDE_STRIP)} between the cup and the side seam; on this wearer the "
            f"guide to side leaves {say_both(left)}"
        )
    return point - found[0], point + found[1]


def _top(
    point: Point, front_point: Point, left: Point, right: Point, armscye: Point, outward: complex, angle: float
) -> tuple[Curves, Curves]:
    """The overbust line in its two stretches: smooth where the closed dart joins them in the cup."""
    close = turned_about(point, angle)
    far = close(armscye)
    across = unit(unit(left - front_point) + unit(far - left))
    leaving = across * close.inverse.turn
    return (even_arc(front_point, left, arriving=across),), (curve(right, leaving, unit(armscye - right) + outward, armscye),)
