"""How a cutting plan is judged from its outlines alone, by those who did not make it."""

import cmath
import math

import pytest
from shapely import Polygon

from corsetkit.lay.cloth import FOLDED, SINGLE

SHORT = 0.3
LAID = (SINGLE, FOLDED)


def polygon(points):
    return Polygon([(p.real, p.imag) for p in points])


def fits(true, laid):
    """Every rigid move that carries one closed line onto the other within 1e-6 cm: (mirrored, turn, the move)."""
    a, b = max(zip(true, true[1:]), key=lambda side: abs(side[1] - side[0]))
    for mirrored in (False, True):

        def hand(p, mirrored=mirrored):
            return p.conjugate() if mirrored else p

        for points in (laid, tuple(reversed(laid))):
            at, end = points[true.index(a)], points[true.index(b)]
            by = (end - at) / hand(b - a)

            def move(p, hand=hand, by=by, at=at):
                return hand(p - a) * by + at

            if len(true) == len(laid) and all(abs(move(p) - q) < 1e-6 for p, q in zip(true, points)):
                yield mirrored, by, move


def judge(made, items):
    """Assert from the outlines alone that the plan can be cut."""
    cloth = made.cloth
    shapes = [polygon(one.outline) for one in made.placed]
    for i, shape in enumerate(shapes):
        assert shape.is_valid
        for other in shapes[i + 1 :]:
            assert shape.intersection(other).area < 1e-4
            assert shape.distance(other) > cloth.gap - 2e-3
    low = 0.0 if cloth.folded else cloth.selvedge
    high = (cloth.width / 2 if cloth.folded else cloth.width) - cloth.selvedge
    bounds = [shape.bounds for shape in shapes]
    assert min(b[0] for b in bounds) > low - 2e-3 and max(b[2] for b in bounds) < high + 2e-3
    assert min(b[1] for b in bounds) > -2e-3
    assert made.length == pytest.approx(max(b[3] for b in bounds), abs=1e-9)
    for item in items:
        judge_item(item, [one for one in made.placed if one.number == item.number], cloth)
    assert {one.number for one in made.placed} == {item.number for item in items}


def judge_item(item, mine, cloth):
    """Count, hand, grain and fold of one item's copies."""
    assert len(mine) == (math.ceil(item.count / 2) if cloth.folded and item.pair else item.count)
    assert [one.copy for one in mine] == list(range(1, len(mine) + 1))
    for one in mine:
        true = item.outline if cloth.folded and item.on_fold else item.whole
        # An outline that is its own mirror image fits both ways: one of them has to be what is told.
        assert any(as_told(one, item, cloth, *fit) for fit in fits(true, one.outline)), (item.called, one.copy)
    if item.pair:
        assert sum(one.mirrored for one in mine) == (0 if cloth.folded else item.count // 2)


def as_told(one, item, cloth, mirrored, by, move):
    """Whether a fitted move is the one that is told, keeps to the grain and puts the fold where it belongs."""
    off = abs(math.degrees(cmath.phase(by * (item.grain.conjugate() if mirrored else item.grain) / 1j)))
    if mirrored != one.mirrored or (off > 90) != one.upside_down:
        return False
    straight = off if cloth.one_way or off < 90 else 180 - off
    folded = cloth.folded and item.on_fold
    at_fold = not folded or max(abs(move(p).real) for p in item.fold) < 2e-3
    return straight <= cloth.tilt + 1e-6 and at_fold and one.at_fold == folded
