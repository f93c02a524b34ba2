"""Seams walked on paper: a table of all stretches, both sides drawn out, and one seam that came out longer, trued.

Where the sides differ, the shorter one is lengthened, and the edges that both end on are redrawn to the new end.
"""

from dataclasses import dataclass, replace
from html import escape

from corsetkit.drawing.canvas import Sheet, box_area, tick
from corsetkit.drawing.finished_view import closed
from corsetkit.drawing.lettering import text_width
from corsetkit.drawing.marks import seam_letter
from corsetkit.drawing.pens import (
    BEFORE,
    BOARD_TONE,
    CUT_PAPER,
    HEADING,
    NAME,
    NEW,
    NOTCH,
    SEWN,
    SMALL,
    SPOT,
    SPOT_TONE,
    SPOT_WORDS,
)
from corsetkit.drawing.svg import svg_text
from corsetkit.errors import CorsetkitError
from corsetkit.finish.true_seam import true_seam
from corsetkit.finish.walk import TOLERANCE, small, walk
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.pattern.edge import Kind
from corsetkit.quantity import declared, quantities
from corsetkit.teaching.picture import Picture, Stored
from corsetkit.teaching.shared.clipping import area_in, clipped
from corsetkit.teaching.shared.close_up import paint_row, row_width
from corsetkit.teaching.shared.finished_drafts import Finishing, read_or_refused
from corsetkit.units import CM_PER_INCH, say_length
from corsetkit.words import words_of

WORDS = words_of("08_finish")

SCALE = 1.0
_WIDE, _APART, _HALF = 17.0, 1.2, 4.0
"""Width of the strips, space between the two large ends, and how far these reach to each side of the corner, cm."""
_KEY = ((NEW, WORDS("walk_key_paper")), (SEWN, WORDS("walk_key_drafted")), (BEFORE, WORDS("walk_key_before")))


def trued_sheet(walked, stretch, longer, redrawn, unit, title):
    """The sheet of one `Stretch` of a `Walked` seam, the last one on its way from where the walk set out.

    Args:
        longer: by how much the first side came out longer on paper than it was drafted, cm.
        redrawn: the two sides' pieces made anew in the trued pattern, or nothing.
    """
    strips = 2 * _HALF + 1.6
    wide = max(_WIDE, row_width(_KEY, SCALE), text_width(title, HEADING, SCALE)) + 1.2
    low, high = complex(-0.6, -1.0), complex(wide - 0.6, strips + 4.9)
    names = [piece.name for piece, _, _ in stretch.ends]
    spare = (wide - 1.2 - 4 * _HALF - _APART) / 2

    def paint(canvas):
        box_area(canvas, (low.real, low.imag, high.real, high.imag), BOARD_TONE)
        canvas.words(complex(0.0, high.imag - 0.8), title, HEADING, "start")
        _paint_strips(canvas, stretch, longer, redrawn, names, strips, unit)
        for number, (piece, edge, beyond) in enumerate(stretch.ends):
            middle = complex(spare + _HALF + number * (2 * _HALF + _APART), _HALF + 0.2)
            came_out, new = (longer if number == 0 else 0.0), (redrawn[number] if redrawn else None)
            _paint_end(canvas, piece, edge, beyond, middle, came_out, new, unit)
            canvas.words(middle + 1j * (_HALF + 0.25), WORDS("walk_end", piece=piece.name, beyond=beyond.name), NAME)
        paint_row(canvas, complex(0.0, low.imag + 0.4), _KEY)

    return Sheet(low, high, title, WORDS("described", title=title, told=stretch.said(unit)), paint, SCALE)


def _paint_strips(canvas, stretch, longer, redrawn, names, base, unit):
    """The two sides drawn out straight, one under the other."""
    start, room = 3.2, _WIDE - 3.2 - 1.9
    drafted = stretch.lengths[0] - longer
    per = room / (max(drafted, stretch.lengths[1]) + 1.6)
    for number, (name, length) in enumerate(zip(names, stretch.lengths)):
        y = base + 2.35 - 1.15 * number
        at = complex(start, y)
        canvas.words(at - 0.25 - 0.09j, name, SMALL, "end")
        own = drafted if number == 0 else length
        tick(canvas, at, at + own * per, SEWN)
        if longer and (number == 0 or redrawn):
            tick(canvas, at + own * per, at + (own + longer) * per, NEW)
        shown = length + (longer if number and redrawn else 0.0)
        for end in (0.0, own, shown):
            tick(canvas, at + end * per - 0.16j, at + end * per + 0.16j, NOTCH)
        canvas.words(at + shown * per + 0.25 - 0.09j, _tape_of(shown, unit), SPOT_WORDS, "start")
    canvas.words(complex(start, base + 0.55), stretch.start, SMALL, "start")
    canvas.words(complex(start + drafted * per, base + 0.55), stretch.end, SMALL, "end")


