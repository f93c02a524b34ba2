"""The learner's choices as one frozen value and as the text of a file; what cannot be read is put beside,
never written over."""

import json
import math
import numbers
import os
import shutil
from dataclasses import asdict, dataclass, field, replace
from itertools import count
from pathlib import Path
from typing import Any

from corsetkit.errors import CorsetkitError
from corsetkit.files import write_whole
from corsetkit.finish.choices import Finish
from corsetkit.measurements import Measurements
from corsetkit.quantity import Quantity, quantities, under_present_names
from corsetkit.style import Style
from corsetkit.units import UNITS, to_float


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


DEMO, FILE, OWN = "demo", "file", "own"
_GUESS_VALUES = ("value", "right", "start")
_TOGETHER = (("source", "wearer"), ("unit",), ("own_name",))
"""Who is drafted for is one choice, though it takes two words."""
_BY_KEY = ("own", "style", "finish", "guesses")


@dataclass(frozen=True)
class Record:
    """Wearer, unit, style, finish and guesses.

    `source` says where `wearer` is named: among the demo wearers, in a file that was read, or her
    own numbers. `own` maps a measurement to cm, or to the text that could not be read; `style` and
    `finish` hold only what differs from the course's values. `guesses` maps a cell to its locked guess: `text` as
    typed, `value`, `right` and `start` in the guess's own unit, and `of`, what it was asked of (see `as_it_stood`).
    """

    source: str = DEMO
    wearer: str = ""
    unit: str = "in"
    own_name: str = ""
    own: dict = field(default_factory=dict)
    style: dict = field(default_factory=dict)
    finish: dict = field(default_factory=dict)
    guesses: dict = field(default_factory=dict)


def own_body(record: Record) -> Measurements:
    """The learner's own measurements as a body; CorsetkitError where one is missing or wrong."""
    needed = [one for one in quantities(Measurements) if not one.optional]
    missing = [one.label for one in needed if record.own.get(one.name) in (None, "")]
    if missing:
        more = f" and {len(missing) - 3} more" if missing[3:] else ""
        raise CorsetkitError(f"still to fill in: {', '.join(missing[:3])}{more}")
    values: dict[str, Any] = {}
    for one in quantities(Measurements):
        given = record.own.get(one.name)
        values[one.name] = one.read(given, record.unit) if isinstance(given, str) else given
    return Measurements(**values)


def carried_over(before: Record, after: Record, onto: Record) -> Record:
    """`onto` with what has changed from `before` to `after`, value by value; all else stays as `onto` has it.

    So two lessons change one record: what either changed stands, and of what both changed the later one's.
    """
    changes: dict[str, Any] = {}
    for names in _TOGETHER:
        if any(getattr(before, name) != getattr(after, name) for name in names):
            changes |= {name: getattr(after, name) for name in names}
    for name in _BY_KEY:
        old, new, found = (dict(getattr(one, name)) for one in (before, after, onto))
        for key in {**old, **new}:
            if key not in new:
                found.pop(key, None)
            elif key not in old or old[key] != new[key]:
                found[key] = new[key]
        changes[name] = found
    return replace(onto, **changes)


def written(record: Record) -> str:
    """The record as JSON text."""
    return json.dumps(asdict(record), indent=1, ensure_ascii=False) + "\n"


def write_file(path, record: Record) -> None:
    """Write the record whole, or not at all; CorsetkitError where the disk is in the way."""
    # Half of a sign that takes two is no UTF-8; written out it is JSON all the same, and read back as it was.
    write_whole(path, written(record).encode("utf-8", "backslashreplace"))


def read_file(path) -> Record | None:
    """The record in a file, with or without byte order mark; None where there is none.

    CorsetkitError, why in a few words, where it cannot be read.
    """
    try:
        return read(Path(path).read_bytes().decode("utf-8-sig"))
    except FileNotFoundError:
        return None
    except OSError as error:
        raise CorsetkitError(error.strerror or "the disk refused it") from None
    except UnicodeDecodeError:
        raise CorsetkitError("it is not UTF-8 text") from None
    except ValueError:
        raise CorsetkitError("it is not what a lesson writes") from None


def read(text: str) -> Record:
    """The record in `text`; ValueError where it is none.

    What an older or newer course wrote and this one does not know is left out; so is a value of
    style or finish that is no longer allowed.
    """
    try:
        told = json.loads(text)
    except RecursionError:
        raise ValueError("not a record") from None
    if not isinstance(told, dict):
        raise ValueError("not a record")
    plain = {name: told[name] for name in ("source", "wearer", "unit", "own_name") if isinstance(told.get(name), str)}
    if plain.get("source", DEMO) not in (DEMO, FILE, OWN) or plain.get("unit", "in") not in UNITS:
        raise ValueError("not a record")
    own = _known(told.get("own"), Measurements, keep_text=True)
    style, finish = (_known(told.get(name), cls, keep_text=False) for name, cls in (("style", Style), ("finish", Finish)))
    return Record(**plain, own=own, style=style, finish=finish, guesses=_guesses(told.get("guesses")))


def _known(told, cls: type, keep_text: bool) -> dict:
    told = under_present_names(cls, told) if isinstance(told, dict) else {}
    named = {one.name: one for one in quantities(cls)}
    return {
        name: value
        for name, value in told.items()
        if name in named and ((keep_text and isinstance(value, str)) or _allowed(named[name], value))
    }


def _guesses(told) -> dict:
    told = told if isinstance(told, dict) else {}
    return {
        cell: {"text": one["text"], **{name: to_float(one[name]) for name in _GUESS_VALUES}, **_asked_of(one.get("of"))}
        for cell, one in told.items()
        if isinstance(one, dict)
        and isinstance(one.get("text"), str)
        and all(_is_number(one.get(name)) for name in _GUESS_VALUES)
    }


def _asked_of(told) -> dict:
    """What a guess was asked of, as its `of`; nothing where a guess of an earlier course does not say it."""
    if not isinstance(told, dict) or not isinstance(told.get("wearer"), str):
        return {}
    body, style, finish = (
        _known(told.get(name), cls, keep_text=False)
        for name, cls in (("body", Measurements), ("style", Style), ("finish", Finish))
    )
    if not {one.name for one in quantities(Measurements) if not one.optional} <= body.keys():
        return {}
    ones = told.get("corrections")
    corrections = [
        {"line": one["line"], "by": to_float(one["by"])}
        for one in (ones if isinstance(ones, list) else ())
        if isinstance(one, dict) and isinstance(one.get("line"), str) and _is_number(one.get("by"))
    ]
    return {"of": {"wearer": told["wearer"], "body": body, "style": style, "finish": finish, "corrections": corrections}}


def _is_number(value) -> bool:
    real = isinstance(value, numbers.Real) and not isinstance(value, bool)
    return real and math.isfinite(to_float(value))


def _allowed(quantity: Quantity, value) -> bool:
    try:
        quantity.check(value)
    except CorsetkitError:
        return False
    return value is not None
