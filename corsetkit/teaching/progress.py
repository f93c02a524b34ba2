"""How far a long answer is: whoever works long says so here, and who was asked for the answer hears it.

So nothing between the two has to hand it on, and where nobody listens, as in a test or a stored cell, nothing happens.
"""

from contextlib import contextmanager
from contextvars import ContextVar

_LISTENER = ContextVar("who listens", default=None)


@contextmanager
def heard_by(listener):
    """While this lasts, `listener(words, share)` is called with what is said in the same thread."""
    before = _LISTENER.set(listener)
    try:
        yield
    finally:
        _LISTENER.reset(before)


def say_working(words: str, done: int = 0, total: int = 0) -> None:
    """Say what is being worked on; where it is one of several things, how many of how many are done."""
    if listener := _LISTENER.get():
        listener(words, done / total if total else None)
