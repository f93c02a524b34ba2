"""One half of the block, front or back alike: its points and lines, and how they are drawn."""

import math
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


MOST_AT_UNDERBUST = 0.9
"""A seam takes no more at the underbust level than this share of what it takes at the waist: course convention."""
UNLIKE = 0.4
"""How much tighter than an arc a bow between unlike lines is, as the power of their ratio: measured."""
LEAST_FALL = 1.0
"""How far a point that a seam is led through lies below its start and above the waist at least, cm; else one S serves."""


@dataclass(frozen=True, kw_only=True)
class Taken:
    """What the side seam's edge and the dart of one half take at the underbust level, cm, and its height over the waist.

    None where nothing is said of one, as by the fixed guides: then it runs from the bust level to the waist in one S.
    """

    level: float = 0.0
    at_side: float | None = None
    by_dart: float | None = None
    more_at_side: float = 0.0
    more_by_dart: float = 0.0
    """What the waist's reduction takes more at the waist, cm."""


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
    taken: Taken,
) -> Half:
    """One half, drawn with its centre on x = 0 and its side to the right, and then put in its `place`.

    By `wider` a fitting widens its paper at the waist, where its dart takes as much more. `taken` says what side seam and
    dart take at the underbust level.
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
    legs = dart_legs(top, end, dart, to_side, taken) if dart else ()
    beside = None if taken.at_side is None else complex(width - taken.at_side, taken.level)
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
        side_waist=put(*fallen(bend, beside, waist, later=-taken.more_at_side)),
        side_hip=put(*side_below_waist(waist, hip, wider)),
    )


def swung(start: Point, end: Point, leaving: float = 0.0, arriving: float = 0.0) -> Cubic:
    """An S from `start` down to `end` whose height is even in t; it leaves and arrives upright, or leaning by so much
    sideways for each cm of its fall."""
    third = (start.imag - end.imag) / 3
    return Cubic(start, start + complex(leaving * third, -third), end - complex(arriving * third, -third), end)


def fallen(start: Point, through: Point | None, end: Point, leaving: float = 0.0, later: float = 0.0) -> Curves:
    """A line from `start` down `through` a point to `end`, where it is upright; it bends one way, and then the other.

    Where it leaves upright it is two bows, as wide as they can be, that meet in the point; where it leaves leaning, its bend
    runs evenly on through the point. Where no point is given, or it lies too near the start, one S serves. `later` says how
    much farther aside a later step leads it at its end: its lean at the point is that line's, which shares what lies above.
    """
    if through is None or start.imag - through.imag < LEAST_FALL or through.imag - end.imag < LEAST_FALL:
        return (swung(start, end, leaving),)
    high, low = start.imag - through.imag, through.imag - end.imag
    first, second = through.real - start.real, end.real + later - through.real
    if leaving or first * second <= 0:
        even = (6 * second / low**2 + 6 * first / high**2 - 2 * leaving / high) / (4 / high + 4 / low)
        lean = math.copysign(max(0.0, min(math.copysign(even, even * second), 3 * abs(second) / low)), second)
        return swung(start, through, leaving, lean), swung(through, end, lean)
    lean = math.copysign(_widest_bows(abs(first), abs(second), high, low)[0], first)
    return _bow(through, lean, start).turned_round, led_on(through, lean, end)


def led_on(start: Point, lean: float, end: Point) -> Cubic:
    """A line from `start`, which it leaves leaning, on to `end`, where it is upright: a bow where one can be, else an S."""
    aside, fall = end.real - start.real, start.imag - end.imag
    return _bow(start, lean, end) if lean * aside > 0 and abs(lean) * fall > abs(aside) else swung(start, end, lean)


def carried(old: Curves, waist: Point) -> Curves:
    """A line from above down to the waist, led to another place there.

    Only its last curve is drawn anew: above, where what is taken at the underbust level has been said, it stays.
    """
    last = old[-1]
    if len(old) == 1 and isinstance(last, Cubic):
        # One S: its lower half goes with its end.
        return (Cubic(last.start, last.first, last.second + waist - last.end, waist),)
    leaving = last.tangent(0.0)
    return (*old[:-1], led_on(last.start, -leaving.real / leaving.imag, waist))


def taken_in(half: Half, at_side: float, wider: float = 0.0) -> tuple[Curves, Curves]:
    """A half's side seam down to the waist and on to the hip, taken in at the waist by `at_side` cm.

    By `wider` cm a fitting widens the paper there, as in `drawn_half`.
    """
    if at_side <= 1e-9 and not wider:
        return half.side_waist, half.side_hip
    inward = 1.0 if half.waist_centre.real > half.waist_side.real else -1.0
    waist = half.waist_side + inward * at_side
    return carried(half.side_waist, waist), side_below_waist(waist, half.hip_side, -inward * wider)


def _bow(start: Point, lean: float, end: Point) -> Cubic:
    """A bow from `start`, which it leaves leaning by so much sideways for each cm of its fall, to `end`, where it is upright.

    It may run upwards as well. Where the two straight lines along which it leaves and arrives are alike, it is an arc's
    bow; where one is longer, the bow lies near their corner, and the longer line is nearly straight before it.
    """
    corner = complex(end.real, start.imag - (end.real - start.real) / lean)
    leaving, arriving = abs(corner - start), abs(end - corner)
    half = math.atan(abs(lean)) / 2
    short, arc = min(leaving, arriving), 4 / 3 * math.tan(half / 2) / math.tan(half)
    first, second = (leaving - (1 - arc) * short) / leaving, (arriving - (1 - arc) * short) / arriving
    return Cubic(start, start + first * (corner - start), end + second * (corner - end), end)


def _widest_bows(first: float, second: float, high: float, low: float) -> tuple[float, float]:
    """The lean at a point between two bows that makes the tighter of them as wide as it can be, and its radius, cm.

    They come `first` cm aside over the `high` cm above the point, and `second` over the `low` cm below it. A bow's radius is
    that of the arc that fits between the two lines along which it leaves and arrives, and less where these are unlike.
    """

    def radius(lean: float) -> float:
        sloped, turn = math.hypot(1.0, 1 / lean), math.tan(math.atan(lean) / 2)
        legs = (first * sloped, high - first / lean), (second * sloped, low - second / lean)
        return min(min(pair) / turn * math.pow(min(pair) / max(pair), UNLIKE) for pair in legs)

    least = max(first / high, second / low)
    below, above = least * 1.001, least * 8
    share = (math.sqrt(5) - 1) / 2
    one, two = above - share * (above - below), below + share * (above - below)
    at_one, at_two = radius(one), radius(two)
    for _ in range(18):
        if at_one > at_two:
            above, two, at_two = two, one, at_one
            one = above - share * (above - below)
            at_one = radius(one)
        else:
            below, one, at_one = one, two, at_two
            two = below + share * (above - below)
            at_two = radius(two)
    return max((one, at_one), (two, at_two), key=lambda found: found[1])


def bends_enough(taken: float, own: float, whole: float, high: float, low: float, radius: float) -> float:
    """What a seam takes at a point, at least `taken`, so that it bends no tighter than about `radius`.

    It takes `own` at the waist, `low` cm below the point, and `whole` once the waist is reduced; it begins `high` cm above
    the point. Where it cannot, it takes what bends it least. All in cm.
    """
    most = MOST_AT_UNDERBUST * own
    if min(high, low) < LEAST_FALL or most <= taken or taken <= 0:
        return taken
    if _widest_bows(taken, whole - taken, high, low)[1] >= radius:
        return taken
    low_end, high_end = taken, most
    for _ in range(12):
        # Up to the place where the lower bow is no longer the tighter one, more is wider.
        middle = (low_end + high_end) / 2
        bows = [_widest_bows(one, whole - one, high, low)[1] for one in (middle, middle + 1e-3)]
        if bows[0] >= radius or bows[1] < bows[0]:
            high_end = middle
        else:
            low_end = middle
    return high_end


def unwound(start: Point, level: float, end: Point, leaving: float) -> float:
    """How far aside a line from `start` to `end` that leaves leaning must have come at a level, so that it bends once.

    Where it has come less, it turns upright first and bends to the waist again. The amount is that at which the even curve
    through the place has no bend there.
    """
    high, low = start.imag - level, level - end.imag
    return ((end.real - start.real) / low + leaving / 3) / (1 / high + 1 / low)


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


def dart_legs(top: Point, end: Point, width: float, to_side: float, taken: Taken) -> tuple[Curves, Curves]:
    """An upright dart's two legs from `top` over the waist, where they stand `width` apart, to `end`.

    Each runs to nothing smoothly above and below the waist, and stands off at the underbust level as `taken` says. The leg
    towards the side comes first; `to_side` is above zero where the side lies to the right.
    """

    def leg(sign: int) -> Curves:
        half = sign * width / 2 if to_side > 0 else -sign * width / 2
        beside = None if taken.by_dart is None else complex(top.real + half * taken.by_dart / width, taken.level)
        at_waist = complex(top.real + half, 0.0)
        return (*fallen(top, beside, at_waist, later=half * taken.more_by_dart / width), swung(at_waist, end))

    return leg(1), leg(-1)
