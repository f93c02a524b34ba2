"""The check of a plan finds whatever is spoiled in it."""

from dataclasses import replace

import pytest
from laying import LAID, polygon
from scipy.optimize import brentq
from shapely.affinity import translate

from corsetkit.lay.checking import faults
from corsetkit.lay.cloth import FOLDED, SINGLE


def moved(made, which, by=0, **changes):
    """The plan with one of its pieces, the first of that number, slid by `by` with its outline, and then changed."""
    place = next(i for i, one in enumerate(made.placed) if one.number == which)
    one = made.placed[place]
    new = replace(replace(one, at=one.at + by, outline=tuple(p + by for p in one.outline)), **changes)
    return replace(made, placed=(*made.placed[:place], new, *made.placed[place + 1 :]))


SPOILED = {
    "beyond the cloth": (SINGLE, lambda made: moved(made, 7, by=-200), "beyond the usable width"),
    "beyond the end": (SINGLE, lambda made: moved(made, 7, by=-200j), "beyond the end"),
    "one left out": (SINGLE, lambda made: replace(made, placed=made.placed[:-1]), "laid 0 times instead of 1"),
    "one too many": (SINGLE, lambda made: replace(made, placed=(*made.placed, made.placed[0])), "3 times instead of 2"),
    "wrong hand told": (SINGLE, lambda made: moved(made, 7, mirrored=True), "mirrored 2 times instead of 1"),
    "off the grain": (SINGLE, lambda made: moved(made, 7, turned=5.0), "off the grain"),
    "another outline": (SINGLE, lambda made: moved(made, 7, outline=made.placed[0].outline), "not its own"),
    "a stranger": (SINGLE, lambda made: moved(made, 7, number=70), "not to be cut"),
    "off the fold": (FOLDED, lambda made: moved(made, 5, by=3), "not lie at the fold"),
    "not at the fold": (FOLDED, lambda made: moved(made, 5, at_fold=False), "wrong place for its fold"),
}


@pytest.mark.parametrize("laid, spoil, said", SPOILED.values(), ids=SPOILED)
def test_the_check_finds_what_is_spoiled(laid_shells, laid, spoil, said):
    """A sound plan has no fault; each way of spoiling it is told in a sentence that names the piece."""
    items, made = laid_shells[laid]
    assert faults(made, items) == ()
    assert any(said in fault for fault in faults(spoil(made), items))


@pytest.mark.parametrize("laid", LAID)
def test_the_check_finds_overlaps_and_narrow_gaps(laid_shells, laid):
    """Two pieces slid into each other overlap; slid nearer than the gap, by a fifth or by a half of it, they lie too near."""
    items, made = laid_shells[laid]
    pairs = [
        (i, j)
        for i, one in enumerate(made.placed)
        for j in range(i)
        if not one.at_fold and abs(polygon(one.outline).distance(polygon(made.placed[j].outline))) < 3
    ]
    assert pairs
    i, j = pairs[0]
    one, other = made.placed[i], made.placed[j]
    a, b = polygon(one.outline), polygon(other.outline)
    tangent = complex(b.centroid.x - a.centroid.x, b.centroid.y - a.centroid.y)
    tangent /= abs(tangent)
    slid = replace(one, at=one.at + 5 * tangent, outline=tuple(p + 5 * tangent for p in one.outline))
    spoiled = replace(made, placed=tuple(slid if p is one else p for p in made.placed))
    names = {one.name, other.name}
    assert any(fault.endswith("overlap") and all(name in fault for name in names) for fault in faults(spoiled, items))
    for share, near in ((0.5, True), (0.8, True), (1.05, False)):
        # One piece is slid straight away from the other, or to it, until they are that share of the gap apart.
        by = brentq(
            lambda s, share=share: translate(a, s * tangent.real, s * tangent.imag).distance(b) - share * made.cloth.gap,
            -40,
            _touch(a, b, tangent),
        )
        slid = replace(one, at=one.at + by * tangent, outline=tuple(p + by * tangent for p in one.outline))
        spoiled = replace(made, placed=tuple(slid if p is one else p for p in made.placed))
        told = [fault for fault in faults(spoiled, items) if all(name in fault for name in names)]
        assert any(fault.endswith("lie nearer to each other than the gap") for fault in told) is near, (share, told)


def _touch(a, b, tangent):
    """How far the outline `a` can be slid along `way` until it lies on `b`."""
    return brentq(lambda s: translate(a, s * tangent.real, s * tangent.imag).distance(b) or -1.0, -40, 5, xtol=1e-9)
