"""Lengths as people write them: centimetres, and inches with fractions.

Inside the package every length is a float in centimetres; this module is where text becomes such
a number and such a number becomes text. The inch is 2.54 cm exactly (source: the international
yard and pound agreement of 1959).
"""

import math
import numbers
import re
import unicodedata
from dataclasses import dataclass
from decimal import Decimal
from typing import TypeAlias, TypeGuard, TypeVar, cast

from corsetkit.errors import CorsetkitError
from corsetkit.words import words_of

WORDS = words_of("units")

CM_PER_INCH = 2.54
UNITS = ("cm", "in")

Kind = TypeVar("Kind")

_UNIT_WORDS = {
    "": "", "cm": "cm", "centimetre": "cm", "centimetres": "cm", "centimeter": "cm",
    "centimeters": "cm", "in": "in", "in.": "in", "inch": "in", "inches": "in",
    '"': "in", "''": "in", "\u2033": "in", "\u201d": "in",
}  # fmt: skip

# A whole number with a fraction behind it, a fraction alone, or a decimal number; then the unit.
_LENGTH = re.compile(
    r"""(?:(?P<whole>[0-9]+)(?:\s+|\s*-\s*))?(?P<over>[0-9]+)\s*/\s*(?P<under>[0-9]+)\s*(?P<unit1>\D*)
      | (?P<decimal>[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)\s*(?P<unit2>[^0-9.,]*\.?)""",
    re.VERBOSE,
)


def shown(value: object) -> str:
    """What the user gave, on one line and short enough for an error message."""
    try:
        text = " ".join(repr(value).split())
    except Exception:
        # What cannot even say what it is was given all the same.
        text = f"a {type(value).__name__}"
    return text if len(text) <= 40 else text[:37] + "..."


def check_kind(value: object, kind: type[Kind], field: str, remedy: str) -> Kind:
    """`value` itself where it is a `kind`, else CorsetkitError; `remedy` says what to give."""
    if not isinstance(value, kind):
        raise CorsetkitError(f"{field} is {shown(value)}, which is no {kind.__name__}: {remedy}")
    return value


def check_unit(unit: object) -> str:
    """`unit` itself where it is "cm" or "in", else CorsetkitError."""
    if not isinstance(unit, str) or unit not in UNITS:
        raise CorsetkitError(f"unit {shown(unit)} is unknown: write cm or in")
    return unit


def parse_length(text: object, unit: str, *, what: str = "length") -> float:
    """The length that `text` says, in cm.

    `text` is a number or a text such as 36.8, 36,8 (decimal comma), 14 1/2, 14-1/2, 14\u00bd, 3/4,
    each with or without cm, in or an inch mark behind it; a unit in the text goes before `unit`,
    which is "cm" or "in". `what` names the field in the message. Raises CorsetkitError for words,
    NaN, infinity, true or false, and anything negative; zero passes.

    >>> parse_length("14 1/2", "in"), parse_length("36,8 cm", "in"), parse_length(2, "in")
    (36.83, 36.8, 5.08)
    """
    check_unit(unit)
    if isinstance(text, str):
        number, unit = _read(text, unit, what)
    elif is_number(text):
        number = to_float(text)
    else:
        raise _not_a_length(text, what)
    if math.isnan(number):
        raise _not_a_length(text, what)
    if number < 0:
        raise CorsetkitError(f"{what} is {shown(text)}: a length is never negative")
    if math.isinf(number):
        raise CorsetkitError(f"{what} is {shown(text)}: that is no length a tape can show")
    return number * CM_PER_INCH if unit == "in" else number


Number: TypeAlias = float | numbers.Real | Decimal
"""What stands for one real number, numpy's own whole and broken numbers with it; `is_number` leaves out true and false."""


def is_number(value: object) -> TypeGuard[Number]:
    """Whether a value is one real number. True, false, complex numbers and texts are none."""
    return isinstance(value, (numbers.Real, Decimal)) and not isinstance(value, bool)


def to_float(number: Number) -> float:
    """`number` as a float; infinity where it is too large for one, and never minus zero."""
    if isinstance(number, Decimal) and number.is_nan():
        return math.nan  # A signalling one cannot be asked.
    try:
        return float(number) + 0.0
    except OverflowError:
        return math.inf if cast(int, number) > 0 else -math.inf


