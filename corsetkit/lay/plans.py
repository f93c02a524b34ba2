"""A cutting plan as values: what lies where on the cloth, how long it is, and what it is measured against."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import cached_property

from corsetkit.geometry.points import Point, cross
from corsetkit.lay.cloth import Cloth
from corsetkit.words import words_of

WORDS = words_of("lay")

_ON = 1e-3
"""A point this near to the fold (cm) lies on it, and two lengths this near are one."""
MIRRORED, UPSIDE_DOWN, ON_FOLD = LIES = ("mirrored", "upside_down", "on_fold")
"""How a piece may lie otherwise than it is drawn."""


@dataclass(frozen=True)
class Placed:
    """One outline on the cloth.

    `copy` counts those of one number from 1. The template was mirrored about its grain where it is said, turned by
    `turned` degrees from its grain arrow pointing up the cloth, and slid by `at`. `outline` is where it lies then: across
    the cloth from zero at the left selvedge or the fold, up along the cloth from zero.
    """

    number: int
    name: str
    copy: int
    turned: float
    mirrored: bool
    at_fold: bool
    at: Point
    outline: tuple[Point, ...] = field(repr=False)

    @property
    def upside_down(self) -> bool:
        return 90 < self.turned % 360 < 270

    @property
    def lies(self) -> tuple[str, ...]:
        """How it lies, each by its name: nothing where it lies as it is drawn."""
        ways = ((MIRRORED, self.mirrored), (UPSIDE_DOWN, self.upside_down), (ON_FOLD, self.at_fold))
        return tuple(way for way, so in ways if so)

    @property
    def said(self) -> str:
        """How it lies, in words."""
        return ", ".join(WORDS(f"lies_{way}") for way in self.lies) or WORDS("as_drawn")

    @cached_property
    def area(self) -> float:
        """In cm2."""
        return sum(cross(a, b) for a, b in zip(self.outline, (*self.outline[1:], self.outline[0]))) / 2


@dataclass(frozen=True)
class Plan:
    """Everything that is cut of one cloth, laid; lengths in cm.

    `plain` is the length of the plain row-by-row lay of the same pieces, `fingerprint` that of the items' outlines.
    """

    cloth: Cloth
    layer: str
    placed: tuple[Placed, ...]
    plain: float
    fingerprint: str

    @cached_property
    def length(self) -> float:
        """How much of the cloth is needed, unrounded."""
        return max((p.imag for one in self.placed for p in one.outline), default=0.0)

    @cached_property
    def area(self) -> float:
        """All that is cut, in cm2 of cloth: at once through both layers where it lies folded."""
        return self.cloth.layers * sum(one.area for one in self.placed)

    @property
    def how(self) -> str:
        """In which way the pieces lie, in words."""
        return WORDS("how_rows" if self.length > self.plain - _ON else "how_closer")

    @property
    def used(self) -> float:
        """The share of the cloth that becomes the corset."""
        return self.area / (self.cloth.width * self.length) if self.length else 0.0

    @cached_property
    def bound(self) -> float:
        """The length below which no lay can come.

        That is the area over the usable width, or the longest piece, or all that lies end to end along the fold.
        """
        cloth, bounds = self.cloth, [self.area / self.cloth.layers / self.cloth.room]
        folds = [_length([p for p in one.outline if abs(p.real) < _ON]) for one in self.placed if one.at_fold]
        bounds.append(sum(folds) + cloth.gap * max(len(folds) - 1, 0))
        if not cloth.tilt:
            # Off the grain a piece may take up a little less of the length, so that its own is no bound.
            bounds.extend(_length(one.outline) for one in self.placed)
        return max(bounds)


def _length(points: Iterable[Point]) -> float:
    ys = [p.imag for p in points]
    return max(ys) - min(ys)
