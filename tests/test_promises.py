"""The pattern's promises, measured anew from its outlines (anew.py says how, promises.py what),
for every wearer, style and way."""

import anew
import pytest
from bodies import random_bodies, within
from figures import CASES, FEW, METHODS, RANGED, STYLES, WEARERS, figure, words
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from promises import PROMISES, faults

from corsetkit import Style, demo_wearers, draft
from corsetkit.errors import CorsetkitError
from corsetkit.pattern.edge import Kind
from corsetkit.quantity import quantities

PLAUSIBLE, SEED = 600, 1989
SLOW = ("blend",)
"""What a blend states is slow to work out, and hangs on no style value: where drafts are many, every fourth is asked."""
SEWN = (Kind.PANEL_SEAM, Kind.CUP_SEAM, Kind.SHOULDER)


def kept_or_refused(body, style, said, but=()):
    """The faults of a draft; where it is refused, its one sentence is noted in `said`."""
    try:
        pattern = draft(body, style)
    except CorsetkitError as refusal:
        sentence = str(refusal)
        assert sentence.strip() and "\n" not in sentence
        said.append(sentence)
        return []
    return faults(pattern, but)


@pytest.mark.parametrize("promise", PROMISES)
def test_a_pattern_keeps_its_promises(promise):
    """Every wearer's pattern, in every kind of style and both ways, keeps each promise."""
    broken = [f"{words(case)}: {said}" for case in CASES for said in PROMISES[promise](figure(*case))]
    assert not broken, f"{len(broken)} in all\n" + "\n".join(broken[:8])


@pytest.mark.parametrize("case", FEW, ids=words)
def test_every_kind_of_line_is_followed_across_a_seam(case):
    """Neckline, armscye, hem, underbust line and cut each run on across at least one seam."""
    across = [(first, second) for _, (first, second), _ in anew.seam_corners(figure(*case)) if anew.one_line(first, second)]
    free = {first.kind for first, _ in across if first.seam is None}
    assert {Kind.NECKLINE, Kind.ARMSCYE, Kind.HEM, Kind.LACING} <= free
    assert len({first.seam.number for first, _ in across if first.seam}) >= 3  # underbust, cut, back yoke
    assert len(across) >= 14


def test_only_sewn_edges_are_called_seams():
    """An edge's kind is a seam's where it is sewn, and a free edge's or a fold's where it is not."""
    wrong = [
        f"{words(case)}, {piece.name}: {edge.name} ({edge.kind.value})"
        for case in CASES
        for piece in figure(*case).pieces
        for edge in piece.edges
        if (edge.seam is not None) != (edge.kind in SEWN)
    ]
    assert not wrong


def test_demo_wearers_draft_to_the_wearer_and_most_both_ways():
    """Every demo wearer drafts to the wearer in every kind of style, and at least four also by the guides."""
    said = {
        (name, style, method): _tried(body, Style(method=method, **STYLES[style]))
        for name, body in demo_wearers()
        for style in STYLES
        for method in METHODS
    }
    assert not {case: one for case, one in said.items() if isinstance(one, str) and case[2] == "wearer"}
    for style in STYLES:
        both = [name for name, _ in demo_wearers() if not isinstance(said[name, style, "guides"], str)]
        assert len(both) >= 4, style


def _tried(body, style):
    """The draft, or the one sentence that refuses it."""
    try:
        return draft(body, style)
    except CorsetkitError as refusal:
        return str(refusal)


def test_plausible_bodies_draft_to_the_wearer():
    """At least 99.5 of 100 plausible random bodies draft to the wearer, and the others are told why in one line."""
    refused = [said for body in random_bodies(PLAUSIBLE, SEED) if isinstance(said := _tried(body, Style()), str)]
    print(f"{len(refused)} of {PLAUSIBLE} refused", *refused, sep="\n  ")
    assert all(said and "\n" not in said for said in refused)
    assert len(refused) <= 0.005 * PLAUSIBLE, "\n".join(refused)


def test_plausible_bodies_keep_the_promises():
    """A plausible random body's pattern keeps every promise, both ways, or is refused in one line."""
    said, broken = [], []
    for number, body in enumerate(random_bodies(20, SEED)):
        but = SLOW if number % 4 else ()
        for method in METHODS:
            broken += [f"body {number}, {method}: {one}" for one in kept_or_refused(body, Style(method=method), said, but)]
    assert not broken, "\n".join(broken)
    assert len(said) <= 4, said


@pytest.mark.parametrize("wearer", ["Maren", "Ottilie", "Yrsa"])
def test_every_end_of_a_style_range_keeps_the_promises(wearer):
    """At each end of each style value's range all promises hold, or the draft is refused in one line."""
    said, broken = [], []
    for number, (name, end) in enumerate(RANGED):
        # An opening's size matters only where there is one; ways and cups take turns.
        more = {
            "front_opening": "opening" in name,
            "back_opening": "opening" in name,
            "method": METHODS[number // 2 % 2],
            "cup_parts": 2 + number // 4 % 2,
            name: end,
        }
        but = SLOW if number % 4 else ()
        broken += [f"{more}: {one}" for one in kept_or_refused(WEARERS[wearer], Style(**more), said, but)]
    print(f"{wearer}: {len(said)} of {len(RANGED)} refused", *said, sep="\n  ")
    assert not broken, f"{len(broken)} in all\n" + "\n".join(broken[:8])
    assert len(said) <= 0.2 * len(RANGED), said


SOME_VALUES = st.lists(st.sampled_from(quantities(Style)), min_size=1, max_size=4, unique=True).flatmap(
    lambda some: st.fixed_dictionaries({quantity.name: within(quantity) for quantity in some})
)


@settings(max_examples=40, deadline=None, derandomize=True, database=None, suppress_health_check=list(HealthCheck))
@given(wearer=st.sampled_from(list(WEARERS)), values=SOME_VALUES)
def test_random_style_values_keep_the_promises(wearer, values):
    """With up to four style values taken at random within their ranges all promises hold, or one line refuses."""
    assert not kept_or_refused(WEARERS[wearer], Style(**values), [], SLOW)


@pytest.mark.parametrize("wearer", WEARERS)
def test_an_inch_more_of_bust_gives_more_fullness(wearer):
    """One inch more bust, all else alike, takes a larger angle at the bust point, measured on the block."""
    body = WEARERS[wearer]
    fuller = draft(body.replaced(bust_girth=body.bust_girth + 2.54), Style())
    taken = [
        sum(anew.angle_at(cut.outline, one.steps.overbust.bust_point) for cut in one.waste) for one in (figure(wearer), fuller)
    ]
    assert taken[1] > taken[0] + 0.5
