"""The packer: outlines fitted into one another on a strip as wide as the cloth, in a given number of seconds.

Its strip lies on its side: along the cloth is to its right, across the cloth upwards. It counts its time in whole seconds
and by the clock, so that it never gives the same plan twice for certain; what it gives is checked elsewhere.
"""

import threading
import time
from collections.abc import Callable, Iterable, Sequence
from itertools import permutations
from typing import TYPE_CHECKING, Any, TypeAlias

from corsetkit.geometry.points import Point, direction
from corsetkit.lay.cloth import Cloth
from corsetkit.lay.templates import Template

if TYPE_CHECKING:
    from shapely import Polygon

SLACK, ROUGH = 0.06, 0.04
"""Outlines are widened by half the gap and SLACK, and then drawn with fewer points, at most ROUGH off; cm."""
SPINE, SNAP = 0.02, 0.01
"""How thick the spine is that holds the fold's pieces at the fold, and how far it may still slip; cm."""
_TRIED = 6
"""Of so many pieces at the fold every order is tried."""
_POLL = 0.05
"""Seconds between two reports."""


Laid: TypeAlias = tuple[Template, float, complex]
"""A template as it is laid: by how many degrees it is turned, and the step that slides it there."""
Progress: TypeAlias = Callable[[float, float], None]
"""Told of the share that is done, and of the best length so far."""
_Held: TypeAlias = Sequence[tuple[Template, float]]
_Shape: TypeAlias = list[tuple[float, float]]


def pack(
    templates: Iterable[Template], cloth: Cloth, seconds: float, progress: Progress | None, first: float, offset: int
) -> tuple[Laid, ...] | None:
    """Each template as often as it is laid, as (template, degrees, step); None where the packer finds nothing.

    `progress(share of the time, best length so far)` is called from this thread; `first` is the length to beat. `offset`
    sets it off on another search.
    """
    sure = cloth.gap / 2 + SLACK - ROUGH
    strip = cloth.room + (1 if cloth.folded else 2) * sure
    base = cloth.low if cloth.folded else cloth.low - sure
    free = [one for one in templates if not one.at_fold]
    held = _at_the_fold([one for one in templates if one.at_fold for _ in range(one.count)], cloth)
    kinds = [(str(i), _shape(_widened(one.flat, cloth)), one.count, cloth.turns) for i, one in enumerate(free)]
    if held:
        kinds.append(("fold", _shape(_composite(held, cloth, strip)), 1, (0.0,)))
    if any(_tall(shape) > strip for _, shape, _, _ in kinds):
        return None
    solution = _solved(kinds, strip, seconds, progress, first, offset)
    return None if solution is None else _read(solution, free, held, base + strip, cloth)


def _read(solution: Any, free: Sequence[Template], held: _Held, top: float, cloth: Cloth) -> tuple[Laid, ...]:
    """The packer's answer on our cloth, sliding everything down to its end."""
    laid: list[Laid] = []
    for one in solution.placed_items:
        step = complex(*one.translation) * 1j + top
        if one.id == "fold":
            # Back on the fold itself, from which the spine lets it slip by no more than SNAP.
            laid.extend((template, 0.0, complex(0, up + step.imag)) for template, up in held)
        else:
            turned = min(cloth.turns, key=lambda tangent: abs(direction(tangent) - direction(one.rotation)))
            laid.append((free[int(one.id)], turned, step))
    lowest = min(p.imag for template, turned, step in laid for p in template.laid(turned, step))
    return tuple((template, turned, step - 1j * lowest) for template, turned, step in laid)


def _at_the_fold(pieces: Sequence[Template], cloth: Cloth) -> list[tuple[Template, float]]:
    """(template, how far up the cloth) of pieces along the fold, close up, in the order that takes least of it."""
    from shapely import Polygon

    if not pieces:
        return []
    shapes = [Polygon([(p.real, p.imag) for p in one.flat]) for one in pieces]
    numbers = range(len(pieces))
    steps = {(i, j): _close_up(shapes[i], shapes[j], cloth.gap + 2 * SLACK) for i in numbers for j in numbers if i != j}

    def ups(order: Sequence[int]) -> list[float]:
        made = [0.0]
        for i, j in zip(order, order[1:]):
            made.append(made[-1] + steps[i, j])
        return made

    def length(order: Sequence[int]) -> float:
        made = ups(order)
        head = max(up + shapes[i].bounds[3] for i, up in zip(order, made))
        foot = min(up + shapes[i].bounds[1] for i, up in zip(order, made))
        return float(head - foot)

    orders: Iterable[tuple[int, ...]] = permutations(numbers) if len(pieces) <= _TRIED else [tuple(numbers)]
    best = min(orders, key=length)
    return [(pieces[i], up) for i, up in zip(best, ups(best))]


