"""The learner's desk: one record a kernel, kept on disk; every widget is a view of it.

Each lesson has a kernel and a desk of its own, and all of them share one folder. So the record is read, changed and
written anew under a lock: what another lesson changed meanwhile stands. Where the disk refuses, the lesson goes on and
`trouble` says what is not kept. What cannot be read is put beside before anything takes its place.
"""

import os
import re
from collections.abc import Callable
from contextlib import ExitStack
from dataclasses import replace
from pathlib import Path

from corsetkit.errors import CorsetkitError
from corsetkit.fitting.corrections_file import Kept
from corsetkit.lock import one_at_a_time
from corsetkit.measurements import Measurements
from corsetkit.teaching import record
from corsetkit.teaching.record import FILE, OWN, Record, carried_over, own_body, put_beside
from corsetkit.wearers import demo_wearers, read_wearers, write_wearers
from corsetkit.words import words_of

SHARED = words_of("shared")

RECORD, WEARERS, CORRECTIONS, PLANS = "record.json", "wearers.csv", "corrections.json", "cutting_plans_"
"""The files kept in the learner's folder; of the plans there is one for each wearer, which begins so."""
_PLANS_OF = re.compile(rf"{PLANS}[^,]*\.json")
"""What was put beside bears a comma, which no name of a plan's file does."""
_PATIENCE = 5.0
"""Seconds: another lesson is done with writing in some thousandths of one."""


def work_folder() -> Path:
    """The learner's own folder: in the clone, and not in git. CORSETKIT_WORK names another."""
    other = os.environ.get("CORSETKIT_WORK")
    return Path(other) if other else Path(__file__).parents[2] / "my_work"


