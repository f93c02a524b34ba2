"""How the back waist is taken in: drawn in the back step, and known beforehand where the underbust is solved.

Half of the waist's reduction falls to each half body, and of that all, or what the front does not give, to the half back. A
share goes at the side waist, the rest into the back dart; the dart runs to nothing at the bust level above, so that the bust
keeps its girth and the edges meet at the yoke, and to nothing above the hem; the side runs to nothing at the bust level and at
the hip.
"""

from dataclasses import dataclass

from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Curves, Line
from corsetkit.geometry.points import Point
from corsetkit.steps.block import Block
from corsetkit.steps.half import carried, swung, taken_in
from corsetkit.steps.shares import shares_of_reduction
from corsetkit.style import Style
from corsetkit.units import say_both

LEAST_CENTRE_BACK = 1.5
"""Panel left at the waist on each side of the back dart at least, cm: course convention."""


@dataclass(frozen=True, kw_only=True)
class BackWaist:
    """The back's side seam and dart once the waist is taken in, cm.

    `side_above` is the block's; `side_waist` ends at the new waist mark, which lies where the seam above it is as long as the
    front's; `side_hip` runs on to the block's hip. `dart` is what the back
    dart takes at the waist, on `axis`, from `dart_top` to `dart_end`.
    """

    side_waist: Curves
    side_hip: Curves
    at_side: float
    axis: float
    dart: float
    dart_top: Point
    dart_end: Point
    legs: tuple[Curves, Curves]
    """The dart's legs from its top over the waist to its end: the side back's, and the centre back's."""

    def __repr__(self) -> str:
        return f"<BackWaist taken in {self.at_side:.1f} cm at the side, {self.dart:.1f} cm by the dart>"

    def dart_at(self, y: float) -> float:
        """What the dart takes at the level `y`, cm."""
        left, right = (paths.at_level(leg, y) for leg in self.legs)
        return abs(right - left) if left is not None and right is not None else 0.0


def back_waist(block: Block, style: Style, hem_level: float, above: float) -> BackWaist:
    """Take the back waist in.

    Args:
        block: the `Block`. style: reads waist_reduction and how it is shared, back_dart_place, dart_end.
        hem_level: the hem's height at the centre, cm, below zero.
        above: how long the front's side seam is from the bust level, its dart closed, down to its waist mark, cm.

    Returns:
        A `BackWaist`.
    """
    back = block.back
    reduction = shares_of_reduction(style)
    at_side, dart = reduction.back_edge, back.waist_dart + reduction.back_dart
    waist_width = abs(back.waist_centre - back.waist_side)
    axis = back.dart_axis
    beside = abs(back.waist_centre.real - axis) - dart / 2 - style.lacing_gap / 2
    if beside < LEAST_CENTRE_BACK or waist_width * (1 - style.back_dart_place) - at_side - dart / 2 < LEAST_CENTRE_BACK:
        raise CorsetkitError(
            f"waist reduction is {say_both(style.waist_reduction)}, lacing gap {say_both(style.lacing_gap)} and back dart "
            f"place {style.back_dart_place:.2f}: too little of this back waist of {say_both(waist_width)} would be left; "
            f"allowed is at least {say_both(LEAST_CENTRE_BACK)} on each side of the back dart, so choose less reduction, a "
            "smaller gap or another place"
        )
    down, on = taken_in(back, at_side, block.let_out.at_dart)
    seam, below = paths.cut_along((*down, *on), above)
    top = complex(axis, back.bust_level)
    end = complex(axis, style.dart_end * hem_level)
    # Where the dart takes nothing the panels still part along its line.
    line = (Line(top, end),)
    return BackWaist(
        side_waist=seam,
        side_hip=below,
        at_side=at_side,
        axis=axis,
        dart=dart,
        dart_top=top,
        dart_end=end,
        legs=_legs(block, top, end, dart) if dart > 1e-9 else (line, line),
    )


def _legs(block: Block, top: Point, end: Point, width: float) -> tuple[Curves, Curves]:
    """The back dart's legs, as the block's have them above, `width` apart at the waist; the side's first."""
    half = width / 2 if block.back.waist_side.real > block.back.waist_centre.real else -width / 2
    old = block.back.dart_legs or ((Line(top, complex(top.real, 0.0)),) * 2,) * 2
    side, centre = (
        (*carried(leg[:-1], complex(top.real + off, 0.0)), swung(complex(top.real + off, 0.0), end))
        for leg, off in zip(old, (half, -half))
    )
    return side, centre


def back_width_at(block: Block, waist: BackWaist, y: float) -> float:
    """The half back's width at the level `y`, from side seam to centre back, the dart not counted, cm."""
    side = paths.reached_at((*block.back.side_above, *waist.side_waist, *waist.side_hip), y)
    return abs(block.back.waist_centre.real - side.real) - waist.dart_at(y)
