"""What is measured on the finished pieces: girths along the level lines, and the fullness that the darts make."""

from corsetkit.geometry import paths
from corsetkit.measurements import Measurements
from corsetkit.pattern.by_name import ByName
from corsetkit.pattern.pattern import Fullness, Girth
from corsetkit.steps.back import Back
from corsetkit.steps.back_waist import back_width_at
from corsetkit.steps.half import WAIST_DART_END
from corsetkit.steps.overbust import Overbust
from corsetkit.steps.shares import Reduction, eased, shares_of_reduction, top_girth_at
from corsetkit.steps.underbust import Underbust, level_width
from corsetkit.style import Style
from corsetkit.units import say_both


def girths(measurements: Measurements, style: Style, overbust: Overbust, back: Back) -> ByName[Girth]:
    """The finished, body and intended girth at bust, underbust, waist and hem, by name, in cm.

    The bust level runs from the side seam along the bust line to the bust point and on along the centre-front
    dart's lower leg. The hem's level is that of its highest point; the body there is the block's own
    girth, which is exact at waist and hip and our assumption between them. What a fitting lets out or takes in is no part of
    the body and part of what is intended.
    """
    m, block, waist, u, fitting = measurements, overbust.block, back.waist, overbust.underbust, style.fitting
    bust = 2 * (
        abs(overbust.dart_lower - overbust.bust_point) + block.front.width - overbust.bust_point.real + block.back.width
    )
    level = max(paths.highest(u.hem), paths.highest(back.hem.kept))
    hem_back = block.back.waist_centre.real - paths.reached_at(block.back.side_hip, level).real
    share = block.back.waist_dart / waist.dart if waist.dart > 1e-9 else 0.0
    reduction = shares_of_reduction(style)
    hem_front = _front_before(u, reduction, level)
    drawn = 2 * (hem_front + hem_back - share * waist.dart_at(level))
    fall, at_dart = eased(level / block.back.hip_side.imag), eased(level / waist.dart_end.imag)
    at_sides = reduction.front_edge + reduction.back_edge
    kept = at_sides * (1 - fall) + (style.waist_reduction / 2 - at_sides) * (1 - at_dart)
    let = block.let_out
    at_side = eased(level / (WAIST_DART_END * block.back.hip_side.imag))
    fitted = (2 * let.edge_low + let.seam_low) * fall + let.at_dart * (at_dart - at_side)

    def finished(y: float) -> float:
        return 2 * (level_width(u, y) + back_width_at(block, waist, y))

    found = {
        "bust": Girth(bust, m.bust_girth, m.bust_girth + style.bust_ease + fitting.top_girth),
        "underbust": Girth(
            finished(u.level),
            m.underbust_girth,
            m.underbust_girth
            - style.underbust_reduction
            + fitting.underbust_girth
            + top_girth_at(style, u.level / block.bust_point.imag),
        ),
        "waist": Girth(finished(0.0), m.waist_girth, m.waist_girth + style.waist_ease - style.waist_reduction),
        "hem": Girth(finished(level), drawn - 2 * fitted, drawn - 2 * kept),
    }
    return ByName(found)


def _front_before(found: Underbust, reduction: Reduction, y: float) -> float:
    """The half front's width at a level below the waist, as it is before the front gives of the waist's reduction, cm."""
    front = found.block.front
    moved = paths.reached_at(front.side_hip, y).real - paths.reached_at(found.side_hip, y).real
    at_waist = front.waist_dart + reduction.front_dart
    inner, outer = (paths.reached_at((*leg, *found.parting), y) for leg in (found.inner_leg, found.outer_leg))
    given = (outer.real - inner.real) * reduction.front_dart / at_waist if at_waist > 1e-9 else 0.0
    return level_width(found, y) + moved + given


SHALLOW = 0.6
"""A cup that takes less than this share of what a cap over its outline would is told to be shallow: course convention."""
WIDENS = 1.05
"""Half the centre front may widen from waist to hem by this much more than the finished corset does: course convention."""


def shape_warnings(style: Style, found: ByName[Girth], cup: Fullness, overbust: Overbust) -> tuple[str, ...]:
    """What a maker would want to know of the shape before she cuts: a shallow cup, and a centre front that widens much."""
    said = []
    block, u = overbust.block, overbust.underbust
    if cup.total < SHALLOW * cup.cap:
        if not style.to_the_wearer:
            why = "draft fitted for fuller ones"
        elif not block.side_dart:
            why = "the front is no longer than the back here, so that no side dart helps to fill them"
        else:
            why = "measure front waist length again, or try a lower underbust back share; else they press the breast flat"
        said.append(
            f"the cups take {cup.total:.0f} degrees, {100 * cup.total / cup.cap:.0f} % of what a dome over them would: {why}"
        )
    waist = paths.reached_at((*u.inner_leg, *u.parting), 0.0).real - block.front.waist_centre.real
    hem = paths.path_end(u.parting).real - paths.path_start(u.hem).real
    corset = found["hem"].finished / found["waist"].finished
    if hem / waist > WIDENS * corset:
        said.append(
            f"half the centre front widens from {say_both(waist)} at the waist to {say_both(hem)} at the hem, more than the "
            "corset does: try a smaller dart lean, or two centre panels"
        )
    return tuple(said)


def fullness(measurements: Measurements, overbust: Overbust) -> Fullness:
    """The angles taken at the bust point, by dart, and the angle that darts would take in a spherical cap.

    The cap stands over the cup's outline: its circle has the mean of the outline's reach towards front, side and
    underbust as its radius r, and its arc over the middle is longer than its chord by half of bust minus underbust.
    Cloth laid flat from its middle to its rim, s long, has a rim of 2 pi s where the cap has 2 pi r, so the darts
    would take 360 (1 - r/s) degrees. It is information: no measurement here fixes how full a cup must be.
    """
    point = overbust.bust_point
    radius = (abs(overbust.guide_front - point) + abs(overbust.guide_side - point) + overbust.underbust.radius) / 3
    slant = radius + measurements.bust_minus_underbust / 4
    angles = {
        "centre-front dart": overbust.front_dart,
        "side dart": overbust.block.side_dart,
        "underbust dart": 2 * overbust.underbust.half_angle,
        "tightening dart": overbust.top_dart,
    }
    return Fullness(ByName(angles), 360 * (1 - radius / slant))
