"""Files written whole or not at all."""

import os
from pathlib import Path

from corsetkit.errors import CorsetkitError


def write_whole(path, data: bytes) -> None:
    """Write `data` to `path`; on any failure what stood there before still stands.

    Raises CorsetkitError, naming the path, where the disk or a permission is in the way.
    """
    path = Path(path)
    # Beside the target, for a file is only put in place in one move within one directory.
    beside = path.with_name(f".{path.name}.{os.getpid()}.part")
    try:
        try:
            with open(beside, "wb") as file:
                file.write(data)
                file.flush()
                os.fsync(file.fileno())
            os.replace(beside, path)
        except BaseException:
            beside.unlink(missing_ok=True)
            raise
    except OSError as error:
        reason = error.strerror or "the disk refused it"
        raise CorsetkitError(f"{path} was not written: {reason}") from None
