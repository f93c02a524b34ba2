"""One wearer drafted by both methods: two sheets of pieces side by side, and the numbers."""

from html import escape

from corsetkit.drawing.arrange import CUPS, PANELS, YOKES, beside, row_of, rows
from corsetkit.drawing.canvas import Sheet, box_area
from corsetkit.drawing.lettering import around, fitted
from corsetkit.drawing.painting import edge_facts, pen_of
from corsetkit.drawing.pens import BOARD_TONE, CHALK, CUT_PAPER, HEADING, SEWN, Letter, Pen
from corsetkit.drawing.svg import svg_image, svg_text
from corsetkit.errors import CorsetkitError, sentence
from corsetkit.geometry.move import slid
from corsetkit.geometry.paths import flattened, moved
from corsetkit.teaching.picture import Stored
from corsetkit.teaching.shared import pattern_said as said
from corsetkit.teaching.shared.close_up import paint_row, row_width
from corsetkit.teaching.shared.laid_paper import SHADOW, Laid, written_in
from corsetkit.teaching.shared.whole_pattern import both_methods
from corsetkit.words import words_of

WORDS = words_of("07_back")
SHARED = words_of("shared")

SCALE = 7.0
OTHER = Pen("other-way", 0.4, CHALK, (1.5, 1.0))
"""The same piece drafted by the other method."""

_NUMBER = Letter("number", 2.6, True)
_GAP, _MARGIN = 3.4, 2.6


def methods_sheet(pattern, other, title, words, unit, description):
    """The sheet of `pattern`'s pieces in the places that suit both patterns, so that two such sheets compare at a glance.

    Args:
        other: the other `Pattern` of the same pieces, or None where it could not be drafted.
        words: what the two kinds of line are called: (this method, the other one).
    """
    others = {piece.number: piece for piece in other.pieces} if other else {}
    groups = [[_Pair(piece, others.get(piece.number)) for piece in row] for row in rows(pattern.pieces)]
    upper = _row([*groups[YOKES][:1], *groups[CUPS], *groups[YOKES][1:]])
    lower = _row(groups[PANELS])
    key = [(SEWN, words[0]), *([(OTHER, words[1])] if other else [])]
    foot = 0.8 * SCALE
    width = max(upper[1], lower[1], row_width(key, SCALE))
    top = lower[2] + _GAP + upper[2]
    places = [*((pair, step + 1j * (lower[2] + _GAP)) for pair, step in upper[0]), *lower[0]]
    low, high = complex(-_MARGIN, -_MARGIN - foot), complex(width + _MARGIN, top + 1.3 * SCALE)

    def paint(canvas):
        box_area(canvas, (low.real, low.imag, high.real, high.imag), BOARD_TONE)
        canvas.words(complex(0, high.imag - 0.8 * SCALE), fitted(title, HEADING, width, SCALE), HEADING, "start")
        for pair, step in places:
            _paint_piece(canvas, pair, step, unit)
        paint_row(canvas, complex(0, low.imag + foot / 2), key)

    return Sheet(low, high, title, description, paint, SCALE)


class _Pair:
    """A piece and its like, their middles on each other, a panel's waists on one level; `box` holds both."""

    def __init__(self, piece, like):
        self.piece, self.box = piece, _box(piece.path)
        self.like = ()
        if like:
            step = _middle(self.box) - _middle(_box(like.path))
            # Panels lie where they were drafted, so their waists are level with zero in both patterns.
            self.like = moved(like.path, slid(complex(step.real, 0.0) if row_of(piece) == PANELS else step))
            self.box = around([self.box, _box(self.like)])


def _box(path):
    return around([(p.real, p.imag, p.real, p.imag) for p in flattened(path, 0.1)])


def _middle(box):
    return complex(box[0] + box[2], box[1] + box[3]) / 2


def _row(pairs):
    """The pairs side by side with their steps, and the row's width and height."""
    steps, width, height = beside([pair.box for pair in pairs], _GAP)
    return list(zip(pairs, steps)), width, height


def _paint_piece(canvas, pair, step, unit):
    piece, laid = pair.piece, Laid(pair.piece, slid(step))
    with canvas.group("piece", {"piece": piece.number, "name": piece.name}):
        canvas.area(moved(laid.outline, slid(complex(1, -1) * 0.07 * canvas.scale)), SHADOW)
        canvas.area(laid.outline, CUT_PAPER)
        if pair.like:
            canvas.line(moved(pair.like, slid(step)), OTHER, {"name": WORDS("beside_other", piece=piece.name)})
        for edge, path in laid.edges:
            canvas.line(path, pen_of(edge), edge_facts(edge, piece, unit))
        for at, text, letter in written_in(laid, str(piece.number), canvas.scale, letter=_NUMBER):
            canvas.words(at, text, letter)


def methods_beside(desk) -> Stored:
    """Both methods for the desk's wearer and style; one that refuses her says why in its drawing's place."""
    try:
        name, methods = both_methods(desk)
    except CorsetkitError as error:
        words = sentence(str(error))
        return Stored(f"<p>{escape(words)}</p>", (words,))
    unit = desk.record.unit
    drawn = {method: one for method, one in methods.items() if not isinstance(one, str)}
    cells, told = [], []
    for method, pattern in drawn.items():
        another = next(word for word in methods if word != method)
        other = drawn.get(another)
        title = WORDS("beside_sheet", method=said.METHODS[method], name=name)
        keys = WORDS(f"beside_key_{method}"), WORDS(f"beside_key_{another}")
        sheet = methods_sheet(pattern, other, title, keys, unit, _described(pattern, other, method, another))
        cells.append(f'<td style="width:50%;padding:4px;vertical-align:top">{svg_image(svg_text(sheet))}</td>')
        told.append(f"{title}. {sheet.description}")
    html = f'<table style="width:100%"><tbody><tr>{"".join(cells)}</tr></tbody></table>' if cells else ""
    if drawn:
        key = WORDS("beside_numbers", pieces=_named(next(iter(drawn.values()))))
        html += f"<p>{key}</p>"
    table, sentences = said.both_methods(methods, unit)
    return Stored(f"<p><b>{escape(name)}</b></p>{html}{table}", (*told, *sentences))


def _named(pattern):
    return ", ".join(f"{piece.number} {piece.name}" for piece in pattern.pieces)


def _described(pattern, other, method, another):
    count, pieces, drafted = len(pattern.pieces), _named(pattern), WORDS(f"drafted_{method}")
    if not other:
        return WORDS("beside_described_alone", count=count, method=drafted, pieces=pieces)
    behind = WORDS(f"drafted_{another}")
    return WORDS("beside_described", count=count, method=drafted, other=behind, pieces=pieces)
