"""A piece ready to cut as the lessons show it: as it is printed, its allowance tinted and its cutting line new."""

from corsetkit.finish.choices import choice_of
from corsetkit.geometry.move import slid
from corsetkit.geometry.paths import moved, run_length
from corsetkit.geometry.points import cross
from corsetkit.pattern.edge import Kind
from corsetkit.units import say_length
from corsetkit.drawing.finished_painting import LAYERS, paint_layer, piece_facts
from corsetkit.drawing.finished_view import FinishedView, LaidEdge, closed, notch_strokes
from corsetkit.drawing.lettering import around
from corsetkit.drawing.pens import CUT_PAPER, NEW, Tone
from corsetkit.drawing.views import view

ALLOWANCE_TONE = Tone("allowance", "#f1e4cb")
"""The cloth between sewing line and cutting line."""


class ReadyPiece:
    """A `FinishedPiece` laid out at a scale; `box` holds all that is drawn of it, in its own place."""

    def __init__(self, finished, scale, owners):
        self.finished, self.owners = finished, owners
        self.view = _plain_view(finished, scale)
        self.box = self.view.box

    def paint(self, canvas, step, unit, pen=NEW):
        """Paint it slid by `step`, its cutting line in `pen`."""
        view, move = self.view, slid(step)
        with canvas.group("piece", piece_facts(view)):
            canvas.area(moved(view.cutting, move), ALLOWANCE_TONE)
            canvas.area(moved(self.finished.piece.run, move), CUT_PAPER)
            for layer in LAYERS[1:]:
                paint_layer(canvas, layer, view, step, unit, self.owners)
            cut = tuple(one for one in view.cutting if not any(_along(one, fold[0]) for fold in view.folds))
            canvas.line(moved(cut, move), pen, {"role": "new", "edge": "cutting line", "length": say_length(run_length(cut), unit)})


def _plain_view(finished, scale):
    """The finished piece with the label it has on the screen; the print says more in it."""
    piece = finished.piece
    found = view(piece, scale)
    sewing = tuple(LaidEdge(edge, edge.run) for edge, width in zip(piece.edges, finished.allowances) if width > 0)
    folds = tuple(edge.run for edge in piece.edges if edge.kind is Kind.FOLD)
    box = around([found.box, *((p.real, p.imag, p.real, p.imag) for p in finished.cutting)])
    return FinishedView(finished, found, closed(finished.cutting), sewing, folds,
                        *notch_strokes(finished.notches, finished.cutting, scale), box)


def _along(stroke, fold):
    """Whether a straight stroke lies on the endless line of a straight fold, which is no edge to cut along."""
    start, way = fold.start, fold.way(0.0)
    return all(abs(cross(way, p - start)) < 1e-5 for p in (stroke.start, stroke.end))


def allowance_words(edge, width, choices, unit):
    """What is to be written beside an edge: how wide its allowance is; nothing on a fold."""
    if choice_of(edge, choices) is None:
        return ""
    return f"{edge.name}, {say_length(width, unit) if width else 'bound'}"