def _close_up(lower: "Polygon", upper: "Polygon", gap: float) -> float:
    """How far up the upper shape lies from its own place when it is let down along the fold onto the lower one."""
    from shapely.affinity import translate

    apart = lower.bounds[3] + gap - upper.bounds[1]
    near = apart - (lower.bounds[3] - lower.bounds[1]) - gap
    for _ in range(30):
        middle = (near + apart) / 2
        if lower.distance(translate(upper, 0, middle)) >= gap:
            apart = middle
        else:
            near = middle
    return float(apart)


def _composite(held: _Held, cloth: Cloth, strip: float) -> "Polygon":
    """The fold's pieces as one outline: bound together along the fold, and by a spine across the whole strip.

    The packer cannot be told to keep a piece at the fold; but what is as high as its strip has nowhere else to go.
    """
    from shapely import box, unary_union

    shapes = [_widened([p + 1j * up for p in one.flat], cloth) for one, up in held]
    foot, head = min(s.bounds[1] for s in shapes), max(s.bounds[3] for s in shapes)
    bound = unary_union([*shapes, box(0, foot, SPINE, head), box(0, foot, strip - SNAP, foot + SPINE)])
    return bound.intersection(box(0, foot, strip, head))


def _widened(points: Iterable[Point], cloth: Cloth) -> "Polygon":
    """An outline that lies outside the true one by half the gap and a little, with few points."""
    from shapely import Polygon

    true = Polygon([(p.real, p.imag) for p in points])
    return Polygon(true.buffer(cloth.gap / 2 + SLACK, join_style="mitre", mitre_limit=2).simplify(ROUGH).exterior)


def _shape(polygon: "Polygon") -> _Shape:
    """The outline on the packer's strip: our "up the cloth" is its "to the right"."""
    return [(y, -x) for x, y in polygon.exterior.coords]


def _tall(shape: _Shape) -> float:
    return max(y for _, y in shape) - min(y for _, y in shape)


def _solved(
    kinds: Sequence[tuple[str, _Shape, int, tuple[float, ...]]],
    strip: float,
    seconds: float,
    progress: Progress | None,
    first: float,
    offset: int,
) -> Any:
    """The packer's solution, asked for in a thread of its own so that progress can be told from this one."""
    import spyrrow

    items = [spyrrow.Item(name, shape, count, list(turns)) for name, shape, count, turns in kinds]
    instance = spyrrow.StripPackingInstance("lay", strip, items)
    search, close_up = _split(seconds)
    config = spyrrow.StripPackingConfig(
        total_computation_time=None, exploration_time=search, compression_time=close_up, seed=1 + offset
    )
    queue = spyrrow.ProgressQueue()
    found: list[Any] = []

    def work() -> None:
        try:
            found.append(instance.solve(config, queue))
        except BaseException:  # A panic of the packer's is no Exception; the plain lay stands in for it.
            return

    thread = threading.Thread(target=work, daemon=True)
    begun, best = time.monotonic(), first
    sound = (spyrrow.ReportType.ExplFeas, spyrrow.ReportType.CmprFeas, spyrrow.ReportType.Final)
    thread.start()
    while thread.is_alive():
        thread.join(_POLL)
        best = min([best, *(solution.width for kind, solution in queue.drain() if kind in sound)])
        if progress:
            progress(min((time.monotonic() - begun) / max(search + close_up, 0.3), 0.99), best)
    return found[0] if found else None


def _split(seconds: float) -> tuple[int, int]:
    """Whole seconds for the search, and from 5 s on a fifth of them for closing up; under one second the first lay alone."""
    whole = int(seconds)
    close_up = whole // 5
    return whole - close_up, close_up
