"""What side seam and back dart take of half the back at one level, beside what the block had there already."""

from dataclasses import dataclass

from corsetkit.geometry import paths as path
from corsetkit.units import say_length

TIE = 1e-7
"""Halves of a sixteenth are told upwards, by whatever rounding a length was reached: two equal shares read alike."""
NEAR = 0.16
"""A level this near to the waist, cm, is the waist: half of what the slider moves in."""


@dataclass(frozen=True)
class Taken:
    """One level of half the back, `y` cm above the waist.

    `block_side` and `side` are where it meets the block's side seam and the taken-in one; `legs` where it meets the back
    dart's legs, the one towards the side first, and `block_legs` the block's; both fall together on the dart's line where
    a dart takes nothing. `centre` is where the centre back stands.
    """

    y: float
    block_side: complex
    side: complex
    block_legs: tuple
    legs: tuple
    centre: float

    @property
    def at_side(self):
        """What the side seam takes, cm."""
        return abs(self.side - self.block_side)

    @property
    def in_dart(self):
        """What the back dart takes in all, cm."""
        return abs(self.legs[1] - self.legs[0])

    @property
    def in_block(self):
        """What the block's own dart takes, cm."""
        return abs(self.block_legs[1] - self.block_legs[0])

    @property
    def more_in_dart(self):
        """What the back dart takes beyond the block's, cm; below nought where the block's dart reaches deeper."""
        return self.in_dart - self.in_block

    @property
    def width(self):
        """How wide half the back is left, its dart closed, cm."""
        return abs(self.centre - self.side.real) - self.in_dart

    @property
    def all_round(self):
        """What both halves of the back are narrower than the block's, cm."""
        return 2 * (self.at_side + self.more_in_dart)


def taken_at(back, below_bust):
    """The `Taken` that lies `below_bust` cm below the back's bust level; one within `NEAR` of the waist is the waist.

    Args:
        back: the `Back`. below_bust: from nought down to `lowest(back)`.
    """
    half, waist = back.block.back, back.waist
    y = half.bust_level - min(max(below_bust, 0.0), lowest(back))
    if abs(y) <= NEAR:
        y = 0.0
    sides = [_at(run, y) for run in ((*half.side_waist, *half.side_hip), (*waist.side_waist, *waist.side_hip))]
    return Taken(y, *sides, _legs(half.dart_legs, half.dart_axis, y), _legs(waist.legs, waist.axis, y),
                 half.waist_centre.real)


def lowest(back):
    """How far below the bust level the back's hem lies where it is highest, cm."""
    return back.block.back.bust_level - path.run_end(back.side_below).imag


def told(cm, unit):
    """A length of what is taken, in words."""
    return say_length(cm + TIE, unit)


def _at(run, y):
    """Where the run meets the level; at the run's ends rounding must not miss it."""
    found = path.at_level(run, y)
    return min((path.run_start(run), path.run_end(run)), key=lambda end: abs(end.imag - y)) if found is None else found


def _legs(legs, axis, y):
    found = [path.at_level(leg, y) for leg in legs]
    none = complex(axis, y)
    return (none, none) if not found or None in found else tuple(found)
