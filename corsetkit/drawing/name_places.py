"""Where a name can be written on a drawing already full of lines: beside its point, or along its line.

What is drawn is remembered as filled cells of a fine grid, so that asking how much a text would cover costs
the same however many lines there are.
"""

from corsetkit.drawing.lettering import CAPITALS, overlap, text_box

_AROUND = ((1, 0), (-1, 0), (0.8, 0.8), (-0.8, 0.8), (0.8, -0.8), (-0.8, -0.8), (0, 1), (0, -1))
"""Directions in which a name is tried beside its point, the readiest first."""

_SHARES = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9)


class Clutter:
    """What a sheet holds already: lines by cells, texts by boxes; `box` is where texts may stand."""

    def __init__(self, box, scale):
        self._box, self._scale = box, scale
        self._cell = 0.1 * scale
        self._cells = {}
        self._texts, self._dots = [], []

    def draw(self, polyline, weight=1):
        """Remember a line; a heavier one is less readily written over."""
        cell = self._cell
        for a, b in zip(polyline, polyline[1:]):
            count = int(abs(b - a) / cell) + 1
            for i in range(count + 1):
                p = a + (b - a) * i / count
                key = int(p.real // cell), int(p.imag // cell)
                self._cells[key] = max(weight, self._cells.get(key, 0))

    def dot(self, at):
        """Remember a mark that no text may cover."""
        half = 0.1 * self._scale
        self._dots.append((at.real - half, at.imag - half, at.real + half, at.imag + half))

    def keep(self, box):
        """Remember the box of a text that stands already, so that no other is written over it."""
        self._texts.append(box)

    def beside(self, at, text, letter):
        """Where to write the name of a point, as the arguments of `words`; the least covered of all places near it."""
        size = letter.size * self._scale / 10
        best, least = None, None
        for distance in (0.16, 0.34, 0.6, 0.95, 1.4, 2.0, 2.8):
            for right, up in _AROUND:
                step = complex(right, up) * distance * self._scale
                anchor = "start" if right > 0 else "end" if right < 0 else "middle"
                # Sideways the capitals' middle stands level with the point; above and below clears the point.
                drop = {1: 0.0, 0: -CAPITALS / 2, -1: -CAPITALS}[(up > 0) - (up < 0)] * size
                place = at + step + 1j * drop
                cost = self._cost(text_box(place, text, letter, anchor, 0.0, self._scale), at)
                if cost is None:
                    continue
                cost += 6 * distance
                if least is None or cost < least:
                    best, least = (place, text, letter, anchor), cost
            if least is not None and least <= 6 * distance + 1:
                break
        return self._taken(best)

    def on(self, at, text, letter, inside=None):
        """Where to write a word that belongs to a place with room around it; the least covered near `at`, or None.

        It keeps within the box `inside` where one is given.
        """
        drop = CAPITALS / 2 * letter.size * self._scale / 10 * 1j
        best, least = None, None
        for distance in (0.0, 0.25, 0.5, 0.75, 1.0):
            for right, up in _AROUND[:1] if not distance else _AROUND:
                place = at + complex(right, up) * distance * self._scale - drop
                box = text_box(place, text, letter, "middle", 0.0, self._scale)
                cost = self._cost(box)
                if inside and (box[0] < inside[0] or box[1] < inside[1] or box[2] > inside[2] or box[3] > inside[3]):
                    continue
                if cost is not None and (least is None or cost + distance < least):
                    best, least = (place, text, letter, "middle"), cost + distance
        return self._taken(best)

    def along(self, polyline, text, letter):
        """Where to write the name of a line, beside it; None where every place would cover something."""
        steps = [b - a for a, b in zip(polyline, polyline[1:])]
        whole = sum(map(abs, steps))
        size = letter.size * self._scale / 10
        for off in (0.13, 0.3):
            for share in _SHARES:
                rest = share * whole
                for start, step in zip(polyline, steps):  # noqa: B007  (the stretch that was reached is asked of below)
                    if rest <= abs(step):
                        break
                    rest -= abs(step)
                if not step:
                    continue
                tangent = step / abs(step)
                for side in (1j, -1j):
                    out = tangent * side
                    at = start + tangent * rest + out * off * self._scale
                    anchor = "start" if out.real > 0.4 else "end" if out.real < -0.4 else "middle"
                    drop = 0.0 if out.imag > 0.7 else -CAPITALS if out.imag < -0.7 else -CAPITALS / 2
                    place = at + 1j * drop * size
                    if self._cost(text_box(place, text, letter, anchor, 0.0, self._scale)) == 0:
                        return self._taken((place, text, letter, anchor))
        return None

    def _cost(self, box, own=None):
        """How much of what is drawn the box would cover; None where it meets a text, another mark or the border."""
        left, bottom, right, top = self._box
        if box[0] < left or box[1] < bottom or box[2] > right or box[3] > top:
            return None
        gap = 0.04 * self._scale
        if any(overlap(box, other, gap) for other in self._texts):
            return None
        if any(
            overlap(box, dot)
            for dot in self._dots
            if own is None or abs(complex(dot[0] + dot[2], dot[1] + dot[3]) / 2 - own) > 1e-9
        ):
            return None
        cell, cells = self._cell, self._cells
        # The box's own ascent and descent are mostly empty, so lines may come that near.
        empty = 0.12 * (box[3] - box[1])
        columns = range(int(box[0] // cell), int(box[2] // cell) + 1)
        levels = range(int((box[1] + empty) // cell), int((box[3] - empty) // cell) + 1)
        return sum(cells.get((x, y), 0) for x in columns for y in levels)

    def _taken(self, place):
        if place:
            at, text, letter, anchor = place
            self._texts.append(text_box(at, text, letter, anchor, 0.0, self._scale))
        return place
