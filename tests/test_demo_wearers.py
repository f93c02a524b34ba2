"""The demo wearers: invented, said to be, plausible, and as unlike each other as bodies are."""

import pytest

from corsetkit import draft
from corsetkit.wearers import demo_wearers

DEMO = dict(demo_wearers())


def test_the_demo_wearers_are_said_to_be_invented():
    """Each demo wearer's own row says that she is invented."""
    from corsetkit import wearers

    lines = (wearers.Path(wearers.__file__).parent / "demo_wearers.csv").read_text("utf-8").splitlines()
    assert len(lines) == 1 + len(DEMO) >= 7
    assert all(",invented: " in line for line in lines[1:])


def spans(key, low, high, slack):
    """Whether the demo wearers' values of `key` reach from `low` to `high`, and stay within."""
    values = sorted(key(body) for body in DEMO.values())
    return abs(values[0] - low) <= slack and abs(values[-1] - high) <= slack


def longer(body):
    """How much longer the front is than the back with its neck's rise of 3/4 in (1.9 cm)."""
    return body.front_waist_length - body.back_waist_length - 1.9


def test_the_demo_wearers_differ_as_bodies_do():
    """The demo wearers reach from 9 to 26 cm of bust less underbust, and so on."""
    assert spans(lambda body: body.bust_minus_underbust, 9, 26, 0.1)
    assert spans(longer, 0, 6, 0.2)
    assert spans(lambda body: body.bust_point_width, 15, 24, 0.1)
    assert spans(lambda body: body.back_waist_length, 33, 41, 0.5)
    # Broad and narrow for the bust, by the regression of US Army 2012 (ANSUR II), s 2.31 cm.
    breadth = [(body.across_back_width - 15.66 - 0.2289 * body.bust_girth) / 2.31 for body in DEMO.values()]
    assert min(breadth) < -2 and max(breadth) > 1
    assert any(body.waist_girth > body.underbust_girth for body in DEMO.values())
    assert any(body.hip_girth < body.bust_girth for body in DEMO.values())


@pytest.mark.parametrize("name", DEMO)
def test_each_demo_wearer_is_a_plausible_body(name):
    """Each demo wearer can be drawn: her bust point lies below the underarm, her shoulder inside."""
    body = DEMO[name]
    bust_level = body.front_waist_length - body.neck_to_bust_point
    underarm = body.front_waist_length - body.armscye_depth - 1.9 - 2.5
    assert 12 <= bust_level <= 18 and underarm - bust_level >= 2.5
    tip = body.neck_base_girth / 6 + 0.9 * body.shoulder_length
    assert body.across_front_width / 2 - 1 < tip < body.bust_girth / 4 - 2
    assert body.bust_point_width < 0.24 * body.bust_girth
    assert body.across_front_width < body.across_back_width
    # Nothing is said of any of them but that one front is not longer than its back, and that the draft says.
    assert not body.warnings
    assert any("side dart" in said for said in draft(body).warnings) == (longer(body) <= 0)
