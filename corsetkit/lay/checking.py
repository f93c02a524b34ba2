"""Whether a plan can be cut: nothing overlaps, all lies on the cloth and on the grain, and nothing is missing."""

from collections.abc import Iterable, Iterator, Sequence

from corsetkit.errors import CorsetkitError
from corsetkit.lay.cloth import Cloth
from corsetkit.lay.items import Item
from corsetkit.lay.plans import Placed, Plan
from corsetkit.lay.templates import template

OVERLAP = 1e-4
"""Two outlines may share this much (cm2, a hundredth of a mm2): less is noise."""
NEAR = 1e-3
"""Distances may be short by this much (cm)."""
_SAME, _DEGREES = 1e-6, 1e-6


def refuse_crossed(items: Iterable[Item]) -> None:
    """Raise CorsetkitError for an outline that crosses itself: what lies inside it nobody can say."""
    from shapely import Polygon

    for item in items:
        for points in {item.outline, item.whole}:
            if len(points) < 3 or not Polygon([(p.real, p.imag) for p in points]).is_valid:
                raise CorsetkitError(
                    f"the cutting line of {item.called} crosses itself, so it cannot be laid: change its allowances"
                )


def faults(plan: Plan, items: Sequence[Item]) -> tuple[str, ...]:
    """A sentence for each thing that keeps the plan from being cut; none where all is well."""
    known = {item.number: item for item in items}
    strange = [f"{one.number} {one.name} is not to be cut of this cloth" for one in plan.placed if one.number not in known]
    if strange:
        return tuple(strange)
    return (
        *_counts(plan, items),
        *(fault for one in plan.placed for fault in _lies(one, known[one.number], plan.cloth)),
        *_neighbours(plan),
    )


def _counts(plan: Plan, items: Iterable[Item]) -> Iterator[str]:
    """Right numbers: through folded cloth a pair is cut at once, on single cloth it is a left and a right one."""
    for item in items:
        mine = [one for one in plan.placed if one.number == item.number]
        if sorted(one.copy for one in mine) != list(range(1, len(mine) + 1)):
            yield f"the copies of {item.called} are not counted from 1"
        if item.pair and plan.cloth.folded:
            right = (item.count + 1) // 2, 0
        else:
            mirrored = item.count // 2 if item.pair else 0
            right = item.count - mirrored, mirrored
        turned_over = sum(one.mirrored for one in mine)
        if len(mine) != sum(right):
            yield f"{item.called} is laid {len(mine)} times instead of {sum(right)} times"
        elif turned_over != right[1] and not (item.on_fold or plan.cloth.folded):
            yield f"{item.called} is mirrored {turned_over} times instead of {right[1]} times"


def _lies(one: Placed, item: Item, cloth: Cloth) -> Iterator[str]:
    """One outline: the right shape, on the grain, on the cloth, at the fold where it belongs there."""
    off = one.turned % 180
    if min(off, 180 - off) > cloth.tilt + _DEGREES or (cloth.one_way and one.upside_down):
        yield f"{item.called} is turned by {one.turned:g} degrees, off the grain of this cloth"
    if one.at_fold != (cloth.folded and item.on_fold):
        yield f"{item.called} lies in the wrong place for its fold"
        return
    true = template(item, one.mirrored, one.at_fold).laid(one.turned, one.at)
    if len(true) != len(one.outline) or max(abs(a - b) for a, b in zip(true, one.outline)) > _SAME:
        yield f"{item.called} is laid with an outline that is not its own"
        return
    if min(p.real for p in true) < cloth.low - NEAR or max(p.real for p in true) > cloth.high + NEAR:
        yield f"{item.called} lies beyond the usable width of the cloth"
    if min(p.imag for p in true) < -NEAR:
        yield f"{item.called} lies beyond the end of the cloth"
    if one.at_fold:
        yield from _fold(one, item)


def _fold(one: Placed, item: Item) -> Iterator[str]:
    """It is slid along the fold alone, and has points on it that are as far apart as its own fold is long."""
    on = [p.imag for p in one.outline if abs(p.real) <= NEAR]
    reach, long = max(on, default=0.0) - min(on, default=0.0), abs(item.fold[1] - item.fold[0]) if item.fold else 0.0
    if one.turned or abs(one.at.real) > _SAME or reach < long - NEAR:
        yield f"{item.called} does not lie at the fold"


def _neighbours(plan: Plan) -> Iterator[str]:
    """Pairs that overlap or lie nearer than the gap."""
    from shapely import Polygon, STRtree

    shapes = [Polygon([(p.real, p.imag) for p in one.outline]) for one in plan.placed]
    tree, gap = STRtree(shapes), plan.cloth.gap
    for i, shape in enumerate(shapes):
        for j in tree.query(shape.buffer(gap)):
            if j <= i:
                continue
            both = f"{plan.placed[i].number} {plan.placed[i].name} and {plan.placed[j].number} {plan.placed[j].name}"
            if shape.intersection(shapes[j]).area > OVERLAP:
                yield f"{both} overlap"
            elif shape.distance(shapes[j]) < gap - NEAR:
                yield f"{both} lie nearer to each other than the gap"
