"""Walking the seams as a cutter does: both sides from the waist notch up and down, or from the seam's start.

The lengths are the pattern's own, or what was measured on paper along the sewing lines; stretch by stretch it is said
whether the two sides agree, and what to move where they do not.
"""

from dataclasses import dataclass, replace

from ..errors import CorsetkitError
from ..geometry import path
from ..units import CM_PER_INCH, check_unit, shown

TOLERANCE = 0.15
"""Two sides that differ by no more, cm, agree once they are marked by hand: course convention."""
LONGEST = 300
"""No seam of a corset is as long as this, cm."""
WAIST_NEAR = 1.5
"""The notch nearest the waist level is the waist notch where it stands no farther off, cm, as a leaning dart's does."""


@dataclass(frozen=True)
class Stretch:
    """One stretch between two notches or a seam's end: what begins and what ends it, its two lengths and its ease in cm.

    `ends` says, for each side, the piece and the edge it ends on, and the edge of that piece beyond its end, None where
    it ends at a notch. `begins` says whether the walk sets out here, from the waist or from the seam's start.
    """

    start: str
    end: str
    lengths: tuple
    ease: float
    ends: tuple
    begins: bool

    @property
    def difference(self):
        """How much longer the first side is than the second, cm, the intended ease taken off."""
        return self.lengths[0] - self.lengths[1] - self.ease

    @property
    def is_eased(self):
        return self.ease != 0

    def said(self, unit="cm"):
        """The stretch in one sentence."""
        names = [f"{piece.name} {_length(length, unit)}" for (piece, _, _), length in zip(self.ends, self.lengths)]
        how = f", with {small(self.ease, unit)} of ease meant" if self.is_eased else ""
        off = small(self.difference, unit)
        verdict = "they agree" if off.startswith("0 ") else f"they differ by {off}"
        return f"From {self.start} to {self.end}: {names[0]}, {names[1]}{how}; {verdict}."


@dataclass(frozen=True)
class Walked:
    """A seam walked: its stretches, first those up from the waist, then those down; else in the seam's own order."""

    seam: object
    stretches: tuple

    @property
    def difference(self):
        """How much longer the whole first side is than the second, cm, the intended ease taken off."""
        return sum(one.difference for one in self.stretches)

    def beyond(self, tolerance=TOLERANCE):
        """The stretches whose sides differ by more than `tolerance` cm."""
        return tuple(one for one in self.stretches if abs(one.difference) > tolerance)

    def moves(self, tolerance=TOLERANCE, unit="cm"):
        """What to move, and by how much: one sentence for each notch and each end that the two sides reach differently.

        What the sides differ by adds up on the way from where the walk set out. The shorter side is lengthened, for cloth
        that is cut too short cannot be let out: common practice, no source. A notch is moved on that side.
        """
        said, off, start = [], 0.0, ""
        for one in self.stretches:
            if one.begins:
                off, start = 0.0, one.start
            off += one.difference
            if abs(off) > tolerance:
                said.append(_move(one, start, off, unit))
        return tuple(said)


def walk(seam, pieces, measured=None):
    """Walk a seam.

    Args:
        seam: the `Seam`. pieces: the pattern's pieces, to name them.
        measured: what was measured on paper: for each stretch, in their order, the two sides' lengths in cm; the
            pattern's own where nothing is given.

    Returns:
        A `Walked`.

    Raises:
        CorsetkitError: where `measured` has another number of stretches, or a length that is none.
    """
    holder = {id(edge): piece for piece in pieces for edge in piece.edges}
    stops = [(0.0, 0.0), *((mark, mark) for mark in seam.marks), seam.lengths]
    last, waist = len(stops) - 1, _waist(seam)
    legs = [[(number, number + 1) for number in range(waist or 0, last)]]
    if waist:
        legs.append([(number, number - 1) for number in range(waist, 0, -1)])
        # What goes up comes first, whichever way the seam runs.
        legs.sort(key=lambda leg: -_height(seam, leg[-1][1] == last))
    made = []
    for leg in legs:
        for near, far in leg:
            ends = _ends(seam, holder, far, last)
            lengths = tuple(abs(b - a) for a, b in zip(stops[near], stops[far]))
            made.append(Stretch(_named(seam, holder, near, waist, last), _named(seam, holder, far, waist, last), lengths,
                                seam.ease if last in (near, far) else 0.0, ends, near == leg[0][0]))
    if measured is not None:
        made = [replace(one, lengths=given) for one, given in zip(made, _checked(measured, len(made)))]
    return Walked(seam, tuple(made))


