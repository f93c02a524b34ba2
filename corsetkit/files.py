"""Files written whole or not at all."""

import os
import re
from contextlib import suppress
from os import PathLike
from pathlib import Path

from corsetkit.errors import CorsetkitError
from corsetkit.lock import one_at_a_time


def write_whole(path: str | PathLike[str], data: bytes) -> None:
    """Write `data` to `path`; on any failure what stood there before still stands.

    What a process that was killed while it wrote this file has left beside it is cleared away. Raises CorsetkitError,
    naming the path, where the disk or a permission is in the way.
    """
    path = Path(path)
    lock = path.with_name(f".{path.name}.lock")
    try:
        with one_at_a_time(lock, said=f"{path} was not written: another window is writing it; try again in a moment"):
            _clear_left_over(path)
            _put(path, data)
    except OSError as error:
        reason = error.strerror or "the disk refused it"
        raise CorsetkitError(f"{path} was not written: {reason}") from None
    except CorsetkitError as refusal:
        # Whoever reads of it knows the file, and not the lock beside it.
        raise CorsetkitError(str(refusal).replace(str(lock), str(path))) from refusal.__context__


def _put(path: Path, data: bytes) -> None:
    # Beside the target, for a file is only put in place in one move within one directory.
    beside = path.with_name(f".{path.name}.{os.getpid()}.part")
    try:
        with open(beside, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        os.replace(beside, path)
    except BaseException:
        beside.unlink(missing_ok=True)
        raise


def _clear_left_over(path: Path) -> None:
    """Whoever writes the file holds its lock, so that what others have left beside it belongs to none that is alive."""
    left_over = re.compile(rf"\.{re.escape(path.name)}\.[0-9]+\.part")
    with suppress(OSError):
        for one in path.parent.iterdir():
            if left_over.fullmatch(one.name):
                one.unlink()
