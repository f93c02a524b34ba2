"""Two blocks laid one on the other: which lines stayed, which came along, and which are drawn anew."""

from dataclasses import dataclass
from functools import cached_property

from corsetkit.drawing.canvas import Sheet, box_area, tick
from corsetkit.drawing.lettering import around, text_width
from corsetkit.drawing.name_places import Clutter
from corsetkit.drawing.pens import BEFORE, BODY, CHALK, HEADING, LINE_WORDS, NEW, PAPER_TONE, SPOT, SPOT_TONE, SPOT_WORDS, Pen
from corsetkit.geometry.curve import Cubic, Line
from corsetkit.geometry.move import slid
from corsetkit.geometry.paths import flattened, moved, path_length
from corsetkit.teaching.shared.close_up import paint_row, row_width
from corsetkit.units import say_length
from corsetkit.words import words_of

WORDS = words_of("01_block")

SAME = 1e-6
"""What two places may differ by and still be one, cm: far below what a pencil draws, far above rounding."""
_LOOKED_AT = tuple(i / 16 for i in range(17))
"""Where along a curve its two states are compared, as shares of t."""


@dataclass(frozen=True)
class Compared:
    """A line of the block before and after, both measured from the same mark: the centre of its half at the waist.

    `name` is the line's, `half` "front" or "back"; `before` and `after` are runs of as many curves, or empty where the
    line is not there.
    """

    name: str
    half: str
    before: tuple
    after: tuple

    @cached_property
    def step(self):
        """By how much the whole line was slid, 0j where it stayed; None where its shape or length is another."""
        if len(self.before) != len(self.after):
            return None
        steps = [b - a for old, new in zip(self.before, self.after) for a, b in zip(_points(old), _points(new))]
        return steps[0] if all(abs(step - steps[0]) < SAME for step in steps) else None

    @property
    def stayed(self):
        return self.step is not None and abs(self.step) < SAME

    @property
    def came_along(self):
        return self.step is not None and abs(self.step) >= SAME

    @cached_property
    def most(self):
        """How far the point of the line that moved most has moved, cm."""
        return max(
            (abs(new.point(t) - old.point(t)) for old, new in zip(self.before, self.after) for t in _LOOKED_AT), default=0.0
        )

    @cached_property
    def differing(self):
        """The curves of `after` that lie elsewhere than before."""
        if len(self.before) != len(self.after):
            return self.after
        return tuple(
            new
            for old, new in zip(self.before, self.after)
            if any(abs(b - a) >= SAME for a, b in zip(_points(old), _points(new)))
        )


def compared(before, after):
    """Each line of the `Block` `before` beside the same line of the `Block` `after`, as a list of `Compared`.

    The back of `after` is slid so that both backs have the same centre: how much paper lies between the halves is no
    part of either.
    """
    to_back = slid(before.back.waist_centre - after.back.waist_centre)
    found = []
    for half in ("front", "back"):
        old, new = lines_of(before, half), lines_of(after, half)
        for name in old:
            path = new[name] if half == "front" else moved(new[name], to_back)
            # A line that neither block has, as a dart that takes nothing, is no line.
            if old[name] or path:
                found.append(Compared(name, half, tuple(old[name]), tuple(path)))
    return found


def lines_of(block, word):
    """The lines of one half, "front" or "back", by their names; a point is a line of no length."""
    half = getattr(block, word)
    lines = {
        f"{word} neckline": half.neckline,
        f"{word} shoulder": half.shoulder,
        f"{word} armscye": half.armscye,
        f"{word} side seam": half.side,
        f"{word} waist dart": tuple(curve for leg in half.dart_legs for curve in leg),
        f"centre {word}": (Line(half.neck_centre, half.hip_centre),),
        f"{word} hip line": (Line(half.hip_centre, half.hip_side),),
    }
    if word == "front":
        point = block.bust_point
        dart = (Line(block.mouth_upper, point), Line(point, block.mouth_lower)) if block.side_dart else ()
        lines |= {"side dart": dart, "bust point": (Line(point, point),)}
    return lines


def _points(curve):
    return (curve.start, curve.first, curve.second, curve.end) if isinstance(curve, Cubic) else (curve.start, curve.end)


SCALE = 5.0
CAME_ALONG = Pen("came-along", 0.4, CHALK, (1.9, 1.0))
"""A line that lies elsewhere in the same shape."""
KEY = ((BEFORE, WORDS("key_measured")), (NEW, WORDS("key_anew")), (CAME_ALONG, WORDS("key_came_along")))

