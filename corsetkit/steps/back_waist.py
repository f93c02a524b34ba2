"""How the back waist is taken in: drawn in the back step, and known beforehand where the underbust is solved.

Half of the waist's reduction falls to each half back. A share goes at the side waist, the rest into the back
dart; the dart runs to nothing at the bust level above, so that the bust keeps its girth and the edges
meet at the yoke, and to nothing above the hem; the side runs to nothing at the bust level and at the hip.
"""

from dataclasses import dataclass

from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Curves, Line
from corsetkit.geometry.points import Point
from corsetkit.geometry.roots import root
from corsetkit.steps.block import Block
from corsetkit.steps.half import dart_legs, side_below_waist, swung
from corsetkit.style import Style
from corsetkit.units import say_both

LEAST_CENTRE_BACK = 1.5
"""Panel left at the waist on each side of the back dart at least, cm: course convention."""


@dataclass(frozen=True, kw_only=True)
class BackWaist:
    """The back's side seam and dart once the waist is taken in, cm.

    `side_above` is the block's; `side_waist` ends at the new waist mark, `waist_lifted` above the waist so
    that the seam is as long as the front's; `side_hip` runs on to the block's hip. `dart` is what the back
    dart takes at the waist, on `axis`, from `dart_top` to `dart_end`.
    """

    side_waist: Curves
    side_hip: Curves
    waist_lifted: float
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


def back_waist(block: Block, style: Style, hem_level: float, lowered: float = 0.0) -> BackWaist:
    """Take the back waist in.

    Args:
        block: the `Block`. style: reads waist_reduction, reduction_at_side, back_dart_place, dart_end.
        hem_level: the hem's height at the centre, cm, below zero.
        lowered: how far below the bust level the dart's top is set, cm.

    Returns:
        A `BackWaist`.
    """
    back = block.back
    half = style.waist_reduction / 2
    at_side = half * style.reduction_at_side
    dart = back.waist_dart + half - at_side
    inward = 1.0 if back.waist_centre.real > back.waist_side.real else -1.0
    waist = back.waist_side + inward * at_side
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
    # A side dart makes both halves' seams equal; without one, a back let out at the hip is made as long as the front.
    same = block.front if block.let_out.seam_low and not block.side_dart else back
    above, hip, lifted = _side(
        paths.path_end(back.side_above),
        waist,
        back.hip_side,
        paths.path_length(same.side_waist),
        -inward * block.let_out.at_dart,
    )
    top = complex(axis, back.bust_level - lowered)
    end = complex(axis, style.dart_end * hem_level)
    # Where the dart takes nothing the panels still part along its line.
    line = (Line(top, end),)
    return BackWaist(
        side_waist=above,
        side_hip=hip,
        waist_lifted=lifted,
        at_side=at_side,
        axis=axis,
        dart=dart,
        dart_top=top,
        dart_end=end,
        legs=dart_legs(top, end, dart, -inward) if dart > 1e-9 else (line, line),
    )


def _side(bend: Point, waist: Point, hip: Point, length: float, wider: float) -> tuple[Curves, Curves, float]:
    """The side seam over the new waist, its mark set so that the seam above it is `length` long, as the front's is.

    `wider` is what `side_below_waist` takes.
    A longer curve ends above the waist, a shorter one is carried straight on below it; the seam is upright there.
    """
    if swung(bend, waist).length > length:
        try:
            lifted = root(lambda y: swung(bend, waist + 1j * y).length - length, 0.0, 3.0)
        except ValueError:
            raise CorsetkitError(
                "the back's side seam cannot be made as long as the front's: choose a smaller "
                "waist reduction or reduction at side"
            ) from None
        mark = waist + 1j * lifted
        return (swung(bend, mark),), (Line(mark, waist), *side_below_waist(waist, hip, wider)), lifted
    lifted = swung(bend, waist).length - length
    if lifted > -1e-9:
        return (swung(bend, waist),), side_below_waist(waist, hip, wider), 0.0
    mark = waist + 1j * lifted
    return (swung(bend, waist), Line(waist, mark)), side_below_waist(mark, hip, wider), lifted


def back_width_at(block: Block, waist: BackWaist, y: float) -> float:
    """The half back's width at the level `y`, from side seam to centre back, the dart not counted, cm."""
    side = paths.reached_at((*block.back.side_above, *waist.side_waist, *waist.side_hip), y)
    return abs(block.back.waist_centre.real - side.real) - waist.dart_at(y)
