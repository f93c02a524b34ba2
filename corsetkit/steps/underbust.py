"""Step 2, the underbust: the hem, the underbust mark, and one dart from the bust point to below the waist.

After this step the dart's two legs are mirror images of each other about its own line, so that the panels
which part along it are equally long; and, fitted, the girth at the level of the underbust mark is
the body's less the stated reduction.

The dart takes three quarters of its width on the side's side of the upright line through the bust point.
Its legs would then be unequal down to the waist dart's; so the waist dart is set on the dart's own line,
the one that halves it, and both legs come out alike.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Cubic, Curves, Line
from corsetkit.geometry.points import Point, direction
from corsetkit.geometry.roots import root_near
from corsetkit.pattern.pattern import Waste
from corsetkit.steps.back_waist import BackWaist, back_waist, back_width_at
from corsetkit.steps.block import Block
from corsetkit.steps.half import taken_in
from corsetkit.steps.long_dart import LEAST_RADIUS, LongDart, long_dart
from corsetkit.steps.shares import shares_of_reduction, top_girth_at
from corsetkit.steps.underbust_mark import underbust_mark
from corsetkit.style import Style
from corsetkit.units import say_both

WIDEST_DART = 80.0
"""The widest underbust dart that still makes a cup, degrees: course convention."""
SMALLEST_INTAKE = 0.6
"""The least underbust dart that is drawn at all, cm."""
WORTH_SAYING = 0.1
"""A bend tighter than it should be by less than this, cm, is not told."""
LEAST_BELOW_DART = 0.5
"""Hem kept below the front dart's end where a fitting raises it, cm: course convention."""


@dataclass(frozen=True, kw_only=True)
class Underbust:
    """The hem, the underbust mark and the long dart, on the front.

    `radius` is the distance from the bust point to the mark and, along each leg, to `inner` and `outer`,
    where the underbust line meets the dart. `lean` is how far the dart's own line leans from upright towards
    the side and `half_angle` half its angle, degrees. `inner_leg` and `outer_leg` run from there over the
    waist to `dart_end`; `parting` runs on to the hem. `side_waist` and `side_hip` are the block's
    side seam, down to the waist and on to the hip, less what the front gives of the waist's reduction. `intake` is what the
    dart takes at the mark.
    """

    block: Block
    hem_level: float
    hem: Curves
    hem_side: Point
    radius: float
    mark: Point
    intake: float
    lean: float
    half_angle: float
    inner: Point
    outer: Point
    inner_leg: Curves
    outer_leg: Curves
    dart_end: Point
    parting: Curves
    side_waist: Curves
    side_hip: Curves
    waist: BackWaist
    warnings: tuple[str, ...]

    def __repr__(self) -> str:
        return f"<Underbust: mark {self.radius:.1f} cm below the bust point, dart {2 * self.half_angle:.1f} degrees>"

    @property
    def level(self) -> float:
        """The height of the underbust level above the waist."""
        return self.mark.imag

    @property
    def inner_tangent(self) -> complex:
        return direction(-90 + self.lean - self.half_angle)

    @property
    def outer_tangent(self) -> complex:
        return direction(-90 + self.lean + self.half_angle)

    @property
    def parting_tangent(self) -> complex:
        """The unit step down the dart's own line."""
        return direction(-90 + self.lean)

    @property
    def dart_waste(self) -> Waste:
        """The long dart, from the bust point to its end."""
        point = self.block.bust_point
        return Waste(
            "underbust dart",
            "underbust",
            (Line(point, self.inner), *self.inner_leg, *paths.turned_round(self.outer_leg), Line(self.outer, point)),
        )

    @property
    def hem_waste(self) -> Waste:
        """What of the front lies below the hem."""
        front = self.block.front
        past = paths.cut_at(self.side_hip, *paths.on_line(self.side_hip, self.hem_side, 1 + 0j)[0])[1]
        return Waste(
            "below the front hem",
            "underbust",
            (
                Line(front.hip_centre, front.hip_side),
                *paths.turned_round(past),
                *paths.turned_round(self.hem),
                Line(paths.path_start(self.hem), front.hip_centre),
            ),
        )

    @cached_property
    def waste(self) -> tuple[Waste, ...]:
        """What this step cuts away."""
        return (self.dart_waste, self.hem_waste, *((self.side_waist_waste,) if self.side_waist_waste else ()))

    @property
    def side_waist_waste(self) -> Waste | None:
        """What is taken in at the side of the front's waist; None where that is nothing, as by custom."""
        front = self.block.front
        if self.side_waist == front.side_waist:
            return None
        old, new = paths.parted_alike((*front.side_waist, *front.side_hip), (*self.side_waist, *self.side_hip))
        return Waste("front side waist, taken in", "underbust", (*new, *paths.turned_round(old)))

    @cached_property
    def side_below(self) -> Curves:
        """The front's side seam from the waist to the hem."""
        return hem_part(self.side_hip, self.hem_side.imag)


