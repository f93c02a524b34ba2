"""Points as complex numbers: the few words that drafting needs for them."""

import cmath
import math
from typing import TypeAlias

Point: TypeAlias = complex
"""A place on the paper, `x + yj` in cm. A step from one to another is a plain complex number."""


def direction(degrees: float) -> complex:
    """The unit step at `degrees` counter-clockwise from "to the right"."""
    return cmath.rect(1.0, math.radians(degrees))


def unit(step: complex) -> complex:
    """`step` shortened or lengthened to one."""
    return step / abs(step)


def heading(step: complex) -> float:
    """Degrees from "to the right" to `step`, counter-clockwise, in (-180, 180]."""
    return math.degrees(cmath.phase(step))


def turn_between(first: complex, second: complex) -> float:
    """Degrees to turn `first` counter-clockwise onto `second`, in (-180, 180]."""
    return math.degrees(cmath.phase(second * first.conjugate()))


def cross(first: complex, second: complex) -> float:
    """The signed area of the parallelogram of two steps; above zero where `second` lies to the left."""
    return first.real * second.imag - first.imag * second.real


def dot(first: complex, second: complex) -> float:
    """The product of two steps' lengths and the cosine between them."""
    return first.real * second.real + first.imag * second.imag


def between(a: Point, b: Point, share: float) -> Point:
    """The point at `share` of the way from `a` to `b`."""
    return a + (b - a) * share


def to_side(p: Point, a: Point, b: Point) -> float:
    """How far the point `p` lies from the straight stretch from `a` to `b`, cm."""
    step = b - a
    squared = step.real * step.real + step.imag * step.imag
    if not squared:
        return abs(p - a)
    t = ((p - a) * step.conjugate()).real / squared
    return abs(p - a - step * (0.0 if t < 0 else 1.0 if t > 1 else t))
