"""Pieces ready to cut on a sheet: one of them large with its allowances written beside it, or the whole pattern."""

from corsetkit.geometry import paths as path
from corsetkit.units import say_length
from corsetkit.drawing.arrange import beside, rows
from corsetkit.drawing.canvas import box_area
from corsetkit.drawing.name_places import Clutter
from corsetkit.drawing.pens import FOLD_EDGE, NOTCH_CUT, SEWING
from corsetkit.showing.lessons.key_row import paint_row, row_width
from corsetkit.drawing.lettering import around, grown, text_width
from corsetkit.drawing.painting import owners_of
from corsetkit.drawing.pens import BOARD_TONE, HEADING, NEW, SPOT_WORDS
from corsetkit.showing.lessons.ready_piece import ReadyPiece, allowance_words
from corsetkit.drawing.canvas import Sheet

SEEN, SEEN_HIGH = 17.5, 11.5
"""How wide and high one piece is seen with the room around it, cm, whichever comes first."""
ROOM = 3.4
"""How far the room around a piece reaches, cm: the widest allowance and what is written beside it, so that the paper keeps
still while an allowance moves."""
WHOLE_SCALE = 3.9
_GAP, _MARGIN = 1.8, 2.2
KEY = ((NEW, "cutting line"), (SEWING, "sewing line"), (FOLD_EDGE, "fold"), (NOTCH_CUT, "notch, cut in"))
_ALONG = (0.5, 0.35, 0.65, 0.2, 0.8)


def one_piece(finished, pieces, choices, unit, title):
    """The sheet of one `FinishedPiece` of the `pieces`, cut with `choices`."""
    piece = finished.piece
    outline = path.flattened(piece.run, 0.05)
    box = grown(around([(p.real, p.imag, p.real, p.imag) for p in (*outline, *finished.cutting)]), 0.4)
    box = around([box, grown(around([(p.real, p.imag, p.real, p.imag) for p in outline]), ROOM)])
    scale = max((box[2] - box[0]) / SEEN, (box[3] - box[1]) / SEEN_HIGH)
    owners = owners_of(pieces)
    ready = ReadyPiece(finished, scale, owners)
    box = around([box, grown(ready.box, 0.3)])
    wide = max(box[2] - box[0] + 9.0 * scale, row_width(KEY, scale), text_width(title, HEADING, scale) + 0.8 * scale)
    side = (wide - (box[2] - box[0])) / 2
    low, high = complex(box[0] - side, box[1] - 1.0 * scale), complex(box[2] + side, box[3] + 1.2 * scale)
    clutter = Clutter((low.real, box[1], high.real, box[3]), scale)
    clutter.draw((*finished.cutting, finished.cutting[0]), 6)
    clutter.draw(outline, 6)
    names = [_beside(clutter, edge, width, choices, unit, scale) for edge, width in zip(piece.edges, finished.allowances)]

    def paint(canvas):
        box_area(canvas, (low.real, low.imag, high.real, high.imag), BOARD_TONE)
        canvas.words(complex(low.real + 0.4 * scale, high.imag - 0.8 * scale), title, HEADING, "start")
        ready.paint(canvas, 0j, unit)
        for place in names:
            if place:
                canvas.words(*place)
        paint_row(canvas, complex(low.real + 0.4 * scale, low.imag + 0.45 * scale), KEY)

    said = "; ".join(words for edge, width in zip(piece.edges, finished.allowances)
                     if (words := allowance_words(edge, width, choices, unit)))
    return Sheet(low, high, title, f"{title}: the {piece.name} with its cutting line. Allowances: {said}.", paint, scale)


def _beside(clutter, edge, width, choices, unit, scale):
    """Where an edge's allowance is written: outside the cutting line, as near to the edge's middle as there is room."""
    words = allowance_words(edge, width, choices, unit)
    if not words:
        return None
    half = text_width(words, SPOT_WORDS, scale) / 2
    for share in _ALONG:
        at, way = (take(edge.run, share * edge.length) for take in (path.point_along, path.way_along))
        out = -1j * way
        place = at + out * (width + 0.28 * scale) + out.real * half
        found = clutter.on(place, words, SPOT_WORDS)
        if found:
            return found
    return None


class Whole:
    """A whole `Finished` pattern laid out, the pieces in rows as they are worn: what any sheet of it is made of.

    `places` are (`ReadyPiece`, step); `low` and `high` the sheet's corners with heading and key.
    """

    def __init__(self, finished, title, key):
        self.finished, self.title, self.key, self.scale = finished, title, key, WHOLE_SCALE
        self.owners = owners_of(finished.pattern.pieces)
        made = {id(one.piece): ReadyPiece(one, self.scale, self.owners) for one in finished.pieces}
        yokes, cups, panels = [[made[id(piece)] for piece in row] for row in rows(finished.pattern.pieces)]
        upper, lower = (_placed(row) for row in ([*yokes[:1], *cups, *yokes[1:]], panels))
        width, base = max(upper[1], lower[1], row_width(key, self.scale)), lower[2] + _GAP
        self.places = [(one, step + 1j * base) for one, step in upper[0]] + lower[0]
        self.low = complex(-_MARGIN, -_MARGIN - 0.8 * self.scale)
        self.high = complex(width + _MARGIN, base + upper[2] + 1.2 * self.scale)
        self._steps = {id(edge): step for one, step in self.places for edge in one.finished.piece.edges}

    def step(self, edge):
        """How far the edge's piece is slid on the sheet."""
        return self._steps[id(edge)]

    def paint(self, canvas, unit, pen=NEW):
        low, high = self.low, self.high
        box_area(canvas, (low.real, low.imag, high.real, high.imag), BOARD_TONE)
        canvas.words(complex(0.0, high.imag - 0.8 * self.scale), self.title, HEADING, "start")
        for one, step in self.places:
            one.paint(canvas, step, unit, pen)
        paint_row(canvas, complex(0.0, low.imag + 0.45 * self.scale), self.key)


def all_pieces(finished, unit, title):
    """The sheet of a whole `Finished` pattern."""
    whole = Whole(finished, title, KEY)
    cut = "; ".join(f"{one.piece.number} {one.piece.name}, cutting line {say_length(_round(one), unit)}"
                    for one in finished.pieces)
    return Sheet(whole.low, whole.high, title, f"{title}: {len(finished.pieces)} pieces. {cut}.",
                 lambda canvas: whole.paint(canvas, unit), whole.scale)


def _round(finished):
    """The length of the whole cutting line, cm."""
    points = finished.cutting
    return sum(abs(b - a) for a, b in zip(points, (*points[1:], points[0])))


def _placed(ready):
    steps, width, height = beside([one.box for one in ready], _GAP)
    return list(zip(ready, steps)), width, height
