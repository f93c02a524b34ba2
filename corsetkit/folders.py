"""A folder written whole or not at all, in which nothing that is not ours is ever lost.

The new files are written into a hidden folder beside the place, which is then moved there; an older folder of ours steps
aside before that, and what it holds besides our own files is moved over. Hidden names and a lock are all that a run has
outside its folder, so that a later run can tell what one that was killed has left, and mend it.
"""

import os
import re
import shutil
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from errno import EEXIST, ENOTDIR, ENOTEMPTY
from itertools import chain, count
from pathlib import Path

from corsetkit.errors import CorsetkitError
from corsetkit.folder_record import RECORD, read_record, write_record
from corsetkit.lock import one_at_a_time
from corsetkit.units import shown

_HIDDEN = ".{}.corsetkit.{}"
_LEFT_OVER = re.compile(r"\.(.+)\.corsetkit\.(?:part|older|lock)")
_NAMED = 5
"""How many files are told by name."""


@dataclass
class NewFolder:
    """A folder that is being made: its files are written into `beside`; `said` tells what is worth knowing, at the end."""

    beside: Path
    said: list = field(default_factory=list)


@contextmanager
def new_folder(folder, of="", again=False, placing=None):
    """with new_folder(folder) as made: the files are written into `made.beside`, and stand in `folder` afterwards.

    Args:
        folder: the place; its parent is there. of: whom the folder is written for.
        again: whether an older folder of ours, written for the same, is replaced; the user's own files in it are kept.
        placing: called when all is written and only the move into place is left.

    Raises:
        CorsetkitError: one sentence, where the folder is there already, another run is writing it, or the disk refuses it;
            then, as after whatever else is raised in the block, what stood there before still stands.
    """
    places = _Places(folder)
    try:
        with one_at_a_time(
            places.lock,
            0,
            f"another run is writing the folder {folder} at this moment, so it was left to that one: wait until it has ended",
        ):
            made = NewFolder(places.part, _mended(places))
            refuse_older(folder, of, again)
            places.part.mkdir()
            try:
                yield made
                write_record(places.part, of)
                if placing:
                    placing()
                _put_in_place(places, again)
            except BaseException:
                # Where even that is refused, the next run does it.
                with suppress(OSError, CorsetkitError):
                    _mended(places)
                raise
            made.said += _emptied(places)
    except OSError as error:
        raise CorsetkitError(f"{folder} was not written: {error.strerror or 'the disk refused it'}") from None
    except CorsetkitError as refusal:
        # Hidden names stand for a moment only; whoever reads of it knows the folder.
        said = str(refusal)
        for hidden in (places.part, places.lock):
            said = said.replace(str(hidden), str(folder))
        raise CorsetkitError(said) from refusal.__context__


def refuse_older(folder, of="", again=False):
    """CorsetkitError where something stands at `folder` that may not be replaced."""
    if not os.path.lexists(folder):
        return
    if not folder.is_dir() or folder.is_symlink():
        raise CorsetkitError(f"{folder} is there already and is no folder of ours: move it, or write to another one")
    if not again:
        raise CorsetkitError(
            f"the folder {folder} is there already, so it was left as it is: ask for it to be written "
            "again, or write to another one"
        )
    record = read_record(folder)
    if record is None:
        if others := sorted(one.name for one in folder.iterdir()):
            raise CorsetkitError(
                f"the folder {folder} holds {shown(others[0])} and no {RECORD}, so whose its files are cannot "
                "be told and it was left as it is: move it elsewhere first"
            )
    elif not record.is_of(of):
        raise CorsetkitError(
            f"the folder {folder} was written for {shown(record.of)}, so it was left as it is: move it "
            "elsewhere first, or write to another one"
        )


