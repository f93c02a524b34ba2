"""How much fullness the darts at the bust point make, and a simple shape's own beside it."""

from corsetkit.pattern.pattern import Fullness


def fullness(measurements, overbust):
    """The angles taken at the bust point, by dart, and the angle that darts would take in a spherical cap.

    The cap stands over the cup's outline: its circle has the mean of the outline's reach towards front, side and
    underbust as its radius r, and its arc over the middle is longer than its chord by half of bust minus underbust.
    Cloth laid flat from its middle to its rim, s long, has a rim of 2 pi s where the cap has 2 pi r, so the darts
    would take 360 (1 - r/s) degrees. It is information: no measurement here fixes how full a cup must be.
    """
    point = overbust.bust_point
    radius = (abs(overbust.guide_front - point) + abs(overbust.guide_side - point) + overbust.underbust.radius) / 3
    slant = radius + measurements.bust_minus_underbust / 4
    return Fullness({
        "centre-front dart": overbust.front_dart, "side dart": overbust.block.side_dart,
        "underbust dart": 2 * overbust.underbust.half_angle, "tightening dart": overbust.top_dart},
        360 * (1 - radius / slant))
