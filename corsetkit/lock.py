"""One at a time: what several processes write is written by one of them, while the others wait.

The operating system's own lock is used: it ends with the process that holds it, so that one that was killed leaves
no lock behind, only an empty file that the next one takes away.
"""

import os
import time
from contextlib import contextmanager, suppress

from corsetkit.errors import CorsetkitError

try:
    import fcntl
except ImportError:  # Windows
    fcntl = None  # type: ignore[assignment]
    import msvcrt

_WAIT = 0.01


@contextmanager
def one_at_a_time(path, patience: float = 10.0, said: str = "another window is writing there; try again in a moment"):
    """While the block runs, no other process, and no other thread, is in such a block for the same `path`.

    `path` is a file beside what is written, made for this and taken away afterwards. It is not for nesting: who holds
    it and asks again waits in vain. CorsetkitError where it cannot be made, and after `patience` seconds; then `said`
    tells what to do.
    """
    try:
        number = _taken(path, time.monotonic() + patience)
    except OSError as error:
        raise CorsetkitError(f"{path} was not written: {error.strerror or 'the disk refused it'}") from None
    if number is None:
        raise CorsetkitError(said)
    try:
        yield
    finally:
        # An open file can be taken away everywhere but on Windows; there it can only once nobody waits for it.
        if fcntl:
            with suppress(OSError):
                os.unlink(path)
        os.close(number)
        if not fcntl:
            with suppress(OSError):
                os.unlink(path)


def _taken(path, end):
    """The open file that is locked now; None where that was not to be had in time."""
    while True:
        number = os.open(path, os.O_RDWR | os.O_CREAT, 0o666)
        try:
            if not _locked(number, end):
                os.close(number)
                return None
            # Whoever held it took the file away: then others lock a new one by now, and so must this one.
            if _stands(number, path):
                return number
        except BaseException:
            os.close(number)
            raise
        os.close(number)


def _locked(number, end):
    while True:
        try:
            if fcntl:
                fcntl.flock(number, fcntl.LOCK_EX | fcntl.LOCK_NB)
            else:
                msvcrt.locking(number, msvcrt.LK_NBLCK, 1)
            return True
        except (BlockingIOError, PermissionError):
            pass  # held by another
        except OSError:
            return True  # a network drive may know no locks: better to go on without than not at all
        if time.monotonic() > end:
            return False
        time.sleep(_WAIT)


def _stands(number, path):
    try:
        return os.path.samestat(os.fstat(number), os.stat(path))
    except FileNotFoundError:
        return False