def underbust(block: Block, style: Style) -> Underbust:
    """Draw the hem, the underbust mark and the long dart.

    Args:
        block: the `Block`.
        style: reads its "underbust" values, those of the back that take the waist in, and what a fitting adds to them.

    Returns:
        An `Underbust`.

    Raises:
        CorsetkitError: where mark, dart or hem cannot be drawn on this block.
    """
    m, fitting = block.measurements, style.fitting
    warnings: list[str] = []
    hem_level = _hem_level(block, style, warnings)
    radius, moved = underbust_mark(m, style, block.bust_point.imag)
    warnings.extend(moved)
    mark = block.bust_point - 1j * radius
    reduction = shares_of_reduction(style)
    side_waist, side_hip = taken_in(block.front, reduction.front_edge)
    hem_side = _level_point(side_hip, min(hem_level + style.hem_raise, -0.5))
    at_waist = block.front.waist_dart + reduction.front_dart
    end_level = style.dart_end * hem_level

    if paths.at_level(block.front.side_waist, mark.imag) is None:
        reach = block.bust_point.imag - block.mouth_lower.imag
        raise CorsetkitError(
            f"underbust mark is {say_both(radius)} below the bust point, and the side dart reaches {say_both(reach)} below "
            f"it, so that no girth can be drawn there: allowed is more than {say_both(reach)}; set the mark lower, or measure "
            "front waist length and back waist length again, whose difference is the dart"
        )

    def drawn(intake: float) -> LongDart:
        most = style.dart_lean if style.to_the_wearer else 90.0
        return long_dart(block, radius, intake, at_waist, style.dart_side_share, end_level, most)

    waist = back_waist(block, style, hem_level, paths.path_length(side_waist))
    if style.to_the_wearer:
        half = (
            m.underbust_girth
            - style.underbust_reduction
            + fitting.underbust_girth
            + top_girth_at(style, mark.imag / block.bust_point.imag)
        ) / 2
        intake = _solve_intake(block, mark.imag, half - back_width_at(block, waist, mark.imag), drawn, radius)
    else:
        intake = style.underbust_dart
        if fitting.underbust_girth:
            room = paths.reached_at(block.front.side_waist, mark.imag).real - block.front.waist_centre.real
            wanted = room - drawn(intake).width_at(mark.imag) + fitting.underbust_girth / 2
            intake = _solve_intake(block, mark.imag, wanted, drawn, radius)
    dart = drawn(intake)
    if not style.to_the_wearer and 2 * dart.half_angle > WIDEST_DART:
        raise CorsetkitError(_too_wide(intake, radius))
    tightest = paths.least_radius(dart.inner_leg[:1])
    if tightest < LEAST_RADIUS - WORTH_SAYING and style.to_the_wearer:
        warnings.append(
            f"the underbust line lies only {say_both(mark.imag)} above the waist, so that the front dart's seam bends "
            f"as tightly as {say_both(tightest)} between them: a bone there ends below the bend"
        )
    hem_centre = hem_level + fitting.hem_at_the_front
    if fitting.hem_at_the_front and hem_centre > end_level - LEAST_BELOW_DART:
        raise CorsetkitError(
            f"hem at the front is raised by {say_both(fitting.hem_at_the_front)}, which leaves less than "
            f"{say_both(LEAST_BELOW_DART)} below the front dart's end: raise it less, or choose a smaller "
            "dart end"
        )
    if fitting.hem_at_the_front and hem_centre < -m.waist_to_hip:
        raise CorsetkitError(
            f"hem at the front is lowered by {say_both(-fitting.hem_at_the_front)}, which is below the hip, "
            "where the block ends: lower it less"
        )
    hem = _hem(side_hip, hem_centre, hem_side)
    meeting = [hem[i].point(t) for i, t in paths.on_ray(hem, dart.end, direction(-90 + dart.lean))]
    if not meeting:
        raise CorsetkitError("the underbust dart leans so far that its line misses the hem: choose a smaller dart_side_share")
    return Underbust(
        block=block,
        hem_level=hem_level,
        hem=hem,
        hem_side=hem_side,
        radius=radius,
        mark=mark,
        intake=intake,
        lean=dart.lean,
        half_angle=dart.half_angle,
        inner=paths.path_start(dart.inner_leg),
        outer=paths.path_start(dart.outer_leg),
        inner_leg=dart.inner_leg,
        outer_leg=dart.outer_leg,
        dart_end=dart.end,
        parting=(Line(dart.end, meeting[0]),),
        side_waist=side_waist,
        side_hip=side_hip,
        waist=waist,
        warnings=tuple(warnings),
    )


