"""A file of choices: values of style, finish and cloth by their names, read with care.

A JSON object, {"cup_parts": 2, "waist_reduction": "1 1/2 in"}, or a CSV table of two columns, the name and the value. A
length names its unit, or `unit` (cm or in) among the names says it for all. The cloth's values have its word before them, as
in `cloth_width`. What the lessons keep is read as well: there the values stand in "style" and "finish", in centimetres.
"""

import csv
import io
import json
from dataclasses import dataclass, replace
from pathlib import Path

from corsetkit.errors import CorsetkitError
from corsetkit.finish.choices import Finish
from corsetkit.lay.cloth import Cloth
from corsetkit.quantity import quantities
from corsetkit.style import Style
from corsetkit.units import UNITS, shown

_BEFORE = {Style: "", Finish: "", Cloth: "cloth_"}
_OWNERS = {
    before + one.name: (owner, one.name, replace(one, name=before + one.name))
    for owner, before in _BEFORE.items()
    for one in quantities(owner)
}
_FORMERLY = {
    before + old: before + one.name for owner, before in _BEFORE.items() for one in quantities(owner) for old in one.formerly
}
_HEADING = ("name", "value")
_PARTS = ("style", "finish")
_LIKE = '{"cup_parts": 2}'


@dataclass(frozen=True)
class Choices:
    """The `Style`, the `Finish` and the `Cloth` of a file, and sentences about values that do nothing beside the others."""

    style: Style = Style()
    finish: Finish = Finish()
    cloth: Cloth = Cloth()
    said: tuple = ()


def read_choices(path):
    """What the file at `path` chooses.

    Raises:
        CorsetkitError: one sentence with field, given and allowed, where it cannot be read or used.
    """
    path = Path(path)
    try:
        text = path.read_bytes().decode("utf-8-sig")
    except UnicodeDecodeError:
        raise CorsetkitError(f"{path.name} is not UTF-8 text: save it again as UTF-8") from None
    except (OSError, ValueError) as error:
        raise CorsetkitError(f"{path} cannot be read: {getattr(error, 'strerror', None) or error}") from None
    if not text.strip(" ,;\t\r\n"):
        raise CorsetkitError(f"{path.name} is empty: write a choice into it, like {_LIKE}, or leave the file out")
    where = f"{path.name}: "
    pairs, unit = (_from_json if text.lstrip().startswith(("{", "[")) else _from_csv)(text, where)
    return _choices(pairs, unit, where)


class _Pairs(tuple):
    """(name, value) pairs of a JSON object: no dict, so that a name given twice is seen, and no list, for that is another
    thing."""


def _from_json(text, where):
    """(name, value) pairs, and the unit of bare lengths."""
    try:
        told = json.loads(text, object_pairs_hook=_Pairs)
    except (ValueError, RecursionError) as error:
        place = f", line {error.lineno}" if isinstance(error, json.JSONDecodeError) else ""
        raise CorsetkitError(f"{where.removesuffix(': ')}{place}: this is not JSON; write it like {_LIKE}") from None
    if not isinstance(told, _Pairs):
        raise CorsetkitError(f"{where}names and values are expected, like {_LIKE}")
    if not any(name in _PARTS for name, _ in told):
        return _without_unit(told, where)
    found = []
    for name, value in told:
        if name in _PARTS and not isinstance(value, _Pairs):
            raise CorsetkitError(f"{where}{name} is {shown(value)}: names and values are expected there, in braces")
        if name in _PARTS:
            found += value
        # What else the lessons keep, such as the wearer, is no choice; a choice that would be passed over is told.
        elif name in _OWNERS or name == "cloth":
            raise CorsetkitError(
                f"{where}{name} stands beside {' and '.join(one for one in _PARTS if one in dict(told))}: write "
                "all the choices without such parts, each under its own name"
            )
    return found, "cm"


def _from_csv(text, where):
    first = next((line for line in text.splitlines() if line.strip(" ,;")), "")
    pairs = []
    try:
        rows = list(csv.reader(io.StringIO(text, newline=""), delimiter=";" if ";" in first else ",", strict=True))
    except csv.Error:
        raise CorsetkitError(
            f"{where}its quotation marks do not pair, or a cell is too long; write inches as 14 1/2"
        ) from None
    for number, row in enumerate(rows, 1):
        cells = [cell.strip() for cell in row]
        while cells and not cells[-1]:
            cells.pop()
        if not cells or (number == 1 and tuple(cell.lower() for cell in cells) == _HEADING):
            continue
        if len(cells) != 2:
            raise CorsetkitError(f"{where}row {number} has {len(cells)} cells: a name and its value are expected")
        pairs.append((cells[0], cells[1]))
    if not pairs:
        raise CorsetkitError(f"{where}no choice stands in it: write a name and its value into each row, or leave the file out")
    return _without_unit(pairs, where)


def _without_unit(pairs, where):
    """The pairs but for the unit, and the unit; None where it is not said."""
    units = [value for name, value in pairs if name == "unit"]
    if units and (len(units) > 1 or units[0] not in UNITS):
        raise CorsetkitError(f"{where}unit is {shown(units[-1])}{' as well' if len(units) > 1 else ''}: write cm or in, once")
    return [pair for pair in pairs if pair[0] != "unit"], units[0] if units else None


def _choices(pairs, unit, where):
    values = {owner: {} for owner in _BEFORE}
    for name, value in pairs:
        known = name.strip().lower().replace(" ", "_")
        known = _FORMERLY.get(known, known)
        if known not in _OWNERS:
            raise CorsetkitError(
                f"{where}{shown(name)} is no value of style, finish or cloth; allowed are unit, {', '.join(_OWNERS)}"
            )
        owner, field, quantity = _OWNERS[known]
        if field in values[owner]:
            raise CorsetkitError(f"{where}{quantity.label} stands there twice: give it once")
        values[owner][field] = _read(quantity, value, unit, where)
    try:
        made = {owner: owner(**given) for owner, given in values.items()}
    except CorsetkitError as refusal:
        raise CorsetkitError(f"{where}{refusal}") from None
    return Choices(*made.values(), tuple(_idle(values, made)))


def _read(quantity, value, unit, where):
    """A value as its declaration has it; a length without any unit is asked for one."""
    bare = not isinstance(value, str) or not any(letter.isalpha() or letter in "\"'\u2033\u201d" for letter in value)
    if quantity.is_length and bare and unit is None and not isinstance(value, bool) and value not in (None, ""):
        raise CorsetkitError(
            f"{where}{quantity.label} is {shown(value)} without a unit: write 2 in or 5.1 cm, or say the "
            f"unit once for all, as unit; {quantity.allowed}"
        )
    if isinstance(value, str) or (quantity.is_length and isinstance(value, (int, float)) and not isinstance(value, bool)):
        return quantity.read(str(value), unit or "cm", where)
    return quantity.check(value, where)


def _idle(values, made):
    """A sentence for each given value that does nothing beside the others."""
    for owner, given in values.items():
        for name in given:
            quantity = _OWNERS[_BEFORE[owner] + name][2]
            if quantity.only and getattr(made[owner], quantity.only[0]) != quantity.only[1]:
                other = _OWNERS[_BEFORE[owner] + quantity.only[0]][2]
                yield (
                    f"{quantity.label} does nothing here: it counts only where {other.label} is {other.say(quantity.only[1])}"
                )
