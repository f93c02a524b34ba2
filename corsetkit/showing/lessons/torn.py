"""A border that is torn and not cut: the paper goes on beyond it, and only a part of it is shown."""

from corsetkit.geometry.curve import Line
from corsetkit.geometry.points import between, unit

TOOTH, DEEP = 0.9, (0.32, 0.18, 0.26, 0.3, 0.14)
"""How long a tooth of the torn edge is about, and how deep one tooth after the other is, cm: no hand tears evenly."""


def torn(start, end):
    """A zigzag run from `start` to `end`: as many even teeth as have room there, at least one."""
    teeth = max(1, round(abs(end - start) / TOOTH))
    out = unit(end - start) * 1j
    points = [start]
    for number in range(teeth):
        deep = DEEP[number % len(DEEP)] * (1 if number % 2 else -1)
        points.append(between(start, end, (number + 0.5) / teeth) + out * deep)
    points.append(end)
    return tuple(Line(a, b) for a, b in zip(points, points[1:]))
