"""What a correction did: which lines moved and by how much, and the seams walked again."""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from corsetkit.geometry import paths
from corsetkit.geometry.curve import Curves, Line
from corsetkit.geometry.move import slid
from corsetkit.geometry.points import to_side
from corsetkit.pattern.pattern import Pattern
from corsetkit.units import CM_PER_INCH, say_length, say_number
from corsetkit.words import words_of

if TYPE_CHECKING:
    from corsetkit.steps.run import Steps

WORDS = words_of("fitting")

LEAST = {"cm": 0.05, "in": CM_PER_INCH / 32}
"""What a tape would read as zero in each unit, cm."""
SAME = 0.005
"""Lines nearer to each other than this, cm, lie in one place: far below a pencil's line, above what measuring misses."""
_ROUNDING = 1e-9
_LOOKED_AT = tuple(i / 32 for i in range(33))
_SPLIT = 0.002
"""How near its curve a line is followed to be measured to, cm."""


@dataclass(frozen=True)
class Moved:
    """A line that moved: its name, how far a point of it lies at most from the line as it was, and both runs on the block.

    Lengths are cm; the back is laid so that both backs have the same centre. A line that was not there, or is gone, has
    an empty run, and `most` is None.
    """

    name: str
    most: float | None
    before: Curves
    after: Curves


@dataclass(frozen=True)
class Walked:
    """A seam before and after: its length, and by how much its two sides miss each other afterwards, cm.

    `number` is the seam's in the pattern after, whence its letter comes.
    """

    number: int
    name: str
    before: float | None
    after: float
    difference: float


def moved(before: Pattern, after: Pattern) -> tuple[Moved, ...]:
    """The lines of the block that lie elsewhere in the `Pattern` `after` than in `before`, the farthest first."""
    shift = slid(before.steps.block.back.waist_centre - after.steps.block.back.waist_centre)
    old, new = lines_of(before.steps), lines_of(after.steps)
    found: list[Moved] = []
    for name in dict.fromkeys((*old, *new)):
        was, now = old.get(name, ()), new.get(name, ())
        if now and name in _backs(after.steps):
            now = paths.moved(now, shift)
        if _same(was, now):
            continue
        if was and now:
            most = max(_farthest(was, now), _farthest(now, was))
            if most > SAME:
                found.append(Moved(name, most, was, now))
        elif was or now:
            found.append(Moved(name, None, was, now))
    return tuple(sorted(found, key=lambda one: (one.most is not None, -(one.most or 0.0))))


def said_moved(found: Sequence[Moved], unit: str = "cm") -> tuple[str, ...]:
    """Sentences on what moved: "The overbust line, outer, moves by up to 0.4 cm." What no tape shows is told in one."""
    told: list[str] = []
    hidden = 0
    for one in found:
        if one.most is None:
            told.append(WORDS("line_new" if one.after else "line_gone", line=_closed(one.name)))
        elif one.most < LEAST[unit]:
            hidden += 1
        else:
            told.append(WORDS("line_moves", line=_closed(one.name), most=say_length(one.most, unit)))
    if hidden:
        told.append(WORDS.counted("lines_hidden", hidden))
    return tuple(told) or (WORDS("no_line_moved"),)


def _closed(name: str) -> str:
    """A line's name within a sentence: one with its side behind a comma is closed with another."""
    return f"{name}," if "," in name else name


def walked(before: Pattern, after: Pattern) -> tuple[Walked, ...]:
    """Every seam of the `Pattern` `after`, with its length in `before`, as `Walked`."""
    old: dict[str, list[float]] = {}
    for seam in before.seams:
        old.setdefault(seam.name, []).append(seam.lengths[0])
    found = []
    for seam in after.seams:
        lengths = old.get(seam.name)
        found.append(Walked(seam.number, seam.name, lengths.pop(0) if lengths else None, seam.lengths[0], seam.difference))
    return tuple(found)


def said_walked(found: Sequence[Walked], unit: str = "cm", named: Callable[[Walked], str] | None = None) -> tuple[str, ...]:
    """The seams in sentences, those first whose length changed: by how much, and that both sides agree.

    `named(walked)` begins a sentence with the seam; without it, it is called by its name alone.
    """
    named = named or _named
    told = []
    for one in found:
        if one.before is None:
            told.append(WORDS("seam_new", seam=named(one), length=say_length(one.after, unit)))
        elif abs(more := one.after - one.before) >= LEAST[unit]:
            told.append(WORDS("seam_longer" if more > 0 else "seam_shorter", seam=named(one), by=say_length(abs(more), unit)))
    worst = max((abs(one.difference) for one in found), default=0.0)
    told.append(WORDS("seams_walked", count=len(found), most=_millimetres(worst)))
    return tuple(told)


