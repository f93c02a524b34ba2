"""A sheet: a drawing with its corners, its words for those who cannot see it, and how it is painted."""

from collections.abc import Callable
from dataclasses import dataclass, field


@dataclass(frozen=True)
class Sheet:
    """A drawing between the corners `low` and `high` (cm), painted by `paint(canvas)`.

    `scale` says how many of its centimetres are meant to be seen as one: pens and letters grow with it. A `window` is a
    sheet beyond whose borders lines may run on, to be cut off there.
    """

    low: complex
    high: complex
    title: str
    description: str
    paint: Callable = field(repr=False)
    scale: float = 1.0
    window: bool = False

    @property
    def size(self):
        """Width and height in cm as one complex number."""
        return self.high - self.low
