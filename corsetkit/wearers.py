"""Wearers in a CSV file: a row a wearer, a column a measurement, and a column for the unit.

Read are UTF-8 files, with or without byte order mark, separated by commas or semicolons. Columns
are `wearer`, `unit` (cm or in) and the names of `Measurements`, in any order; a column `note` may
stand beside them and is for people. A length may name its own unit ("36.8 cm").
"""

import csv
import io
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from os import PathLike
from pathlib import Path
from typing import Any, cast

from corsetkit.errors import CorsetkitError
from corsetkit.files import write_whole
from corsetkit.measurements import Measurements
from corsetkit.quantity import quantities
from corsetkit.units import CM_PER_INCH, UNITS, check_kind, check_unit, shown, write_number

_OWN = ("wearer", "unit")
_MAY_STAND = ("note",)

Wearer = tuple[str, Measurements]


@dataclass(frozen=True)
class Row:
    """One wearer's row: her name as it stands there and her body, or no body and why it cannot be used."""

    name: str
    body: Measurements | None
    refused: str = ""


def demo_wearers() -> tuple[Wearer, ...]:
    """The wearers that come with the course, all invented: no such person was measured.

    >>> name, measurements = demo_wearers()[0]
    >>> name, measurements.bust_girth
    ('Maren', 91.44)
    """
    return read_wearers(Path(__file__).with_name("demo_wearers.csv"))


def read_wearers(path: str | PathLike[str]) -> tuple[Wearer, ...]:
    """The wearers in the CSV file at `path`, as (name, Measurements), in the file's order.

    Raises CorsetkitError, one sentence naming file, row (the heading is row 1), wearer and field,
    for the first thing that is wrong; then no wearer of the file is handed out.

    >>> write_wearers("wearers.csv", demo_wearers(), "in")
    >>> name, measurements = read_wearers("wearers.csv")[0]
    >>> name, measurements.bust_girth
    ('Maren', 91.44)
    >>> read_wearers("wearer.csv")
    Traceback (most recent call last):
    corsetkit.errors.CorsetkitError: wearer.csv cannot be read: No such file or directory
    """
    found = []
    for row in read_rows(path):
        if row.body is None:
            raise CorsetkitError(row.refused)
        found.append((row.name, row.body))
    return tuple(found)


def read_rows(path: str | PathLike[str]) -> tuple["Row", ...]:
    """Every wearer's row of the CSV file at `path`, those that cannot be used as well.

    Raises CorsetkitError, one sentence, where the table itself cannot be read: no text, no heading,
    a column unknown or missing, quotation marks that do not pair, no wearer at all.
    """
    path = _path(path)
    try:
        data = path.read_bytes()
    except OSError as error:
        told = path if str(path).isprintable() else shown(str(path))
        raise CorsetkitError(f"{told} cannot be read: {error.strerror or error}") from None
    except ValueError:
        raise CorsetkitError(f"{shown(str(path))} is not the path of a file") from None
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        text = "\0"
    if "\0" in text:
        raise CorsetkitError(f"{path.name} is not UTF-8 text: in the spreadsheet, save it again as CSV UTF-8")
    return _rows_in(text, path.name)


def write_wearers(path: str | PathLike[str], wearers: Iterable[Wearer], unit: str) -> None:
    """Write (name, Measurements) pairs as CSV, lengths in `unit` ("cm" or "in"), whole or not at all.

    Lengths keep twelve decimals, so that reading gives back the same body. Raises CorsetkitError
    where a name is missing, given twice or not printable, or the file cannot be written.

    >>> write_wearers("one.csv", demo_wearers()[:1], "cm")
    >>> [name for name, _ in read_wearers("one.csv")] == [demo_wearers()[0][0]]
    True
    """
    per_cm, path = 1 / CM_PER_INCH if check_unit(unit) == "in" else 1.0, _path(path)
    names = [one.name for one in quantities(Measurements)]
    out = io.StringIO(newline="")
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow([*_OWN, *names])
    for name, body in _pairs(wearers):
        values = [getattr(body, one) for one in names]
        said = ["" if value is None else write_number(value * per_cm, 12) for value in values]
        writer.writerow([name, unit, *said])
    # What cannot be read back is not written.
    for row in _rows_in(out.getvalue(), path.name):
        if row.refused:
            raise CorsetkitError(row.refused)
    write_whole(path, out.getvalue().encode("utf-8"))


def _path(path: str | PathLike[str]) -> Path:
    try:
        return Path(path)
    except TypeError:
        raise CorsetkitError(f"{shown(path)} is not the path of a file") from None


def _pairs(wearers: Iterable[Wearer]) -> list[Wearer]:
    """What was given as wearers, each pair looked at."""
    try:
        pairs = [(name, body) for name, body in wearers]
    except (TypeError, ValueError):
        raise CorsetkitError(f"wearers is {shown(wearers)}: give pairs of a name and Measurements") from None
    for name, body in pairs:
        check_kind(body, Measurements, f"the body of wearer {shown(name)}", "give Measurements(bust_girth=..., ...)")
    return pairs


