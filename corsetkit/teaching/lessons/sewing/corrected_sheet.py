"""A correction as it is drawn: the lines that move, before and after, and where one moved most."""

from dataclasses import dataclass

from corsetkit.drawing.canvas import Sheet, box_area, box_run, tick
from corsetkit.drawing.lettering import around, wrapped
from corsetkit.drawing.name_places import Clutter
from corsetkit.drawing.pens import BEFORE, FREE, GHOST, HEADING, LEADER, LINE_WORDS, NAME, NEW, PAPER_TONE, SMALL, SOLID
from corsetkit.fitting.effect import LEAST
from corsetkit.geometry.paths import flattened, path_length
from corsetkit.geometry.points import dot
from corsetkit.teaching.shared.clipping import clipped
from corsetkit.teaching.shared.close_up import paint_row
from corsetkit.units import say_length
from corsetkit.words import words_of

WORDS = words_of("09_sewing")

_PLACES = 24
"""At how many places of a curve its move is looked at."""


def on_back(name):
    """Whether a line of that name lies on the back."""
    return name.startswith("back") or name == "lacing edge"


def farthest(one):
    """Where a line moved most: a point of it after and one of it before, the one the nearest to the other on its line."""
    pairs = [(p, _nearest(p, one.before)) for p in _looked_at(one.after)]
    pairs += [(_nearest(q, one.after), q) for q in _looked_at(one.before)]
    return max(pairs, key=lambda pair: abs(pair[0] - pair[1]))


def _looked_at(path):
    """Places along a run; each curve by itself, for a side seam has a gap where its dart lies open."""
    return [curve.point(i / _PLACES) for curve in path for i in range(_PLACES + 1)]


def _nearest(p, path):
    """The point of a run that is the nearest to p."""
    feet = [
        _foot(p, a, b) for curve in path for points in [curve.flattened(0.005)] for a, b in zip(points, points[1:] or points)
    ]
    return min(feet, key=lambda foot: abs(p - foot))


def _foot(p, a, b):
    """The point of a straight line that is the nearest to p."""
    step = b - a
    return a + step * min(1.0, max(0.0, dot(p - a, step) / abs(step) ** 2)) if step else a


_WIDE, _HIGH, _LARGE = 11.5, 10.0, 5.6
"""Seen so wide and so high are the lines at most, and so large the part that is drawn large, cm."""
_EDGE, _BETWEEN, _HEAD, _FOOT = 0.4, 0.5, 1.1, 0.8
_LINE, _HALF = 0.55, 0.6
"""From one line of the heading to the next, and how high above its lowest line a half is named, cm."""
_ROOM, _LEAST = 2.0, 14.0
"""Cm of the block round what moves, and how much of it is seen at least."""
_NAMED = 3
"""How many of the lines that move are named."""
_SHOWN = 0.16
"""The farthest move is to be seen as so large a part of the large drawing, if it can."""
_TIMES = (16, 12, 10, 8, 6, 5, 4, 3, 2)
_KEY = ((BEFORE, WORDS("key_stays")), (GHOST, WORDS("key_before")), (NEW, WORDS("key_after")))


@dataclass(frozen=True)
class _View:
    """A box of the block drawn at `by` cm for each of its cm, its lower left corner at `corner`."""

    box: tuple
    corner: complex
    by: float

    def at(self, p):
        return self.corner + (p - complex(self.box[0], self.box[1])) * self.by

    @property
    def seen(self):
        high = self.at(complex(self.box[2], self.box[3]))
        return self.corner.real, self.corner.imag, high.real, high.imag

    def run(self, path):
        return tuple(one.moved(self.at) for one in clipped(path, self.box))


def corrected_sheet(lines, moved, unit, title, description):
    """The sheet of a correction.

    Args:
        lines: {name: run} of the block before. moved: what moved, as `fitting.moved.Moved`s, the farthest first; where
            nothing did, the block alone is drawn.
        unit, title, description: as on every sheet.
    """
    # What no tape would show is drawn as it stays, as it is told.
    moved = [one for one in moved if one.most is None or one.most >= LEAST[unit]]
    main = _window(moved, lines)
    _width, height = main.seen[2] - _EDGE, main.seen[3] - main.corner.imag
    # A parting follows the lines it runs between, so another line is looked at rather than that.
    first = next((one for one in moved if one.before and one.after and "parting" not in one.name), None)
    pair = farthest(first) if first else None
    large = pair and _enlarged(*pair, main.seen[2] + _BETWEEN, main.corner.imag + max(height - _LARGE - 0.6, 0.0))
    right = (large.seen[2] if large else main.seen[2]) + _EDGE
    right = max(right, 15.0)
    heading = wrapped(title, HEADING, right - 2 * _EDGE, 1.0)
    top = main.corner.imag + max(height, _LARGE + 0.6) + _HEAD + (len(heading) - 1) * _LINE
    changed = {one.name for one in moved}
    kept = [(name, path) for name, path in lines.items() if name not in changed]
    names = _names(moved, kept, lines, main)

    def paint(canvas):
        box_area(canvas, (0.0, 0.0, right, top), PAPER_TONE)
        for place, words in enumerate(heading):
            canvas.words(complex(_EDGE, top - 0.75 - place * _LINE), words, HEADING, "start")
        for view in filter(None, (main, large)):
            _paint(canvas, view, kept, moved, unit)
        for place in filter(None, names):
            canvas.words(*place)
        if large:
            _paint_large(canvas, large, first, pair, main, unit)
        paint_row(canvas, complex(_EDGE, 0.4), _KEY)

    return Sheet(0j, complex(right, top), title, description, paint)


