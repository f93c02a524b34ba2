"""One half of the block, front or back alike: its points and lines, and how they are drawn."""

from dataclasses import dataclass
from functools import cached_property

from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Cubic, Line
from corsetkit.geometry.points import direction
from corsetkit.units import say_both

ACROSS_HEIGHT = 0.4
"""The across widths lie two fifths of the way up from underarm to shoulder tip: course convention."""
WAIST_DART_END = 0.6
"""How far from waist to hip the block's waist darts end: course convention."""


@dataclass(frozen=True)
class Half:
    """What front and back have alike: points and lines of one half of the block, in cm.

    `neckline` runs from the side neck point to the centre; `armscye` from the shoulder tip to the underarm
    point; the side seam from there down in three paths: `side_above` to where it leaves the upright (on the
    front the side dart's mouth), `side_waist` to the waist, `side_hip` to the hip. `width` is the half's
    width at the bust, `waist_dart` what its dart takes at the waist, `bust_level` the bust line's height.
    `dart_legs` are the waist dart's legs from its top on `dart_axis` over the waist to its end, the one towards the
    side first; none where it takes nothing. Later steps draw the front's anew as part of the underbust dart, and take
    more into the back's.
    """

    width: float
    waist_dart: float
    dart_axis: float
    dart_legs: tuple
    bust_level: float
    neck_side: complex
    neck_centre: complex
    shoulder_tip: complex
    across: complex
    underarm: complex
    waist_side: complex
    hip_side: complex
    waist_centre: complex
    hip_centre: complex
    neckline: tuple
    armscye: tuple
    side_above: tuple
    side_waist: tuple
    side_hip: tuple

    @property
    def shoulder(self):
        """From the side neck point to the shoulder tip."""
        return (Line(self.neck_side, self.shoulder_tip),)

    @cached_property
    def side(self):
        """The side seam from underarm to hip, its dart closed or not there."""
        return (*self.side_above, *self.side_waist, *self.side_hip)

    @property
    def mid_shoulder(self):
        return (self.neck_side + self.shoulder_tip) / 2


def drawn_half(
    place, m, style, width, dart, axis, bust_level, neck_side, neckline, across, underarm, mouth, side_in, hip_out, wider
):
    """One half, drawn with its centre on x = 0 and its side to the right, and then put in its `place`.

    By `wider` a fitting widens its paper at the waist, where its dart takes as much more.
    """
    slope = direction(-style.shoulder_slope)
    tip = neck_side + m.shoulder_length * slope
    under = complex(width, underarm)
    mid = complex(across, underarm + ACROSS_HEIGHT * (tip.imag - underarm))
    if tip.imag < underarm + 6:
        raise CorsetkitError(
            f"shoulder length is {say_both(m.shoulder_length)}: on this body the shoulder would end at the "
            "underarm; measure shoulder length and armscye depth again"
        )
    square = -1j * slope
    upper = Cubic(tip, tip + square * 0.4 * (tip.imag - mid.imag), mid + 0.4j * (tip.imag - mid.imag), mid)
    lower = Cubic(mid, mid - 0.6j * (mid.imag - underarm), under - 0.6 * (width - across), under)
    bend, waist, hip = complex(width, mouth), complex(width - side_in, 0.0), complex(width + hip_out, -m.waist_to_hip)

    def put(*curves):
        return tuple(
            Cubic(*map(place, (c.start, c.first, c.second, c.end)))
            if isinstance(c, Cubic)
            else Line(place(c.start), place(c.end))
            for c in curves
        )

    top, end = place(complex(axis, bust_level)), place(complex(axis, -WAIST_DART_END * m.waist_to_hip))
    to_side = (place(waist) - place(0j)).real
    legs = dart_legs(top, end, dart, to_side) if dart else ()
    return Half(
        width,
        dart,
        top.real,
        legs,
        bust_level,
        place(neck_side),
        place(neckline.end),
        place(tip),
        place(mid),
        place(under),
        place(waist),
        place(hip),
        place(0j),
        place(complex(0.0, -m.waist_to_hip)),
        put(neckline),
        put(upper, lower),
        put(Line(under, bend)),
        put(swung(bend, waist)),
        put(*side_below_waist(waist, hip, wider)),
    )


def swung(start, end):
    """An S from `start` to `end` that leaves and arrives upright; its height is even in t."""
    third = 1j * (end.imag - start.imag) / 3
    return Cubic(start, start + third, end - third, end)


def side_below_waist(waist, hip, wider):
    """The side seam from waist to hip, an S; what a fitting widens the paper at the waist is gone where the dart ends.

    `wider` is a step towards the side, 0 where nothing is widened.
    """
    if not wider:
        return (swung(waist, hip),)
    end = (WAIST_DART_END * hip.imag - waist.imag) / (hip.imag - waist.imag)
    (upper,), lower = paths.cut_at((swung(waist - wider, hip),), 0, end)
    # Both are even in their height, so their sum is again one curve.
    return (Cubic(upper.start + wider, upper.first + wider, upper.second, upper.end), *lower)


def dart_legs(top, end, width, to_side):
    """An upright dart's two legs from `top` over the waist, where they stand `width` apart, to `end`.

    Each is an S above and one below the waist, so both run to nothing smoothly. The leg towards the side comes first;
    `to_side` is above zero where the side lies to the right.
    """
    half = width / 2 if to_side > 0 else -width / 2
    return tuple((swung(top, at), swung(at, end)) for at in (complex(top.real + half, 0.0), complex(top.real - half, 0.0)))