_SEWN = {
    "front shoulder": ("shoulder", 1),
    "back shoulder": ("shoulder", 2),
    "front side seam": ("side seam", 1),
    "back side seam": ("side seam", 2),
}
"""The seams of the block: each line's seam and its side of it."""
_MARGIN = 2.4
_CLEAR = 0.65
"""How far from the centre to the waist dart's own line a level's name may stand, as a share."""
_ROOM_ABOVE = 4.5
"""Paper kept above the block for lines that move up, so that the drawing stands still while they do."""


def two_blocks(title, before, lines, unit, description):
    """The sheet of the `Block` `before` and, over it, what of another lies elsewhere; `lines` are its `Compared`."""
    old = {name: path for word in ("front", "back") for name, path in lines_of(before, word).items()}
    points = [p for path in old.values() if path for p in flattened(path, 0.05)]
    left, bottom, right, top = around([(p.real, p.imag, p.real, p.imag) for p in points])
    row, head = 0.62 * SCALE, 1.1 * SCALE
    wide = max(right - left + 2 * _MARGIN, row_width(KEY, SCALE) + _MARGIN, text_width(title, HEADING, SCALE) + 2 * _MARGIN)
    spare = (wide - (right - left)) / 2
    ceiling = top + _ROOM_ABOVE
    low, high = complex(left - spare, bottom - _MARGIN - row), complex(right + spare, ceiling + head)
    clutter = Clutter((low.real + 0.5, bottom - _MARGIN + 0.2, high.real - 0.5, ceiling), SCALE)
    for path in old.values():
        if path:
            clutter.draw(flattened(path, 0.05))
    moved = [line for line in lines if line.differing]
    for line in moved:
        clutter.draw(flattened(line.after, 0.05), 3)
    places = []
    for line in moved:
        if line.name == "bust point":
            clutter.dot(line.after[0].end)
            places.append(clutter.beside(line.after[0].end, line.name, SPOT_WORDS))
    # A written name needs its line whole: of a line that stays in part, only the rest is named.
    places += [
        clutter.along(flattened(_longest(line.differing), 0.05), _written(line), LINE_WORDS)
        for line in moved
        if line.name != "bust point"
    ]
    levels = tuple(_levels(before))
    # Towards the side the dart's leg lies on the bust line, so its name stands near the centre, well before the waist dart.
    places += [
        clutter.along((start, complex(_CLEAR * before.front.dart_axis, start.imag)), name, LINE_WORDS)
        for name, (start, _) in levels
        if name
    ]

    def paint(canvas):
        box_area(canvas, (low.real, low.imag, high.real, high.imag), PAPER_TONE)
        canvas.words(complex(low.real + _MARGIN, high.imag - 0.85 * SCALE), title, HEADING, "start")
        for _, line in levels:
            tick(canvas, *line, BODY)
        for name, path in old.items():
            if path and name != "bust point":
                canvas.line(path, BEFORE, _facts("before", name, ", as measured", path, unit))
        for line in moved:
            if line.name == "bust point":
                canvas.dot(line.after[0].end, 0.75, SPOT_TONE, SPOT)
            else:
                pen = CAME_ALONG if line.came_along else NEW
                canvas.line(line.differing, pen, _facts("new", line.name, "", line.after, unit))
        for place in places:
            if place:
                canvas.words(*place)
        paint_row(canvas, complex(low.real + _MARGIN, low.imag + 0.55 * row), KEY)

    return Sheet(low, high, title, description, paint, SCALE)


def _levels(block):
    """The body's levels on both halves: (name, (start, end)), each name once."""
    for half, names in ((block.front, ("waist", "bust")), (block.back, ("", ""))):
        bust = 1j * half.bust_level
        lines = (half.waist_centre, half.waist_side), (half.waist_centre.real + bust, half.underarm.real + bust)
        yield from zip(names, lines)


def _written(line):
    """A line's name as it is written beside it: which half it belongs to is seen."""
    return line.name.removeprefix(f"{line.half} ")


def _longest(curves):
    return (max(curves, key=lambda curve: curve.length),)


def _facts(role, name, more, path, unit):
    facts = {"role": role, "name": name + more, "length": say_length(path_length(path), unit)}
    if name in _SEWN:
        # As measured and as moved are two blocks: their seams are sewn within each.
        facts |= {"seam": f"{_SEWN[name][0]}{more}", "side": _SEWN[name][1]}
    return facts
