"""Templates: each outline as it lies on the cloth, grain upwards, and how often it is laid."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from corsetkit.drawing.lettering import Box
from corsetkit.errors import CorsetkitError
from corsetkit.geometry.points import Point, direction
from corsetkit.lay.cloth import Cloth
from corsetkit.lay.items import Item
from corsetkit.units import say_both

_SLACK = 1e-6


@dataclass(frozen=True)
class Template:
    """One outline that is laid `count` times: of which item, whether mirrored, and whether it lies at the fold.

    `flat` is the outline with its grain pointing up the cloth, counter-clockwise; at the fold, with the fold on zero.
    """

    item: Item
    mirrored: bool
    at_fold: bool
    count: int
    flat: tuple[Point, ...]

    @property
    def box(self) -> Box:
        """(left, bottom, right, top) in cm."""
        xs, ys = [p.real for p in self.flat], [p.imag for p in self.flat]
        return min(xs), min(ys), max(xs), max(ys)

    def laid(self, turned: float, at: Point) -> tuple[Point, ...]:
        """The outline turned by so many degrees and slid by `at`, on the cloth."""
        by = direction(turned)
        return tuple(p * by + at for p in self.flat)


def template(item: Item, mirrored: bool, at_fold: bool, count: int = 1) -> Template:
    """The template of an item, laid as its half at the fold or as its whole."""
    points = item.outline if at_fold else item.whole
    up = 1j / item.grain
    flat = [p * up for p in points]
    start = item.fold[0] * up if at_fold and item.fold else 0j
    if mirrored:
        flat, start = [-p.conjugate() for p in reversed(flat)], -start.conjugate()
    return Template(item, mirrored, at_fold, count, tuple(p - start.real for p in flat))


def templates(items: Iterable[Item], cloth: Cloth) -> tuple[Template, ...]:
    """Everything that is laid on the cloth, each with its count.

    Left and right are cut at once through folded cloth; on single cloth they are two templates. A piece on the fold lies
    with its fold on the cloth's, or opened out on single cloth.

    Raises:
        CorsetkitError: one sentence, where an item cannot lie on this cloth.
    """
    found: list[Template] = []
    for item in items:
        made = tuple(_folded(item)) if cloth.folded else tuple(_single(item))
        for one in made:
            _refuse_too_wide(one, cloth)
        found.extend(made)
    return tuple(found)


def _single(item: Item) -> Iterator[Template]:
    if not item.pair:
        yield template(item, False, False, item.count)
        return
    yield template(item, False, False, item.count - item.count // 2)
    if item.count > 1:
        yield template(item, True, False, item.count // 2)


def _folded(item: Item) -> Iterator[Template]:
    if item.fold:
        # The fold runs with the piece on its left: downwards, as it lies right of the fold.
        start, end = (p / item.grain for p in item.fold)
        yield template(item, (end - start).real > 0, True, item.count)
    elif item.pair:
        yield template(item, False, False, item.count - item.count // 2)
    else:
        raise CorsetkitError(
            f"{item.called} is neither one of a pair nor on the fold, and folded cloth gives a left and a "
            "right one: lay the cloth single"
        )


def _refuse_too_wide(one: Template, cloth: Cloth) -> None:
    """The packer falls over a piece that is wider than the cloth: said before it is asked."""
    left, _, right, _ = one.box
    room = cloth.room if one.at_fold or not cloth.folded else cloth.room - cloth.gap / 2
    if right - left > room + _SLACK:
        where = "between fold and selvedge" if cloth.folded else "between the selvedges"
        remedy = "lay the cloth single or take a wider one" if cloth.folded else "take a wider cloth"
        raise CorsetkitError(
            f"{one.item.called} is {say_both(right - left)} wide, and cloth of {say_both(cloth.width)}, laid {cloth.laid}, "
            f"has room for {say_both(room)} {where}: {remedy}"
        )
