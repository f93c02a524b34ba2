"""What stands written in a piece and beside its seams: its number and name, what to cut, and which pieces it is sewn to."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import TypeAlias

from corsetkit.drawing.lettering import ASCENT, DESCENT, PITCH, around, text_box, text_width
from corsetkit.drawing.pens import CUT, LARGE_CUT, LARGE_NAME, NAME, PARTNER, Letter

TOO_LITTLE_TO_TELL = 0.3
"""A partner that meets an edge over less than this, cm, is not named beside the seam's letter: course convention."""


def partner_words(edge, piece):
    """To which pieces an edge is sewn: "to 4, 5", those that meet it along its own stretch of the seam."""
    met = tuple(dict.fromkeys(one.piece.number for one in edge.seam.opposite(edge, TOO_LITTLE_TO_TELL)))
    if not met:
        return ""
    return "to itself" if set(met) == {piece.number} else f"to {', '.join(map(str, met))}"


def seam_pieces(seam, side):
    """The numbers of the pieces on one side of a seam, in its order."""
    return tuple(piece.number for piece in seam.pieces_on(side))


_APART = 0.05
"""From the ring to its words, cm as seen."""


class Beside:
    """The room for a ring together with its words, for `marks.seam_mark` to ask: it holds a ring where both find room.

    `taken` is the room's own. The words take theirs as soon as a ring is found.
    """

    def __init__(self, room, text, scale):
        self._room, self._text, self._scale = room, text, scale
        self._size = PARTNER.size * scale / 10
        self._width = text_width(text, PARTNER, scale)
        self._found = None

    @property
    def taken(self):
        return self._room.taken

    def holds(self, ring, gap=0.0):
        """Whether the ring's box and its words' box beside it are free."""
        if not self._room.holds(ring, gap):
            return False
        self._found = next((box for box in self._boxes(ring) if self._room.holds(box, gap)), None)
        if self._found:
            self.taken.append(self._found)
        return self._found is not None

    def words(self, mark):
        """Where the words stand by a mark and what they are, as (place, text); for a ring outside the piece beside it."""
        box = self._found or next(self._boxes(mark.box))
        return complex((box[0] + box[2]) / 2, box[1] + DESCENT * self._size), self._text

    def _boxes(self, ring):
        """Right of the ring, left of it, under it and over it."""
        apart, high = _APART * self._scale, (ASCENT + DESCENT) * self._size
        x, y = (ring[0] + ring[2]) / 2, (ring[1] + ring[3]) / 2
        for left in (ring[2] + apart, ring[0] - apart - self._width):
            yield left, y - high / 2, left + self._width, y + high / 2
        for low in (ring[1] - apart - high, ring[3] + apart):
            yield x - self._width / 2, low, x + self._width / 2, low + high


SPACE = 0.9
"""Least distance of a text from a line or another text, mm as seen."""


Text: TypeAlias = tuple[str, Letter]
"""A line of text and how it is lettered."""


@dataclass(frozen=True)
class Block:
    """Lines of text one under the other, centred, as (text, letter), with the block's width and height in cm."""

    lines: tuple[Text, ...]
    width: float
    height: float

    def laid(self, centre: complex, scale: float) -> tuple[tuple[complex, str, Letter], ...]:
        """Each line as (place, text, letter), the block's middle at `centre`."""
        laid, y = [], centre.imag + self.height / 2
        for text, letter in self.lines:
            size = letter.size * scale / 10
            laid.append((complex(centre.real, y - ASCENT * size), text, letter))
            y -= PITCH * size
        return tuple(laid)


def block(lines: Sequence[Text], scale: float) -> Block:
    """The block of these (text, letter) lines."""
    sizes = [letter.size * scale / 10 for _, letter in lines]
    height = sum(sizes[:-1]) * PITCH + (ASCENT + DESCENT) * sizes[-1]
    return Block(tuple(lines), max(text_width(text, letter, scale) for text, letter in lines), height)


def broken(text: str, count: int) -> list[str]:
    """The text's words on `count` lines, the longest line as short as can be; fewer where it has fewer words."""
    words = text.split()
    count = min(count, len(words))
    if count <= 1:
        return [" ".join(words)]
    best: tuple[int, list[str]] | None = None
    for cut in range(1, len(words) - count + 2):
        lines = [" ".join(words[:cut]), *broken(" ".join(words[cut:]), count - 1)]
        longest = max(map(len, lines))
        if best is None or longest < best[0]:
            best = longest, lines
    return best[1] if best else []


def cut_words(piece):
    """How many to cut and how they lie, in the trade's words."""
    if piece.on_fold:
        return f"cut {piece.cut} on the fold"
    return f"cut {piece.cut}, a pair" if piece.pair else f"cut {piece.cut}"


def blocks(piece, scale, more=(), lines=None):
    """The ways to set a piece's label, the airiest first; `more` are further small lines, dropped for want of room.

    `lines` stand in it in place of what is cut; they are broken where they have to be, and never dropped.
    """
    heading, more = f"{piece.number} {piece.name}", tuple(more)
    return _blocks(heading, cut_words(piece), scale, more) if lines is None else _told(heading, scale, tuple(lines), more)


@lru_cache(maxsize=256)
def _blocks(heading, cut, scale, more):
    """Kept between redraws, for words do not change while a slider moves."""
    more = [(text, CUT) for text in more]
    found = []
    for heading_lines, cut_lines, rest in (
        (1, 1, more),
        (2, 1, more),
        (2, 2, more),
        (1, 1, []),
        (2, 1, []),
        (2, 2, []),
        (3, 2, []),
    ):
        lines = [(text, NAME) for text in broken(heading, heading_lines)]
        lines += [(text, CUT) for text in broken(cut, cut_lines)]
        lines += rest
        made = block(lines, scale)
        if made not in found:
            found.append(made)
    return tuple(found)


@lru_cache(maxsize=256)
def _told(heading, scale, lines, more):
    found = []
    for kept in ((*lines, *more), lines):
        for name, cut in ((LARGE_NAME, LARGE_CUT), (NAME, CUT)):
            # How many lines the heading takes, and at most how many any other.
            for heading_lines, most in ((1, 1), (1, 2), (2, 2), (2, 3), (3, 4)):
                made = block(_set(heading, heading_lines, kept, most, name, cut, scale), scale)
                if made not in found:
                    found.append(made)
    return tuple(found)


def _set(heading, heading_lines, lines, most, name, cut, scale):
    """The lines of one way to set a label; a line is broken only where it is wider than the heading."""
    made = [(text, name) for text in broken(heading, heading_lines)]
    widest = max(text_width(text, name, scale) for text, _ in made)
    for line in lines:
        count = next((n for n in range(1, most) if text_width(max(broken(line, n), key=len), cut, scale) <= widest), most)
        made += [(text, cut) for text in broken(line, count)]
    return made


def boxes(laid, scale):
    """The boxes of laid lines."""
    return [text_box(at, text, letter, "middle", 0.0, scale) for at, text, letter in laid]


def box(laid, scale):
    """The box around laid lines."""
    return around(boxes(laid, scale))
