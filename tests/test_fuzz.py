"""No body that `Measurements` accepts ends in anything but a pattern or one sentence (fuzz.py says where they come from)."""

import pytest
from figures import WEARERS
from fuzz import STYLES, fuzzed
from promises import faults

from corsetkit import CorsetkitError, draft


def test_bodies_from_everywhere_are_drafted_or_refused_in_one_sentence():
    """Of 300 bodies from all over the fifteen ranges each gives a pattern or one sentence, and a good part is drawn."""
    became, wrong = fuzzed(300, seed=10)
    assert not wrong, "\n".join(wrong)
    assert became["drafted"] > 60 and became["refused"] > 60


@pytest.mark.parametrize("name", WEARERS)
def test_hips_near_the_waist_or_under_it_are_drafted(name):
    """With every hip girth that her measurements allow a demo wearer is drafted, and where the hips are narrow, so that the
    hem is highest between its ends, the pattern keeps its promises."""
    body, narrow = WEARERS[name], []
    for hips in range(65, 130):
        try:
            other = body.replaced(hip_girth=hips)
        except CorsetkitError:
            continue
        pattern = draft(other)
        if hips <= other.waist_girth:
            narrow.append(pattern)
    for pattern in narrow[::5]:
        assert not faults(pattern), (name, pattern.measurements.hip_girth)


def test_narrow_hips_are_drafted_in_every_style():
    """Hips at the waist are drawn in every kind of style, or refused in one sentence."""
    for style in STYLES:
        for name, body in WEARERS.items():
            try:
                pattern = draft(body.replaced(hip_girth=max(65.0, body.waist_girth)), style)
            except CorsetkitError as refusal:
                assert "\n" not in str(refusal)
            else:
                assert not faults(pattern, but=("blend",)), name
