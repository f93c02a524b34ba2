"""Ctrl-C at any moment of the command: heard once, never lost, and not in the middle of a move that must be whole.

Only the standard library is imported, and little of it, for this is loaded before all else.
"""

import _thread
import signal
import time

STOPPED = 130
"""What a command that was stopped by hand ends with, as shells have it."""

_ONE_PRESS = 1.0
"""For so many seconds after it was raised a Ctrl-C is the same one: a key held down, while what was begun is cleared away."""
_A_MOMENT = 0.02
"""So many seconds later it is looked again whether a module is still being loaded."""


class Stop:
    """with Stop() as stop: Ctrl-C raises KeyboardInterrupt, as ever, but never while a module is being loaded.

    Compiled modules make another error of it, and write its traceback, and the same module is then half loaded for good. So
    it waits until the module is there. It is remembered in `asked`, should anything else make another error of it.
    """

    def __init__(self):
        self.asked = self._waits = self._will_come_again = False
        self._raised_at = self._before = None

    def __enter__(self):
        """Listen from now on."""
        before = signal.getsignal(signal.SIGINT)
        # Where it is ignored, as in a run in the background, it stays so.
        if callable(before):
            try:
                signal.signal(signal.SIGINT, self._heard)
                self._before = before
            except ValueError:
                pass  # only the first thread of a program hears it
        return self

    def __exit__(self, *_):
        before, self._before = self._before, None
        if before is not None:
            signal.signal(signal.SIGINT, before)

    def later(self):
        """From now on Ctrl-C is only remembered, until `heed`."""
        self._waits = True

    def heed(self):
        """KeyboardInterrupt where Ctrl-C was pressed since; from now on it raises at once."""
        self._waits = False
        if self.asked:
            raise KeyboardInterrupt

    def _heard(self, _, frame):
        self.asked = True
        if self._waits:
            return
        if _loads(frame):
            if not self._will_come_again:
                self._will_come_again = True
                _thread.start_new_thread(self._come_again, ())
            return
        now = time.monotonic()
        if self._raised_at is None or now - self._raised_at > _ONE_PRESS:
            self._raised_at = now
            raise KeyboardInterrupt

    def _come_again(self):
        time.sleep(_A_MOMENT)
        self._will_come_again = False
        if self._before is not None:
            _thread.interrupt_main()


def _loads(frame):
    """Whether a module is being loaded, as the frames of the call tell."""
    while frame is not None:
        if frame.f_code.co_filename.startswith("<frozen importlib"):
            return True
        frame = frame.f_back
    return False


def stoppable(work):
    """What `work(stop)` gives back; KeyboardInterrupt where it was stopped, though it may have ended with another error.

    It is listened until the program is gone, so that a Ctrl-C that comes when all is done changes nothing any more.
    """
    stop = Stop().__enter__()
    try:
        return work(stop)
    except Exception:
        if not stop.asked:
            raise
    finally:
        stop.later()
    raise KeyboardInterrupt
