"""The lay made: row by row at once, packed in the time it is given, and the shorter of the two."""

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace

from corsetkit.errors import CorsetkitError
from corsetkit.finish.finished import Finished
from corsetkit.lay.checking import faults, refuse_crossed
from corsetkit.lay.cloth import Cloth
from corsetkit.lay.items import Item, fingerprint, items_of, layers_of
from corsetkit.lay.packer import Laid, Progress, pack
from corsetkit.lay.plans import Placed, Plan
from corsetkit.lay.templates import Template, templates
from corsetkit.units import is_number, shown, to_float


@dataclass
class _Row:
    """One row across the cloth: where its next piece begins, how high it is, and (template, left edge) of what is in it."""

    next: float
    height: float = 0.0
    held: list[tuple[Template, float, float]] = field(default_factory=list)
    open: bool = True

    def takes(self, width: float, height: float, high: float) -> bool:
        return self.next + width <= high + 1e-9 and (self.open or height <= self.height)

    def put(self, template: Template, gap: float) -> None:
        left, bottom, right, top = template.box
        self.held.append((template, self.next - left, -bottom))
        self.next += right - left + gap
        self.height = max(self.height, top - bottom)


def rows(templates: Iterable[Template], cloth: Cloth) -> tuple[Laid, ...]:
    """Each template as often as it is laid, as (template, degrees, step): nothing turned.

    At most one piece at the fold begins a row; the others follow by their length in the first row that has room. A row
    grows only for the first of them.
    """
    each = sorted((one for one in templates for _ in range(one.count)), key=lambda one: one.box[1] - one.box[3])
    begin = cloth.gap / 2 if cloth.folded else cloth.low
    made: list[_Row] = []
    for one in (one for one in each if one.at_fold):
        row = _Row(0.0)
        row.put(one, cloth.gap)
        made.append(row)
    for one in (one for one in each if not one.at_fold):
        left, bottom, right, top = one.box
        found = next((row for row in made if row.takes(right - left, top - bottom, cloth.high)), None)
        row = found or _Row(begin)
        if found is None:
            made.append(row)
        row.put(one, cloth.gap)
        row.open = False
    return tuple(_stacked(made, cloth.gap))


def _stacked(made: Iterable[_Row], gap: float) -> Iterator[Laid]:
    y = 0.0
    for row in made:
        for template, x, rise in row.held:
            # A template at the fold keeps its fold on zero: its box begins there.
            yield template, 0.0, complex(x, y + rise)
        y += row.height + gap


SECONDS, MOST = 2.0, 3600.0
"""Seconds that the first plan is given; the packer counts whole seconds, and below one it gives its first lay alone.
No plan is given more than the most."""


def plan(
    items: Iterable[Item],
    cloth: Cloth | None = None,
    seconds: float = SECONDS,
    progress: Progress | None = None,
    layer: str = "",
    offset: int = 0,
) -> Plan:
    """Lay the items on the cloth.

    Args:
        items: what is laid, as `Item`s. cloth: a `Cloth`; with its defaults where none is given.
        seconds: for the packer. progress: called as `progress(share done, best length so far)`, share from 0 to 1.
        layer: the name of what is cut. offset: a whole number; another one searches elsewhere.

    Returns:
        A checked `Plan`: the packed lay, or the plain one where that is shorter.

    Raises:
        CorsetkitError: one sentence, where there is nothing to lay or an item cannot lie on this cloth.
    """
    cloth, items = cloth or Cloth(), tuple(items)
    if not items:
        raise CorsetkitError(f"nothing is cut of this cloth{f' ({layer})' if layer else ''}, so there is nothing to lay")
    checked_seconds(seconds)
    refuse_crossed(items)
    kinds = templates(items, cloth)
    plain = planned_in_rows(kinds, items, cloth, layer)
    wrong = faults(plain, items)
    if wrong:
        raise ValueError(f"the plain lay fails its check: {wrong[0]}")
    if progress:
        progress(0.0, plain.length)
    shortest = plain.length <= plain.bound + 1e-6
    laid = None if shortest else pack(kinds, cloth, seconds, progress, plain.length, offset)
    packed = _plan(laid, cloth, layer, plain.length, plain.fingerprint) if laid else plain
    best = packed if packed.length < plain.length and not faults(packed, items) else plain
    if progress:
        progress(1.0, best.length)
    return best


def plain_plan(items: Iterable[Item], cloth: Cloth, layer: str = "") -> Plan:
    """The row-by-row lay alone, at once; CorsetkitError where an item cannot lie on this cloth."""
    items = tuple(items)
    refuse_crossed(items)
    return planned_in_rows(templates(items, cloth), items, cloth, layer)


def planned_in_rows(kinds: Iterable[Template], items: Iterable[Item], cloth: Cloth, layer: str) -> Plan:
    """The row-by-row lay of the items' templates for this cloth, for whoever has looked at the items already."""
    made = _plan(rows(kinds, cloth), cloth, layer, 0.0, fingerprint(items))
    return replace(made, plain=made.length)


def checked_seconds(seconds: object) -> float:
    """The seconds that a plan may be given; CorsetkitError for others."""
    number = to_float(seconds) if is_number(seconds) else math.nan
    if not 0 <= number <= MOST:
        raise CorsetkitError(f"the time for a plan is {shown(seconds)}: allowed are 0 to {MOST:g} seconds")
    return number


def plan_further(
    known: Plan, items: Iterable[Item], seconds: float = 10.0, progress: Progress | None = None, offset: int = 1
) -> Plan:
    """Another search for a known plan's items on its cloth; the shorter of the two plans."""
    new = plan(items, known.cloth, seconds, progress, known.layer, offset)
    return known if known.fingerprint == new.fingerprint and known.length <= new.length else new


def plans(
    finished: Finished,
    cloth: Cloth | Mapping[str, Cloth] | None = None,
    seconds: float | None = SECONDS,
    progress: Progress | None = None,
) -> dict[str, Plan]:
    """A plan for each cloth of a `Finished` pattern, by its name, from outside inwards.

    `cloth` is one `Cloth` for all, or a dict of one for each; `seconds` are for each plan, and None takes the plain lays;
    `progress` counts all of them.
    """
    layers = layers_of(finished)
    if seconds is None:
        return {layer: plain_plan(items_of(finished, layer), _of(cloth, layer), layer) for layer in layers}
    made = {}
    for done, layer in enumerate(layers):
        made[layer] = plan(items_of(finished, layer), _of(cloth, layer), seconds, _part_of(progress, done, len(layers)), layer)
    return made


def _of(cloth: Cloth | Mapping[str, Cloth] | None, layer: str) -> Cloth:
    """The cloth that a layer is cut of."""
    return (cloth.get(layer) if isinstance(cloth, Mapping) else cloth) or Cloth()


def _part_of(progress: Progress | None, done: int, count: int) -> Progress | None:
    if progress is None:
        return None
    return lambda share, length: progress((done + share) / count, length)


def _plan(laid: Iterable[Laid], cloth: Cloth, layer: str, plain: float, print_of: str) -> Plan:
    """The plan of (template, degrees, step), copies counted in the items' order."""
    order = sorted(laid, key=lambda one: (one[0].item.number, one[0].mirrored, one[2].imag, one[2].real))
    copies: dict[int, int] = {}
    found: list[Placed] = []
    for template, turned, at in order:
        item = template.item
        copies[item.number] = copy = copies.get(item.number, 0) + 1
        found.append(
            Placed(item.number, item.name, copy, turned, template.mirrored, template.at_fold, at, template.laid(turned, at))
        )
    return Plan(cloth, layer, tuple(found), plain, print_of)