def _paint_end(canvas, piece, edge, beyond, middle, longer, redrawn, unit):
    """A piece's corner at its edge's end, large; `longer` shows how much farther the edge went on paper."""
    at_end = _ends_there(edge, beyond)
    corner = _corner(edge, at_end)
    points = paths.flattened(piece.path, 1.0)
    inwards = sum(points) / len(points) - corner
    box = (middle.real - _HALF, middle.imag - _HALF, middle.real + _HALF, middle.imag + _HALF)
    # The corner lies away from the window's middle, so that most of what is seen is the piece.
    middle -= inwards / abs(inwards) * _HALF / 2
    step = middle - corner
    border = [p + step for p in paths.flattened((redrawn or piece).path, 0.01)]
    with canvas.group("piece", {"piece": piece.number, "name": piece.name}):
        canvas.area(closed(area_in(border[:-1], box)), CUT_PAPER)
        for one in (redrawn or piece).edges:
            canvas.line(_seen(one.path, step, box), SEWN, _facts(one, one.name, unit))
        for blend in redrawn.blends[len(piece.blends) :] if redrawn else ():
            one = next(one for one in redrawn.edges if blend.after[0] in one.path)
            canvas.line(_seen([part for part in blend.before if part.length > 0], step, box), BEFORE)
            canvas.line(
                _seen(blend.after, step, box), NEW, {"role": "new"} | _facts(one, WORDS("redrawn_edge", edge=one.name), unit)
            )
    new = redrawn.edges[piece.place_of(edge)] if redrawn else edge
    if redrawn and new.length > edge.length + 1e-6 and edge.path[-1 if at_end else 0] in new.path:
        tick(canvas, middle, _corner(new, at_end) + step, NEW)
    elif longer and not redrawn:
        ahead = edge.path[-1].tangent(1.0) if at_end else -edge.path[0].tangent(0.0)
        tick(canvas, middle, middle + ahead * longer, NEW)
        canvas.dot(middle + ahead * longer, 0.8, SPOT_TONE, SPOT)
    if redrawn:
        canvas.dot(_corner(new, at_end) + step, 0.8, SPOT_TONE, SPOT)


def _facts(edge, name, unit):
    return {"edge": name, "kind": edge.kind.value, "length": say_length(edge.length, unit)}


def _corner(edge, at_end):
    return paths.path_end(edge.path) if at_end else paths.path_start(edge.path)


def _seen(path, step, box):
    """The run slid by `step`, cut off at the box; in fine strokes, for it is drawn as large as life."""
    points = [p + step for p in paths.flattened(path, 0.002)]
    return clipped(tuple(Line(a, b) for a, b in zip(points, points[1:])), box)


def _ends_there(edge, beyond):
    """Whether the edge's own end, and not its start, lies at the edge beyond it."""
    return abs(paths.path_end(edge.path) - paths.path_start(beyond.path)) < abs(
        paths.path_start(edge.path) - paths.path_end(beyond.path)
    )


def _tape_of(cm, unit):
    """A length as the walk says it."""
    return f"{cm:.1f} cm" if unit == "cm" else small(cm, unit)


_HEADS = (
    WORDS("walk_seam"),
    WORDS("walk_from"),
    WORDS("walk_to"),
    WORDS("walk_first"),
    WORDS("walk_length"),
    WORDS("walk_second"),
    WORDS("walk_length"),
    WORDS("walk_differ"),
    WORDS("walk_verdict"),
)
_LEFT = ' style="text-align:left"'


@dataclass(frozen=True)
class Paper:
    """One seam as it came out on paper; the choice of seams is the pattern's own."""

    longer_by: float = declared(
        WORDS("longer_control"), unit="cm", low=0, high=CM_PER_INCH / 2, step=CM_PER_INCH / 16, default=CM_PER_INCH / 8
    )
    seam: str = declared(WORDS("seam_control"), unit="choice", choices=("C",), default="C")
    redrawn: bool = declared(WORDS("redrawn_control"), unit="yes or no", default=False)


def paper_of(drafts: Finishing):
    """The quantities of `Paper` for the desk's wearer; as they are declared where she cannot be drafted."""
    longer, seam, redrawn = quantities(Paper)
    try:
        stretches = walkable(drafts.pattern(drafts.now())[1])
    except CorsetkitError:
        # The table says why; meanwhile the choice is as it is declared.
        return longer, seam, redrawn
    return longer, replace(seam, choices=tuple(stretches), default=_first(stretches)), redrawn


def walkable(pattern) -> dict:
    """Every seam of the pattern, walked, and the number of the stretch that ends where the seam does.

    Known by the seam's letter, which says as well which way from the waist where it is walked up and down.
    """
    found = {}
    for seam in pattern.seams:
        walked = walk(seam)
        begun = [number for number, one in enumerate(walked.stretches) if one.begins]
        last = [number - 1 for number in begun[1:]] + [len(walked.stretches) - 1]
        for number, stretch in zip(last, (" up", " down") if len(begun) > 1 else ("",)):
            found[seam_letter(seam.number) + stretch] = walked, number
    return found


