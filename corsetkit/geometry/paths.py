"""Runs of curves laid end to end: their length, places along them, and how they are cut.

A path is a tuple of `Line` and `Cubic` values, each beginning where the one before it ends.
"""

from corsetkit.geometry.curve import Cubic
from corsetkit.geometry.points import dot, turn_between


def path_length(path):
    """The path's length in cm."""
    return sum(curve.length for curve in path)


def path_start(path):
    return path[0].start


def path_end(path):
    return path[-1].end


def turned_round(path):
    """The same run from its end to its start."""
    return tuple(curve.turned_round for curve in reversed(path))


def moved(path, move):
    """The path moved rigidly."""
    return tuple(curve.moved(move) for curve in path)


def _place(path, length):
    """The index of the curve and the t on it, at `length` cm along the path."""
    for index, curve in enumerate(path):
        if length <= curve.length or index == len(path) - 1:
            return index, curve.t_at(min(max(length, 0.0), curve.length))
        length -= curve.length


def point_along(path, length):
    """The point at `length` cm along the path."""
    index, t = _place(path, length)
    return path[index].point(t)


def tangent_along(path, length):
    """The unit step in which the path goes at `length` cm along it."""
    index, t = _place(path, length)
    return path[index].tangent(t)


def cut_at(path, index, t):
    """The path before and after the place `t` on its curve number `index`."""
    before, after = list(path[:index]), list(path[index + 1 :])
    # A sliver shorter than rounding is no curve: the cut is then at the joint itself.
    if path[index].length * t < 1e-9:
        t = 0.0
    elif path[index].length * (1 - t) < 1e-9:
        t = 1.0
    if t > 0:
        before.append(path[index].part(0.0, t) if t < 1 else path[index])
    if t < 1:
        after.insert(0, path[index].part(t, 1.0) if t > 0 else path[index])
    return tuple(before), tuple(after)


def cut_along(path, length):
    """The path's first `length` cm, and the rest."""
    return cut_at(path, *_place(path, length))


def stretch(path, start, end):
    """What lies from `start` to `end` cm along the path."""
    return cut_along(cut_along(path, end)[0], start)[1]


def on_ray(path, centre, tangent):
    """Every (index, t) at which the path meets the ray from `centre` along `tangent`, in the path's order."""
    return [
        (i, t)
        for i, curve in enumerate(path)
        for t in curve.on_line(centre, tangent)
        if dot(tangent, curve.point(t) - centre) > 0
    ]


def on_line(path, point, tangent):
    """Every (index, t) at which the path meets the endless straight line through `point` along `tangent`."""
    return [(i, t) for i, curve in enumerate(path) for t in curve.on_line(point, tangent)]


def at_level(path, y):
    """The first point at which the path meets the level `y`, or None."""
    for index, t in on_line(path, y * 1j, 1 + 0j):
        return path[index].point(t)
    return None


def highest(path):
    """The y of the path's highest point."""
    return max(curve.highest for curve in path)


def flattened(path, tolerance=0.001):
    """Points along the run within `tolerance` cm of it, without doubled joints."""
    points = [path[0].start]
    for curve in path:
        points.extend(curve.flattened(tolerance)[1:])
    return points


def turning(path):
    """Degrees through which the path turns in all from its start to its end, left above zero."""
    total = 0.0
    tangent = path[0].tangent(0.0)
    for curve in path:
        for step in range(9 if isinstance(curve, Cubic) else 2):
            now = curve.tangent(step / 8 if isinstance(curve, Cubic) else step)
            total += turn_between(tangent, now)
            tangent = now
    return total
