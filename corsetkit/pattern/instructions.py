"""The draft as a hand makes it: construction marks, and instructions as data, a kind of value for each kind of move.

An instruction names marks and never holds their points, so that whoever follows it, a person or a program, finds
them from lengths and ways alone. Lengths are centimetres; words in the learner's unit are made from the data.
"""

from dataclasses import dataclass
from enum import Enum
from typing import TypeAlias

from corsetkit.geometry.curve import Curves
from corsetkit.geometry.points import Point


@dataclass(frozen=True)
class Mark:
    """A construction mark: its name, unique in the draft, and its point on the paper."""

    name: str
    point: Point


class Compass(Enum):
    """A way along the upright or the level line through a mark: what it is called, and its unit step on the paper.

    The front is drawn with its centre on the left, the back with its centre on the right.
    """

    UP = ("up", 1j)
    DOWN = ("down", -1j)
    FRONT_TO_SIDE = ("front to side", 1 + 0j)
    FRONT_TO_CENTRE = ("front to centre", -1 + 0j)
    BACK_TO_SIDE = ("back to side", -1 + 0j)
    BACK_TO_CENTRE = ("back to centre", 1 + 0j)

    @property
    def step(self) -> complex:
        return self.value[1]


@dataclass(frozen=True)
class Towards:
    """The way along the straight line towards a mark, and beyond it where the length asks for it."""

    mark: str


@dataclass(frozen=True)
class Along:
    """The way in which the straight line from `start` to `end` runs."""

    start: str
    end: str


@dataclass(frozen=True)
class Square:
    """The way square to the straight line from `start` to `end`, to its left or right as one looks along it."""

    start: str
    end: str
    left: bool


Bearing: TypeAlias = Compass | Towards | Along | Square
"""A way in which a length is measured, or a curve leaves or arrives."""


@dataclass(frozen=True)
class OnLine:
    """Where a mark lies on drawn lines: `length` along them from the mark `start`, for a tape held along the curve."""

    lines: tuple[str, ...]
    start: str
    length: float


@dataclass(frozen=True, kw_only=True)
class Instruction:
    """One move of the hand, and why: a plain sentence, measurements and style values in braces by their names."""

    because: str


@dataclass(frozen=True)
class Begin(Instruction):
    """Choose the mark `to` on the paper and draw the upright and the level line through it.

    The place is free; `at` is where the course draws it and `where` says that in words.
    """

    to: str
    at: Point
    where: str


@dataclass(frozen=True)
class Measure(Instruction):
    """From the mark `start` measure `length` along the `bearing`; there is the mark `to`."""

    start: str
    bearing: Bearing
    length: float
    to: str
    on_line: OnLine | None = None


@dataclass(frozen=True)
class Offset(Instruction):
    """From `start` measure `length` along the `bearing`, and from there `aside` the way `then`, square to it."""

    start: str
    bearing: Bearing
    length: float
    then: Bearing
    aside: float
    to: str
    on_line: OnLine | None = None


@dataclass(frozen=True)
class Swing(Instruction):
    """With a compass, `first_length` about `first` and `second_length` about `second`: the mark `to` is where the
    arcs cross, to the left or the right of the line from `first` to `second`."""

    first: str
    first_length: float
    second: str
    second_length: float
    left: bool
    to: str
    on_line: OnLine | None = None


@dataclass(frozen=True)
class Halve(Instruction):
    """The mark `to` is halfway between two marks: found by folding, so no length is read."""

    start: str
    end: str
    to: str


@dataclass(frozen=True)
class Same(Instruction):
    """The mark `to` falls on the mark `start`."""

    start: str
    to: str


@dataclass(frozen=True)
class Turn(Instruction):
    """Trace marks and turn the tracing about `about` until `lay` lies on the line from `about` to `on`.

    `moved` holds pairs: the traced mark, and its new mark.
    """

    about: str
    lay: str
    on: str
    moved: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Join(Instruction):
    """Draw the straight line `line` between two marks."""

    start: str
    end: str
    line: str


@dataclass(frozen=True)
class Curve(Instruction):
    """Draw the smooth curve `line` through marks, in order; `leaves` and `arrives` are ways, or None where free."""

    marks: tuple[str, ...]
    line: str
    leaves: Bearing | None = None
    arrives: Bearing | None = None


@dataclass(frozen=True)
class Check(Instruction):
    """Hold the tape along drawn lines: together they should be `length` long."""

    lines: tuple[str, ...]
    length: float


@dataclass(frozen=True)
class ByHand:
    """One step made by hand: its marks, its lines as (name, run) pairs, and the instructions in their order."""

    marks: tuple[Mark, ...]
    lines: tuple[tuple[str, Curves], ...]
    instructions: tuple[Instruction, ...]

    def __repr__(self) -> str:
        return f"<ByHand: {len(self.instructions)} instructions, {len(self.marks)} marks, {len(self.lines)} lines>"