class Desk:
    """The record, its file, and who wants to know of changes. Without a folder nothing is kept.

    `corrections` are those of a desk without a folder; elsewhere they are a file's.
    """

    def __init__(self, folder=None):
        self.folder = Path(folder) if folder else None
        self.demo = dict(demo_wearers())
        self.loaded: dict[str, Measurements] = {}
        self.record = Record()
        self.corrections = Kept()
        # The record as it was last read or written: where the present one differs, this lesson has changed it.
        self._stood = Record()
        self._seen: dict[str, tuple | None] = {}
        self._readable = True
        self._troubles: dict[str, str] = {}
        self._watchers: dict[str, Callable] = {}
        self.look_again()

    @property
    def trouble(self) -> str:
        """What could not be read or is not kept, in sentences."""
        return " ".join(self._troubles.values())

    def body(self) -> tuple[str, Measurements]:
        """Name and measurements of the chosen wearer; CorsetkitError where they are not complete."""
        if self.record.source == OWN:
            return self.record.own_name or "You", own_body(self.record)
        among = self.loaded if self.record.source == FILE else self.demo
        if self.record.wearer in among:
            return self.record.wearer, among[self.record.wearer]
        return next(iter(self.demo.items()))

    def change(self, by: str = "", **changes) -> None:
        """Change the record, keep it, and tell all watchers but `by`, who made the change.

        What another lesson changed since the last look comes in with it; then `by` is told too.
        """
        self.record = replace(self.record, **changes)
        self._tell("" if self._keep() else by)

    def watch(self, key: str, told) -> None:
        """Call `told` at each change; a later watcher of the same key takes the earlier one's place."""
        self._watchers[key] = told

    def load(self, wearers, by: str = "") -> None:
        """Take in wearers from a file; the first of them is chosen."""
        wearers = dict(wearers)
        if self.folder:
            beside = self.rewrite(WEARERS, _wearers_in, lambda path, _: write_wearers(path, wearers.items(), "cm"))
            self._trouble(WEARERS, beside)
        self.loaded = wearers
        self.change(by, source=FILE, wearer=next(iter(self.loaded)))

    def make_folder(self) -> Path:
        """The learner's folder, made where it is not there yet; CorsetkitError where it cannot be."""
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise CorsetkitError(f"the folder {self.folder} cannot be made: {error.strerror}") from None
        return self.folder

    def rewrite(self, name: str, read: Callable, write: Callable, is_whole=lambda found: True) -> str:
        """Write one of the kept files anew from what it holds, while no other lesson does.

        `write(path, read(path))` is called. What `read` refuses is put beside, and `read` is asked again of the empty
        place; of what it reads only in part, as `is_whole` says, a copy is put beside. Then a sentence says where that
        is; else it is empty. CorsetkitError where the disk is in the way: the file stands as it stood.
        """
        path, beside, said = self.make_folder() / name, None, ""
        with self._alone():
            try:
                found = read(path)
            except CorsetkitError:
                beside = put_beside(path)
                said, found = SHARED("kept_not_read", file=name, beside=beside.name), read(path)
            if not is_whole(found):
                said = SHARED("kept_read_in_part", file=name, beside=put_beside(path, copied=True).name)
            try:
                write(path, found)
            except BaseException:
                if beside:
                    os.replace(beside, path)
                raise
            self._seen[name] = self._signs().get(name)
        return said

    def look_again(self) -> None:
        """Take in what another lesson has changed since, and tell all watchers; where nothing has,
        it costs next to nothing."""
        if not self.folder or self._signs() == self._seen:
            return
        with ExitStack() as held:
            try:
                # Nobody is to put a new file in the place of the one that is read: Windows would refuse it.
                held.enter_context(self._alone())
            except CorsetkitError:
                pass  # A folder in which nothing can be written can still be read.
            self._take_in()
        self._tell("")

    # How it is kept.

    def _alone(self):
        return one_at_a_time(self.folder / ".lock", _PATIENCE)

    def _signs(self) -> dict[str, tuple | None]:
        """By its name, what tells each kept file from an earlier one of the same name."""
        found: dict[str, tuple | None] = {}
        try:
            with os.scandir(self.folder) as entries:
                for entry in entries:
                    if entry.name in (RECORD, WEARERS, CORRECTIONS) or _PLANS_OF.fullmatch(entry.name):
                        about = entry.stat()
                        found[entry.name] = about.st_mtime_ns, about.st_size, about.st_ino
        except OSError:
            pass  # No folder, no files; what is in the way is told when something is to be kept.
        return found

    def _take_in(self) -> bool:
        """Read what is kept, and whether anything was written by another; a change of this desk's own stays."""
        signs, before = self._signs(), self._seen
        self._seen = signs
        try:
            stood = record.read_file(self.folder / RECORD)
            self._readable = True
            if stood is not None:
                self.record, self._stood = carried_over(self._stood, self.record, stood), stood
            if before.get(RECORD) != signs.get(RECORD):
                self._trouble(RECORD)
        except CorsetkitError as error:
            self._readable = False
            afresh = self.record == Record()
            self._trouble(RECORD, SHARED("record_lost_afresh" if afresh else "record_lost", file=RECORD, error=error))
        if before.get(WEARERS) != signs.get(WEARERS):
            try:
                self.loaded = dict(_wearers_in(self.folder / WEARERS))
                self._trouble(WEARERS)
            except CorsetkitError as error:
                self._trouble(WEARERS, SHARED("wearers_lost", error=error))
        return before != signs

    def _keep(self) -> bool:
        """Write the record, with what others have changed; whether they had changed anything."""
        if not self.folder:
            return False
        moved = False
        try:
            self.make_folder()
            with self._alone():
                moved = self._take_in()
                self._write()
            self._trouble("the disk")
        except CorsetkitError as error:
            self._trouble("the disk", SHARED("not_kept", error=error))
        return moved

    def _write(self):
        path = self.folder / RECORD
        if not self._readable:
            self._trouble(RECORD, SHARED("kept_not_read", file=RECORD, beside=put_beside(path).name))
            self._readable = True
        record.write_file(path, self.record)
        self._stood = self.record
        self._seen = self._seen | {RECORD: self._signs().get(RECORD)}

    def _trouble(self, of: str, said: str = "") -> None:
        self._troubles.pop(of, None)
        if said:
            self._troubles[of] = said

    def _tell(self, by: str) -> None:
        for key, told in list(self._watchers.items()):
            if key != by:
                told()


def _wearers_in(path):
    return read_wearers(path) if path.exists() else ()
