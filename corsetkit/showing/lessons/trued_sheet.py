"""A seam as it was walked on paper: both sides drawn out from where the walk began, and the two ends drawn large.

Where the sides differ, the shorter one is lengthened, and the edges that both end on are redrawn to the new end.
"""

from corsetkit.finish.walk import small
from corsetkit.geometry import paths as path
from corsetkit.geometry.curve import Line
from corsetkit.units import say_length
from corsetkit.drawing.canvas import box_area, tick
from corsetkit.showing.lessons.clipping import clipped
from corsetkit.drawing.finished_view import closed
from corsetkit.showing.lessons.key_row import paint_row, row_width
from corsetkit.drawing.lettering import text_width
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
from corsetkit.drawing.canvas import Sheet
from corsetkit.showing.lessons.windowed import area_in

SCALE = 1.0
_WIDE, _APART, _HALF = 17.0, 1.2, 4.0
"""Width of the strips, space between the two large ends, and how far these reach to each side of the corner, cm."""
_KEY = ((NEW, "as it came out on paper, or redrawn"), (SEWN, "as drafted"), (BEFORE, "as drafted, before it was redrawn"))


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
            canvas.words(middle + 1j * (_HALF + 0.25), f"{piece.name}, at the {beyond.name}", NAME)
        paint_row(canvas, complex(0.0, low.imag + 0.4), _KEY)

    return Sheet(low, high, title, f"{title}. {stretch.said(unit)}", paint, SCALE)


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
        canvas.words(at + shown * per + 0.25 - 0.09j, _tape(shown, unit), SPOT_WORDS, "start")
    canvas.words(complex(start, base + 0.55), stretch.start, SMALL, "start")
    canvas.words(complex(start + drafted * per, base + 0.55), stretch.end, SMALL, "end")


def _paint_end(canvas, piece, edge, beyond, middle, longer, redrawn, unit):
    """A piece's corner at its edge's end, large; `longer` shows how much farther the edge went on paper."""
    at_end = _ends_there(edge, beyond)
    corner = _corner(edge, at_end)
    points = path.flattened(piece.run, 1.0)
    inwards = sum(points) / len(points) - corner
    box = (middle.real - _HALF, middle.imag - _HALF, middle.real + _HALF, middle.imag + _HALF)
    # The corner lies away from the window's middle, so that most of what is seen is the piece.
    middle -= inwards / abs(inwards) * _HALF / 2
    step = middle - corner
    border = [p + step for p in path.flattened((redrawn or piece).run, 0.01)]
    with canvas.group("piece", {"piece": piece.number, "name": piece.name}):
        canvas.area(closed(area_in(border[:-1], box)), CUT_PAPER)
        for one in (redrawn or piece).edges:
            canvas.line(_seen(one.run, step, box), SEWN, _facts(one, one.name, unit))
        for blend in redrawn.blends[len(piece.blends):] if redrawn else ():
            one = next(one for one in redrawn.edges if blend.after[0] in one.run)
            canvas.line(_seen([part for part in blend.before if part.length > 0], step, box), BEFORE)
            canvas.line(_seen(blend.after, step, box), NEW, {"role": "new"} | _facts(one, f"{one.name}, redrawn", unit))
    new = redrawn.edges[next(i for i, one in enumerate(piece.edges) if one is edge)] if redrawn else edge
    if redrawn and new.length > edge.length + 1e-6 and edge.run[-1 if at_end else 0] in new.run:
        tick(canvas, middle, _corner(new, at_end) + step, NEW)
    elif longer and not redrawn:
        ahead = edge.run[-1].way(1.0) if at_end else -edge.run[0].way(0.0)
        tick(canvas, middle, middle + ahead * longer, NEW)
        canvas.dot(middle + ahead * longer, 0.8, SPOT_TONE, SPOT)
    if redrawn:
        canvas.dot(_corner(new, at_end) + step, 0.8, SPOT_TONE, SPOT)


def _facts(edge, name, unit):
    return {"edge": name, "kind": edge.kind.value, "length": say_length(edge.length, unit)}


def _corner(edge, at_end):
    return path.run_end(edge.run) if at_end else path.run_start(edge.run)


def _seen(run, step, box):
    """The run slid by `step`, cut off at the box; in fine strokes, for it is drawn as large as life."""
    points = [p + step for p in path.flattened(run, 0.002)]
    return clipped(tuple(Line(a, b) for a, b in zip(points, points[1:])), box)


def _ends_there(edge, beyond):
    """Whether the edge's own end, and not its start, lies at the edge beyond it."""
    return abs(path.run_end(edge.run) - path.run_start(beyond.run)) < abs(path.run_start(edge.run) - path.run_end(beyond.run))


def _tape(cm, unit):
    """A length as the walk says it."""
    return f"{cm:.1f} cm" if unit == "cm" else small(cm, unit)
