"""Two set-ups at once do not meet: the second waits for the first.

The operating system's own lock is used: it ends with the process that holds it, so that a killed
set-up leaves no lock behind. The programs that install inherit it where the system can do that, so
that a set-up whose parent alone was killed still counts as running.
"""
import os
import time

from . import problems

try:
    import fcntl
except ImportError:  # Windows
    fcntl = None
    import msvcrt

NAME = "corsetkit_lock"


def _take(number):
    """True where the lock was free; OSError other than "it is held" means no locks here."""
    if fcntl is not None:
        fcntl.flock(number, fcntl.LOCK_EX | fcntl.LOCK_NB)
    else:
        msvcrt.locking(number, msvcrt.LK_NBLCK, 1)


class Lock:
    """with Lock(folder): only one process at a time."""

    def __init__(self, folder, say, patience=900.0, wait=0.3):
        self.path = os.path.join(folder, NAME)
        self.patience, self.say, self.wait = patience, say, wait
        self.number = None

    def __enter__(self):
        self.number = os.open(self.path, os.O_RDWR | os.O_CREAT, 0o666)
        end, told = time.monotonic() + self.patience, False
        while True:
            try:
                _take(self.number)
            except (BlockingIOError, PermissionError):
                pass  # held by another set-up
            except OSError:
                break  # a folder on a network drive may know no locks: go on without
            else:
                break
            if time.monotonic() > end:
                os.close(self.number)
                raise problems.SetupProblem(
                    "Another set-up of this course has not ended: close its window, then start again.")
            if not told:
                self.say("Another set-up of this course is running; waiting for it ...")
                told = True
            time.sleep(self.wait)
        if fcntl is not None:
            os.set_inheritable(self.number, True)
        return self

    def __exit__(self, *_):
        os.close(self.number)  # closing lets the lock go
