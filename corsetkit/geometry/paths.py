"""Runs of curves laid end to end: their length, places along them, and how they are cut.

A run is a tuple of `Line` and `Cubic` values, each beginning where the one before it ends.
"""

from corsetkit.geometry.curve import Cubic
from corsetkit.geometry.points import dot, turn_between


def run_length(run):
    """The run's length in cm."""
    return sum(curve.length for curve in run)


def run_start(run):
    return run[0].start


def run_end(run):
    return run[-1].end


def turned_round(run):
    """The same run from its end to its start."""
    return tuple(curve.turned_round for curve in reversed(run))


def moved(run, move):
    """The run moved rigidly."""
    return tuple(curve.moved(move) for curve in run)


def _place(run, length):
    """The index of the curve and the t on it, at `length` cm along the run."""
    for index, curve in enumerate(run):
        if length <= curve.length or index == len(run) - 1:
            return index, curve.t_at(min(max(length, 0.0), curve.length))
        length -= curve.length


def point_along(run, length):
    """The point at `length` cm along the run."""
    index, t = _place(run, length)
    return run[index].point(t)


def way_along(run, length):
    """The unit step in which the run goes at `length` cm along it."""
    index, t = _place(run, length)
    return run[index].way(t)


def cut_at(run, index, t):
    """The run before and after the place `t` on its curve number `index`."""
    before, after = list(run[:index]), list(run[index + 1:])
    # A sliver shorter than rounding is no curve: the cut is then at the joint itself.
    if run[index].length * t < 1e-9:
        t = 0.0
    elif run[index].length * (1 - t) < 1e-9:
        t = 1.0
    if t > 0:
        before.append(run[index].part(0.0, t) if t < 1 else run[index])
    if t < 1:
        after.insert(0, run[index].part(t, 1.0) if t > 0 else run[index])
    return tuple(before), tuple(after)


def cut_along(run, length):
    """The run's first `length` cm, and the rest."""
    return cut_at(run, *_place(run, length))


def stretch(run, start, end):
    """What lies from `start` to `end` cm along the run."""
    return cut_along(cut_along(run, end)[0], start)[1]


def on_ray(run, centre, way):
    """Every (index, t) at which the run meets the ray from `centre` along `way`, in the run's order."""
    return [(i, t) for i, curve in enumerate(run) for t in curve.on_line(centre, way)
            if dot(way, curve.point(t) - centre) > 0]


def on_line(run, point, way):
    """Every (index, t) at which the run meets the endless straight line through `point` along `way`."""
    return [(i, t) for i, curve in enumerate(run) for t in curve.on_line(point, way)]


def at_level(run, y):
    """The first point at which the run meets the level `y`, or None."""
    for index, t in on_line(run, y * 1j, 1 + 0j):
        return run[index].point(t)
    return None


def highest(run):
    """The y of the run's highest point."""
    return max(curve.highest for curve in run)


def flattened(run, tolerance=0.001):
    """Points along the run within `tolerance` cm of it, without doubled joints."""
    points = [run[0].start]
    for curve in run:
        points.extend(curve.flattened(tolerance)[1:])
    return points


def turning(run):
    """Degrees through which the run turns in all from its start to its end, left above nought."""
    total = 0.0
    way = run[0].way(0.0)
    for curve in run:
        for step in range(9 if isinstance(curve, Cubic) else 2):
            now = curve.way(step / 8 if isinstance(curve, Cubic) else step)
            total += turn_between(way, now)
            way = now
    return total
