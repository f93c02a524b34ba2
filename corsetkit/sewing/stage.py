"""A stage of the sewing, its moves and its cautions, as values; and the cautions, each said once."""

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


BLADES = Caution(
    "blades",
    "Cut away from your hand, and close the blade of a rolling cutter or a knife after each cut, "
    "even if "
    "you cut again at once.",
)
PINS = Caution(
    "pins",
    "Take each pin out before the needle reaches it: a needle that hits a pin breaks, and its pieces fly. Count the pins.",
)
NEEDLE = Caution(
    "the needle", "Take your foot off the pedal, or switch the machine off, before you thread it or reach under the needle."
)
IRON = Caution(
    "the iron",
    "Stand a hot iron upright, away from the edge of the table and off its own cord, and switch it "
    "off when "
    "you leave. Steam burns as the sole does.",
)
STEEL = Caution(
    "cut steel",
    "Cut ends of steel are sharp and offcuts fly: wear goggles, hold both ends down, and file "
    "every end "
    "smooth or cap it before it goes into a channel. A bare end works through the cloth into the skin.",
)
PLIERS = Caution("pliers", "Pliers and cutters close on fingers as well: keep the other hand behind the jaws.")
EYELETS = Caution(
    "eyelet tools",
    "An awl goes through cloth and hand alike: work on cork or a thick board, never over "
    "your lap or "
    "palm. Set eyelets on a firm block, fingers clear of the tool, and wear goggles if you use a hammer.",
)
TRIED_ON = Caution(
    "whoever tries it on", "The wearer says when to stop. Open it at once at pain, numbness, dizziness or short breath."
)
LACING = Caution(
    "lacing too tight",
    "Never lace to pain, and never to close the gap at any price. Take the corset off at once at pain, "
    "numbness, "
    "dizziness or short breath: open the lacing, do not only loosen it. Keep scissors for the lacing in reach. Not in "
    "pregnancy, after surgery, or with trouble of heart, lungs or bones, unless a doctor agrees. Nobody sleeps or does "
    "sport in one.",
)
