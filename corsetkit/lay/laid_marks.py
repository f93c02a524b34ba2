"""What is drawn of each laid piece: its outline, its label where there is room for it, and its grain arrow.

Laid out before it is drawn, by measuring: nothing here paints. A label says as much as fits, upright or along the piece,
and its number always.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TypeAlias

from corsetkit.drawing import labels
from corsetkit.drawing.free_space import Room
from corsetkit.drawing.labels import Block, Text
from corsetkit.drawing.lettering import around, grown, text_box
from corsetkit.drawing.pens import CUT, NAME, TINY, Letter
from corsetkit.geometry.curve import Curves, Line
from corsetkit.geometry.points import Point, direction
from corsetkit.lay.plans import Placed
from corsetkit.words import words_of

WORDS = words_of("lay")

_SHARES = (0.7, 0.55, 0.42, 0.32, 0.24, 0.17)
"""How long the grain arrow is, as a share of its piece: the longest that finds a place."""
_LEAST = 0.35
"""No grain arrow is shorter than this, cm as seen."""


Words: TypeAlias = tuple[Point, str, Letter, float]
"""A line of a label: its place, its text, how it is lettered, and by how many degrees it is turned."""
Arrow: TypeAlias = tuple[Point, Point] | tuple[()]
"""A grain arrow's foot and head; empty where it found no place."""


@dataclass(frozen=True)
class Marks:
    """One laid piece as it is drawn: its closed path, its label's lines as (place, text, letter, degrees), its grain arrow.

    `arrow` is its foot and head, or empty where it found no place. `named` says whether the label bears the piece's name,
    `short` whether letters stand in it for words.
    """

    placed: Placed
    path: Curves
    label: tuple[Words, ...]
    arrow: Arrow
    named: bool
    short: bool


@dataclass(frozen=True)
class _Way:
    """One way to set a label: its lines as (text, letter), whether it runs up the piece, bears the name, uses letters."""

    lines: tuple[Text, ...]
    turned: bool = False
    named: bool = False
    short: bool = False

    @property
    def says(self) -> tuple[bool, bool]:
        """How much of what there is to say it says."""
        return self.named, self.short


def marks(placed: Placed, scale: float, move: Callable[[Point], Point]) -> Marks:
    """The marks of one `Placed`, its points moved by `move` onto the drawing."""
    points = [move(p) for p in placed.outline]
    path = tuple(Line(a, b) for a, b in zip(points, (*points[1:], points[0])))
    left, bottom, right, top = around([(p.real, p.imag, p.real, p.imag) for p in points])
    room, near = Room(points, 0.03 * scale + 0.01), complex(left + right, bottom + top) / 2
    label_form, label, arrow = _set_in(placed, room, near, top - bottom, scale)
    return Marks(placed, path, label, arrow, label_form.named, label_form.short)


def letter_of(way: str) -> str:
    """What stands for the words of a way to lie where there is no room for them."""
    return WORDS(f"letter_{way}")


def _set_in(placed: Placed, room: Room, near: Point, height: float, scale: float) -> tuple[_Way, tuple[Words, ...], Arrow]:
    """The way the label is set, its lines where they stand, and the grain arrow beside them.

    Of the ways that say as much as the fullest that fits, the first beside which there is room for the arrow.
    """
    space = labels.SPACE * scale / 10
    found: tuple[_Way, tuple[Words, ...], Arrow] | None = None
    for gap in (space, space / 3):
        for label_form in _ways(placed):
            if found and label_form.says != found[0].says:
                continue
            block = labels.block(label_form.lines, scale)
            size = (block.height, block.width) if label_form.turned else (block.width, block.height)
            at = room.place(*size, near, gap)
            if at is None:
                continue
            label = _set(block, at, label_form.turned, scale)
            arrow = _arrow(placed, room, label, near, height, scale)
            found = found or (label_form, label, ())
            if arrow:
                return label_form, label, arrow
    if found:
        return found
    # So small a piece bears its number over its own lines.
    label_form = _Way(((str(placed.number), TINY),))
    return label_form, _set(labels.block(label_form.lines, scale), near, False, scale), ()


def _set(block: Block, centre: Point, turned: bool, scale: float) -> tuple[Words, ...]:
    """The block's lines round its centre, upright or running up."""
    by = 1j if turned else 1
    return tuple((centre + at * by, text, letter, 90.0 if turned else 0.0) for at, text, letter in block.laid(0j, scale))


def _ways(placed: Placed) -> Iterator[_Way]:
    """Every way, in the order in which they are tried: the fullest first."""
    heading, said = f"{placed.number} {placed.name}", tuple(WORDS(f"lies_{way}") for way in placed.lies)
    together = (placed.said,) if said else ()
    for count, turned in ((1, False), (2, False), (3, False), (1, True)):
        broken = tuple((text, NAME) for text in labels.broken(heading, count))
        for words in dict.fromkeys((together, said)):
            yield _Way((*broken, *((text, CUT) for text in words)), turned, True)
    number, short = (str(placed.number), NAME), tuple(map(letter_of, placed.lies))
    yield _Way((number, *((text, CUT) for text in said)))
    yield _Way(((" ".join((number[0], *short)), NAME),), short=bool(short))
    for words in dict.fromkeys(((" ".join(short),) if short else (), short)):
        yield _Way(tuple((text, TINY) for text in (number[0], *words)), short=bool(short))


def _arrow(placed: Placed, room: Room, label: tuple[Words, ...], near: Point, height: float, scale: float) -> Arrow:
    """The grain arrow's foot and head, clear of the label; the head points to the head of the piece."""
    boxes = [text_box(at, text, letter, "middle", turn, scale) for at, text, letter, turn in label]
    room.taken[:] = [grown(around(boxes), 0.04 * scale)]
    label_form, half = direction(90 + placed.turned), 0.1 * scale
    try:
        for share in _SHARES:
            length = share * height
            if length < _LEAST * scale:
                break
            at = room.place(2 * half + length * abs(label_form.real), length, near, 0.03 * scale)
            if at is not None:
                return at - label_form * length / 2, at + label_form * length / 2
        return ()
    finally:
        room.taken.clear()
