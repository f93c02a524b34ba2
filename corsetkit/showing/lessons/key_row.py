"""The row under a drawing that says what its kinds of line mean."""

from corsetkit.drawing.canvas import box_run, tick
from corsetkit.drawing.hatching import fill
from corsetkit.drawing.lettering import text_width
from corsetkit.drawing.pens import SMALL, Tone

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
