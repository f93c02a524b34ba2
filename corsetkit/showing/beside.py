"""Words beside a seam's ring: which pieces the seam is sewn to."""

from corsetkit.showing.finished_pens import PARTNER
from corsetkit.showing.lettering import ASCENT, DESCENT, text_width

_APART = 0.05
"""From the ring to its words, cm as seen."""


class Beside:
    """The room for a ring together with its words, for `marks.seam_mark` to ask: it holds a ring where both find room.

    `taken` is the room's own. The words take theirs as soon as a ring is found.
    """

    def __init__(self, room, text, scale):
        self._room, self._text, self._scale = room, text, scale
        self._size = PARTNER.size * scale / 10
        self._width = text_width(text, PARTNER, scale)
        self._found = None

    @property
    def taken(self):
        return self._room.taken

    def holds(self, ring, gap=0.0):
        """Whether the ring's box and its words' box beside it are free."""
        if not self._room.holds(ring, gap):
            return False
        self._found = next((box for box in self._boxes(ring) if self._room.holds(box, gap)), None)
        if self._found:
            self.taken.append(self._found)
        return self._found is not None

    def words(self, mark):
        """Where the words stand by a mark and what they are, as (place, text); for a ring outside the piece beside it."""
        box = self._found or next(self._boxes(mark.box))
        return complex((box[0] + box[2]) / 2, box[1] + DESCENT * self._size), self._text

    def _boxes(self, ring):
        """Right of the ring, left of it, under it and over it."""
        apart, high = _APART * self._scale, (ASCENT + DESCENT) * self._size
        x, y = (ring[0] + ring[2]) / 2, (ring[1] + ring[3]) / 2
        for left in (ring[2] + apart, ring[0] - apart - self._width):
            yield left, y - high / 2, left + self._width, y + high / 2
        for low in (ring[1] - apart - high, ring[3] + apart):
            yield x - self._width / 2, low, x + self._width / 2, low + high
