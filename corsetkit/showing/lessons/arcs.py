"""Arcs of circles, as runs of cubics true to a few thousandths of their radius."""

import math

from corsetkit.geometry.curve import Cubic
from corsetkit.geometry.points import direction

_WIDEST = 45.0


def arc(centre, start, degrees):
    """The run from the point `start` round `centre` through `degrees`, counter-clockwise above nought."""
    count = max(1, math.ceil(abs(degrees) / _WIDEST))
    turn = direction(degrees / count)
    reach = 4 / 3 * math.tan(math.radians(degrees / count) / 4) * 1j
    made, out = [], start - centre
    for _ in range(count):
        there = out * turn
        made.append(Cubic(centre + out, centre + out * (1 + reach), centre + there * (1 - reach), centre + there))
        out = there
    return tuple(made)
