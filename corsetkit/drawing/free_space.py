"""Where something fits inside a piece: a measured search, so that no text need be moved by hand.

A piece is looked at along level lines a step apart; between its borders on each line there is room. What a border
does between two lines goes unseen, so the step is kept well under the height of a line of text.
Boxes are (left, bottom, right, top) in cm.
"""

from collections.abc import Iterator, Sequence
from math import ceil, floor
from typing import TypeAlias

from corsetkit.drawing.lettering import Box, overlap

Span: TypeAlias = tuple[float, float]
"""A free stretch of a level line: its left and its right end."""


class Room:
    """The room inside a closed outline of points, less the boxes already taken."""

    def __init__(self, points: Sequence[complex], step: float) -> None:
        self.taken: list[Box] = []
        self._step = step
        crossings: dict[int, list[float]] = {}
        x0, y0 = points[-1].real, points[-1].imag
        for point in points:
            x1, y1 = point.real, point.imag
            if y0 != y1:
                low, high = (y0, y1) if y0 < y1 else (y1, y0)
                slope = (x1 - x0) / (y1 - y0)
                # Half-open, so that a corner on a level line is crossed once.
                for level in range(ceil(low / step), ceil(high / step)):
                    crossings.setdefault(level, []).append(x0 + (level * step - y0) * slope)
            x0, y0 = x1, y1
        self._first, self._last = (min(crossings), max(crossings)) if crossings else (0, -1)
        self._lines: list[Sequence[Span]] = []
        for level in range(self._first, self._last + 1):
            xs = sorted(crossings.get(level, ()))
            self._lines.append(tuple(zip(xs[::2], xs[1::2])))
        self._widest = max((b - a for spans in self._lines for a, b in spans), default=0.0)
        # Where each line has one stretch, what is common to many is a largest left and a least right.
        self._lefts = [spans[0][0] if spans else 0.0 for spans in self._lines]
        self._rights = [spans[0][1] if spans else 0.0 for spans in self._lines]
        self._parted = [len(spans) != 1 for spans in self._lines]

    def spans(self, low: float, high: float) -> Sequence[Span]:
        """The free stretches (left, right) common to all level lines between `low` and `high` and one beyond each."""
        first, last = floor(low / self._step), ceil(high / self._step)
        if first < self._first or last > self._last:
            return ()
        start, stop = first - self._first, last - self._first + 1
        if True not in self._parted[start:stop]:
            left, right = max(self._lefts[start:stop]), min(self._rights[start:stop])
            return ((left, right),) if left < right else ()
        free: Sequence[Span] = self._lines[start]
        for spans in self._lines[start + 1 : stop]:
            free = [(max(a, c), min(b, d)) for a, b in free for c, d in spans if a < d and c < b]
        return free

    def holds(self, box: Box, gap: float = 0.0) -> bool:
        """Whether the box lies inside the outline, `gap` from the border sideways and from all that is taken."""
        left, right = box[0] - gap, box[2] + gap
        for a, b in self.spans(box[1], box[3]):
            if a <= left and right <= b:
                return not any(overlap(box, other, gap) for other in self.taken)
        return False

    def place(self, width: float, height: float, near: complex, gap: float, reach: float | None = None) -> complex | None:
        """The centre of a free place for a box that size, as near as may be to `near`; None where there is none.

        `reach` is how far from `near` it may lie, where that matters.

        It slides with `near` and the borders as far as it can, so that a label does not jump while a slider moves.
        """
        best, least = None, reach
        if width + 2 * gap > self._widest:
            return None
        for shift in self._shifts(near.imag, height):
            if least is not None and abs(shift) >= least:
                break
            y = near.imag + shift
            low, high = y - height / 2, y + height / 2
            spans = [(a + gap, b - gap) for a, b in self.spans(low, high) if b - a - 2 * gap >= width]
            if not spans:
                continue
            for left, right in self._clear(spans, low - gap, high + gap, gap):
                if right - left >= width:
                    x = min(max(near.real, left + width / 2), right - width / 2)
                    away = abs(complex(x, y) - near)
                    if least is None or away < least:
                        best, least = complex(x, y), away
        return best

    def _shifts(self, y: float, height: float) -> Iterator[float]:
        """Steps up and down from zero, growing, for as long as a box that high lies within the piece's levels."""
        step = self._step
        lowest, highest = self._first * step + height / 2 - y, self._last * step - height / 2 - y
        if lowest <= 0.0 <= highest:
            yield 0.0
        for count in range(1, int(max(highest, -lowest) / step) + 1):
            if count * step <= highest:
                yield count * step
            if -count * step >= lowest:
                yield -count * step

    def _clear(self, spans: Sequence[Span], low: float, high: float, gap: float) -> Sequence[Span]:
        """The spans less what is taken between the levels `low` and `high`."""
        for left, bottom, right, top in self.taken:
            if bottom < high and low < top:
                left, right = left - gap, right + gap
                cut: list[Span] = []
                for a, b in spans:
                    if right <= a or left >= b:
                        cut.append((a, b))
                    else:
                        if left > a:
                            cut.append((a, left))
                        if right < b:
                            cut.append((right, b))
                spans = cut
        return spans
