"""How one piece is painted: its paper, sewing line, notches, grainline, fold, seam marks and label."""

from corsetkit.drawing.canvas import Canvas, tick
from corsetkit.drawing.lettering import CAPITALS
from corsetkit.drawing.marks import FOLD_TEXT, RING_RADIUS, seam_letter
from corsetkit.drawing.pens import (
    CUT_PAPER,
    FOLD,
    FOLD_WORDS,
    FREE,
    GRAIN,
    LEADER,
    MARK_TONE,
    NOTCH,
    RING,
    RULE,
    SEAM,
    SEWN,
    Pen,
)
from corsetkit.geometry.curve import Line
from corsetkit.geometry.move import slid
from corsetkit.geometry.paths import moved
from corsetkit.geometry.points import direction
from corsetkit.pattern.edge import Edge, Kind
from corsetkit.units import say_length


def paint_piece(canvas, view, step, unit, paper=CUT_PAPER):
    """Paint the piece slid by `step`."""
    move, piece = slid(step), view.piece
    with canvas.group("piece", {"piece": piece.number, "name": piece.name}):
        all_paths = [moved(edge.path, move) for edge in piece.edges]
        if paper:
            canvas.area(tuple(curve for path in all_paths for curve in path), paper)
        paint_grainline(canvas, view, step)
        for edge, path in zip(piece.edges, all_paths):
            canvas.line(path, pen_of(edge), edge_facts(edge, piece, unit))
        for notch in view.notches:
            across = notch.tangent * 1j * 0.17 * canvas.scale
            tick(canvas, notch.at + step - across, notch.at + step + across, NOTCH)
        if view.fold:
            paint_fold(canvas, view.fold, step)
        for mark in view.marks:
            paint_mark(canvas, mark.at + step, mark.text)
        paint_leader(canvas, view, step)
        paint_words(canvas, view, step)


def paint_leader(canvas, view, step):
    """The line from a label beside the piece into it."""
    if view.leader:
        start, end = view.leader
        tick(canvas, start + step, end + step, LEADER)


def paint_words(canvas, view, step):
    """The label's lines."""
    for at, text, letter in view.label:
        canvas.words(at + step, text, letter)


def pen_of(edge: Edge) -> Pen:
    """The pen that says what becomes of the edge."""
    if edge.kind is Kind.FOLD:
        return FOLD
    return SEWN if edge.seam else FREE


def edge_facts(edge, piece, unit):
    """What a page can read from an edge's line: whose it is, how long, and what it is sewn to."""
    facts = {"piece": piece.number, "edge": edge.name, "kind": edge.kind.value, "length": say_length(edge.length, unit)}
    if edge.seam:
        facts["seam"] = seam_letter(edge.seam.number)
        facts["seam-name"] = edge.seam.name
        facts["side"] = edge.seam.side_of(edge) + 1
        facts["partner"] = "; ".join(
            f"{other.piece.number} {other.piece.name}, {other.name}" for other in edge.seam.opposite(edge)
        )
    return facts


def paint_mark(canvas, at, text):
    """A seam's mark: its letter in a ring."""
    canvas.dot(at, RING_RADIUS, MARK_TONE, RING)
    canvas.words(at - 1j * CAPITALS / 2 * SEAM.size * canvas.scale / 10, text, SEAM)


def arrow(canvas: Canvas, tip: complex, tangent: complex, pen: Pen, length: float = 0.22) -> None:
    """An open arrowhead at `tip`, pointing along the unit step `tangent`."""
    back = -tangent * length * canvas.scale
    left, right = tip + back * direction(20), tip + back * direction(-20)
    canvas.line((Line(left, tip), Line(tip, right)), pen)


def paint_grainline(canvas, view, step, pen=GRAIN):
    """The grainline with an arrowhead at both ends; nothing where it has no length."""
    foot, head = view.grain[0][0] + step, view.grain[-1][1] + step
    if foot == head:
        return
    tangent = (head - foot) / abs(head - foot)
    with canvas.group("grainline"):
        for start, end in view.grain:
            tick(canvas, start + step, end + step, pen)
        arrow(canvas, head, tangent, pen)
        arrow(canvas, foot, -tangent, pen)


def paint_fold(canvas, fold, step):
    """The bracket that lays a piece to the fold, with its words."""
    a, b, c, d = (corner + step for corner in fold.corners)
    with canvas.group("fold-mark"):
        canvas.line((Line(a, b), Line(b, c), Line(c, d)), RULE)
        tangent = (a - b) / abs(a - b)
        arrow(canvas, a, tangent, RULE)
        arrow(canvas, d, tangent, RULE)
        if fold.at is not None:
            canvas.words(fold.at + step, FOLD_TEXT, FOLD_WORDS, "middle", fold.turn)
