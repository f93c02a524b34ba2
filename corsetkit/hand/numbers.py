"""Which number a mark bears in the drawing: that of the move that makes it."""

from corsetkit.pattern.hand import Check, Turn


def moves_of(by_hand):
    """The instructions of a step without its checks, in their order."""
    return tuple(one for one in by_hand.instructions if not isinstance(one, Check))


def checks_of(by_hand):
    """The checks of a step, in their order."""
    return tuple(one for one in by_hand.instructions if isinstance(one, Check))


def numbers_of(moves):
    """For each mark the number of the move that makes it, with a letter where it makes several: a dict from its name.

    Helpers of curves are left out: their numbers would hide the rest.
    """
    numbers = {}
    for number, one in enumerate(moves, 1):
        names = [new for _, new in one.moved] if isinstance(one, Turn) else [getattr(one, "to", None)]
        names = [name for name in names if name and "helper" not in name]
        for letter, name in zip("abcdefghijklmnopqrstuvwxyz" if len(names) > 1 else ("",), names):
            numbers.setdefault(name, f"{number}{letter}")
    return numbers