def _named(one: Walked) -> str:
    return WORDS("seam_named" if one.name.endswith("seam") else "seam_called", seam=one.name)


def _millimetres(cm: float) -> str:
    return "0.01 mm" if cm < 0.001 else f"{say_number(10 * cm, 2)} mm"


def lines_of(steps: "Steps") -> dict[str, Curves]:
    """The lines of a draft on its block, by name: {name: run}, the darts open."""
    return {name: path for name, path in {**_fronts(steps), **_backs(steps)}.items() if path}


def _fronts(steps: "Steps") -> dict[str, Curves]:
    block, under, over = steps.block, steps.underbust, steps.overbust
    front, point = block.front, block.bust_point
    dart = (Line(block.mouth_upper, point), Line(point, block.mouth_lower)) if block.side_dart else ()
    return {
        "bust point": (Line(point, point),),
        "front shoulder": front.shoulder,
        "front armscye": front.armscye,
        "front yoke's neckline": over.yoke_neckline,
        "side dart": dart,
        "front side seam": (*front.side_above, *under.side_waist, *under.side_below),
        "front hem": under.hem,
        "front parting": under.parting,
        "underbust dart, inner leg": (Line(point, under.inner), *under.inner_leg),
        "underbust dart, outer leg": (Line(point, under.outer), *under.outer_leg),
        "overbust line, inner": over.top_inner,
        "overbust line, outer": over.top_outer,
        "underbust line, inner": over.under_inner,
        "underbust line, outer": over.under_outer,
        "tightening dart, inner leg": (Line(over.mid_shoulder, over.top_left), Line(over.top_left, point)),
        "tightening dart, outer leg": (Line(over.mid_shoulder, over.top_right), Line(over.top_right, point)),
        "centre-front dart, upper leg": (Line(over.dart_upper, point),),
        "centre-front dart, lower leg": (Line(point, over.dart_lower),),
        "centre front above the cups": (Line(front.neck_centre, over.front_point), Line(over.front_point, over.dart_upper)),
    }


def _backs(steps: "Steps") -> dict[str, Curves]:
    half, step = steps.block.back, steps.back
    legs = step.waist.legs
    return {
        "back shoulder": half.shoulder,
        "back armscye": half.armscye,
        "back yoke line": step.yoke_line.kept,
        "back neckline": step.neckline.kept,
        "back hem": step.hem.kept,
        "back side seam": (*half.side_above, *step.waist.side_waist, *step.side_below),
        "back dart, side leg": legs[0],
        "back dart, centre leg": legs[1],
        "back parting, above the dart": step.upper_parting,
        "back parting, below the dart": step.lower_parting,
        "back opening": step.opening,
        "lacing edge": (Line(step.neckline.edge, step.hem.edge),),
    }


def _same(path: Curves, other: Curves) -> bool:
    """Whether two runs are one but for rounding."""
    return len(path) == len(other) and all(
        type(a) is type(b)
        and all(
            abs(getattr(a, name) - getattr(b, name)) < _ROUNDING for name in vars(a) if isinstance(getattr(a, name), complex)
        )
        for a, b in zip(path, other)
    )


def _farthest(path: Curves, other: Curves) -> float:
    """How far a point of the first run lies from the second, at most, cm."""
    # Each curve by itself, for a side seam has a gap where its dart lies open.
    places = [paths.flattened((curve,), _SPLIT) for curve in other]
    sides = [pair for found in places for pair in zip(found, found[1:] or found)]
    farthest, near, nearest = 0.0, 0, 0
    for point in (curve.point(t) for curve in path for t in _LOOKED_AT):
        least = math.inf
        # From where the last point was nearest on: a point that lies nearer than the farthest one is done with at once.
        for step in range(len(sides)):
            index = (near + step) % len(sides)
            away = to_side(point, *sides[index])
            if away < least:
                least, nearest = away, index
                if least <= farthest:
                    break
        near, farthest = nearest, max(farthest, least)
    return farthest
