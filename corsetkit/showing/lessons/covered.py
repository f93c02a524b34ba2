"""What of a line lies under a piece of cloth, and so cannot be seen."""

from corsetkit.geometry.curve import Line
from corsetkit.geometry.points import dot

_CLEAR = 0.04
"""What comes nearer to the border than this, cm, is seen as the border itself."""
_STEP = 0.05


def covered(strokes, points):
    """The parts of straight `strokes` that lie inside the closed polyline of `points` and clear of its border."""
    for stroke in strokes:
        count = max(1, round(abs(stroke.end - stroke.start) / _STEP))
        for i in range(count):
            a, b = (stroke.start + (stroke.end - stroke.start) * (i + more) / count for more in (0, 1))
            if _inside((a + b) / 2, points):
                yield Line(a, b)


def _inside(place, points):
    within = False
    for a, b in zip(points, (*points[1:], points[0])):
        if a == b:
            continue
        share = min(max(dot(place - a, b - a) / abs(b - a) ** 2, 0.0), 1.0)
        if abs(a + (b - a) * share - place) < _CLEAR:
            return False
        if (a.imag > place.imag) != (b.imag > place.imag):
            within ^= place.real < a.real + (b.real - a.real) * (place.imag - a.imag) / (b.imag - a.imag)
    return within
