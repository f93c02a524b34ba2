"""Several things named in one sentence."""

from functools import reduce

from corsetkit.words import words_of

SHARED = words_of("shared")


def listed(names) -> str:
    """The names one after another, "inner cup and outer cup"; nothing where there is none."""
    names = tuple(names)
    return reduce(lambda before, name: SHARED("pair", one=before, other=name), names) if names else ""
