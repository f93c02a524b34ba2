"""Paper as printers take it, and how a large sheet is cut into overlapping pages of it. Lengths in cm."""

import math
import numbers
from collections.abc import Iterable
from dataclasses import dataclass

from corsetkit.drawing.lettering import Box
from corsetkit.errors import CorsetkitError
from corsetkit.units import say_both, shown
from corsetkit.words import words_of

WORDS = words_of("printing")

MARGIN = 1.0
"""Left white on every side: what ordinary printers honour."""

OVERLAP = 1.0
"""Neighbouring pages show the same strip this wide; they are joined along its middle."""

LEAST = 19.5, 25.0
"""A paper of one's own is at least so wide and high: test square, its table and the plan of the pages stand on page 1."""

LONGEST = 500.0
"""No page is longer than this: a page of a PDF is at most 200 in long."""


@dataclass(frozen=True)
class Paper:
    """A kind of paper, upright. `whole` paper is so large that no piece is cut by a join: it is printed at a copy shop.

    `said` is what people read, where that is more than its name.
    """

    name: str
    width: float
    height: float
    whole: bool = False
    said: str = ""

    def __str__(self) -> str:
        return self.said or self.name

    @property
    def window(self) -> complex:
        """What can be printed, as one complex number."""
        return complex(self.width - 2 * MARGIN, self.height - 2 * MARGIN)

    @property
    def step(self) -> complex:
        """From one page's corner to the next one's."""
        return self.window - complex(OVERLAP, OVERLAP)

    def page(self, column: int, row: int) -> Box:
        """The box that the page shows; rows count upwards from zero."""
        left, bottom = column * self.step.real, row * self.step.imag
        return left, bottom, left + self.window.real, bottom + self.window.imag

    def pages_of(self, box: Box) -> set[tuple[int, int]]:
        """The (column, row) of each page within whose joins some of the box lies."""
        half = OVERLAP / 2
        left, bottom, right, top = (
            max(0, int((edge - half) // step)) for edge, step in zip(box, (self.step.real, self.step.imag) * 2)
        )
        return {(column, row) for column in range(left, right + 1) for row in range(bottom, top + 1)}


PAPERS = (Paper("A4", 21.0, 29.7), Paper("Letter", 21.59, 27.94))
LARGE = (Paper("A0", 84.1, 118.9, True), Paper("roll", 91.44, LONGEST, True, WORDS("roll")))
"""A copy shop's: a sheet, and a roll 36 in wide of which only what is needed is printed."""


def paper_named(name: object, papers: Iterable[Paper] = PAPERS) -> Paper:
    """The paper called so, whatever the letters' case; US Letter may be said for Letter."""
    wanted = name.strip().casefold().removeprefix("us ") if isinstance(name, str) else None
    for paper in papers:
        if paper.name.casefold() == wanted:
            return paper
    *names, last = (paper.name for paper in papers)
    raise CorsetkitError(f"paper {shown(name)} is unknown: write {', '.join(names)} or {last}")


def own_paper(width, height):
    """A paper of one's own, cm.

    Raises:
        CorsetkitError: where it is no size, too small for its margins and the test square, or longer than a page can be.
    """
    for one in (width, height):
        if isinstance(one, bool) or not isinstance(one, numbers.Real) or not math.isfinite(one) or one <= 0:
            raise CorsetkitError(f"paper {shown(one)} is no length: give its width and height in cm, such as 29.7 and 42")
    if width < LEAST[0] or height < LEAST[1]:
        raise CorsetkitError(
            f"paper {say_both(width)} by {say_both(height)} is too small for the margins of {say_both(MARGIN)} and the test "
            f"square: give at least {say_both(LEAST[0])} by {say_both(LEAST[1])}"
        )
    if max(width, height) > LONGEST:
        raise CorsetkitError(
            f"paper {say_both(width)} by {say_both(height)} is longer than a page can be: at most {say_both(LONGEST)}"
        )
    return Paper("own", float(width), float(height), said=WORDS("own_paper"))
