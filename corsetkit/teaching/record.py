"""The learner's choices as one frozen value, and as the text of a file."""

import json
import math
import numbers
from dataclasses import asdict, dataclass, field

from corsetkit.errors import CorsetkitError
from corsetkit.finish.choices import Finish
from corsetkit.measurements import Measurements
from corsetkit.quantity import Quantity, quantities
from corsetkit.style import Style
from corsetkit.units import UNITS, to_float

DEMO, FILE, OWN = "demo", "file", "own"
_GUESS_VALUES = ("value", "right", "start")


@dataclass(frozen=True)
class Record:
    """Wearer, unit, style, finish and guesses.

    `source` says where `wearer` is named: among the demo wearers, in a file that was read, or her
    own numbers. `own` maps a measurement to cm, or to the text that could not be read; `style` and
    `finish` hold only what differs from the course's values. `guesses` maps a cell to its locked guess: `text` as
    typed, and `value`, `right` and `start` in the guess's own unit.
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
        raise CorsetkitError(
            f"still to fill in: {', '.join(missing[:3])}{more}"
        )
    values = {}
    for one in quantities(Measurements):
        given = record.own.get(one.name)
        values[one.name] = one.read(given, record.unit) if isinstance(given, str) else given
    return Measurements(**values)


def written(record: Record) -> str:
    """The record as JSON text."""
    return json.dumps(asdict(record), indent=1, ensure_ascii=False) + "\n"


def read(text: str) -> Record:
    """The record in `text`; ValueError where it is none.

    What an older or newer course wrote and this one does not know is left out; so is a value of
    style or finish that is no longer allowed.
    """
    told = json.loads(text)
    if not isinstance(told, dict):
        raise ValueError("not a record")
    plain = {
        name: told[name]
        for name in ("source", "wearer", "unit", "own_name")
        if isinstance(told.get(name), str)
    }
    if plain.get("source", DEMO) not in (DEMO, FILE, OWN) or plain.get("unit", "in") not in UNITS:
        raise ValueError("not a record")
    own = _known(told.get("own"), Measurements, keep_text=True)
    style, finish = (_known(told.get(name), cls, keep_text=False) for name, cls in (("style", Style), ("finish", Finish)))
    return Record(**plain, own=own, style=style, finish=finish, guesses=_guesses(told.get("guesses")))


def _known(told, cls: type, keep_text: bool) -> dict:
    told = told if isinstance(told, dict) else {}
    named = {one.name: one for one in quantities(cls)}
    return {
        name: value
        for name, value in told.items()
        if name in named
        and ((keep_text and isinstance(value, str)) or _allowed(named[name], value))
    }


def _guesses(told) -> dict:
    told = told if isinstance(told, dict) else {}
    return {
        cell: {"text": one["text"], **{name: to_float(one[name]) for name in _GUESS_VALUES}}
        for cell, one in told.items()
        if isinstance(one, dict)
        and isinstance(one.get("text"), str)
        and all(_is_number(one.get(name)) for name in _GUESS_VALUES)
    }


def _is_number(value) -> bool:
    real = isinstance(value, numbers.Real) and not isinstance(value, bool)
    return real and math.isfinite(to_float(value))


def _allowed(quantity: Quantity, value) -> bool:
    try:
        quantity.check(value)
    except CorsetkitError:
        return False
    return value is not None