def _first(stretches):
    """The first that ends at the hem, as most do that are walked down from the waist."""
    ends = {letter: walked.stretches[number].ends[1][2] for letter, (walked, number) in stretches.items()}
    return next((letter for letter, beyond in ends.items() if beyond.kind is Kind.HEM), next(iter(ends)))


def walked_picture(drafts: Finishing, values: dict) -> Picture:
    """The picture for values of style and finish and of `Paper`."""
    name, pattern = drafts.pattern(values)
    unit, stretches = drafts.desk.record.unit, walkable(pattern)
    given = {one.name: values[one.name] for one in quantities(Paper) if one.name in values}
    letter = given.get("seam", _first(stretches))
    longer, redrawn = given.get("longer_by", Paper.longer_by), given.get("redrawn", False)
    if letter not in stretches:
        raise CorsetkitError(f"seam {letter} is not in this pattern: choose one of {', '.join(stretches)}")
    drafted, number = stretches[letter]
    measured = [one.lengths for one in drafted.stretches]
    measured[number] = measured[number][0] + longer, measured[number][1]
    paper = walk(drafted.seam, measured)
    stretch = paper.stretches[number]
    new = true_seam(pattern, paper) if redrawn else pattern
    pieces = () if new is pattern else tuple(new.pieces[pattern.pieces.index(piece)] for piece, _, _ in stretch.ends)
    title = WORDS("walk_title", letter=letter, seam=paper.seam.name, name=name)
    sheet = trued_sheet(paper, stretch, longer, pieces, unit, title)
    return Picture(svg_text(sheet), sheet.description, tuple(_said(paper, stretch, pieces, unit)))


def _said(paper, stretch, pieces, unit):
    yield stretch.said(unit)
    moves = paper.moves(unit=unit)
    if moves:
        yield WORDS(f"more_than_pencil_{unit}")
        yield from moves
    else:
        yield WORDS(f"no_more_than_pencil_{unit}")
    if pieces:
        yield WORDS("agree_again", redrawn=_redrawn(stretch, pieces, unit))


def _redrawn(stretch, pieces, unit):
    """What was redrawn on the shorter side."""
    (_, edge, at), new = stretch.ends[1], pieces[1]
    blends = new.blends[len(stretch.ends[1][0].blends) :]
    most = small(max(blend.largest_move for blend in blends), unit)
    if at.seam is None:
        after, whole = blends[-1].after, next(one for one in new.edges if blends[-1].after[0] in one.path)
        if most.startswith("0 "):
            return WORDS("redrawn_farther_on", edge=at.name, piece=new.name)
        if len(after) == len(whole.path):
            return WORDS("redrawn_turned", edge=at.name, piece=new.name, most=most)
        run = sum(curve.length for curve in after)
        return WORDS("redrawn_blended", edge=at.name, piece=new.name, run=say_length(run, unit), most=most)
    return WORDS("redrawn_sewn", edge=edge.name, piece=new.name, beyond=at.name, length=say_length(at.length, unit), most=most)


def walk_table(drafts: Finishing) -> Stored:
    """All seams stretch by stretch, as they are drafted."""
    return read_or_refused(lambda: _table(drafts))


def _table(drafts):
    name, pattern = drafts.pattern(drafts.now())
    unit = drafts.desk.record.unit
    rows, said = [], []
    for seam in pattern.seams:
        walked = walk(seam)
        for one in walked.stretches:
            (first, _, _), (second, _, _) = one.ends
            off = small(one.difference, unit)
            verdict = WORDS("eased" if one.is_eased else "true") if abs(one.difference) <= TOLERANCE else WORDS("differs")
            rows.append(
                (
                    f"{seam_letter(seam.number)} {seam.name}" if one is walked.stretches[0] else "",
                    one.start,
                    one.end,
                    first.name,
                    _tape_of(one.lengths[0], unit),
                    second.name,
                    _tape_of(one.lengths[1], unit),
                    off,
                    verdict,
                )
            )
            said.append(WORDS("walk_row", letter=seam_letter(seam.number), seam=seam.name, told=one.said(unit)))
    heads = "".join(f'<th scope="col"{_LEFT}>{head}</th>' for head in _HEADS)
    cells = "".join(
        f'<tr><th scope="row"><b>{escape(row[0])}</b></th>'
        + "".join(f"<td{_LEFT}>{escape(one)}</td>" for one in row[1:])
        + "</tr>"
        for row in rows
    )
    html = (
        f"<table><caption>{escape(WORDS('walk_caption', name=name), quote=False)}</caption><thead><tr>{heads}</tr></thead>"
        f"<tbody>{cells}</tbody></table>"
    )
    return Stored(html, said)
