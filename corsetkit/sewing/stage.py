"""A stage of the sewing, its moves and its cautions, as values."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Move:
    """One move of the sewing, in words whose lengths stand in both units.

    `seams` are those sewn for good in it, `pieces` those handled, `bones` the `Bone`s of the bill put in, `eyelets` the
    bill's `Eyelets` set.
    """

    text: str
    seams: tuple = ()
    pieces: tuple = ()
    bones: tuple = ()
    eyelets: tuple = ()


@dataclass(frozen=True)
class Caution:
    """What hurts, in a word or two, and how it does not, in full."""

    of: str
    text: str


@dataclass(frozen=True)
class Stage:
    """One stage: its title, its moves in order, and the `Caution`s that belong to it."""

    title: str
    moves: tuple
    cautions: tuple = ()
