"""An open page shows what stands, also where it was changed in another lesson meanwhile.

The page tells when it comes into sight and when it goes out of it. While one is in sight the desk is looked at each
second, which costs a look at the files' times; no page has to ask, and a page behind the others costs nothing.
"""

import asyncio

EVERY = 1.0
"""Seconds."""


class InSight:
    """Which pages of one desk are in sight; `look()` is called as one comes into sight, and each second while one is."""

    def __init__(self, look):
        self._look = look
        self._pages = set()
        self._next = None

    def told(self, page: str, seen: bool) -> None:
        """Take the word of a page."""
        if not seen:
            self._pages.discard(page)
            return
        self._pages.add(page)
        self._look()
        if self._next is None:
            self._wait()

    def _wait(self):
        try:
            self._next = asyncio.get_running_loop().call_later(EVERY, self._again)
        except RuntimeError:
            self._next = None  # Outside a kernel nothing is waiting for.

    def _again(self):
        self._next = None
        if self._pages:
            # First the next look, so that a mistake in this one is not the last.
            self._wait()
            self._look()
