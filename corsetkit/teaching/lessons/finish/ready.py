"""Pieces ready to cut: one of them large with its allowances, or all of the pattern, with what is said of them."""

from dataclasses import dataclass, replace

from corsetkit.drawing.arrange import beside, rows
from corsetkit.drawing.canvas import Sheet, box_area
from corsetkit.drawing.finished_painting import LAYERS, paint_layer, piece_facts
from corsetkit.drawing.finished_view import FinishedView, LaidEdge, closed, notch_strokes
from corsetkit.drawing.lettering import around, grown, text_width
from corsetkit.drawing.name_places import Clutter
from corsetkit.drawing.pens import BOARD_TONE, CUT_PAPER, FOLD_EDGE, HEADING, NEW, NOTCH_CUT, SEWING, SPOT_WORDS, Tone
from corsetkit.drawing.svg import svg_text
from corsetkit.drawing.views import view
from corsetkit.errors import CorsetkitError
from corsetkit.finish.choices import choice_of
from corsetkit.finish.finished import CLOTHS
from corsetkit.geometry import paths
from corsetkit.geometry.move import slid
from corsetkit.geometry.paths import moved, path_length
from corsetkit.geometry.points import cross
from corsetkit.pattern.edge import Kind
from corsetkit.quantity import declared, quantities
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.shared.close_up import paint_row, row_width
from corsetkit.teaching.shared.finished_drafts import Finishing, choices_in
from corsetkit.units import Say, say_length
from corsetkit.words import words_of

WORDS = words_of("08_finish")

ALLOWANCE_TONE = Tone("allowance", "#f1e4cb")
"""The cloth between sewing line and cutting line."""


class ReadyPiece:
    """A `FinishedPiece` laid out at a scale; `box` holds all that is drawn of it, in its own place."""

    def __init__(self, finished, scale):
        self.finished = finished
        self.view = _plain_view(finished, scale)
        self.box = self.view.box

    def paint(self, canvas, step, unit, pen=NEW):
        """Paint it slid by `step`, its cutting line in `pen`."""
        view, move = self.view, slid(step)
        with canvas.group("piece", piece_facts(view)):
            canvas.area(moved(view.cutting, move), ALLOWANCE_TONE)
            canvas.area(moved(self.finished.piece.path, move), CUT_PAPER)
            for layer in LAYERS[1:]:
                paint_layer(canvas, layer, view, step, unit)
            cut = tuple(one for one in view.cutting if not any(_along(one, fold[0]) for fold in view.folds))
            canvas.line(
                moved(cut, move),
                pen,
                {"role": "new", "edge": WORDS("cutting_line"), "length": say_length(path_length(cut), unit)},
            )


def _plain_view(finished, scale):
    """The finished piece with the label it has on the screen; the print says more in it."""
    piece = finished.piece
    found = view(piece, scale)
    sewing = tuple(LaidEdge(edge, edge.path) for edge, width in zip(piece.edges, finished.allowances) if width > 0)
    folds = tuple(edge.path for edge in piece.edges if edge.kind is Kind.FOLD)
    box = around([found.box, *((p.real, p.imag, p.real, p.imag) for p in finished.cutting)])
    return FinishedView(
        finished,
        found,
        closed(finished.cutting),
        sewing,
        folds,
        *notch_strokes(finished.notches, finished.cutting, scale),
        box,
    )


def _along(stroke, fold):
    """Whether a straight stroke lies on the endless line of a straight fold, which is no edge to cut along."""
    start, tangent = fold.start, fold.tangent(0.0)
    return all(abs(cross(tangent, p - start)) < 1e-5 for p in (stroke.start, stroke.end))


def allowance_words(edge, width, choices, unit):
    """What is to be written beside an edge: how wide its allowance is; nothing on a fold."""
    if choice_of(edge, choices) is None:
        return ""
    return WORDS("edge_allowance", edge=edge.name, width=say_length(width, unit) if width else WORDS("bound"))


SEEN, SEEN_HIGH = 17.5, 11.5
"""How wide and high one piece is seen with the room around it, cm, whichever comes first."""
ROOM = 3.4
"""How far the room around a piece reaches, cm: the widest allowance and what is written beside it, so that the paper keeps
still while an allowance moves."""
WHOLE_SCALE = 3.9
_GAP, _MARGIN = 1.8, 2.2
KEY = (
    (NEW, WORDS("cutting_line")),
    (SEWING, WORDS("sewing_line")),
    (FOLD_EDGE, WORDS("key_fold")),
    (NOTCH_CUT, WORDS("key_notch_cut")),
)
_ALONG = (0.5, 0.35, 0.65, 0.2, 0.8)


def one_piece(finished, pieces, choices, unit, title):
    """The sheet of one `FinishedPiece` of the `pieces`, cut with `choices`."""
    piece = finished.piece
    outline = paths.flattened(piece.path, 0.05)
    box = grown(around([(p.real, p.imag, p.real, p.imag) for p in (*outline, *finished.cutting)]), 0.4)
    box = around([box, grown(around([(p.real, p.imag, p.real, p.imag) for p in outline]), ROOM)])
    scale = max((box[2] - box[0]) / SEEN, (box[3] - box[1]) / SEEN_HIGH)
    ready = ReadyPiece(finished, scale)
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

    said = "; ".join(
        words
        for edge, width in zip(piece.edges, finished.allowances)
        if (words := allowance_words(edge, width, choices, unit))
    )
    told = WORDS("piece_described", title=title, piece=piece.name, allowances=said)
    return Sheet(low, high, title, told, paint, scale)


