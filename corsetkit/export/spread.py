"""The pieces of a finished pattern laid beside each other, each upright along its grain, and what was written of them."""

import math
from dataclasses import dataclass
from pathlib import Path

from corsetkit.drawing.arrange import beside, rows
from corsetkit.drawing.finished_view import FinishedView, finished_view
from corsetkit.drawing.lettering import fitted
from corsetkit.drawing.pens import SMALL
from corsetkit.geometry.move import Move, turned_about
from corsetkit.geometry.points import heading


@dataclass(frozen=True)
class Written:
    """The file, the names its pieces have in it (blocks in a DXF), its layers, and sentences about what was not as asked."""

    path: Path
    pieces: tuple
    layers: tuple
    said: tuple = ()

    def __str__(self):
        return f"{self.path.name}: {len(self.pieces)} pieces, in millimetres; measure the test square after opening it"


GAP = 2.0
"""Between two pieces, cm."""
SQUARE = 10.0
"""A side of the test square, cm."""


@dataclass(frozen=True)
class Placed:
    """A piece laid out, and the step that lays it in its place; `move` carries the draft's own points to there."""

    view: FinishedView
    step: complex
    turn: Move

    @property
    def piece(self):
        return self.view.piece

    @property
    def move(self):
        return self.turn.then(Move(1 + 0j, self.step))


@dataclass(frozen=True)
class Spread:
    """All pieces in their places within (0, 0) to `size`, the lower left corner of the test square, and who meets whom."""

    pieces: tuple
    size: complex
    square: complex


def spread(finished, wearer="", said_date="", opened=True):
    """Lay the pieces in rows as they are worn, none on another; `opened` lays a piece on the fold whole."""
    of = {id(one.piece): one for one in finished.pieces}
    more = tuple(text for text in (fitted(wearer, SMALL, 6.0, 1.0), said_date) if text)
    made, top, width = [], SQUARE + GAP, SQUARE
    for row in reversed(rows([one.piece for one in finished.pieces])):
        turns = [upright(piece) for piece in row]
        views = [
            finished_view(of[id(piece)], 1.0, more, (), opened and piece.on_fold, turn) for piece, turn in zip(row, turns)
        ]
        steps, across, high = beside([view.box for view in views], GAP)
        made += [Placed(view, step + 1j * top, turn) for view, step, turn in zip(views, steps, turns)]
        top, width = top + high + (GAP if row else 0.0), max(width, across)
    margin = complex(GAP, GAP)
    return Spread(
        tuple(Placed(one.view, one.step + margin, one.turn) for one in made),
        complex(math.ceil(width + 2 * GAP), math.ceil(top + GAP)),
        margin,
    )


def upright(piece):
    """The turn that lays the piece's grain upright, as it is drawn: a leaning one is turned by its few degrees."""
    foot, head = piece.grainline
    lean = heading(head - foot) - 90
    return turned_about(foot, -lean) if abs(lean) > 1e-9 else Move()
