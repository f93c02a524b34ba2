"""One half of the block, front or back alike: its points and lines, and how they are drawn."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

from corsetkit.errors import CorsetkitError
from corsetkit.geometry.curve import Cubic, Curves, Line
from corsetkit.geometry.points import Point, direction
from corsetkit.measurements import Measurements
from corsetkit.style import Style
from corsetkit.units import say_both

ACROSS_HEIGHT = 0.4
"""The across widths lie two fifths of the way up from underarm to shoulder tip: course convention."""
WAIST_DART_END = 0.6
"""How far from waist to hip the block's waist darts end: course convention."""


@dataclass(frozen=True, kw_only=True)
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
    dart_legs: tuple[Curves, ...]
    bust_level: float
    neck_side: Point
    neck_centre: Point
    shoulder_tip: Point
    across: Point
    underarm: Point
    waist_side: Point
    hip_side: Point
    waist_centre: Point
    hip_centre: Point
    neckline: Curves
    armscye: Curves
    side_above: Curves
    side_waist: Curves
    side_hip: Curves

    def __repr__(self) -> str:
        return f"<Half {self.width:.1f} cm wide at the bust, dart {self.waist_dart:.1f} cm at the waist>"

    @property
    def shoulder(self) -> tuple[Line]:
        """From the side neck point to the shoulder tip."""
        return (Line(self.neck_side, self.shoulder_tip),)

    @cached_property
    def side(self) -> Curves:
        """The side seam from underarm to hip, its dart closed or not there."""
        return (*self.side_above, *self.side_waist, *self.side_hip)

    @property
    def mid_shoulder(self) -> Point:
        return (self.neck_side + self.shoulder_tip) / 2


def drawn_half(
    place: Callable[[Point], Point],
    m: Measurements,
    style: Style,
    *,
    width: float,
    dart: float,
    axis: float,
    bust_level: float,
    neck_side: Point,
    neckline: Cubic,
    across: float,
    underarm: float,
    mouth: float,
    side_in: float,
    hip_out: float,
    wider: float,
) -> Half:
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

    def put(*curves: Line | Cubic) -> Curves:
        return tuple(
            Cubic(place(c.start), place(c.first), place(c.second), place(c.end))
            if isinstance(c, Cubic)
            else Line(place(c.start), place(c.end))
            for c in curves
        )

    top, end = place(complex(axis, bust_level)), place(complex(axis, -WAIST_DART_END * m.waist_to_hip))
    to_side = (place(waist) - place(0j)).real
    legs = dart_legs(top, end, dart, to_side) if dart else ()
    return Half(
        width=width,
        waist_dart=dart,
        dart_axis=top.real,
        dart_legs=legs,
        bust_level=bust_level,
        neck_side=place(neck_side),
        neck_centre=place(neckline.end),
        shoulder_tip=place(tip),
        across=place(mid),
        underarm=place(under),
        waist_side=place(waist),
        hip_side=place(hip),
        waist_centre=place(0j),
        hip_centre=place(complex(0.0, -m.waist_to_hip)),
        neckline=put(neckline),
        armscye=put(upper, lower),
        side_above=put(Line(under, bend)),
        side_waist=put(swung(bend, waist)),
        side_hip=put(*side_below_waist(waist, hip, wider)),
    )


def swung(start: Point, end: Point) -> Cubic:
    """An S from `start` to `end` that leaves and arrives upright; its height is even in t."""
    third = 1j * (end.imag - start.imag) / 3
    return Cubic(start, start + third, end - third, end)


def side_below_waist(waist: Point, hip: Point, wider: float) -> Curves:
    """The side seam from waist to hip, an S; what a fitting widens the paper at the waist is gone where the dart ends.

    `wider` is a step towards the side, 0 where nothing is widened.
    """
    if not wider:
        return (swung(waist, hip),)
    end = (WAIST_DART_END * hip.imag - waist.imag) / (hip.imag - waist.imag)
    whole = swung(waist - wider, hip)
    upper, lower = whole.part(0.0, end), whole.part(end, 1.0)
    # Both are even in their height, so their sum is again one curve.
    return (Cubic(upper.start + wider, upper.first + wider, upper.second, upper.end), lower)


def dart_legs(top: Point, end: Point, width: float, to_side: float) -> tuple[Curves, Curves]:
    """An upright dart's two legs from `top` over the waist, where they stand `width` apart, to `end`.

    Each is an S above and one below the waist, so both run to nothing smoothly. The leg towards the side comes first;
    `to_side` is above zero where the side lies to the right.
    """
    half = width / 2 if to_side > 0 else -width / 2
    at_side, at_centre = complex(top.real + half, 0.0), complex(top.real - half, 0.0)
    return (swung(top, at_side), swung(at_side, end)), (swung(top, at_centre), swung(at_centre, end))
