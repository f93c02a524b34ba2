"""A part of a draft drawn large, with notes beside it and a row under it that says what its kinds of line mean."""

from dataclasses import dataclass

from corsetkit.drawing.canvas import Sheet, box_area, box_run, tick
from corsetkit.drawing.hatching import fill
from corsetkit.drawing.lettering import CAPITALS, PITCH, text_width, wrapped
from corsetkit.drawing.name_places import Clutter
from corsetkit.drawing.pens import HEADING, LEADER, NAME, PAPER_TONE, SMALL, SOLID, SPOT, SPOT_TONE, SPOT_WORDS, Tone
from corsetkit.geometry.curve import Line
from corsetkit.geometry.paths import flattened, path_length
from corsetkit.units import say_length

_STROKE, _SPACE, _APART = 1.1, 0.3, 0.6
"""How long the sample is, how far the words stand from it, and how far one kind from the next, cm as seen."""


def row_width(items, scale):
    """How wide the row is, cm of the drawing; `items` are (pen or tone, words)."""
    return sum((_STROKE + _SPACE + _APART) * scale + text_width(words, SMALL, scale) for _, words in items)


def paint_row(canvas, at, items):
    """Paint the row from `at`, the level of the sample strokes, to the right."""
    scale = canvas.scale
    with canvas.group("legend"):
        for pen, words in items:
            if isinstance(pen, Tone):
                fill(canvas, box_run(at.real, at.imag - 0.2 * scale, at.real + _STROKE * scale, at.imag + 0.2 * scale), pen)
            else:
                tick(canvas, at, at + _STROKE * scale, pen)
            canvas.words(at + (_STROKE + _SPACE) * scale - 0.036j * SMALL.size * scale, words, SMALL, "start")
            at += (_STROKE + _SPACE + _APART) * scale + text_width(words, SMALL, scale)


SEEN = 10.5
"""How high what is drawn is meant to be seen, cm."""
_HEAD, _ROW = 1.1, 0.8
"""Height of the heading and of the row that says what the pens mean, cm as seen."""
_MARGIN, _GAP = 3.1, 0.25
"""Width of a margin for notes and how far they stand from the drawing and from each other, cm as seen."""
_NOTE = SPOT_WORDS
SAMPLE = 1.1
"""How long a sample in the row is, cm as seen."""


@dataclass(frozen=True)
class Stroke:
    """A line with its pen; `name` is told to whoever points at it. `heavy` says how loath words are to cross it.

    `long` is its length, cm, where the path is only a part of it, and `sewn` holds the facts about what it is sewn to.
    """

    path: tuple
    pen: object
    name: str = ""
    role: str = "before"
    heavy: int = 1
    long: float | None = None
    sewn: dict | None = None


@dataclass(frozen=True)
class Patch:
    """A closed path filled or hatched with a tone."""

    path: tuple
    tone: object


@dataclass(frozen=True)
class Note:
    """Words in the margin left or right of the drawing, with a thin line to the place they mean."""

    point: complex
    words: str
    left: bool = False


