"""A wearer's name as a file can bear it, and as the print's letters can set it.

A name that cannot be had whole is never garbled: a number stands in its place, and a sentence says so. The number
follows from the name alone, so that it is the same in every table and in whatever row she stands.
"""

import unicodedata
import zlib
from dataclasses import dataclass
from functools import lru_cache
from itertools import count

from corsetkit.drawing.lettering import one_line
from corsetkit.units import shown
from corsetkit.words import words_of

WORDS = words_of("printing")

LONGEST_FILE, LONGEST_SHOWN = 40, 60
"""Letters that a file's name and a written name have at most."""

_TURNED = {"R", "AL", "AN"}
"""The ways of writing, as Unicode calls them, that run from right to left: the print has no means to set them."""
_TAKEN = {"con", "prn", "aux", "nul", *(f"{port}{number}" for port in ("com", "lpt") for number in range(10))}
"""Names that some systems keep for themselves, whatever comes behind a full stop."""

_PLAIN_FOR = str.maketrans(
    {
        "\u00c6": "Ae",
        "\u00e6": "ae",
        "\u0152": "Oe",
        "\u0153": "oe",
        "\u00d8": "O",
        "\u00f8": "o",
        "\u0141": "L",
        "\u0142": "l",
        "\u0110": "D",
        "\u0111": "d",
        "\u00d0": "D",
        "\u00f0": "d",
        "\u00de": "Th",
        "\u00fe": "th",
        "\u00df": "ss",
        "\u0131": "i",
        "\u2013": "-",
        "\u2014": "-",
        "\u2018": "'",
        "\u2019": "'",
        "\u00b7": "-",
    }
)


@dataclass(frozen=True)
class Name:
    """A name as it can be used, and a sentence where it is not the one that was given, else nothing."""

    text: str
    said: str = ""

    def __str__(self):
        return self.text


@dataclass(frozen=True)
class Called:
    """What a wearer's files and folder are called, and the number that stands where her name cannot."""

    file: Name
    number: int


def names_apart(names):
    """{name: Called}: no two are called alike on any system, and the order of the names does not matter.

    Several names may become one as their signs, blanks or accents are written for a file. Then the one that needs no
    change keeps it, and each of the others bears its own number behind it.
    """
    names, numbers, groups, known = sorted(set(names)), {}, {}, set()
    for name in names:
        numbers[name] = next(one for one in count(number_of(name)) if one not in known)
        known.add(numbers[name])
    files = {name: file_name(name, numbers[name]) for name in names}
    for name in names:
        groups.setdefault(files[name].text.casefold(), []).append(name)
    taken, found = set(groups), {}
    for alike in groups.values():
        keeps = _unchanged(alike, files) if alike[1:] else alike[0]
        for name in alike:
            file = files[name]
            if name != keeps:
                tries = (f"{file.text}_{number}" for number in count(numbers[name]))
                file = _apart(name, file, next(one for one in tries if one.casefold() not in taken))
                taken.add(file.text.casefold())
            found[name] = Called(file, numbers[name])
    return found


def _unchanged(alike, files):
    """The one name among those alike that is borne as it is, letter by letter or at least but for its blanks."""
    for borne in ([one for one in alike if one == files[one].text], [one for one in alike if not files[one].said]):
        if len(borne) == 1:
            return borne[0]
    return None


def _apart(name, file, text):
    if file.said:
        return Name(text, _not_whole(unicodedata.normalize("NFC", one_line(name)), text))
    return Name(text, WORDS("name_anothers", name=shown(name), file=text))


def number_of(name):
    """Five digits that follow from the name alone; two names share theirs once in 90,000 times."""
    return 10_000 + zlib.crc32(str(name).encode("utf-8", "surrogatepass")) % 90_000


def file_name(name, number=None):
    """The name as a file or a folder can bear it on any system: letters, digits, full stops within, and low lines.

    A name of which nothing is left, or that runs from right to left, becomes "wearer_" and the number, its own where none
    is given.
    """
    number = number_of(name) if number is None else number
    given = unicodedata.normalize("NFC", one_line(name))
    if not given:
        return Name(f"wearer_{number}")
    safe = "" if _runs_left(given) else _plain(given)
    if safe.partition(".")[0].casefold() in _TAKEN:
        safe = f"wearer_{safe}"
    if not safe:
        return Name(f"wearer_{number}", WORDS("name_no_file", name=shown(given), file=f"wearer_{number}"))
    if safe == given.replace(" ", "_"):
        return Name(safe)
    return Name(safe, _not_whole(given, safe))


def _not_whole(given, text):
    return WORDS("name_not_whole", name=shown(given), file=text)


def _plain(text):
    """Letters and digits, all else a low line, cut to length."""
    kept = "".join(letter if letter.isalnum() or letter in "-." else "_" for letter in text)
    while "__" in kept or ".." in kept:
        kept = kept.replace("__", "_").replace("..", ".")
    # Some systems count a letter with an accent as more than one.
    kept = kept.strip("_.-")[:LONGEST_FILE].encode("utf-8")[:120].decode("utf-8", "ignore")
    return kept.strip("_.-")


def shown_name(name, number=None):
    """The name as PDF and DXF can show it, on one line.

    Where a letter is missing in the print's font, or the name runs from right to left, it becomes "wearer " and the
    number, its own where none is given. A very long one is cut short.
    """
    number = number_of(name) if number is None else number
    given = unicodedata.normalize("NFC", one_line(name))
    if not given:
        return Name("")
    if _runs_left(given) or not can_be_set(given):
        return Name(f"wearer {number}", WORDS("name_not_set", name=shown(given), instead=f"wearer {number}"))
    return _cut(given)


def ascii_name(name, number=None):
    """The same for files that hold plain letters only: accents are left out."""
    number = number_of(name) if number is None else number
    known = shown_name(name, number)
    if known.text.isascii():
        return known
    bare = plain_letters(known.text)
    if bare.isascii():
        return Name(bare, known.said or WORDS("name_bare", name=shown(known.text), bare=bare))
    return Name(f"wearer {number}", WORDS("name_not_held", name=shown(known.text), instead=f"wearer {number}"))


def plain_letters(text):
    """The text without accents, and with ligatures and signs of writing in plain letters where there are such."""
    return "".join(
        letter for letter in unicodedata.normalize("NFKD", text.translate(_PLAIN_FOR)) if not unicodedata.combining(letter)
    )


def _cut(given):
    if len(given) <= LONGEST_SHOWN:
        return Name(given)
    return Name(given[: LONGEST_SHOWN - 1].rstrip() + "\u2026", WORDS("name_cut", letters=len(given), first=LONGEST_SHOWN - 1))


def _runs_left(text):
    return any(unicodedata.bidirectional(letter) in _TURNED for letter in text)


def can_be_set(text):
    """Whether the print's fonts have every letter of the text, each with its accents in one."""
    return all(letter.isascii() or (ord(letter) in _letters() and not unicodedata.combining(letter)) for letter in text)


@lru_cache(maxsize=1)
def _letters():
    """The code points that the print's plain and bold fonts both have."""
    from reportlab.pdfbase import pdfmetrics

    from corsetkit.printing.pdf import BOLD, PLAIN, _fonts

    _fonts()
    plain, bold = (pdfmetrics.getFont(name).face.charToGlyph for name in (PLAIN, BOLD))
    return frozenset(plain) & frozenset(bold)
