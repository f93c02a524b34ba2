"""What every stage asks of the pattern at hand, looked up once, and the words that stages share."""

import math
from dataclasses import dataclass
from functools import cached_property

from corsetkit.drawing.marks import seam_letter
from corsetkit.finish.bill import Bill, bill
from corsetkit.finish.finished import STRENGTH, Finished
from corsetkit.finish.lacing import lacing_stretches
from corsetkit.finish.notches import back_seams
from corsetkit.pattern.edge import Kind
from corsetkit.sewing.matches import matches, said, start_words
from corsetkit.sewing.order import Order, order_of
from corsetkit.sewing.stage import Move
from corsetkit.units import CM_PER_INCH, say_both
from corsetkit.words import words_of

WORDS = words_of("sewing")

FREE = (Kind.TOP, Kind.NECKLINE, Kind.OPENING, Kind.ARMSCYE)
"""The kinds of edges that are finished above the lower edge."""


@dataclass(frozen=True, eq=False)
class Work:
    """A finished pattern, its bill, and its seams in the order of the sewing."""

    finished: Finished
    bill: Bill
    order: Order

    @property
    def pattern(self):
        return self.finished.pattern

    @property
    def choices(self):
        return self.finished.choices

    @cached_property
    def shell(self):
        """The pieces of the corset itself, copies left out."""
        return tuple(one for one in self.pattern.pieces if not one.copied)

    @cached_property
    def strong(self):
        """The pieces that have a strength layer."""
        return tuple(one.piece for one in self.finished.pieces if any(layer.cloth == STRENGTH for layer in one.layers))

    @cached_property
    def double(self):
        """The numbers of the seams whose notches are double."""
        return back_seams(self.pattern.pieces, getattr(self.pattern.steps, "block", None))

    @cached_property
    def lacing_runs(self):
        """The runs of the lacing edge's stretches, by which its bones are known."""
        return tuple(stretch.path for stretch in lacing_stretches(self.pattern.pieces))

    def at_lacing(self, bone):
        return bone.line in self.lacing_runs

    def at_seam(self, bone):
        return any(bone.on is seam for seam in self.pattern.seams)

    def at_side(self, bone):
        return any(bone.on is seam for seam in self.order.side)

    def free_edges(self, kinds=FREE):
        """{name of a kind: allowance in cm} of the edges of the corset that are not sewn to another, of these kinds."""
        return {
            edge.kind.value: width
            for one in self.finished.pieces
            if not one.piece.copied
            for edge, width in zip(one.piece.edges, one.allowances)
            if edge.kind in kinds and edge.seam is None
        }


def work_of(finished):
    """The `Work` of a `Finished`."""
    return Work(finished, bill(finished), order_of(finished.pattern))


def seam_move(work, seam, more=""):
    """Sewing one seam, on both halves of the corset alike; `more` is said behind it."""
    first, second = (seam.pieces_on(side) for side in (0, 1))
    return Move(f"{_seam_words(work, seam, first, second)} {more}".rstrip(), (seam,), (*first, *second))


def _seam_words(work, seam, first, second):
    letter, one, other = seam_letter(seam.number), listed(map(named, first)), listed(map(named, second))
    found = [WORDS("place_along", place=said(one, seam), along=say_both(one.along)) for one in matches(seam, work.pattern)]
    if not found:
        return WORDS("seam_ends", letter=letter, name=seam.name, first=one, second=other)
    return WORDS(
        "seam_double" if seam.number in work.double else "seam_places",
        letter=letter,
        name=seam.name,
        first=one,
        second=other,
        start=start_words(seam),
        places=listed(found),
    )


def named(piece):
    """A piece as it is told of: its number and its name."""
    return f"{piece.number} {piece.name}"


def letters(seams):
    """The seams' letters, listed."""
    return listed(seam_letter(seam.number) for seam in seams)


def listed(words):
    """ "a", "a and b", "a, b and c"."""
    *most, last = words
    return WORDS("listed", most=", ".join(most), last=last) if most else last


def long_length(cm):
    """A length of many turns in both units, rounded up to whole ones: of a lacing nobody cuts a sixteenth."""
    return f"{math.ceil(cm)} cm ({math.ceil(cm / CM_PER_INCH)} in)"
