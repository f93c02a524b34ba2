"""What each step reads of a style, watched as it reads: `READS` lists all of it, or a change would be taken for none."""

from functools import cache

import pytest
from figures import METHODS, RANGED, STYLES, WEARERS

from corsetkit import CorsetkitError, Style
from corsetkit.quantity import quantities
from corsetkit.steps.run import READS, RESTS_ON, STEPS, reads
from corsetkit.style import Fitting

UNLIKE = ("Maren", "Ottilie", "Theda")
"""Three unlike wearers, who meet what each value is read for."""
AMOUNTS = tuple((one.name, end) for one in quantities(Fitting) for end in (one.low / 6, one.high / 6))
"""Half of what one pass of a fitting allows, either way."""


class Watched:
    """A style, or what a fitting adds to it, that notes the name of each value read."""

    def __init__(self, read, seen):
        self._read, self._seen = read, seen

    def __getattr__(self, name):
        own = getattr(type(self._read), name, None)
        if isinstance(own, property):
            return own.fget(self)
        value = getattr(self._read, name)
        if isinstance(value, Fitting):
            return Watched(value, self._seen)
        self._seen.add(name)
        return value


def cases():
    """(wearer, style) for every wearer in every kind of style, and for each style value and each amount at its ends."""
    for method in METHODS:
        yield from ((wearer, {"method": method, **style}) for wearer in WEARERS for style in STYLES.values())
        for wearer in UNLIKE:
            yield from ((wearer, {"method": method, name: end}) for name, end in RANGED)
            yield from ((wearer, {"method": method, "fitting": Fitting(**{name: by})}) for name, by in AMOUNTS)


def watched(steps):
    """The names of what each step read, in all cases together; a step that refuses has read what it read."""
    seen = {name: set() for name in steps}
    for wearer, changes in cases():
        values, style = {}, Style(**changes)
        for name, step in steps.items():
            base = WEARERS[wearer] if name not in RESTS_ON else values.get(RESTS_ON[name])
            if base is None:
                continue
            try:
                values[name] = step(base, Watched(style, seen[name]))
            except CorsetkitError:
                continue
    return seen


@cache
def as_drawn():
    return watched(STEPS)


def listed(name):
    """What a step is said to read itself: style values, and amounts of a fitting by their own names."""
    return {one.name for one in reads(name)} | {one.name for one in quantities(Fitting) if one.name in READS[name]}


def not_listed(seen):
    """By step, what it read that is listed neither for it nor for a step it rests on."""
    found = {}
    for name, names in seen.items():
        known, step = listed(name), name
        while step in RESTS_ON:
            step = RESTS_ON[step]
            known = known | listed(step)
        if names - known:
            found[name] = names - known
    return found


def test_each_step_reads_only_what_is_listed_for_it():
    assert not not_listed(as_drawn())


@pytest.mark.parametrize("name", STEPS)
def test_what_is_listed_singly_is_read(name):
    """A group is what a lesson offers too, and holds what pieces read; a single name is there because the step reads it."""
    groups = {one.group for one in quantities(Style)}
    assert {one for one in READS[name] if one not in groups} <= as_drawn()[name]
    known = {one.name for one in (*quantities(Style), *quantities(Fitting))}
    assert set(READS[name]) <= groups | known


@pytest.mark.parametrize(
    "name, value, amount",
    [
        ("block", "hem_share", "underbust_girth"),
        ("back", "cup_seam_roundness", "tightening_dart"),
        ("darts", "cut_depth", None),
    ],
)
def test_a_step_that_reads_one_value_more_is_found(name, value, amount, monkeypatch):
    """The watch sees a style value, and an amount of the fitting, that is read and not listed."""
    monkeypatch.setattr(f"{__name__}.cases", lambda: iter([("Maren", {})]))

    def reading_more(base, style):
        getattr(style, value)
        if amount:
            getattr(style.fitting, amount)
        return STEPS[name](base, style)

    assert not_listed(watched({**STEPS, name: reading_more}))[name] == {value, amount} - {None}
