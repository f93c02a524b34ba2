"""What lies on what when a seam is pinned: its ends, its notches, and the seams that run into it."""

from dataclasses import dataclass

from corsetkit.drawing.marks import seam_letter
from corsetkit.finish.stops import waist_of
from corsetkit.pattern.edge import Kind
from corsetkit.pattern.seam import SAME_PLACE
from corsetkit.words import words_of

WORDS = words_of("sewing")


@dataclass(frozen=True)
class Match:
    """What meets at one place of a seam: `along` cm from its start; for each side the seam running in there, or None.

    A side without a seam running in has a notch. `waist` says whether the place is the waist.
    """

    along: float
    into: tuple
    waist: bool


def matches(seam, pattern):
    """The `Match`es of a seam, from its start."""
    waist = waist_of(seam)
    return tuple(
        Match(mark, tuple(_running_in(seam, side, mark, pattern) for side in (0, 1)), number == waist)
        for number, mark in enumerate(seam.marks, 1)
    )


_KNOWN = (Kind.FOLD, Kind.CENTRE_FRONT, Kind.HEM, Kind.ARMSCYE, Kind.LACING, Kind.NECKLINE, Kind.TOP, Kind.OPENING)
"""What can lie beyond a seam's start, the best known first."""


def start_words(seam):
    """What lies beyond the seam's start: a free edge by its kind, else the seam that runs in there."""
    beyond = []
    for side, against in zip(seam.sides, seam.against):
        beyond.append(side[0].piece.beside(side[0], against))
    for kind in _KNOWN:
        if any(edge.kind is kind for edge in beyond):
            return WORDS(f"starts_{kind.name.lower()}")
    return WORDS("its_end_at_seam", letter=seam_letter(beyond[0].seam.number))


def said(match, seam):
    """What is laid on what, as part of a sentence."""
    if match.waist:
        return WORDS("waist_notches")
    if not any(match.into):
        return WORDS("both_notches")
    one, other = (
        WORDS("seam_there", letter=seam_letter(into.number))
        if into
        else WORDS("notch_there", piece=_piece_at(seam, side, match.along).name)
        for side, into in enumerate(match.into)
    )
    return WORDS("one_on_other", one=one, other=other)


def _running_in(seam, side, mark, pattern):
    """The seam between the two pieces that meet at `mark` on one side; None where one piece runs on."""
    along = 0.0
    for before, after in zip(seam.sides[side], seam.sides[side][1:]):
        along += before.length
        if abs(along - mark) <= SAME_PLACE and before.piece is not after.piece:
            both = {before.piece, after.piece}
            return next((one for one in pattern.seams if one is not seam and _joins(one, both)), None)
    return None


def _joins(seam, both):
    """Whether a seam has one of two pieces on either side."""
    first, second = (set(seam.pieces_on(side)) for side in (0, 1))
    return bool(first & both and second & both and (first | second) >= both)


def _piece_at(seam, side, mark):
    along = 0.0
    for edge in seam.sides[side]:
        along += edge.length
        if mark <= along + SAME_PLACE:
            return edge.piece
    return seam.sides[side][-1].piece