def say_length(cm: float, unit: str, *, part: int = 16) -> str:
    """`cm` in the words of a tape: "14 1/2 in" or "36.8 cm".

    Inches are rounded to the nearest 1/`part` and the fraction reduced; centimetres to 0.1 cm.
    Whole numbers carry neither fraction nor decimal, and zero has no sign.

    >>> say_length(36.83, "in"), say_length(36.83, "cm"), say_length(5.08, "in")
    ('14 1/2 in', '36.8 cm', '2 in')
    """
    if check_unit(unit) == "cm":
        return f"{say_number(cm, 1)} cm"
    parts = round(abs(cm) / CM_PER_INCH * part)
    whole, rest = divmod(parts, part)
    words = [str(whole)] if whole or not rest else []
    shared = math.gcd(rest, part)
    words += [f"{rest // shared}/{part // shared}"] if rest else []
    return ("-" if cm < 0 and parts else "") + " ".join(words) + " in"


@dataclass(frozen=True)
class Say:
    """Says lengths in one reader's unit.

    >>> say = Say("in")
    >>> f"{say(36.83)} of {say(50.8)}"
    '14 1/2 in of 20 in'

    `part` as in `say_length`. With `unbroken` the length and its unit stay on one line of a drawing's note.
    """

    unit: str
    part: int = 16
    unbroken: bool = False

    def __post_init__(self) -> None:
        check_unit(self.unit)

    def __call__(self, cm: float) -> str:
        words = say_length(cm, self.unit, part=self.part)
        return unbroken(words) if self.unbroken else words


def unbroken(words: str) -> str:
    """`words` with blanks at which no line is broken."""
    return words.replace(" ", "\u00a0")


def say_both(cm: float) -> str:
    """`cm` in both units, for sentences whose reader may use either: "36.8 cm (14 1/2 in)"."""
    return f"{say_length(cm, 'cm')} ({say_length(cm, 'in')})"


_BOTH = re.compile(r"(-?[\d.,]+(?: to [\d.,]+)? cm) \((-?[\d /]+(?: to [\d /]+)? in)\)")


def in_one_unit(text: str, unit: str) -> str:
    """A sentence with its lengths in `unit` alone, where `say_both` wrote them in both."""
    return _BOTH.sub(r"\1" if check_unit(unit) == "cm" else r"\2", text)


def say_number(number: float, decimals: int) -> str:
    """`number` in words, rounded to `decimals` places: as `write_number` has it, with the reader's own decimal mark."""
    return write_number(number, decimals).replace(".", WORDS("decimal_mark"))


def write_number(number: float, decimals: int) -> str:
    """`number` as programs read it: rounded to `decimals` places, without trailing zeros and without minus zero."""
    text = f"{number:.{decimals}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def round_to_sixteenth(cm: float) -> float:
    """The nearest length (cm) that is a whole number of 1/16 in: what a hand marks by."""
    return round(cm / CM_PER_INCH * 16) / 16 * CM_PER_INCH


def _read(text: str, unit: str, what: str) -> tuple[float, str]:
    """The number in `text`, and the unit it is in."""
    plain = _plain(text)
    if not plain:
        raise CorsetkitError(f"{what} is missing: {_HOW}")
    if re.match(r"-\s*[0-9.,]", plain):
        raise CorsetkitError(f"{what} is {shown(text)}: a length is never negative")
    found = _LENGTH.fullmatch(plain)
    said = _UNIT_WORDS.get((found["unit1"] or found["unit2"] or "").strip()) if found else None
    if found is None or said is None:
        raise _not_a_length(text, what)
    if found["decimal"]:
        return float(found["decimal"].replace(",", ".")), said or unit
    # float() and not int(): Python refuses very long whole numbers with an error of its own.
    over, under = float(found["over"]), float(found["under"])
    if not 0 < under < math.inf or (found["whole"] and over >= under):
        raise _not_a_length(text, what)
    return float(found["whole"] or 0) + over / under, said or unit


def _plain(text: str) -> str:
    """`text` in small letters, with \u00bd and its like written 1/2 and one blank between words."""
    letters = []
    for letter in text:
        wide = unicodedata.normalize("NFKD", letter) if unicodedata.category(letter) == "No" else ""
        letters.append(f" {wide}" if "\u2044" in wide else letter)
    return " ".join("".join(letters).replace("\u2044", "/").replace("\u2212", "-").lower().split())


_HOW = "write it like 36.8 cm, 14 1/2 in or 14.5 in"


def _not_a_length(given: object, what: str) -> CorsetkitError:
    return CorsetkitError(f"{what} is {shown(given)}, which is not a length: {_HOW}")