def _rows_in(text: str, file: str) -> tuple[Row, ...]:
    separator = _separator(text)
    rows = _rows(text, file, separator)
    number, heading = next(rows, (0, []))
    if not number:
        raise CorsetkitError(f"{file} is empty: its first row must name the columns")
    columns = _columns(heading, f"{file}, row {number}: ")
    found: list[Row] = []
    seen: dict[str, int] = {}
    for number, row in rows:
        where, name = f"{file}, row {number}", ""
        try:
            cells = _cells(columns, row, where, separator)
            name = _name(cells, where)
            if (first := seen.setdefault(name.casefold(), number)) != number:
                raise CorsetkitError(
                    f"{where}: wearer {name} stands in row {first} already; give each wearer a name of her own"
                )
            found.append(Row(name, _body(cells, f"{where}, {name}: ")))
        except CorsetkitError as error:
            found.append(Row(name or f"row {number}", None, str(error)))
    if not found:
        raise CorsetkitError(f"{file} names no wearer: write one in each row below the heading")
    return tuple(found)


def _separator(text: str) -> str:
    heading = next((line for line in text.splitlines() if line.strip(" ,;")), "")
    return ";" if heading.count(";") > heading.count(",") else ","


def _rows(text: str, file: str, separator: str) -> Iterator[tuple[int, list[str]]]:
    """Number and cells of each row that is not blank; numbered as a spreadsheet numbers them."""
    number = 0
    try:
        for row in csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True):
            number += 1
            cells = [cell.strip() for cell in row]
            while cells and not cells[-1]:
                cells.pop()
            if cells:
                yield number, cells
    except csv.Error as error:
        # The reader has one kind of error for all, and only its words say which.
        too_long = "field larger than field limit" in str(error)
        raise CorsetkitError(
            f"{file}, row {number + 1}: a cell has more than {csv.field_size_limit()} letters: shorten it, and see "
            "that its quotation marks pair"
            if too_long
            else f"{file}, row {number + 1}: its quotation marks do not pair; write inches as 14 1/2"
        ) from None


def _columns(heading: list[str], where: str) -> list[str]:
    """The names of the columns, checked: none doubled, missing or unknown."""
    columns = [cell.lower().replace(" ", "_") for cell in heading]
    needed = [*_OWN, *(one.name for one in quantities(Measurements) if not one.optional)]
    allowed = [*_OWN, *(one.name for one in quantities(Measurements)), *_MAY_STAND]
    for cell, name in zip(heading, columns):
        if not name:
            raise CorsetkitError(f"{where}column {columns.index(name) + 1} has no name")
        if name not in allowed:
            raise CorsetkitError(f"{where}column {shown(cell)} is unknown; allowed are {', '.join(allowed)}")
        if columns.count(name) > 1:
            raise CorsetkitError(f"{where}column {name} stands there {columns.count(name)} times")
    if missing := [name for name in needed if name not in columns]:
        word = "column is" if len(missing) == 1 else "columns are"
        raise CorsetkitError(f"{where}missing {word} {', '.join(missing)}")
    return columns


def _cells(columns: list[str], row: list[str], where: str, separator: str) -> dict[str, str]:
    """The row's cells by their columns."""
    if len(row) > len(columns):
        # A decimal comma is two numbers side by side; any other comma stands in a text.
        commas = separator == "," and any(one.isdecimal() and after.isdecimal() for one, after in zip(row, row[1:]))
        remedies = [
            "a decimal comma must stand in a file separated by semicolons" if commas else "",
            "a text that holds a comma must stand in quotation marks" if separator == "," else "",
            "" if separator == "," else "take out what stands beyond the last column",
        ]
        raise CorsetkitError(
            f"{where}: has {len(row)} cells for {len(columns)} columns; " + ", and ".join(filter(None, remedies))
        )
    return dict(zip(columns, row + [""] * (len(columns) - len(row))))


def _name(cells: dict[str, str], where: str) -> str:
    name = cells["wearer"]
    if not name or not name.isprintable():
        given = f"is {shown(name)}" if name else "is missing"
        raise CorsetkitError(f"{where}: wearer {given}: give each wearer a name on one line")
    return name


def _body(cells: dict[str, str], where: str) -> Measurements:
    unit = cells["unit"].lower()
    if unit not in UNITS:
        given = f"is {shown(cells['unit'])}" if unit else "is missing"
        raise CorsetkitError(f"{where}unit {given}: write cm or in")
    values = {one.name: one.read(cells.get(one.name, ""), unit, where) for one in quantities(Measurements)}
    try:
        return Measurements(**cast(dict[str, Any], values))
    except CorsetkitError as error:
        raise CorsetkitError(f"{where}{error}") from None
