"""Corrections kept with the wearers, in a small text file, and whose they are among the wearers of a table."""

import json
import unicodedata
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from os import PathLike
from pathlib import Path
from typing import Any

from corsetkit.errors import CorsetkitError
from corsetkit.files import write_whole
from corsetkit.fitting.correct import check
from corsetkit.pattern.pattern import Correction
from corsetkit.units import shown
from corsetkit.words import words_of

WORDS = words_of("fitting")

_TOLD = "corrections"


@dataclass(frozen=True)
class Kept:
    """Each wearer's corrections by her name, in the order they were made in; `amiss` says, by her name as well, which could
    not be read, a sentence's part for each."""

    by_wearer: Mapping[str, tuple[Correction, ...]] = field(default_factory=dict)
    amiss: Mapping[str, tuple[str, ...]] = field(default_factory=dict)

    @property
    def left_out(self) -> tuple[str, ...]:
        """What could not be read, a sentence with the wearer's name for each."""
        return tuple(f"{wearer}: {why}" for wearer, whys in self.amiss.items() for why in whys)

    def of(self, wearer: str) -> tuple[Correction, ...]:
        """One wearer's corrections."""
        return self.by_wearer.get(wearer, ())

    def with_more(self, wearer: str, corrections: Iterable[object]) -> "Kept":
        """The same with a pass added to a wearer's; CorsetkitError where one is not allowed."""
        more = tuple(check(one, f"{wearer}: ") for one in corrections)
        return Kept({**self.by_wearer, wearer: (*self.of(wearer), *more)}, self.amiss)

    def with_only(self, wearer: str, corrections: Iterable[object]) -> "Kept":
        """The same with these as a wearer's own, as when the last one is taken back; none of them forgets her."""
        others = {name: ones for name, ones in self.by_wearer.items() if name != wearer}
        made = tuple(check(one, f"{wearer}: ") for one in corrections)
        return Kept({**others, wearer: made} if made else others, self.amiss)


def written(kept: Kept) -> str:
    """The text of the file."""
    told = {name: [{"line": one.line, "by": one.by} for one in ones] for name, ones in kept.by_wearer.items()}
    return json.dumps({_TOLD: told}, indent=1, ensure_ascii=False) + "\n"


def read(text: str) -> Kept:
    """What a text says, as `Kept`.

    A line that this draft does not know, or an amount that it does not allow, is left out and told of; CorsetkitError where
    the text holds no corrections at all.
    """
    try:
        told = json.loads(text, object_pairs_hook=_once)
        told = told[_TOLD] if isinstance(told, dict) else None
    except _Twice as twice:
        raise CorsetkitError(f"{shown(twice.args[0])} stands there twice: put both into one") from None
    except (ValueError, KeyError, RecursionError):
        told = None
    if not isinstance(told, dict):
        raise CorsetkitError(f"these are no kept corrections: {shown(text[:60])}")
    by_wearer: dict[str, tuple[Correction, ...]] = {}
    amiss: dict[str, list[str]] = {}
    for wearer, ones in told.items():
        found = []
        for one in ones if isinstance(ones, list) else [ones]:
            try:
                known = isinstance(one, dict) and {"line", "by"} <= one.keys()
                found.append(check(Correction(one["line"], one["by"]) if known else one))
            except CorsetkitError as refusal:
                amiss.setdefault(wearer, []).append(str(refusal))
        if found:
            by_wearer[wearer] = tuple(found)
    return Kept(by_wearer, {wearer: tuple(whys) for wearer, whys in amiss.items()})


class _Twice(Exception):
    """A name that stands twice in one object: JSON would keep the last one and say nothing."""


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for name, value in pairs:
        if name in found:
            raise _Twice(name)
        found[name] = value
    return found


def write_file(path: str | PathLike[str], kept: Kept) -> None:
    """Write the file whole, or not at all; CorsetkitError where the disk is in the way."""
    write_whole(path, written(kept).encode("utf-8"))


def read_file(path: str | PathLike[str]) -> Kept:
    """The file's corrections; none where there is no file yet. CorsetkitError where it cannot be read."""
    file = Path(path)
    try:
        # Some editors put a byte order mark before the text.
        text = file.read_bytes().decode("utf-8-sig")
    except FileNotFoundError:
        return Kept()
    except UnicodeDecodeError:
        raise CorsetkitError(f"{path} was not read: it is not UTF-8 text; save it again as UTF-8") from None
    except OSError as error:
        raise CorsetkitError(f"{path} was not read: {error.strerror or 'the disk refused it'}") from None
    try:
        return read(text)
    except CorsetkitError as refusal:
        raise CorsetkitError(f"{path} was not read: {refusal}") from None


@dataclass(frozen=True)
class Whose:
    """`of` maps wearers of the table to why they cannot be corrected as the file says; `nobody` are names not in the table."""

    of: Mapping[str, str] = field(default_factory=dict)
    nobody: tuple[str, ...] = ()


def whose(kept: Kept, names: Iterable[str]) -> Whose:
    """Match a `Kept` with the wearers' names of a table.

    A wearer may not be drafted without her corrections, so one is told of whose corrections cannot all be made, and one whose
    name the file writes in other letters.
    """
    of: dict[str, str] = {}
    nobody: list[str] = []
    alike: dict[str, list[str]] = {}
    for name in names:
        alike.setdefault(_plain(name), []).append(name)
    exact = set(names)
    for given in dict.fromkeys((*kept.by_wearer, *kept.amiss)):
        if given in exact:
            if why := kept.amiss.get(given):
                more = len(why) - 1
                of[given] = WORDS("kept_wrong_more" if more else "kept_wrong", why=why[0], more=more)
        elif meant := alike.get(_plain(given)):
            of.update({name: of.get(name) or _other_letters(given, name) for name in meant})
        else:
            nobody.append(given)
    return Whose(of, tuple(nobody))


def _plain(name: str) -> str:
    """What is left of a name without capitals, accents and blanks beside one another."""
    letters = unicodedata.normalize("NFKD", name.casefold())
    return " ".join("".join(one for one in letters if not unicodedata.combining(one)).casefold().split())


def _other_letters(given: str, name: str) -> str:
    if unicodedata.normalize("NFC", given) == unicodedata.normalize("NFC", name):
        return WORDS("name_accents", name=shown(name))
    return WORDS("name_other_letters", given=shown(given), name=shown(name))
