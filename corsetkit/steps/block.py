"""Step 1, the block: half a front and half a back to the hip, drawn from the wearer's measurements.

After this step the drawn bust, waist and hip, darts closed, are the body's and the stated ease; the whole
neckline is the neck base girth; the shoulders are the shoulder length; and the front's side seam, its
dart closed, is as long as the back's.

The front's centre lies on x = 0 and the back's centre to the right of the side seams, so that the half
pattern reads from centre front to centre back as it goes round the body; the waist lies on y = 0.
"""

import math
from dataclasses import dataclass, replace
from functools import cached_property

from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Cubic, Curves, Line
from corsetkit.geometry.move import turned_about
from corsetkit.geometry.points import Point
from corsetkit.geometry.roots import root
from corsetkit.measurements import Measurements
from corsetkit.pattern.pattern import Waste
from corsetkit.plausible import BACK_NECK_RISE
from corsetkit.steps.half import LEAST_FALL, Half, Taken, bends_enough, drawn_half, fallen, unwound
from corsetkit.steps.necklines import BACK_NECK_EXTRA, NECK_SHARE, front_neckline, neckline
from corsetkit.steps.shares import (
    LetOut,
    eased,
    shares_of_bust,
    shares_of_fitting,
    shares_of_reduction,
    shares_of_underbust,
    shares_of_waist,
)
from corsetkit.steps.underbust_mark import underbust_mark
from corsetkit.style import Style
from corsetkit.units import CM_PER_INCH, say_both

LEAST_ABOVE_DART = CM_PER_INCH
"""Seam kept above the side dart's mouth: common practice, no source."""
WIDEST_SIDE_DART = 60
"""The widest side dart drawn, degrees: course convention."""
GENTLE = 2.6
"""Back side seam and back dart are drawn to bend no tighter than this, cm; the side seam's mark, lifted where it is made as
long as the front's, leaves them 2.5 cm at least: course convention."""
WORTH_SAYING = 0.1
"""What the back takes more than its share at the underbust without a word, cm on each side."""
BETWEEN_HALVES = 6.0
"""Paper between the two halves, cm."""


@dataclass(frozen=True, kw_only=True)
class Block:
    """The two halves, the bust point, and the side dart that makes their side seams equal.

    The dart's ends on the front's side seam are `mouth_upper` and `mouth_lower`, at equal distances from
    `bust_point`; `side_dart` is its angle in degrees, zero where there is none. `length_difference` is
    how much higher above the waist the front's underarm lies than the back's, in cm.
    """

    measurements: Measurements
    front: Half
    back: Half
    bust_point: Point
    side_dart: float
    length_difference: float
    warnings: tuple[str, ...]
    let_out: LetOut = LetOut()
    """What a fitting lets out at side seam and back seam."""
    front_added: float = 0.0
    """By how much a fitting makes the front wider at the bust level than her measurements do, cm."""

    def __repr__(self) -> str:
        dart = f"side dart {self.side_dart:.1f} degrees" if self.side_dart else "no side dart"
        return f"<Block: front {self.front.width:.1f} cm and back {self.back.width:.1f} cm wide at the bust, {dart}>"

    @property
    def mouth_upper(self) -> Point:
        return paths.path_end(self.front.side_above)

    @property
    def mouth_lower(self) -> Point:
        return paths.path_start(self.front.side_waist)

    @property
    def side_dart_waste(self) -> Waste | None:
        """The side dart; None where there is none."""
        if not self.side_dart:
            return None
        return Waste(
            "side dart",
            "block",
            (
                Line(self.bust_point, self.mouth_lower),
                Line(self.mouth_lower, self.mouth_upper),
                Line(self.mouth_upper, self.bust_point),
            ),
        )

    @property
    def waste(self) -> tuple[Waste, ...]:
        """What this step cuts away."""
        return (self.side_dart_waste,) if self.side_dart_waste else ()

    @cached_property
    def front_paper(self) -> Curves:
        """The front's paper as a closed path, counter-clockwise, the dart's mouth bridged by a straight line."""
        f = self.front
        mouth = (Line(self.mouth_lower, self.mouth_upper),) if self.side_dart else ()
        return (
            Line(f.hip_centre, f.hip_side),
            *paths.turned_round((*f.side_waist, *f.side_hip)),
            *mouth,
            *paths.turned_round(f.side_above),
            *paths.turned_round(f.armscye),
            *paths.turned_round(f.shoulder),
            *f.neckline,
            Line(f.neck_centre, f.hip_centre),
        )

    @cached_property
    def back_paper(self) -> Curves:
        """The back's paper as a closed path, counter-clockwise."""
        b = self.back
        return (
            Line(b.hip_side, b.hip_centre),
            Line(b.hip_centre, b.neck_centre),
            *paths.turned_round(b.neckline),
            *b.shoulder,
            *b.armscye,
            *b.side,
        )


