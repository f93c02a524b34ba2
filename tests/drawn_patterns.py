"""Patterns for tests of drawing: the made-up one, and the demo wearers' in styles that look unlike each other."""

from contextlib import suppress
from functools import cache

from toy_pattern import toy_pattern

from corsetkit import CorsetkitError, Style, demo_wearers, draft
from corsetkit.quantity import quantities

STYLES = {
    "three-part": Style(),
    "two-part": Style(cup_parts=2),
    "no yoke": Style(yoke=False),
    "two-part, no yoke": Style(cup_parts=2, yoke=False),
    "guides": Style(method="guides"),
    "many panels": Style(centre_panels=3),
}


@cache
def drawn_patterns(every=True):
    """By what it is, each pattern that can be drafted, drafted once however many tests draw it.

    Without `every`, each further style is for two wearers only.
    """
    found = {"made up": toy_pattern()}
    for number, (name, measurements) in enumerate(demo_wearers()):
        for place, (style_name, style) in enumerate(STYLES.items()):
            what = f"{name}, {style_name}"
            if every:
                # Refused with a sentence there is nothing to draw. Who may be refused is tested with the draft.
                with suppress(CorsetkitError):
                    found[what] = draft(measurements, style)
            elif (not place or number % 4 == place % 4) and what in drawn_patterns():
                found[what] = drawn_patterns()[what]
    return found


def at_the_sliders_ends():
    """(what it is, pattern) with each style value at its least and at its largest, the wearers taking turns."""
    wearers = demo_wearers()
    for number, one in enumerate(quantities(Style)):
        if one.unit in ("choice", "yes or no"):
            continue
        for method in ("wearer", "guides"):
            for value in (one.low, one.high):
                name, measurements = wearers[number % len(wearers)]
                value = int(value) if one.unit == "count" else value
                try:
                    yield (
                        f"{name}, {method}, {one.name} {value}",
                        draft(measurements, Style(method=method, **{one.name: value})),
                    )
                except CorsetkitError:
                    continue
