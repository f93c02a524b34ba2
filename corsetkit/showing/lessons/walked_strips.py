"""Both sides of a seam drawn out straight, one under the other: pieces, notches, and how far the seam is walked."""

from corsetkit.units import say_length
from corsetkit.drawing.canvas import tick
from corsetkit.drawing.lettering import fitted, text_width
from corsetkit.drawing.pens import GUIDE, LEADER, NEW, NOTCH, SEWN, SMALL, SPOT, SPOT_TONE, SPOT_WORDS

STRIPS_HIGH = 2.9
"""How high the strips are with their words, cm as seen."""

_LINES = (-0.75, -1.45)
"""Levels of the two sides, cm as seen below the strips' upper edge; words have rows of their own and cannot meet."""
_WORDS = (-0.45, -1.98)
_BETWEEN, _WALKED = -1.19, -2.5


def paint_strips(canvas, walk, cm, unit, at, width, named=()):
    """Paint the strips `width` cm wide from their upper left corner `at`; the seam is walked for `cm`.

    `named` are (cm from the start, words) of notches; words that have no room before the next notch are left out.
    """
    scale, per = canvas.scale, width / walk.length
    lines = [at + 1j * level * scale for level in _LINES]
    half = 0.14j * scale
    with canvas.group("strips"):
        for mark in walk.seam.marks:
            tick(canvas, lines[0] + mark * per, lines[1] + mark * per, LEADER)
        tick(canvas, lines[0] + cm * per, lines[1] + cm * per, GUIDE)
        for side, line, level in zip(walk.sides, lines, _WORDS):
            tick(canvas, line, line + width, SEWN)
            if cm > 0:
                tick(canvas, line, line + cm * per, NEW)
            for end in (0.0, walk.length, *walk.seam.marks):
                tick(canvas, line + end * per - half, line + end * per + half, NOTCH)
            for start, end, name in _pieces(side):
                words = fitted(name, SPOT_WORDS, (end - start) * per - 0.2 * scale, scale)
                canvas.words(at + (start + end) / 2 * per + 1j * level * scale, words, SPOT_WORDS)
            canvas.dot(line + cm * per, 0.9, SPOT_TONE, SPOT)
        for place, words in _placed(walk, per, named, scale):
            canvas.words(at + place + 1j * _BETWEEN * scale, words, SMALL, "start")
        words = f"{say_length(cm, unit)} of {say_length(walk.length, unit)}"
        room = text_width(words, SPOT_WORDS, scale) / 2
        canvas.words(at + min(max(cm * per, room), width - room) + 1j * _WALKED * scale, words, SPOT_WORDS)


def _pieces(side):
    """(start, end, name) of each piece on the side."""
    found = []
    for one in side:
        if found and found[-1][3] is one.piece:
            found[-1] = (found[-1][0], one.end, one.piece.name, one.piece)
        else:
            found.append((one.start, one.end, one.piece.name, one.piece))
    return [one[:3] for one in found]


def _placed(walk, per, named, scale):
    """The names of notches, each beside its own, where there is room before the next one."""
    stops = [*walk.seam.marks, walk.length]
    for cm, words in named:
        nearest = min(stops, key=lambda mark: abs(mark - cm))
        after = min((mark for mark in stops if mark > nearest + 1e-6), default=walk.length)
        start = nearest * per + 0.15 * scale
        if text_width(words, SMALL, scale) < after * per - start - 0.1 * scale:
            yield start, words
