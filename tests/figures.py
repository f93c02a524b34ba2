"""Named cases shared by the tests: the demo wearers and the mean body in every kind of style, drafted once."""

from functools import cache

from bodies import MEAN_BODY

from corsetkit import Style, demo_wearers, draft
from corsetkit.finish.choices import Finish
from corsetkit.finish.finished import finish
from corsetkit.quantity import quantities

WEARERS = {**dict(demo_wearers()), "mean body": MEAN_BODY}
"""The demo wearers are invented; the mean body's source stands in bodies.py."""

OPEN = {"front_opening": True, "back_opening": True}
STYLES = {
    "three parts": {},
    "two parts": {"cup_parts": 2},
    "three parts, no yoke": {"yoke": False},
    "two parts, no yoke": {"cup_parts": 2, "yoke": False},
    "three parts, openings": OPEN,
    "two parts, openings": {"cup_parts": 2, **OPEN},
    "two and three panels": {"centre_panels": 2, "side_panels": 3},
    "three and two panels, two parts": {"centre_panels": 3, "side_panels": 2, "cup_parts": 2},
}
METHODS = ("wearer", "guides")

CASES = tuple(
    (wearer, style, method)
    for style in STYLES
    for method in METHODS
    for wearer in (WEARERS if style in ("three parts", "two parts, openings") else ("Maren", "Ottilie", "Theda"))
)
"""Every wearer in two kinds of style, three unlike ones in all of them, both ways."""
FEW = tuple((wearer, "three parts", method) for wearer in WEARERS for method in METHODS)
"""Every wearer in the default style, both ways."""

RANGED = tuple(
    (quantity.name, end) for quantity in quantities(Style) if quantity.is_number for end in (quantity.low, quantity.high)
)
"""Each number of the style with both ends of its range."""


@cache
def figure(wearer, style="three parts", method="wearer"):
    """The pattern of one named case, drafted when it is first asked for."""
    return draft(WEARERS[wearer], Style(method=method, **STYLES[style]))


AS_CHOSEN = Finish()


_READY = {}
"""Finished patterns by the very pattern they were made of, not by one that is equal: edges and seams are looked up by which
they are."""


def ready_to_cut(pattern, choices=AS_CHOSEN):
    """A pattern ready to cut, made so when it is first asked for."""
    key = id(pattern), choices
    if key not in _READY:
        # The pattern is kept beside it, so that no other comes to bear its identity.
        _READY[key] = pattern, finish(pattern, choices)
    return _READY[key][1]


def words(case):
    """A case as its test's name."""
    return ", ".join(str(word) for word in case)
