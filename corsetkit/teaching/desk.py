"""The learner's desk: one record a kernel, kept on disk; every widget is a view of it.

The record is written whole at each change, so wearer, unit and style survive a restart and go from
lesson to lesson. Where the disk refuses, the lesson goes on and `trouble` says what is not kept.
"""

import os
from dataclasses import replace
from pathlib import Path

from corsetkit.errors import CorsetkitError
from corsetkit.files import write_whole
from corsetkit.measurements import Measurements
from corsetkit.teaching import record
from corsetkit.teaching.record import FILE, OWN, Record, own_body
from corsetkit.wearers import demo_wearers, read_wearers, write_wearers


def work_folder() -> Path:
    """The learner's own folder: in the clone, and not in git. CORSETKIT_WORK names another."""
    other = os.environ.get("CORSETKIT_WORK")
    return Path(other) if other else Path(__file__).parents[2] / "my_work"


class Desk:
    """The record, its file, and who wants to know of changes. Without a folder nothing is kept."""

    def __init__(self, folder=None):
        self.folder = Path(folder) if folder else None
        self.trouble = ""
        self.demo = dict(demo_wearers())
        self.loaded: dict[str, Measurements] = {}
        self.record = Record()
        self._text = None
        self._watchers: dict[str, object] = {}
        self.look_again()

    def body(self) -> tuple[str, Measurements]:
        """Name and measurements of the chosen wearer; CorsetkitError where they are not complete."""
        if self.record.source == OWN:
            return self.record.own_name or "You", own_body(self.record)
        among = self.loaded if self.record.source == FILE else self.demo
        if self.record.wearer in among:
            return self.record.wearer, among[self.record.wearer]
        return next(iter(self.demo.items()))

    def change(self, by: str = "", **changes) -> None:
        """Change the record, keep it, and tell all watchers but `by`, who made the change."""
        self.record = replace(self.record, **changes)
        self._keep()
        self._tell(by)

    def watch(self, key: str, told) -> None:
        """Call `told` at each change; a later watcher of the same key takes the earlier one's place."""
        self._watchers[key] = told

    def load(self, wearers, by: str = "") -> None:
        """Take in wearers from a file; the first of them is chosen."""
        wearers = dict(wearers)
        if self.folder:
            write_wearers(self.make_folder() / "wearers.csv", wearers.items(), "cm")
        self.loaded = wearers
        self.change(by, source=FILE, wearer=next(iter(self.loaded)))

    def make_folder(self) -> Path:
        """The learner's folder, made where it is not there yet; CorsetkitError where it cannot be."""
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise CorsetkitError(f"the folder {self.folder} cannot be made: {error.strerror}") from None
        return self.folder

    def look_again(self) -> None:
        """Read what is kept, where another lesson has changed it since."""
        if not self.folder:
            return
        try:
            text = (self.folder / "record.json").read_text(encoding="utf-8")
        except FileNotFoundError:
            return
        except (OSError, ValueError) as error:
            reason = getattr(error, "strerror", None) or "it is not text"
            self.trouble = f"What was kept cannot be read ({reason}), so the lesson starts afresh."
            return
        if text == self._text:
            return
        self._text = text
        try:
            self.record = record.read(text)
            wearers = self.folder / "wearers.csv"
            self.loaded = dict(read_wearers(wearers)) if wearers.exists() else {}
        except ValueError:
            self.trouble = "What was kept cannot be read, so the lesson starts afresh."
        self._tell("")

    def _tell(self, by: str) -> None:
        for key, told in list(self._watchers.items()):
            if key != by:
                told()

    def _keep(self) -> None:
        if not self.folder:
            return
        self._text = record.written(self.record)
        try:
            write_whole(self.make_folder() / "record.json", self._text.encode("utf-8"))
            self.trouble = ""
        except CorsetkitError as error:
            self.trouble = f"What you choose is not kept beyond this sitting: {error}."
