"""The bill: what is cut, and what has to be bought, all of it read off the finished pattern.

Cloth lengths are not here: they come from the lay.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from corsetkit.finish.bones import Bay, Bone, bay_warnings, bones
from corsetkit.finish.choices import Finish
from corsetkit.finish.finished import CLOTHS, Finished, Strip
from corsetkit.finish.lacing import Eyelets, all_spaces, eyelet_warnings, eyelets, lacing_length
from corsetkit.pattern.pattern import Pattern
from corsetkit.units import say_both


@dataclass(frozen=True)
class Cut:
    """One line of the piece list: a piece, of which cloth, how many, and how it is laid."""

    number: int
    name: str
    cloth: str
    count: int
    how: str


@dataclass(frozen=True)
class Passing:
    """How far the lacing opens so that the corset passes over a part of the body: which part, its girth, the gap; cm."""

    over: str
    girth: float
    gap: float


@dataclass(frozen=True)
class Bill:
    """What one corset needs; lengths in cm.

    `bones` and `bays` as in `bones.py`, `channel_width` for every bone; `eyelets` a stretch each, for one edge;
    `lacing_worn` is the lacing for the gap it is worn with, `lacing_open` for the gap of `passing`. `passings` are the
    ways of putting it on without unlacing, the one with the lesser gap first; it is empty without measurements.
    """

    cuts: tuple[Cut, ...]
    strips: tuple[Strip, ...]
    bones: tuple[Bone, ...]
    bays: tuple[Bay, ...]
    channel_width: float
    eyelets: tuple[Eyelets, ...]
    lacing_worn: float
    lacing_open: float
    passings: tuple[Passing, ...]
    warnings: tuple[str, ...]

    @property
    def bone_count(self) -> int:
        return sum(one.count for one in self.bones)

    @property
    def channel_length(self) -> float:
        """All channels together, cm."""
        return sum(one.count * one.channel for one in self.bones)

    @property
    def eyelet_count(self) -> int:
        """All eyelets, both edges together."""
        return 2 * sum(one.count for one in self.eyelets)

    @property
    def passing(self) -> Passing | None:
        """The way of putting it on that opens the lacing least; None where it is not known."""
        return self.passings[0] if self.passings else None


def bill(finished: Finished) -> Bill:
    """The `Bill` of a `Finished` pattern."""
    pattern, choices = finished.pattern, finished.choices
    lie, bays = bones(pattern, choices)
    made = eyelets(pattern, choices)
    easiest_first = passings(pattern)
    gap = pattern.style.lacing_gap if pattern.style else 0.0
    opened = max(gap, easiest_first[0].gap if easiest_first else 0.0)
    spaces = all_spaces(made)
    worn, wide = (lacing_length(spaces, one, choices.eyelet_inset, choices.tails) if made else 0.0 for one in (gap, opened))
    return Bill(
        _cuts(finished),
        (*finished.strips, *_waist_tape(pattern, choices)),
        lie,
        bays,
        choices.bone_width + choices.channel_ease,
        made,
        worn,
        wide,
        easiest_first,
        (*bay_warnings(bays, choices), *(eyelet_warnings(choices) if made else ()), *_passing_warnings(easiest_first, gap)),
    )


def _cuts(finished: Finished) -> tuple[Cut, ...]:
    """The piece list, cloth by cloth, each in the pieces' order."""
    return tuple(
        Cut(one.piece.number, one.piece.name, layer.cloth, layer.count, layer.how)
        for cloth in CLOTHS
        for one in finished.pieces
        for layer in one.layers
        if layer.cloth == cloth
    )


def _waist_tape(pattern: Pattern, choices: Finish) -> tuple[Strip, ...]:
    """The waist tape: as long as the cloth at the waist, from lacing edge to lacing edge (common practice, no source)."""
    cloth = cloth_girth(pattern, "waist")
    return (Strip("waist tape", "tape", 1, cloth, choices.waist_tape_width),) if cloth else ()


def cloth_girth(pattern: Pattern, level: str) -> float | None:
    """The finished pattern's girth at a level without the lacing gap, cm; None where the pattern does not say."""
    girth = pattern.girths.get(level)
    return girth.finished - pattern.style.lacing_gap if girth and pattern.style else None


def passings(pattern: Pattern) -> tuple[Passing, ...]:
    """How far the lacing opens, without being unlaced, for the corset to go on over the bust or over the hips.

    Whichever way it goes on, its narrowest level passes over the widest girth on that way. Cloth and gap together then
    have to be that girth: gap = girth less cloth at the narrowest level. Exact arithmetic, in which nothing gives and no
    arm is in the way. Each as a `Passing`, the lesser gap first.
    """
    body, levels = pattern.measurements, [cloth_girth(pattern, level) for level in pattern.girths]
    known = [level for level in levels if level is not None]
    if body is None or not known or len(known) < len(levels):
        return ()
    narrowest = min(known)
    found = [
        Passing(over, girth, max(girth - narrowest, 0.0))
        for over, girth in (("the bust", body.bust_girth), ("the hips", body.hip_girth))
    ]
    return tuple(sorted(found, key=lambda one: one.gap))


def _passing_warnings(easiest_first: tuple[Passing, ...], gap: float) -> Iterator[str]:
    if easiest_first and easiest_first[0].gap > gap:
        passing = easiest_first[0]
        yield (
            f"there is no front opening: to go on over {passing.over} of {say_both(passing.girth)} without being unlaced, the "
            f"corset has to open by {say_both(passing.gap)} at the back; it is worn with {say_both(gap)}"
        )