def block(measurements: Measurements, style: Style) -> Block:
    """Draw the block.

    Args:
        measurements: the wearer's `Measurements`, cm.
        style: the `Style`; this step reads its "block" values, the way of drafting, and what a fitting adds to girths,
            side seam and back yoke.

    Returns:
        A `Block`.

    Raises:
        CorsetkitError: where the body's lengths leave no block that closes.
    """
    m = measurements
    bust_point = complex(m.bust_point_width / 2, m.front_waist_length - m.neck_to_bust_point)
    front_width, back_width = shares_of_bust(m, style)
    side_in, front_dart, back_dart = shares_of_waist(m, style)
    hip_out = (m.hip_girth + style.hip_ease - m.bust_girth - style.bust_ease) / 4
    let = shares_of_fitting(style, back_dart)
    front_added = let.edge_top + style.fitting.side_seam
    # The back dart's line keeps its place in the block as measured, so that only what the fitting names moves.
    axis = style.back_dart_place * (back_width - side_in) + let.at_dart / 2
    front_width, front_in = front_width + front_added, side_in + let.edge_top
    front_hip = hip_out - let.edge_top + let.edge_low
    back_width += let.edge_top + let.seam_top - style.fitting.side_seam
    back_in = side_in + let.edge_top - let.seam_low
    back_hip = hip_out - let.edge_top - let.seam_top + let.edge_low + let.seam_low
    back_dart += let.at_dart
    if front_width < bust_point.real + 4:
        raise CorsetkitError(
            f"bust point width is {say_both(m.bust_point_width)}, and half the front is only "
            f"{say_both(front_width)} wide: allowed is a front at least 1 5/8 in wider than the bust point; "
            "measure bust point width and the across widths again"
        )

    difference = m.front_waist_length - (m.back_waist_length + BACK_NECK_RISE)
    back_underarm = m.back_waist_length - m.armscye_depth - style.underarm_drop
    front_underarm = back_underarm + max(0.0, difference)
    if bust_point.imag > front_underarm:
        raise CorsetkitError(
            f"neck to bust point is {say_both(m.neck_to_bust_point)} and armscye depth "
            f"{say_both(m.armscye_depth)}, which sets the bust point above the underarm: measure both again, "
            "and front waist length with them"
        )
    mouth = min(bust_point.imag, front_underarm - LEAST_ABOVE_DART)
    drop = front_underarm - mouth
    if back_underarm - drop < 2.0:
        raise CorsetkitError(
            f"front waist length is {say_both(m.front_waist_length)} and back waist length "
            f"{say_both(m.back_waist_length)}: the bust level would lie at the back's waist; measure both again"
        )

    neck = m.neck_base_girth
    front_neck = complex(neck / NECK_SHARE, bust_point.imag + _height(m, neck / NECK_SHARE))
    back_neck = complex(neck / NECK_SHARE + BACK_NECK_EXTRA, m.back_waist_length + BACK_NECK_RISE + style.fitting.back_yoke)
    back_line = neckline(back_neck, BACK_NECK_RISE, style.shoulder_slope)
    front_line = front_neckline(front_neck, style.shoulder_slope, neck / 2 - back_line.length)

    back_level = bust_point.imag - max(0.0, difference)
    at_waist = front_in, back_in, back_dart
    front_taken, back_taken, warnings = _taken(m, style, bust_point.imag, back_level, let, at_waist)
    edge = front_width + back_width + BETWEEN_HALVES + (max(0.0, front_hip, -front_in) + max(0.0, back_hip, -back_in))
    back = drawn_half(
        lambda z: complex(edge - z.real, z.imag),
        m,
        style,
        width=back_width,
        dart=back_dart,
        axis=axis,
        bust_level=back_level,
        neck_side=back_neck,
        neckline=back_line,
        across=m.across_back_width / 2,
        underarm=back_underarm,
        mouth=back_underarm - drop,
        side_in=back_in,
        hip_out=back_hip,
        wider=let.at_dart,
        taken=back_taken,
    )
    front = drawn_half(
        lambda z: z,
        m,
        style,
        width=front_width,
        dart=front_dart,
        axis=bust_point.real,
        bust_level=bust_point.imag,
        neck_side=front_neck,
        neckline=front_line,
        across=m.across_front_width / 2,
        underarm=front_underarm,
        mouth=mouth,
        side_in=front_in,
        hip_out=front_hip,
        wider=0.0,
        taken=front_taken,
    )
    angle = 0.0
    if difference > 0:
        angle, front = _with_side_dart(
            m, front, front_taken, bust_point, paths.path_length((*back.side_above, *back.side_waist))
        )
    else:
        warnings += (
            f"front waist length is not longer than the back's ({say_both(m.front_waist_length)} against "
            f"{say_both(m.back_waist_length + BACK_NECK_RISE)} to the side neck point), so there is no side "
            "dart; a bust nearly always makes the front longer, so measure both again",
        )
    return Block(
        measurements=m,
        front=front,
        back=back,
        bust_point=bust_point,
        side_dart=angle,
        length_difference=difference,
        warnings=warnings,
        let_out=let,
        front_added=front_added,
    )