def _window(moved, lines):
    """Where the lines that move lie on the block, with some room; where both halves change, they are seen in their width."""
    all_paths = [path for one in moved for path in (one.before, one.after) if path] if moved else list(lines.values())
    left, bottom, right, top = _round(all_paths)
    if {on_back(one.name) for one in moved} == {True, False}:
        left, _, right, _ = _round(filter(None, lines.values()))
    left, bottom, right, top = left - _ROOM, bottom - _ROOM, right + _ROOM, top + _ROOM
    wide, high = max(right - left, _LEAST * _WIDE / _HIGH), max(top - bottom, _LEAST)
    middle = complex(left + right, bottom + top) / 2
    box = middle.real - wide / 2, middle.imag - high / 2, middle.real + wide / 2, middle.imag + high / 2
    return _View(box, complex(_EDGE, _FOOT), min(_WIDE / wide, _HIGH / high))


def _round(all_paths):
    return around([(p.real, p.imag, p.real, p.imag) for path in all_paths for p in flattened(path, 0.1)])


def _enlarged(p, q, left, bottom):
    """The part round the two points of the farthest move."""
    times = next((one for one in _TIMES if one * abs(p - q) <= 2 * _SHOWN * _LARGE), _TIMES[-1])
    half = _LARGE / times / 2
    middle = (p + q) / 2
    return _View(
        (middle.real - half, middle.imag - half, middle.real + half, middle.imag + half), complex(left, bottom), float(times)
    )


def _paint(canvas, view, kept, moved, unit):
    canvas.line(box_run(*view.seen), LEADER)

    def line(path, pen, name, role):
        if drawn := view.run(path):
            canvas.line(drawn, pen, {"role": role, "name": name, "length": say_length(path_length(path), unit)})

    for name, path in kept:
        line(path, BEFORE, name, "before")
    for pen, what, role in ((GHOST, "before", "ghost"), (NEW, "after", "new")):
        for one in moved:
            if path := getattr(one, what):
                line(path, pen, WORDS("line_before", line=one.name) if what == "before" else one.name, role)


def _paint_large(canvas, large, one, pair, main, unit):
    """What belongs to the large part: its heading, its frame on the main drawing, and how far the line moves."""
    (p, q), (left, _, _, top) = pair, large.seen
    words = WORDS("framed_part", times=f"{large.by / main.by:.0f}")
    canvas.words(complex(left, top + 0.25), words, NAME, "start")
    frame = clipped(box_run(*large.box), main.box)
    canvas.line(tuple(one.moved(main.at) for one in frame), FREE)
    a, b = large.at(q), large.at(p)
    tick(canvas, a, b, FREE)
    canvas.dot(a, 0.5, SOLID)
    canvas.dot(b, 0.5, SOLID)
    clutter = Clutter(tuple(c + d for c, d in zip(large.seen, (0.15, 0.15, -0.15, -0.15))), 1.0)
    for path in (one.before, one.after):
        if drawn := large.run(path):
            clutter.draw(flattened(drawn, 0.05), 3)
    for end in (a, b):
        clutter.dot(end)
    if place := clutter.beside((a + b) / 2, say_length(abs(p - q), unit), NAME):
        canvas.words(*place)


def _names(told, kept, lines, view):
    """Which half is the front and which the back, and the names of the lines that move most, each once, beside them."""
    left, bottom, right, top = view.seen
    clutter = Clutter((left + 0.1, bottom + 0.1, right - 0.1, top - 0.1), 1.0)
    for path in (*(path for _, path in kept), *(one.before for one in told), *(one.after for one in told)):
        for curve in view.run(path):
            clutter.draw(flattened((curve,), 0.05))
    made, named = _halves(lines, view, clutter), set()
    for one in told:
        name, path = one.name.partition(",")[0], view.run(one.after or one.before)
        points = flattened(path, 0.05) if path else ()
        if name not in named and len(points) > 1 and (place := clutter.along(points, name, LINE_WORDS)):
            made.append(place)
            named.add(name)
        if len(named) == _NAMED:
            break
    return made


def _halves(lines, view, clutter):
    """The words "front" and "back", each near the foot of what is seen of its half."""
    made = []
    for half in ("front", "back"):
        all_paths = [view.run(path) for name, path in lines.items() if on_back(name) == (half == "back")]
        points = [p for path in all_paths for curve in path for p in (curve.start, curve.end)]
        if points:
            middle = (min(p.real for p in points) + max(p.real for p in points)) / 2
            made.append(clutter.on(complex(middle, min(p.imag for p in points) + _HALF), WORDS(f"half_{half}"), SMALL))
    return made
