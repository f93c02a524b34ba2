"""A piece ready to cut as it will be drawn: its cutting line, sewing lines, notches and fold.

Laid out before it is drawn, by measuring: nothing here paints.
"""

from dataclasses import dataclass, field, replace

from corsetkit.drawing.labels import partner_words
from corsetkit.drawing.lettering import around
from corsetkit.drawing.views import Told, View, view
from corsetkit.finish.finished import unfolded
from corsetkit.finish.notches import BETWEEN
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Curves, Line
from corsetkit.geometry.move import STAY
from corsetkit.geometry.points import between, cross, dot
from corsetkit.pattern.edge import Edge, Kind
from corsetkit.pattern.piece import Piece


def notch_strokes(notches, cutting, scale=1.0):
    """The notches' cuts and the marks that are not cut, each a (start, end) pair; `cutting` is the closed polyline."""
    cuts, marked = [], []
    for notch in notches:
        aside = notch.inward * 1j * BETWEEN / 2
        for at in (notch.point + aside, notch.point - aside) if notch.count == 2 else (notch.point,):
            at = at if notch.count == 1 else _onto(at, notch.inward, cutting)
            if notch.depth > 0:
                cuts.append((at, at + notch.inward * notch.depth))
            else:
                across = notch.inward * 0.17 * scale
                marked.append((at - across, at + across))
    return tuple(cuts), tuple(marked)


def _onto(point, tangent, line):
    """Where the line through `point` along `tangent` meets the closed polyline nearest to it;
    the point itself where nowhere."""
    best = None
    for p, q in zip(line, (*line[1:], line[0])):
        here, there = cross(tangent, p - point), cross(tangent, q - point)
        if here * there <= 0 and here != there:
            along = dot(tangent, between(p, q, here / (here - there)) - point)
            if best is None or abs(along) < abs(best):
                best = along
    return point + tangent * best if best is not None and abs(best) < BETWEEN else point


UP = "\u2191 this way up"


@dataclass(frozen=True)
class LaidEdge:
    """An edge where its piece lies opened out or moved: the edge it is, and its run there.

    The piece as it lies takes hold of it as of an `Edge` of its own.
    """

    edge: Edge
    path: Curves
    _piece: Piece | None = field(default=None, init=False, repr=False, compare=False)

    @property
    def name(self):
        return self.edge.name

    @property
    def kind(self):
        return self.edge.kind

    @property
    def seam(self):
        return self.edge.seam

    @property
    def partner(self):
        return self.edge.partner

    @property
    def length(self):
        return self.edge.length


@dataclass(frozen=True)
class FinishedView:
    """A finished piece with everything that is drawn of it, in cm; `box` holds it all.

    `cutting` is a closed path, `sewing` the edges that lie within an allowance, `folds` the paths of its fold. `cuts` are
    the notches' strokes from the cutting line inwards, `marked` the strokes across the line where no notch may be cut,
    for there is no allowance.
    """

    finished_piece: object
    view: View
    cutting: tuple
    sewing: tuple
    folds: tuple
    cuts: tuple
    marked: tuple
    box: tuple

    @property
    def piece(self):
        return self.finished_piece.piece

    @property
    def label(self):
        return self.view.label

    @property
    def leader(self):
        return self.view.leader


def finished_view(finished_piece, scale, more=(), keep_clear=(), opened=False, move=STAY):
    """The finished piece laid out at this scale.

    Args:
        finished_piece: the `FinishedPiece`.
        more: lines that say whose it is: wearer and date. keep_clear: boxes that no text may stand in.
        opened: whether a piece on the fold is drawn opened out. move: where it is laid, before its words are.
    """
    piece = finished_piece.piece
    folds = tuple(paths.moved(edge.path, move) for edge in piece.edges if edge.kind is Kind.FOLD)
    cutting, edges, marks, grain = _shape(finished_piece, opened)
    cutting = tuple(move(point) for point in cutting)
    laid = tuple(LaidEdge(edge, paths.moved(path, move)) for edge, path in edges)
    marks = tuple(replace(one, point=move(one.point), inward=move.turn * one.inward) for one in marks)
    shape = Piece(
        piece.number,
        piece.name,
        laid,
        tuple(map(move, grain)),
        piece.cut,
        piece.cloth,
        piece.on_fold and not opened,
        piece.pair,
        copied=piece.copied,
    )
    told = Told(
        (*cloth_lines(finished_piece.layers, opened), UP), tuple(partner_words(one.edge, piece) for one in laid if one.seam)
    )
    if opened:
        keep_clear = (*keep_clear, *(box for path in folds for box in _boxes_along(path, 0.06 * scale)))
    found = view(shape, scale, more, keep_clear, told)
    widths = {id(edge): width for edge, width in zip(piece.edges, finished_piece.allowances)}
    cuts, marked = notch_strokes(marks, cutting, scale)
    around_all = around([found.box, *((p.real, p.imag, p.real, p.imag) for p in cutting)])
    return FinishedView(
        finished_piece,
        found,
        closed(cutting),
        tuple(one for one in laid if one.kind is not Kind.FOLD and widths[id(one.edge)] > 0),
        folds,
        cuts,
        marked,
        around_all,
    )


def _shape(finished_piece, opened):
    piece = finished_piece.piece
    if opened:
        whole = unfolded(finished_piece)
        return whole.cutting, whole.edges, whole.notches, whole.grainline
    return finished_piece.cutting, tuple((edge, edge.path) for edge in piece.edges), finished_piece.notches, piece.grainline


def closed(points):
    """A closed polyline's points as a path of straight lines."""
    return tuple(Line(p, q) for p, q in zip(points, (*points[1:], points[0])) if p != q)


def cloth_lines(layers, opened=False):
    """What to cut, a line for all cloths that are cut alike: "cut 2 as a pair: shell, lining".

    A piece that is drawn opened out is cut as it is drawn, so nothing is said of its fold.
    """
    alike = {}
    for layer in layers:
        how = "" if opened and layer.how == "on the fold" else f" {layer.how}" if layer.how else ""
        alike.setdefault(f"cut {layer.count}{how}", []).append(layer.cloth)
    return tuple(f"{said}: {', '.join(cloths)}" for said, cloths in alike.items())


def _boxes_along(path, half):
    """Boxes strung along a path, so that nothing is written on it."""
    points = paths.flattened(path, 0.05)
    spots = [between(a, b, i / 40) for a, b in zip(points, points[1:]) for i in range(41)]
    return [
        (p.real - half, min(p.imag, q.imag) - half, p.real + half, max(p.imag, q.imag) + half)
        for p, q in zip(spots, spots[1:])
    ]