def _beside(clutter, edge, width, choices, unit, scale):
    """Where an edge's allowance is written: outside the cutting line, as near to the edge's middle as there is room."""
    words = allowance_words(edge, width, choices, unit)
    if not words:
        return None
    half = text_width(words, SPOT_WORDS, scale) / 2
    for share in _ALONG:
        at, tangent = (take(edge.path, share * edge.length) for take in (paths.point_along, paths.tangent_along))
        out = -1j * tangent
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
        made = {id(one.piece): ReadyPiece(one, self.scale) for one in finished.pieces}
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
    cut = "; ".join(
        WORDS("piece_round", number=one.piece.number, piece=one.piece.name, length=say_length(_round(one), unit))
        for one in finished.pieces
    )
    return Sheet(
        whole.low,
        whole.high,
        title,
        WORDS("pieces_described", title=title, count=len(finished.pieces), pieces=cut),
        lambda canvas: whole.paint(canvas, unit),
        whole.scale,
    )


def _round(finished):
    """The length of the whole cutting line, cm."""
    points = finished.cutting
    return sum(abs(b - a) for a, b in zip(points, (*points[1:], points[0])))


def _placed(ready):
    steps, width, height = beside([one.box for one in ready], _GAP)
    return list(zip(ready, steps)), width, height


ALL = 0


@dataclass(frozen=True)
class Looked:
    """Which piece is looked at; its range and default are the pattern's own."""

    piece: int = declared(WORDS("piece_control"), unit="count", low=0, high=12, step=1, default=ALL)


def looked_at(drafts: Finishing):
    """The quantity of `Looked` for the desk's wearer; as it is declared where she cannot be drafted."""
    (one,) = quantities(Looked)
    try:
        pieces = drafts.pattern(drafts.now())[1].pieces
    except CorsetkitError:
        # The table says why; meanwhile the slider is as it is declared.
        return (one,)
    return (replace(one, high=max(piece.number for piece in pieces), default=most_telling(pieces).number),)


def most_telling(pieces):
    """The piece to begin with: one that has seams of panels and of cups, and a hem."""
    wanted = {Kind.HEM, Kind.PANEL_SEAM, Kind.CUP_SEAM}
    there = [one for one in pieces if wanted <= {edge.kind for edge in one.edges}]
    return next((one for one in there if not one.on_fold), (there or pieces)[0])


def ready_picture(drafts: Finishing, values: dict) -> Picture:
    """The picture for values of style and finish, and the `piece` among them."""
    number = values.get("piece")
    if number is None:
        (number,) = (one.default for one in looked_at(drafts))
    unit = drafts.desk.record.unit
    if number == ALL:
        name, finished = drafts.finished(values)
        sheet = all_pieces(finished, unit, WORDS("ready_title", name=name))
        return Picture(svg_text(sheet), sheet.description, tuple(_all_said(finished)), tuple(finished.warnings))
    name, pattern, made = drafts.piece(values, number)
    sheet = one_piece(made, pattern.pieces, choices_in(values), unit, WORDS("ready_title", name=name))
    return Picture(svg_text(sheet), sheet.description, tuple(_said(made, unit)), tuple(pattern.warnings))


def _said(finished, unit):
    piece = finished.piece
    say = Say(unit)
    cloths = ", ".join(f"{one.cloth} {one.count}" for one in finished.layers)
    how = finished.layers[0].how
    yield WORDS("piece_cut_how" if how else "piece_cut", number=piece.number, piece=piece.name, cloths=cloths, how=how)
    if across := width_at_waist(finished):
        sewn, cut = across
        yield WORDS("waist_half" if piece.on_fold else "waist_whole", sewn=say(sewn), paper=say(cut))
    bound = [edge.name for edge, width in zip(piece.edges, finished.allowances) if not width and edge.kind is not Kind.FOLD]
    if bound:
        yield WORDS("bound_edges", edges=", ".join(bound))
    if piece.on_fold:
        yield WORDS("on_fold")


def width_at_waist(finished):
    """How wide the piece is at the waist, sewn and cut, cm; None where it does not reach it."""
    crossed = [
        curve.point(t).real
        for edge in finished.piece.edges
        for i, t in paths.on_line(edge.path, 0j, 1 + 0j)
        for curve in (edge.path[i],)
    ]
    cut = [
        p.real + (q.real - p.real) * p.imag / (p.imag - q.imag)
        for p, q in zip(finished.cutting, (*finished.cutting[1:], finished.cutting[0]))
        if (p.imag > 0) != (q.imag > 0)
    ]
    if len(crossed) < 2 or finished.piece.copied:
        return None
    return max(crossed) - min(crossed), max(cut) - min(cut)


def _all_said(finished):
    counts = {
        cloth: sum(layer.count for one in finished.pieces for layer in one.layers if layer.cloth == cloth) for cloth in CLOTHS
    }
    told = ", ".join(WORDS("count_of_cloth", count=count, cloth=cloth) for cloth, count in counts.items() if count)
    yield WORDS("pieces_cut", count=len(finished.pieces), cloths=told)
    folded = [one.piece.name for one in finished.pieces if one.piece.on_fold]
    yield WORDS("pieces_on_fold", pieces=", ".join(folded))