def close_up(title, description, box, scale, unit, patches=(), strokes=(), spots=(), notes=(), key=(), parts=()):
    """The sheet of what lies in `box` (left, bottom, right, top), nothing of which may reach beyond it.

    `patches` lie under `strokes`, these under `spots` (`Spot`s; those of the role "new" are filled), whose names stand
    beside them; `parts` are (place, word) of tinted parts, written on them where there is room. `key` are the (pen or tone,
    words) of the row below. The margins for notes are there whether notes are or not.
    """
    left, bottom, right, top = box
    margin = _MARGIN * scale
    wide = max(row_width(key, scale), text_width(title, HEADING, scale) + 0.6 * scale)
    spare = max(margin, (wide - (right - left)) / 2)
    low, high = complex(left - spare, bottom - _ROW * scale), complex(right + spare, top + _HEAD * scale)
    placed = [
        one
        for side in (True, False)
        for one in _column([note for note in notes if note.left == side], left if side else right, bottom, top, scale)
    ]
    names = _names(
        spots, parts, [*strokes, *(Stroke((Line(note.point, foot),), LEADER) for note, (foot, _) in placed)], box, scale
    )

    def paint(canvas):
        box_area(canvas, (low.real, low.imag, high.real, high.imag), PAPER_TONE)
        canvas.words(complex(low.real + 0.3 * scale, high.imag - 0.8 * scale), title, HEADING, "start")
        for patch in patches:
            fill(canvas, patch.path, patch.tone)
        for stroke in strokes:
            canvas.line(stroke.path, stroke.pen, _facts(stroke, unit))
        for spot in spots:
            new = spot.role == "new"
            canvas.dot(spot.point, 0.75 if new else 0.5, SPOT_TONE if new else PAPER_TONE, SPOT)
        for note, (foot, lines) in placed:
            tick(canvas, note.point, foot, LEADER)
            canvas.dot(note.point, 0.4, SOLID)
            for line in lines:
                canvas.words(*line)
        for place in names:
            if place:
                canvas.words(*place)
        _key(canvas, complex(low.real + 0.3 * scale, low.imag + 0.4 * scale), key)

    return Sheet(low, high, title, description, paint, scale)


def _key(canvas, at, key):
    """The row that says what the pens mean; a hatched tone is shown as a patch of it."""
    scale = canvas.scale
    for pen, words in key:
        if isinstance(pen, Tone):
            with canvas.group("legend"):
                fill(canvas, box_run(at.real, at.imag - 0.2 * scale, at.real + SAMPLE * scale, at.imag + 0.2 * scale), pen)
        paint_row(canvas, at, ((pen.hatch if isinstance(pen, Tone) else pen, words),))
        at += row_width(((pen, words),), scale)


def _names(spots, parts, strokes, box, scale):
    """Where the spots' names and the parts' go, the least of all over the strokes."""
    if not parts and not any(spot.name for spot in spots):
        return []
    clutter = Clutter(box, scale)
    for stroke in strokes:
        clutter.draw(flattened(stroke.path, 0.05), stroke.heavy)
    for spot in spots:
        clutter.dot(spot.point)
    return [
        *(clutter.on(place, word, NAME) for place, word in parts),
        *(clutter.beside(spot.point, spot.name, SPOT_WORDS) for spot in spots if spot.name),
    ]


def _column(notes, edge, bottom, top, scale):
    """Each note of one margin with the foot of its line and its lines of words; they keep apart, in their height's order."""
    size, gap = _NOTE.size * scale / 10, _GAP * scale
    notes = sorted(notes, key=lambda note: -note.point.imag)
    broken = [wrapped(note.words, _NOTE, (_MARGIN - 2.2 * _GAP) * scale, scale) for note in notes]
    halves = [PITCH * size * len(lines) / 2 for lines in broken]
    middles, least = [], top
    for note, half in zip(notes, halves):
        middles.append(min(note.point.imag, least - half))
        least = middles[-1] - half - gap
    most = bottom
    for i in reversed(range(len(notes))):
        middles[i] = max(middles[i], most + halves[i])
        most = middles[i] + halves[i] + gap
    for note, lines, middle in zip(notes, broken, middles):
        out = -1 if note.left else 1
        at = complex(edge + out * 2 * gap, middle + (PITCH * (len(lines) - 1) / 2 - CAPITALS / 2) * size)
        anchor = "end" if note.left else "start"
        yield (
            note,
            (
                complex(edge + out * 1.5 * gap, middle),
                [(at - 1j * PITCH * size * i, line, _NOTE, anchor) for i, line in enumerate(lines)],
            ),
        )


def _facts(stroke, unit):
    if not stroke.name:
        return {}
    long = path_length(stroke.path) if stroke.long is None else stroke.long
    return {"role": stroke.role, "name": stroke.name, "length": say_length(long, unit)} | (stroke.sewn or {})
