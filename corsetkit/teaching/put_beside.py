"""What a learner kept is never written over because it cannot be read: it is put beside, under a name of its own."""

import os
import shutil
from itertools import count
from pathlib import Path

from corsetkit.errors import CorsetkitError


def put_beside(path, copied: bool = False) -> Path:
    """Give the file at `path` another name in its folder, or where it is `copied` put a second one there; its new path.

    The name says why, "record, not readable, 1.json", and its number is the first that is free: nothing that stands
    there is written over. CorsetkitError where the disk is in the way; then the file stands as it stood.
    """
    path = Path(path)
    try:
        beside = _free(path)
        try:
            if copied:
                shutil.copyfile(path, beside)
            else:
                os.replace(path, beside)
        except BaseException:
            beside.unlink(missing_ok=True)
            raise
    except OSError as error:
        reason = error.strerror or "the disk refused it"
        raise CorsetkitError(f"{path} cannot be read, and was not put beside: {reason}") from None
    return beside


def _free(path):
    """A file made here and now, so that nobody else's can be in its place."""
    for number in count(1):
        beside = path.with_name(f"{path.stem}, not readable, {number}{path.suffix}")
        try:
            with open(beside, "xb"):
                return beside
        except FileExistsError:
            continue