def _height(m: Measurements, neck_width: float) -> float:
    """How far the side neck point lies above the bust point when their distance is laid along the paper."""
    across = m.bust_point_width / 2 - neck_width
    return math.sqrt(m.neck_to_bust_point**2 - across**2)


def _taken(
    m: Measurements, style: Style, height: float, back_level: float, let: LetOut, at_waist: tuple[float, float, float]
) -> tuple[Taken, Taken, tuple[str, ...]]:
    """What front and back take at the underbust level, and a warning where the back must take more than its share.

    `height` is the front's bust level and `back_level` the back's; `at_waist` what front edge, back edge and back dart take
    at the waist. By the guides nothing is said of it.
    """
    if not style.to_the_wearer:
        return Taken(), Taken(), ()
    front_in, back_in, back_dart = at_waist
    level = height - underbust_mark(m, style, height)[0]
    # What a fitting lets out at the bust level is on its way to nothing at the waist; the shares are those of the body.
    gone = 1 - eased(level / height)
    shares = shares_of_underbust(
        m, style, front_in - let.edge_top, back_in - let.edge_top + let.seam_low, back_dart - let.at_dart
    )
    at_side, by_dart = shares.back_edge + gone * (let.edge_top + let.seam_top), shares.back_dart + gone * let.seam_top
    reduction = shares_of_reduction(style)
    more_side, more_dart = reduction.back_edge, reduction.back_dart
    high = back_level - level
    side = bends_enough(at_side, back_in, back_in + more_side, high, level, GENTLE)
    # Each leg of the dart has half of it.
    dart = 2 * bends_enough(by_dart / 2, back_dart / 2, (back_dart + more_dart) / 2, high, level, GENTLE)
    more = side + dart - at_side - by_dart
    said: tuple[str, ...] = ()
    if more > WORTH_SAYING:
        said = (
            f"the back is short for what its waist is taken in: at the underbust it takes {say_both(more)} more than its "
            "share on each side, so that its seams bend evenly, and the cups are less full for it; try less waist reduction, "
            "or give the front a part of it",
        )
    at_front = shares.front_edge + gone * let.edge_top
    if height <= back_level:
        # Without a side dart nothing else would make the two edges of the side seam equally long: they are drawn alike.
        at_front = side = (at_front + side) / 2
        more_side = 0.0
    front = Taken(level=level, at_side=at_front)
    return front, Taken(level=level, at_side=side, by_dart=dart, more_at_side=more_side, more_by_dart=more_dart), said


def _with_side_dart(m: Measurements, front: Half, taken: Taken, bust_point: Point, length: float) -> tuple[float, Half]:
    """The side dart's angle, and the front with it: the dart closed, the seam down to the waist is `length`.

    The lower leg is the upper one turned about the bust point; the seam leaves its end as it would leave
    the upper one's, turned with it, so that the closed seam is smooth.
    """
    mouth = paths.path_end(front.side_above)
    rest = length - paths.path_length(front.side_above)
    waist = front.waist_side

    def seam(angle: float) -> Curves:
        move = turned_about(bust_point, -angle)
        start = move(mouth)
        down = move.turn * -1j
        if taken.at_side is not None and start.imag - taken.level > LEAST_FALL:
            lean = -down.real / down.imag
            # The dart's tilt takes something too: what is said, and as much at least as lets the seam bend once.
            aside = min(start.real + unwound(start, taken.level, waist, lean), front.width - taken.at_side)
            return fallen(start, complex(aside, taken.level), waist, lean)
        third = abs(waist - start) / 3
        return (Cubic(start, start + down * third, waist + 1j * third, waist),)

    if paths.path_length(seam(0.0)) <= rest:
        # The back's seam comes aside so much more that the front needs no dart to be as long.
        return 0.0, front
    # Wider and wider, until the seam is short enough; beyond that it would grow again, for the mouth's lower end
    # swings in under the bust point.
    for widest in range(5, WIDEST_SIDE_DART + 1, 5):
        if paths.path_length(seam(widest)) <= rest:
            angle = root(lambda a: paths.path_length(seam(a)) - rest, 0.0, widest)
            break
    else:
        raise CorsetkitError(
            f"front waist length is {say_both(m.front_waist_length)} and back waist length "
            f"{say_both(m.back_waist_length)}: they differ by more than any side dart can take; measure both again"
        )
    return angle, replace(front, side_waist=seam(angle))
