"""The wearer's form: who is drafted for, in which unit, and what the checks say of her numbers.

As with a table, a dict comes in and a dict goes out. A field holds what was typed until it can be
read; what can be read is kept in cm, so that changing the unit back and forth loses nothing.
"""

import math
import tempfile
from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace
from typing import Any

from corsetkit.errors import CorsetkitError, sentence
from corsetkit.measurements import Measurements
from corsetkit.plausible import IMPOSSIBLE
from corsetkit.quantity import quantities
from corsetkit.teaching.desk import Desk
from corsetkit.teaching.record import DEMO, FILE, OWN, Record, carried_over
from corsetkit.teaching.shared.listed import listed
from corsetkit.units import UNITS, in_one_unit
from corsetkit.wearers import read_wearers
from corsetkit.words import words_of

SHARED = words_of("shared")

_FIELDS = {one.name: one for one in quantities(Measurements)}


class Form:
    """The form of one desk; `key` is the form's own among the desk's watchers."""

    def __init__(self, desk: Desk, key: str):
        self.desk, self.key = desk, key
        self.rests: list[tuple[Record, Record]] = []
        """What the form changed: the record before and after, a pair for each change."""
        self.file_said = ""
        self.replaced = ""

    def handle(self, message: dict, buffers=()) -> None:
        """Do what the page asks."""
        kind = message.get("kind")
        if kind == "undo":
            self.replaced = ""
            if self.rests:
                before, after = self.rests.pop()
                # Only the form's own change is taken back: what was changed elsewhere since stands. And guesses are told
                # once: going back to other numbers takes none of them back.
                now = self.desk.record
                self._put(replace(carried_over(after, before, now), guesses=now.guesses))
            return
        before = self.desk.record
        self.file_said = ""
        self.replaced = ""
        if kind == "pick":
            self._pick(str(message.get("who", "")))
        elif kind == "unit" and message.get("unit") in UNITS:
            self._put(replace(before, unit=message["unit"]))
        elif kind == "set":
            self._fields(message.get("changes") or {})
        elif kind == "copy":
            self._copy()
        elif kind == "afresh":
            self._put(Record())
        elif kind == "path":
            self._read_file(Path(str(message.get("path", "")).strip().strip('"')).expanduser())
        elif kind == "file" and buffers:
            self._read_upload(str(message.get("name", "")), bytes(buffers[0]))
        if self.desk.record != before:
            self.rests.append((before, self.desk.record))

    def shown(self) -> dict:
        """The whole state of the page."""
        record = self.desk.record
        own = record.source == OWN
        fields = self._own_fields() if own else self._given_fields()
        return {
            "who": "own" if own else f"{record.source}:{self.desk.body()[0]}",
            "choices": self._choices(),
            "unit": record.unit,
            "own": own,
            "name": record.own_name,
            "fields": fields,
            "verdict": self._verdict(),
            "warnings": self._warnings(),
            "file_said": self.file_said,
            "trouble": self.desk.trouble,
            "undo": bool(self.rests),
        }

    def _put(self, record: Record) -> None:
        changes = {name: getattr(record, name) for name in record.__dataclass_fields__}
        self.desk.change(self.key, **changes)

    def _pick(self, who: str) -> None:
        if who == OWN:
            self.desk.change(self.key, source=OWN)
            return
        source, _, name = who.partition(":")
        if name in (self.desk.loaded if source == FILE else self.desk.demo):
            self.desk.change(self.key, source=source, wearer=name)

    def _copy(self) -> None:
        """The shown wearer's numbers as a start for one's own; where there are some already, it is said that they go."""
        name, body = self.desk.body()
        if self.desk.record.own:
            self.replaced = SHARED("form_replaced")
        own = {one: getattr(body, one) for one in _FIELDS if getattr(body, one) is not None}
        self.desk.change(self.key, source=OWN, own=own, own_name=f"{name}, changed")

    def _fields(self, changes: dict) -> None:
        record = self.desk.record
        own, name = dict(record.own), record.own_name
        for field, text in changes.items():
            text = str(text)
            if field == "name":
                name = " ".join(text.split())[:40]
            elif field in _FIELDS:
                own[field] = _read(field, text, record.unit)
        own = {field: value for field, value in own.items() if value not in ("", None)}
        self.desk.change(self.key, own=own, own_name=name)

    def _read_upload(self, name: str, data: bytes) -> None:
        # Under its own name, for a mistake is told with the file's name.
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / (Path(name.replace("\\", "/")).name or "wearers.csv")
            path.write_bytes(data)
            self._read_file(path)

    def _read_file(self, path: Path) -> None:
        try:
            wearers = read_wearers(path)
            self.desk.load(wearers, self.key)
        except CorsetkitError as error:
            self.file_said = sentence(SHARED("form_not_read", error=error))
            return
        names = ", ".join(name for name, _ in wearers)
        self.file_said = SHARED("form_read", file=path.name, names=names)

    def _choices(self) -> list:
        demo = [[f"demo:{name}", name] for name in self.desk.demo]
        loaded = [[f"file:{name}", name] for name in self.desk.loaded]
        groups = [[SHARED("form_invented"), demo], [SHARED("form_from_file"), loaded]]
        own = [[SHARED("form_own"), [[OWN, SHARED("form_my_own")]]]]
        return [group for group in groups if group[1]] + own

    def _given_fields(self) -> dict:
        body = self.desk.body()[1]
        return {
            name: {"text": one.say(getattr(body, name), self.desk.record.unit), "wrong": ""} for name, one in _FIELDS.items()
        }

    def _own_fields(self) -> dict:
        record = self.desk.record
        wrong = _contradictions(record.own)
        fields = {}
        for name, one in _FIELDS.items():
            value = record.own.get(name)
            if isinstance(value, str):
                fields[name] = {"text": value, "wrong": in_one_unit(_refusal(name, value, record.unit), record.unit)}
            else:
                text = "" if value is None else one.say(value, record.unit)
                fields[name] = {"text": text, "wrong": wrong.get(name, "")}
        return fields

    def _verdict(self) -> dict:
        """One sentence on whether these numbers can be drafted."""
        try:
            name, _ = self.desk.body()
        except CorsetkitError as error:
            needed = [one for one in _FIELDS.values() if not one.optional]
            filled = sum(1 for one in needed if self.desk.record.own.get(one.name))
            if filled < len(needed):
                return {"good": False, "text": SHARED("form_filled", filled=filled, needed=len(needed))}
            return {"good": False, "text": SHARED("form_wrong", reason=sentence(str(error)))}
        kind = {OWN: "own", DEMO: "invented"}.get(self.desk.record.source, "file")
        return {"good": True, "text": SHARED(f"form_drafting_{kind}", name=name)}

    def _warnings(self) -> list:
        try:
            found = [sentence(in_one_unit(one, self.desk.record.unit)) for one in self.desk.body()[1].warnings]
        except CorsetkitError:
            found = []
        return [self.replaced, *found] if self.replaced else found


def _read(field: str, text: str, unit: str):
    """What was typed as cm, or the text itself where it cannot be read."""
    try:
        return _FIELDS[field].read(text, unit) if text.strip() else ""
    except CorsetkitError:
        return text


def _refusal(field: str, text: str, unit: str) -> str:
    try:
        _FIELDS[field].read(text, unit)
    except CorsetkitError as error:
        return str(error)
    return ""


def _contradictions(own: dict) -> dict:
    """For each field that contradicts another one already filled in, one sentence."""
    given = {name: value for name, value in own.items() if isinstance(value, float | int)}
    # A rule is asked only once all it compares is there; NaN stands for the rest.
    body: Any = SimpleNamespace(**{name: given.get(name, math.nan) for name in _FIELDS})
    body.high_bust_girth, body.bust_point_to_fold = (given.get(name) for name in ("high_bust_girth", "bust_point_to_fold"))
    found: dict[str, str] = {}
    for rule in IMPOSSIBLE:
        if all(name in given for name in rule.names) and rule.broken(body):
            for name in rule.names:
                others = listed(_FIELDS[n].label for n in rule.names if n != name)
                found.setdefault(name, SHARED("form_does_not_go", others=others, rule=rule.says))
    return found
