"""Hatching as drawn strokes: the same on every canvas, and seen without colour."""

from corsetkit.drawing.canvas import Canvas
from corsetkit.drawing.pens import Tone
from corsetkit.geometry.curve import Curves, Line
from corsetkit.geometry.paths import flattened


def fill(canvas: Canvas, path: Curves, tone: Tone) -> None:
    """Fill the closed run with its tone's colour and lay its hatching over it."""
    if tone.colour:
        canvas.area(path, tone)
    if tone.hatch:
        strokes = hatched(path, tone.spacing * canvas.scale / 10)
        if strokes:
            canvas.line(strokes, tone.hatch)


def hatched(path: Curves, spacing: float) -> Curves:
    """Strokes rising to the right at 45 degrees inside the closed path, `spacing` cm apart: a run with gaps.

    The strokes lie on fixed lines of the drawing, so they stand still while a border moves.
    """
    tilt = complex(0.5**0.5, 0.5**0.5)
    # Turned so that the strokes lie level: each is then a level's crossings with the outline, in pairs.
    points = [p * tilt.conjugate() for p in flattened(path, 0.02)]
    if points[0] != points[-1]:
        points.append(points[0])
    crossings: dict[int, list[float]] = {}
    for a, b in zip(points, points[1:]):
        if a.imag > b.imag:
            a, b = b, a
        level = int(a.imag // spacing) + 1
        while level * spacing <= b.imag:
            share = (level * spacing - a.imag) / (b.imag - a.imag)
            crossings.setdefault(level, []).append(a.real + (b.real - a.real) * share)
            level += 1
    strokes = []
    for level in sorted(crossings):
        xs = sorted(crossings[level])
        for left, right in zip(xs[::2], xs[1::2]):
            strokes.append(Line(complex(left, level * spacing) * tilt, complex(right, level * spacing) * tilt))
    return tuple(strokes)
