"""Walking the seams as a cutter does, and what to move on paper where their two sides differ.

The lengths are the pattern's own, or what was measured on paper along the sewing lines; stretch by stretch it is said
whether the two sides agree, and what to move where they do not.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from corsetkit.errors import CorsetkitError
from corsetkit.finish.stops import End, bound, ends, height, named, stops_of, waist_of
from corsetkit.finish.truing import redrawn
from corsetkit.pattern.seam import Seam
from corsetkit.units import CM_PER_INCH, check_unit, shown

_AND = {
    "free": "",
    "corner": " Move the corner so that its {beyond} stays as long as it is, for that is sewn too.",
    "along": " Move its {beyond} along with the corner as it is, for that is sewn too, and redraw the next edge to it.",
    "bent": " Leave both its corners where they are, and bend the line rounder.",
}


def move_said(stretch: "Stretch", start: str, off: float, by: str) -> str:
    """What to move at a stretch's far end, the walk having set out at `start`.

    The shorter side is lengthened, or its notch is moved; where that cannot be drawn, it is said what to do instead.

    Args:
        off: by how much the first side has come farther than the second, cm. by: the same in words.
    """
    shorter = 1 if off > 0 else 0
    piece, edge, beyond = stretch.ends[shorter]
    other, longer, _ = stretch.ends[1 - shorter]
    if beyond is None:
        return (
            f"Move {stretch.end} on the {piece.name}'s {edge.name} by {by} away from {start}: up to there the "
            f"{other.name} is longer."
        )
    place = piece.place_of(edge)
    at_end = piece.beside(edge, True) is beyond
    try:
        how = redrawn(piece, [one.path for one in piece.edges], place, at_end, abs(off)).how
    except CorsetkitError:
        return (
            f"Draw the {other.name}'s {longer.name} again, {by} shorter from {start}: the {piece.name}'s {edge.name} "
            f"cannot be lengthened at the {beyond.name}."
        )
    return (
        f"Lengthen the {piece.name}'s {edge.name} by {by} at the {beyond.name}: measured from {start}, "
        f"the {other.name} is longer.{_AND[how].format(beyond=beyond.name)}"
    )


TOLERANCE = 0.16
"""Two sides that differ by no more, 1/16 in or a millimetre and a half, agree once they are marked by hand, cm: course
convention."""
LONGEST = 300
"""No seam of a corset is as long as this, cm."""


@dataclass(frozen=True)
class Stretch:
    """One stretch between two notches or a seam's end: what begins and what ends it, its two lengths and its ease in cm.

    `ends` says, for each side, the piece and the edge it ends on, and the edge of that piece beyond its end, None where
    it ends at a notch and the piece goes on. `begins` says whether the walk sets out here, from the waist or from the seam's
    one end. `stops` are the numbers of both its ends, counted along the seam from its start.
    """

    start: str
    end: str
    lengths: tuple[float, float]
    ease: float
    ends: tuple[End, ...]
    begins: bool
    stops: tuple[int, int]

    @property
    def difference(self) -> float:
        """How much longer the first side is than the second, cm, the intended ease taken off."""
        return self.lengths[0] - self.lengths[1] - self.ease

    @property
    def is_eased(self) -> bool:
        return self.ease != 0

    def said(self, unit: str = "cm") -> str:
        """The stretch in one sentence."""
        names = [f"{piece.name} {_length(length, unit)}" for (piece, _, _), length in zip(self.ends, self.lengths)]
        how = f", with {small(self.ease, unit)} of ease meant" if self.is_eased else ""
        off = small(self.difference, unit)
        verdict = "they agree" if off.startswith("0 ") else f"they differ by {off}"
        return f"From {self.start} to {self.end}: {names[0]}, {names[1]}{how}; {verdict}."


@dataclass(frozen=True)
class Walked:
    """A seam walked: its stretches, first those up from the waist, then those down; else on from the end it began at."""

    seam: Seam
    stretches: tuple[Stretch, ...]

    @property
    def begins(self) -> int:
        """The number of the stop from which the walk set out."""
        return self.stretches[0].stops[0]

    @property
    def difference(self) -> float:
        """How much longer the whole first side is than the second, cm, the intended ease taken off."""
        return sum(one.difference for one in self.stretches)

    def beyond(self, tolerance: float = TOLERANCE) -> tuple[Stretch, ...]:
        """The stretches whose sides differ by more than `tolerance` cm."""
        return tuple(one for one in self.stretches if abs(one.difference) > tolerance)

    def reached(self, tolerance: float = TOLERANCE) -> tuple[tuple[tuple[float, float], float], ...]:
        """For each stretch, how far each side has come from where the walk set out, and how far both are to come, cm.

        The first side's ease is left out. What the sides differ by adds up on the way, until one side's piece ends: where
        that differs by more than `tolerance`, the piece is made to reach, and the next one begins anew there.
        """
        found: list[tuple[tuple[float, float], float]] = []
        own = (0.0, 0.0)
        for one in self.stretches:
            if one.begins:
                own = (0.0, 0.0)
            own = own[0] + one.lengths[0] - one.ease, own[1] + one.lengths[1]
            goal = max(own)
            # A joint of two pieces stands where it stands; a pencil's width from it, only the notch across is moved.
            joints = [length for length, (_, _, beyond) in zip(own, one.ends) if beyond]
            if len(joints) == 1 and abs(own[0] - own[1]) <= tolerance:
                goal = joints[0]
            found.append((own, goal))
            if abs(own[0] - own[1]) > tolerance:
                first, second = (goal if beyond else length for length, (_, _, beyond) in zip(own, one.ends))
                own = first, second
        return tuple(found)

    def goals(self, tolerance: float = TOLERANCE) -> tuple[tuple[float, float], ...] | None:
        """Where every stop is to lie on each side, cm from where the walk set out, below zero towards the seam's start.

        One pair for each stop, in the seam's order; None where nothing differs by more than `tolerance`.
        """
        reached = self.reached(tolerance)
        if all(abs(one - two) <= tolerance for (one, two), _ in reached):
            return None
        goals, ease = {self.begins: (0.0, 0.0)}, 0.0
        for one, (_, goal) in zip(self.stretches, reached):
            near, far = one.stops
            ease = one.ease + (0.0 if one.begins else ease)
            goals[far] = (goal + ease, goal) if far > near else (-goal - ease, -goal)
        return tuple(goals[number] for number in sorted(goals))

    def moves(self, tolerance: float = TOLERANCE, unit: str = "cm") -> tuple[str, ...]:
        """What to move, and by how much: one saying for each notch and each end that the two sides reach differently.

        The shorter side is lengthened, for cloth that is cut too short cannot be let out: common practice, no source. A notch
        is moved on that side.
        """
        said, start = [], ""
        for one, ((first, second), _) in zip(self.stretches, self.reached(tolerance)):
            start = one.start if one.begins else start
            if abs(first - second) > tolerance:
                said.append(move_said(one, start, first - second, small(first - second, unit)))
        return tuple(said)


def walk(seam: Seam, measured: Iterable[object] | None = None) -> Walked:
    """Walk a seam.

    A seam across the waist is walked from the waist notch up, and then down. Another is walked from the end that has to stay,
    a fold or lacing edge, or else one whose corner is sewn into other seams; else from its start.

    Args:
        seam: the `Seam`.
        measured: what was measured on paper: for each stretch, in their order, the two sides' lengths in cm; the
            pattern's own where nothing is given.

    Returns:
        A `Walked`.

    Raises:
        CorsetkitError: where `measured` has another number of stretches, or a length that is none.
    """
    stops = stops_of(seam)
    last, waist = len(stops) - 1, waist_of(seam)
    begun = waist or (last if bound(seam, True) > bound(seam, False) else 0)
    legs = [
        leg
        for leg in (
            [(number, number + 1) for number in range(begun, last)],
            [(number, number - 1) for number in range(begun, 0, -1)],
        )
        if leg
    ]
    # What goes up from the waist comes first, whichever way the seam runs.
    legs.sort(key=lambda leg: -height(seam, leg[-1][1] == last))
    made = []
    for leg in legs:
        names = [named(seam, number, waist, begun, last) for number in (leg[0][0], *(far for _, far in leg))]
        for (near, far), start, end in zip(leg, names, names[1:]):
            here, there = stops[near], stops[far]
            lengths = abs(there[0] - here[0]), abs(there[1] - here[1])
            made.append(
                Stretch(
                    start,
                    end,
                    lengths,
                    seam.ease if last in (near, far) else 0.0,
                    ends(seam, near, far, last),
                    near == begun,
                    (near, far),
                )
            )
    if measured is not None:
        made = [replace(one, lengths=given) for one, given in zip(made, _checked(measured, len(made)))]
    return Walked(seam, tuple(made))


def small(cm: float, unit: str) -> str:
    """A small length as a hand marks it: whole millimetres, or the nearest 1/16 in; its sign left out."""
    if check_unit(unit) == "cm":
        return f"{round(abs(cm) * 10)} mm"
    parts = round(abs(cm) / CM_PER_INCH * 16)
    under = 16
    while parts and parts % 2 == 0 and under > 1:
        parts, under = parts // 2, under // 2
    whole, rest = divmod(parts, under)
    return " ".join([str(whole)] * bool(whole or not rest) + [f"{rest}/{under}"] * bool(rest)) + " in"


def _length(cm: float, unit: str) -> str:
    """A stretch's length: to the millimetre, or to 1/16 in."""
    return f"{cm:.1f} cm" if unit == "cm" else small(cm, unit)


def _checked(measured: Iterable[object], count: int) -> list[tuple[float, float]]:
    pairs = tuple(measured)
    if len(pairs) != count:
        raise CorsetkitError(f"measured has {len(pairs)} stretches: this seam has {count}, each with its two lengths")
    made = []
    for pair in pairs:
        numbers = pair if isinstance(pair, (tuple, list)) else ()
        if len(numbers) != 2 or not all(isinstance(one, (int, float)) and 0 < one < LONGEST for one in numbers):
            raise CorsetkitError(
                f"measured {shown(pair)} is no pair of lengths: give the two sides in cm, each above zero and below {LONGEST}"
            )
        made.append((float(numbers[0]), float(numbers[1])))
    return made
