"""What is measured on the finished pieces: girths along the level lines, and the fullness that the darts make."""

from corsetkit.geometry import paths
from corsetkit.measurements import Measurements
from corsetkit.pattern.by_name import ByName
from corsetkit.pattern.pattern import Fullness, Girth
from corsetkit.steps.back import Back
from corsetkit.steps.back_waist import back_width_at
from corsetkit.steps.half import WAIST_DART_END
from corsetkit.steps.overbust import Overbust
from corsetkit.steps.shares import eased, top_girth_at
from corsetkit.steps.underbust import level_width
from corsetkit.style import Style


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
    hem_front = level_width(u, level)
    drawn = 2 * (hem_front + hem_back - share * waist.dart_at(level))
    fall, at_dart = eased(level / block.back.hip_side.imag), eased(level / waist.dart_end.imag)
    kept = waist.at_side * (1 - fall) + (style.waist_reduction / 2 - waist.at_side) * (1 - at_dart)
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
