"""What is laid: the pieces and strips cut of one cloth, each with its outline, grain and fold."""

import hashlib
from collections.abc import Iterable
from dataclasses import dataclass

from corsetkit.finish.finished import CLOTHS, Finished, FinishedPiece, Strip, unfolded
from corsetkit.geometry import paths
from corsetkit.geometry.points import Point, unit
from corsetkit.pattern.edge import Kind

ROUNDED = 3
"""Decimals of a cm by which two outlines count as the same: a hundredth of a millimetre."""


@dataclass(frozen=True)
class Item:
    """One thing to be laid; points in cm.

    `outline` is its closed cutting line, counter-clockwise, of a piece on the fold the half; `whole` is the same opened out.
    `count` says how many are cut, `pair` whether they are left and right ones; `fold` is the two ends of the fold with the
    piece on its left, or None; `grain` the unit step along the grain, towards the head of the piece.
    """

    number: int
    name: str
    outline: tuple[Point, ...]
    count: int = 1
    pair: bool = False
    fold: tuple[Point, Point] | None = None
    grain: complex = 1j
    opened: tuple[Point, ...] = ()

    @property
    def on_fold(self) -> bool:
        return self.fold is not None

    @property
    def whole(self) -> tuple[Point, ...]:
        """The whole outline: the same where it is not on the fold."""
        return self.opened or self.outline

    @property
    def called(self) -> str:
        """Number and name."""
        return f"{self.number} {self.name}"


def items_of(finished: Finished, layer: str) -> tuple[Item, ...]:
    """The items cut of one cloth of a `Finished` pattern, in the pieces' order, the strips behind them.

    A strip has no number of its own in the pattern, so it takes the next ones after the pieces.
    """
    found = [_item(one, cut.count) for one in finished.pieces for cut in one.layers if cut.cloth == layer]
    last = max(one.piece.number for one in finished.pieces)
    # Numbered over all strips, so that one bears the same number on every plan.
    return (*found, *(_strip(number, strip) for number, strip in enumerate(finished.strips, last + 1) if strip.cloth == layer))


def layers_of(finished: Finished) -> tuple[str, ...]:
    """The cloths that something is cut of, from outside inwards."""
    return tuple(layer for layer in CLOTHS if items_of(finished, layer))


def _item(one: FinishedPiece, count: int) -> Item:
    piece = one.piece
    start, end = piece.grainline
    fold = next((edge.path for edge in piece.edges if edge.kind is Kind.FOLD), None)
    ends = (paths.path_start(fold), paths.path_end(fold)) if fold else None
    return Item(
        piece.number,
        piece.name,
        tuple(one.cutting),
        count,
        piece.pair,
        ends,
        unit(end - start),
        tuple(unfolded(one).cutting) if fold else (),
    )


def _strip(number: int, strip: Strip) -> Item:
    """A strip lies along the grain, and left and right are each other's mirror image."""
    corners = 0j, complex(strip.width), complex(strip.width, strip.length), complex(0, strip.length)
    return Item(number, strip.name, corners, strip.count, strip.count % 2 == 0)


def fingerprint(items: Iterable[Item]) -> str:
    """A short text that changes when an outline, a count, a grain or a fold does."""
    said = hashlib.sha256()
    for item in items:
        points = (*item.outline, *item.opened, *(item.fold or ()), item.grain)
        shape = " ".join(f"{_rounded(p.real)},{_rounded(p.imag)}" for p in points)
        said.update(f"{item.called}|{item.count}|{item.pair}|{item.on_fold}|{len(item.outline)}|{shape}\n".encode())
    return said.hexdigest()[:20]


def _rounded(value: float) -> int:
    return round(value * float(10**ROUNDED))
