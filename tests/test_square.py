"""What the printed square measures, and the scale that makes it true."""

import pytest

from corsetkit import CorsetkitError
from corsetkit.printing.scale import scale_for, scale_sentence


@pytest.mark.parametrize(
    "given, said",
    [
        (97, "103.1 %"),
        ("97 mm", "103.1 %"),
        ("97,5", "102.6 %"),
        (103, "97.1 %"),
        (100, "all is well"),
        (100.5, "all is well"),
        (99.5, "all is well"),
        (99.4, "100.6 %"),
        (101.6, "dashed"),
        ("50", "200.0 %"),
        (200, "50.0 %"),
    ],
)
def test_the_square_tells_the_scale(given, said):
    """What the square measures becomes one sentence: true, or the scale to set."""
    sentence = scale_sentence(given)
    assert said in sentence and "\n" not in sentence


def test_the_scale_makes_the_square_true():
    """Printed again at the scale told, a square that came out at any size comes out at 100 mm."""
    for measured in (83.3, 97.0, 101.25):
        assert measured * scale_for(measured) / 100 == pytest.approx(100)


@pytest.mark.parametrize(
    "given, remedy",
    [
        (9.7, "looks like centimetres"),
        (3.9, "looks like inches"),
        (0, "50 to 200"),
        (-97, "50 to 200"),
        (1e400, "not a length"),
        (float("nan"), "not a length"),
        ("", "not a length"),
        ("ten", "not a length"),
        (None, "not a length"),
        (True, "not a length"),
        ([97], "not a length"),
        (10**400, "not a length"),
        ("97 in", "not a length"),
        (201, "50 to 200"),
    ],
)
def test_nonsense_is_refused_in_a_sentence(given, remedy):
    """What cannot be a side of the square is refused, and the usual mistake is named."""
    with pytest.raises(CorsetkitError, match=remedy) as told:
        scale_sentence(given)
    assert "\n" not in str(told.value)


# -- paper
