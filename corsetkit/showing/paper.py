"""Paper as printers take it, and how a large sheet is cut into overlapping pages of it. Lengths in cm."""

from dataclasses import dataclass

from ..errors import CorsetkitError
from ..units import shown

MARGIN = 1.0
"""Left white on every side: what ordinary printers honour."""

OVERLAP = 1.0
"""Neighbouring pages show the same strip this wide; they are joined along its middle."""


@dataclass(frozen=True)
class Paper:
    """A kind of paper, upright."""

    name: str
    width: float
    height: float

    @property
    def window(self):
        """What can be printed, as one complex number."""
        return complex(self.width - 2 * MARGIN, self.height - 2 * MARGIN)

    @property
    def step(self):
        """From one page's corner to the next one's."""
        return self.window - complex(OVERLAP, OVERLAP)

    def page(self, column, row):
        """The box that the page shows; rows count upwards from nought."""
        left, bottom = column * self.step.real, row * self.step.imag
        return left, bottom, left + self.window.real, bottom + self.window.imag

    def pages_of(self, box):
        """The (column, row) of each page within whose joins some of the box lies."""
        half = OVERLAP / 2
        left, bottom, right, top = (max(0, int((edge - half) // step))
                                    for edge, step in zip(box, (self.step.real, self.step.imag) * 2))
        return {(column, row) for column in range(left, right + 1) for row in range(bottom, top + 1)}


PAPERS = (Paper("A4", 21.0, 29.7), Paper("Letter", 21.59, 27.94))


def paper_named(name):
    """The paper called so, whatever the letters' case; US Letter may be said for Letter."""
    wanted = name.strip().casefold().removeprefix("us ") if isinstance(name, str) else None
    for paper in PAPERS:
        if paper.name.casefold() == wanted:
            return paper
    raise CorsetkitError(f"paper {shown(name)} is unknown: write {' or '.join(paper.name for paper in PAPERS)}")
