"""Runs of curves laid end to end: their length, places along them, and how they are cut.

A path is a tuple of `Line` and `Cubic` values, each beginning where the one before it ends.
"""

import math
from collections.abc import Callable, Iterable, Sequence
from typing import TypeAlias

from corsetkit.geometry.curve import Cubic, Curves, Line
from corsetkit.geometry.points import Point, dot, turn_between

NEAR_PARTING = tuple(0.03 * 2.5**k for k in range(5))
"""The distances from where two paths part smoothly at which both are cut, cm."""
Place: TypeAlias = tuple[int, float]
"""A place on a path: the number of its curve, and the t on it."""


def path_length(path: Iterable[Line | Cubic]) -> float:
    """The path's length in cm."""
    return sum(curve.length for curve in path)


def path_start(path: Curves) -> Point:
    return path[0].start


def path_end(path: Curves) -> Point:
    return path[-1].end


def turned_round(path: Curves) -> Curves:
    """The same run from its end to its start."""
    return tuple(curve.turned_round for curve in reversed(path))


def moved(path: Curves, move: Callable[[Point], Point]) -> Curves:
    """The path with every point carried along by a rigid move, or by a mirror."""
    return tuple(curve.moved(move) for curve in path)


def _place(path: Curves, length: float) -> Place:
    """The index of the curve and the t on it, at `length` cm along the path."""
    for index, curve in enumerate(path[:-1]):
        if length <= curve.length:
            return index, curve.t_at(max(length, 0.0))
        length -= curve.length
    last = path[-1]
    return len(path) - 1, last.t_at(min(max(length, 0.0), last.length))


def point_along(path: Curves, length: float) -> Point:
    """The point at `length` cm along the path."""
    index, t = _place(path, length)
    return path[index].point(t)


def tangent_along(path: Curves, length: float) -> complex:
    """The unit step in which the path goes at `length` cm along it."""
    index, t = _place(path, length)
    return path[index].tangent(t)


def cut_at(path: Curves, index: int, t: float) -> tuple[Curves, Curves]:
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


def cut_along(path: Curves, length: float) -> tuple[Curves, Curves]:
    """The path's first `length` cm, and the rest."""
    return cut_at(path, *_place(path, length))


def stretch(path: Curves, start: float, end: float) -> Curves:
    """What lies from `start` to `end` cm along the path."""
    return cut_along(cut_along(path, end)[0], start)[1]


def on_ray(path: Curves, centre: Point, tangent: complex) -> list[Place]:
    """Every (index, t) at which the path meets the ray from `centre` along `tangent`, in the path's order."""
    return [
        (i, t)
        for i, curve in enumerate(path)
        for t in curve.on_line(centre, tangent)
        if dot(tangent, curve.point(t) - centre) > 0
    ]


def on_line(path: Curves, point: Point, tangent: complex) -> list[Place]:
    """Every (index, t) at which the path meets the endless straight line through `point` along `tangent`."""
    return [(i, t) for i, curve in enumerate(path) for t in curve.on_line(point, tangent)]


def at_level(path: Curves, y: float) -> Point | None:
    """The first point at which the path meets the level `y`, or None."""
    for index, t in on_line(path, y * 1j, 1 + 0j):
        return path[index].point(t)
    return None


def reached_at(path: Curves, y: float) -> Point:
    """The first point at which a path that reaches the level `y` meets it. Raises ValueError where it does not reach it."""
    point = at_level(path, y)
    if point is None:
        raise ValueError(f"the path does not reach the level {y:.3f} cm")
    return point


def highest(path: Curves) -> float:
    """The y of the path's highest point."""
    return max(curve.highest for curve in path)


def flattened(path: Curves, tolerance: float = 0.001) -> list[Point]:
    """Points along the run within `tolerance` cm of it, without doubled joints."""
    points = [path[0].start]
    for curve in path:
        points.extend(curve.flattened(tolerance)[1:])
    return points


def turning(path: Curves) -> float:
    """Degrees through which the path turns in all from its start to its end, left above zero."""
    total = 0.0
    tangent = path[0].tangent(0.0)
    for curve in path:
        for step in range(9 if isinstance(curve, Cubic) else 2):
            now = curve.tangent(step / 8 if isinstance(curve, Cubic) else step)
            total += turn_between(tangent, now)
            tangent = now
    return total


def parted_alike(first: Curves, second: Curves) -> tuple[Curves, Curves]:
    """Two unlike paths that begin alike, from where they part in one tangent, cut at like distances from there.

    Curves that both have in common at their start are left out. Beyond them they lie close to each other for a while: so cut,
    the straight joins of both turn alike, and do not seem to cross.
    """
    same = next(k for k, (one, other) in enumerate(zip(first, second)) if one != other)
    first, second = first[same:], second[same:]
    reach = min(first[0].length, second[0].length) / 2
    near = [along for along in NEAR_PARTING if along < reach]
    return _cut_at_each(first, near), _cut_at_each(second, near)


def _cut_at_each(path: Curves, places: Sequence[float]) -> Curves:
    """The path with a joint at each of these distances from its start, which lie on its first curve."""
    ts = [0.0, *(path[0].t_at(along) for along in places), 1.0]
    return (*(path[0].part(a, b) for a, b in zip(ts, ts[1:])), *path[1:])


def least_radius(path: Curves) -> float:
    """How tightly the path bends at its tightest, cm: the least radius of its curves, looked for at 24 places along each.

    Without bound where nothing bends.
    """
    bend = max((abs(curve.bend(k / 24)) for curve in path if isinstance(curve, Cubic) for k in range(25)), default=0.0)
    return 1 / bend if bend > 0 else math.inf