def small(cm, unit):
    """A small length as a hand marks it: whole millimetres, or the nearest 1/16 in; its sign left out."""
    if check_unit(unit) == "cm":
        return f"{round(abs(cm) * 10)} mm"
    parts = round(abs(cm) / CM_PER_INCH * 16)
    under = 16
    while parts and parts % 2 == 0 and under > 1:
        parts, under = parts // 2, under // 2
    whole, rest = divmod(parts, under)
    return " ".join([str(whole)] * bool(whole or not rest) + [f"{rest}/{under}"] * bool(rest)) + " in"


def _length(cm, unit):
    """A stretch's length: to the millimetre, or to 1/16 in."""
    return f"{cm:.1f} cm" if unit == "cm" else small(cm, unit)


def _waist(seam):
    """The number of the stop at the waist: the mark that stands there on either side; None where there is none."""
    near = []
    for number, places in enumerate(zip(seam.places(0), seam.places(1)), 1):
        near.append((min(abs(path.point_along(edge.run, along).imag) for edge, along in places), number))
    return min(near)[1] if near and min(near)[0] <= WAIST_NEAR else None


def _at(seam, side, at_end):
    """The edge at a seam's start or end on one side, and whether the edge's own end lies there."""
    edge = seam.sides[side][-1 if at_end else 0]
    return edge, at_end != seam.against[side]


def _height(seam, at_end):
    """How high the seam's start or end lies on its first side, cm above the waist."""
    edge, own_end = _at(seam, 0, at_end)
    return (path.run_end if own_end else path.run_start)(edge.run).imag


def _named(seam, holder, number, waist, last):
    """A stop in words: the waist notch, a notch by its number from the seam's start, or what lies beyond the seam's end."""
    if number == waist:
        return "the waist notch"
    if 0 < number < last:
        return f"notch {number}"
    return f"the {_ends(seam, holder, number, last)[0][2].name}"


def _ends(seam, holder, number, last):
    """For each side the piece and edge at a stop, and the edge beyond it where the seam ends there."""
    found = []
    for side in (0, 1):
        if 0 < number < last:
            edge = seam.places(side)[number - 1][0]
            found.append((holder[id(edge)], edge, None))
            continue
        edge, own_end = _at(seam, side, number == last)
        piece = holder[id(edge)]
        place = next(i for i, one in enumerate(piece.edges) if one is edge)
        found.append((piece, edge, piece.edges[(place + (1 if own_end else -1)) % len(piece.edges)]))
    return tuple(found)


def _checked(measured, count):
    measured = tuple(measured)
    if len(measured) != count:
        raise CorsetkitError(f"measured has {len(measured)} stretches: this seam has {count}, each with its two lengths")
    made = []
    for pair in measured:
        numbers = pair if isinstance(pair, (tuple, list)) else ()
        if len(numbers) != 2 or not all(isinstance(one, (int, float)) and 0 < one < LONGEST for one in numbers):
            raise CorsetkitError(f"measured {shown(pair)} is no pair of lengths: give the two sides in cm, each above "
                                 f"nought and below {LONGEST}")
        made.append((float(numbers[0]), float(numbers[1])))
    return made


def _move(stretch, start, off, unit):
    shorter = 1 if off > 0 else 0
    piece, edge, beyond = stretch.ends[shorter]
    other, by = stretch.ends[1 - shorter][0], small(off, unit)
    if beyond is None:
        return (f"Move {stretch.end} on the {piece.name}'s {edge.name} by {by} away from {start}: up to there the "
                f"{other.name} is longer.")
    return (f"Lengthen the {piece.name}'s {edge.name} by {by} at the {beyond.name}: from {start} on the {other.name} is "
            "longer.")
