"""A stage of the sewing, its moves and its cautions, as values; and the cautions, each said once."""

from dataclasses import dataclass

from corsetkit.words import words_of

WORDS = words_of("sewing")


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


BLADES = Caution(WORDS("blades"), WORDS("blades_caution"))
PINS = Caution(WORDS("pins"), WORDS("pins_caution"))
NEEDLE = Caution(WORDS("needle"), WORDS("needle_caution"))
IRON = Caution(WORDS("iron"), WORDS("iron_caution"))
STEEL = Caution(WORDS("steel"), WORDS("steel_caution"))
PLIERS = Caution(WORDS("pliers"), WORDS("pliers_caution"))
EYELETS = Caution(WORDS("eyelet_tools"), WORDS("eyelet_tools_caution"))
TRIED_ON = Caution(WORDS("tried_on"), WORDS("tried_on_caution"))
LACING = Caution(WORDS("lacing"), WORDS("lacing_caution"))
