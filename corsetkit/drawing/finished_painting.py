"""How a finished piece is painted: layer by layer, so that a page draws them together and a file can keep them apart."""

from corsetkit.drawing.canvas import tick
from corsetkit.drawing.painting import edge_facts, paint_fold, paint_grainline, paint_leader, paint_mark, paint_words
from corsetkit.drawing.pens import CUTTING, FOLD_EDGE, GRAIN_LINE, NOTCH_CUT, NOTCH_MARKED, PARTNER, SEWING
from corsetkit.geometry.curve import Line
from corsetkit.geometry.move import slid
from corsetkit.geometry.paths import moved

LAYERS = ("cutting", "sewing", "notches", "grain", "fold", "words")
"""What a finished piece is made of, in the order in which it is painted."""


def paint_finished(canvas, view, step=0j, unit="in"):
    """Paint the `FinishedView` slid by `step`."""
    with canvas.group("piece", piece_facts(view)):
        for layer in LAYERS:
            paint_layer(canvas, layer, view, step, unit)


def piece_facts(view):
    """What a reader can know of the piece a group holds."""
    return {"piece": view.piece.number, "name": view.piece.name}


def paint_layer(canvas, layer, view, step, unit):
    """Paint one of LAYERS, in a group of its name."""
    with canvas.group(layer):
        _HOW[layer](canvas, view, step, unit)


def _cutting(canvas, view, step, unit):
    move = slid(step)
    if not view.view.fold:
        canvas.line(moved(view.cutting, move), CUTTING)
        return
    # The fold is no edge to cut along: the cutting line runs from one end of it to the other.
    canvas.line(moved(_without_fold(view.cutting, view.folds), move), CUTTING)


def _without_fold(cutting, folds):
    """The cutting line's strokes that do not lie on a fold, beginning where a fold ends."""
    kept = [not any(_lies_on(stroke, fold) for fold in folds) for stroke in cutting]
    first = next((i for i in range(len(cutting)) if kept[i] and not kept[i - 1]), 0)
    return tuple(cutting[(first + i) % len(cutting)] for i in range(len(cutting)) if kept[(first + i) % len(cutting)])


def _lies_on(stroke, fold):
    """Whether a straight stroke lies on the endless line of a straight fold."""
    start, tangent = fold[0].start, fold[0].tangent(0.0)
    return all(abs(((p - start) / tangent).imag) < 1e-5 for p in (stroke.start, stroke.end))


def _sewing(canvas, view, step, unit):
    for laid in view.sewing:
        canvas.line(moved(laid.path, slid(step)), SEWING, edge_facts(laid.edge, view.piece, unit))


def _notches(canvas, view, step, unit):
    for strokes, pen in ((view.cuts, NOTCH_CUT), (view.marked, NOTCH_MARKED)):
        for start, end in strokes:
            tick(canvas, start + step, end + step, pen)


def _grain(canvas, view, step, unit):
    paint_grainline(canvas, view.view, step, GRAIN_LINE)


def _fold(canvas, view, step, unit):
    if view.view.fold:
        for stroke in view.cutting:
            if any(_lies_on(stroke, fold) for fold in view.folds):
                canvas.line((Line(stroke.start + step, stroke.end + step),), FOLD_EDGE)
        paint_fold(canvas, view.view.fold, step)
        return
    for path in view.folds:
        canvas.line(moved(path, slid(step)), FOLD_EDGE)


def _words(canvas, view, step, unit):
    for mark in view.view.marks:
        paint_mark(canvas, mark.at + step, mark.text)
    for at, text in view.view.partners:
        if text:
            canvas.words(at + step, text, PARTNER)
    paint_leader(canvas, view.view, step)
    paint_words(canvas, view.view, step)


_HOW = dict(zip(LAYERS, (_cutting, _sewing, _notches, _grain, _fold, _words)))
