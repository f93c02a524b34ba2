"""Necklines: the block's, whose depth is solved from the neck base girth, and the yokes' new ones."""

from corsetkit.errors import CorsetkitError
from corsetkit.geometry.curve import Cubic, Curves
from corsetkit.geometry.points import Point, direction
from corsetkit.geometry.roots import root
from corsetkit.units import CM_PER_INCH, say_both

NECK_SHARE = 6
"""Front neck width is neck/6: The Cutter's Practical Guide, part 13."""
BACK_NECK_EXTRA = CM_PER_INCH / 4
"""Back neck width is neck/6 + 1/4 in: The Cutter's Practical Guide, part 13."""


def neckline(neck_side: Point, depth: float, slope: float) -> Cubic:
    """The neckline in the half's own frame: square to the shoulder at its side, level at the centre."""
    leaving = direction(-90 - slope)
    end = complex(0.0, neck_side.imag - depth)
    return Cubic(neck_side, neck_side + leaving * 0.5 * depth, end + 0.55 * neck_side.real, end)


def front_neckline(neck_side: Point, slope: float, length: float) -> Cubic:
    """The front neckline of the length that is left of the neck base girth: its depth is solved for it."""
    try:
        depth = root(lambda d: neckline(neck_side, d, slope).length - length, 1.0, 2.5 * length)
    except ValueError:
        raise CorsetkitError(
            f"neck base girth leaves {say_both(length)} for half the front neckline, which no depth gives: "
            "measure neck base girth again"
        ) from None
    return neckline(neck_side, depth, slope)


def yoke_neckline(start: Point, shoulder_tangent: complex, end: Point, centre_out: complex) -> Curves:
    """A neckline from the shoulder, square to it, to the centre, arriving against the step `centre_out`."""
    square = shoulder_tangent * 1j
    if (square.imag) > 0:
        square = -square
    depth, width = abs((start - end).imag), abs((start - end).real)
    return (Cubic(start, start + square * 0.5 * depth, end + centre_out * 0.55 * width, end),)