def mended(into):
    """Mend what runs that were killed have left in the folder `into`, and say what was done, a sentence each.

    What belongs to a run that is alive is left alone.
    """
    said = []
    try:
        names = {found[1] for one in into.iterdir() if (found := _LEFT_OVER.fullmatch(one.name))}
    except OSError:
        return said
    for name in sorted(names):
        places = _Places(into / name)
        try:
            with one_at_a_time(places.lock, 0):
                try:
                    said += _mended(places)
                except CorsetkitError as refusal:
                    said.append(f"{refusal}.")
        except (CorsetkitError, OSError):
            # A run that is alive, or a disk that refuses: whoever writes this folder is told.
            continue
    return said


class _Places:
    """A folder and the hidden names beside it. They are the same in every run: what is found there while the lock is held
    belongs to a run that is dead, whatever number the system gave to it."""

    def __init__(self, folder):
        self.folder = folder
        self.part, self.older, self.lock = (
            folder.with_name(_HIDDEN.format(folder.name, kind)) for kind in ("part", "older", "lock")
        )


def _mended(places):
    """Bring a folder back to what it was, or forward to what it was to be, and say so; the lock is held."""
    name, said = places.folder.name, []
    if os.path.lexists(places.part):
        shutil.rmtree(places.part)
        said.append(f"A run that was broken off had begun the folder {name}: what it had begun was cleared away.")
    if not os.path.lexists(places.older):
        return said
    if not os.path.lexists(places.folder):
        places.older.rename(places.folder)
        return [f"A run that was broken off had put the folder {name} aside: it was put back as it was."]
    if read_record(places.folder) is None:
        # Not the one that was to take its place.
        raise CorsetkitError(
            f"the folder {places.folder} is there, and beside it the hidden folder {places.older.name} that was "
            "put aside in a run that was broken off: keep one of them and move the other elsewhere"
        )
    return [f"A run that was broken off had not cleared the older folder {name} away: that was done.", *_emptied(places)]


def _put_in_place(places, again):
    """Move the new folder into its place; an older one of ours is put aside before."""
    if again and os.path.lexists(places.folder):
        places.folder.rename(places.older)
    try:
        # The system refuses this where a folder with anything in it, or a file, has come to stand there in the meantime.
        places.part.rename(places.folder)
    except OSError as error:
        taken = error.errno in (EEXIST, ENOTEMPTY, ENOTDIR)
        if not (taken and os.path.lexists(places.folder)):
            raise
    else:
        return
    raise CorsetkitError(
        f"the folder {places.folder} was made by another program in the meantime, so it was left as it is: "
        "ask for it to be written again, or write to another one"
    )


def _emptied(places):
    """Drop our own files of the folder that was put aside, move the others into the new one, and say which."""
    if not os.path.lexists(places.older):
        return []
    record, moved = read_record(places.older), {}
    try:
        # Those whose names are free come first, and the record goes last: should this be broken off, it can be done again.
        for one in sorted(places.older.iterdir(), key=lambda one: (one.name == RECORD, _stands(places, one), one.name)):
            if record and record.is_ours(one):
                one.unlink()
            else:
                to = _free(places.folder, one.name)
                one.rename(to)
                moved[one.name] = to.name
        places.older.rmdir()
    except OSError as error:
        return [
            *_said_moved(places.folder.name, moved),
            f"Not all of the older folder {places.folder.name} could be moved ({error.strerror or 'the disk refused it'}): "
            f"the rest stands in the hidden folder {places.older.name}, and the next run will try again.",
        ]
    return _said_moved(places.folder.name, moved)


def _stands(places, one):
    return os.path.lexists(places.folder / one.name)


def _free(folder, name):
    stem, ending = os.path.splitext(name)
    tries = chain((name, f"{stem}_kept{ending}"), (f"{stem}_kept_{number}{ending}" for number in count(2)))
    return next(folder / one for one in tries if not os.path.lexists(folder / one))


def _said_moved(name, moved):
    if not moved:
        return []
    told = [one if one == to else f"{one}, changed since it was written, as {to}" for one, to in moved.items()]
    more = f"; and {len(told) - _NAMED} more" if told[_NAMED:] else ""
    return [f"What is not ours in the folder {name} was kept: {'; '.join(told[:_NAMED])}{more}."]