def level_width(found: Underbust, y: float) -> float:
    """The half front's width at the level `y` below the underbust line, the dart not counted, cm."""
    inner, outer = (paths.reached_at((*leg, *found.parting), y) for leg in (found.inner_leg, found.outer_leg))
    front = found.block.front
    side = paths.reached_at((*found.side_waist, *found.side_hip), y)
    return inner.real - front.waist_centre.real + side.real - outer.real


def hem_part(side: Curves, level: float) -> Curves:
    """The stretch of a side seam from its start down to `level`."""
    index, t = paths.on_line(side, 1j * level, 1 + 0j)[0]
    return paths.cut_at(side, index, t)[0]


def _hem_level(block: Block, style: Style, warnings: list[str]) -> float:
    """The hem's height at the centre: below zero, and above the hip line."""
    m = block.measurements
    if style.to_the_wearer:
        return -style.hem_share * m.waist_to_hip
    level = m.front_waist_length - style.corset_length
    if level > -4.0:
        raise CorsetkitError(
            f"corset length is {say_both(style.corset_length)}, which ends less than 1 5/8 in below this "
            f"wearer's waist: allowed is at least {say_both(m.front_waist_length + 4.0)}"
        )
    lowest = -m.waist_to_hip + 0.5
    if level < lowest:
        warnings.append(
            f"corset length of {say_both(style.corset_length)} would reach below this wearer's hip; the hem "
            f"is drawn at {say_both(m.front_waist_length - lowest)}"
        )
    return max(level, lowest)


def _level_point(path: Curves, level: float) -> Point:
    point = paths.at_level(path, level)
    if point is None:
        raise CorsetkitError("the hem rises above the waist at the side: choose a smaller hem raise")
    return point


def _hem(side_hip: Curves, level: float, side: Point) -> Curves:
    """The front hem from the centre front, level there, to the side seam, square to it."""
    index, t = paths.on_line(side_hip, side, 1 + 0j)[0]
    outward = side_hip[index].tangent(t) * 1j
    centre = complex(0.0, level)
    return (Cubic(centre, centre + 0.5 * side.real, side - outward * 0.3 * side.real, side),)


def _solve_intake(block: Block, level: float, wanted: float, drawn: Callable[[float], LongDart], radius: float) -> float:
    """The intake at the mark that leaves the half front `wanted` wide at the underbust level."""
    front = block.front
    side = paths.reached_at(front.side_waist, level)
    taken = side.real - front.waist_centre.real - wanted

    def missing(intake: float) -> float:
        return drawn(intake).width_at(level) - taken

    if taken < SMALLEST_INTAKE or missing(SMALLEST_INTAKE) > 0:
        raise CorsetkitError(
            f"underbust girth leaves only {say_both(max(taken, 0.0))} for each underbust dart, too little for "
            "a cup: measure bust girth and underbust girth again, or choose a smaller waist side share"
        )
    widest = 2 * radius * math.sin(math.radians(WIDEST_DART / 2))
    try:
        return root_near(missing, min(max(taken, SMALLEST_INTAKE), widest), SMALLEST_INTAKE, widest, 1e-11)
    except ValueError:
        raise CorsetkitError(_too_wide(taken, radius)) from None


def _too_wide(intake: float, radius: float) -> str:
    return (
        f"the underbust dart would take {say_both(intake)} at {say_both(radius)} from the bust "
        f"point, more than {WIDEST_DART:.0f} degrees: measure bust girth and underbust girth again, or let side "
        "seam and back dart take more"
    )
