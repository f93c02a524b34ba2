"""One declared quantity: its name, meaning, unit, limits and step, said once.

A measurement or a style value is declared as the field of a frozen dataclass:

    @given_by_name
    @dataclass(frozen=True, kw_only=True)
    class Style:
        overbust_height: float = declared(
            "how far above the bust point the overbust mark lies",
            unit="cm", low=3.8, high=11.4, step=0.3, default=7.62, group="overbust",
            source="common practice, no source",
        )

        def __post_init__(self):
            check_all(self)

and everything else (form, slider, reader, error text, reference table) asks `quantities(Style)`.
"""

import difflib
import math
from dataclasses import MISSING, dataclass, field, fields, replace
from functools import wraps
from typing import Any, TypeAlias, TypeVar, cast

from corsetkit.errors import CorsetkitError
from corsetkit.units import CM_PER_INCH, check_unit, is_number, parse_length, say_length, say_number, shown, to_float

UNITS = ("cm", "degrees", "share", "count", "yes or no", "choice")

# Limits are met with this slack, for a slider's steps do not add up exactly in floats; what is
# handed on lies within the limits.
UNITS_TYPED = ("cm", "in")
"""In which unit a bare number may have been meant; a typed text knows."""
_SLACK = 1e-9

_YES_NO = {"yes": True, "no": False, "true": True, "false": False}

Value: TypeAlias = float | int | bool | str | None
"""What a quantity may hold: its unit says which of them."""
Declared = TypeVar("Declared")
"""A dataclass of declared fields."""


@dataclass(frozen=True)
class Quantity:
    """One value a person may give, and what may be given.

    `unit` is "cm", "degrees", "share" (a part of a whole, 0 to 1, said in hundredths: 75 %), "count", "yes or no" or
    "choice" (one of `choices`). `low`, `high` and `step` are in that unit. `default` is None where
    a value must be given or, with `optional`, where it may be left out. `standard` is the term of
    ISO 8559-1, `source` where default and limits come from, `why_range` why the limits do not
    cover half to one and a half of the default. `group` is the step it belongs to. `choice_words` say the
    choices to people, in their order. `formerly` are names under which files of earlier hold it. `only` is the
    name and the value of another quantity of the same class without which this one does nothing.
    Raises ValueError where the declaration contradicts itself.

    >>> hem = Quantity("hem_allowance", "cloth beyond the hem", "cm", low=0.5, high=5.0, step=0.25, default=2.0)
    >>> hem.check(3), hem.read("1 1/2", unit="in"), hem.say(3.81, "in")
    (3.0, 3.81, '1 1/2 in')
    >>> hem.check(12)
    Traceback (most recent call last):
    corsetkit.errors.CorsetkitError: hem allowance is 12 cm (4 3/4 in): allowed are 0.5 to 5 cm (1/4 to 1 15/16 in); ...
    """

    name: str
    meaning: str
    unit: str
    low: float | None = None
    high: float | None = None
    step: float | None = None
    default: Value = None
    standard: str | None = None
    source: str | None = None
    why_range: str | None = None
    group: str | None = None
    choices: tuple[str, ...] = ()
    choice_words: tuple[str, ...] = ()
    optional: bool = False
    only: tuple[str, Value] | None = None
    formerly: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        if self.unit not in UNITS:
            raise ValueError(f"{self.name}: unit {self.unit!r} is not one of {UNITS}")
        if (self.unit == "choice") != bool(self.choices):
            raise ValueError(f"{self.name}: choices go with the unit 'choice' and with no other")
        if len(self.choice_words) not in (0, len(self.choices)):
            raise ValueError(f"{self.name}: each choice has its words, or none has")
        if self.is_number:
            if self.low is None or self.high is None or self.step is None:
                raise ValueError(f"{self.name}: a number is declared with low, high and step")
            if not (self.low < self.high and 0 < self.step <= self.high - self.low):
                raise ValueError(f"{self.name}: low, high and step do not make a range")
        if self.default is not None:
            self.check(self.default)

    @property
    def label(self) -> str:
        """The name for people: blanks for underscores."""
        return self.name.replace("_", " ")

    @property
    def is_number(self) -> bool:
        """Whether a slider can show it: everything but "yes or no" and "choice"."""
        return self.unit not in ("yes or no", "choice")

    @property
    def is_length(self) -> bool:
        """Whether it can be given in inches."""
        return self.unit == "cm"

    @property
    def limits(self) -> tuple[float, float, float]:
        """Low, high and step of a number, as declared."""
        if self.low is None or self.high is None or self.step is None:
            raise ValueError(f"{self.name} has no limits: it is a {self.unit}")
        return self.low, self.high, self.step

    @property
    def covers_half_to_one_and_a_half(self) -> bool:
        """Whether the limits reach from half the default to one and a half of it."""
        (low, high, _), default = self.limits, cast(float, self.default)
        ends = sorted((0.5 * default, 1.5 * default))
        return low <= ends[0] + _SLACK and ends[1] <= high + _SLACK

    def check(self, value: object, where: str = "") -> Value:
        """`value` as float, int, bool or str, within the limits; else CorsetkitError.

        Lengths are in cm. `where` is put before the sentence ("row 3, Anna: ").
        """
        if value is None:
            if self.optional:
                return None
            raise CorsetkitError(f"{where}{self.label} is missing: {self.allowed}")
        if self.unit == "yes or no":
            if not isinstance(value, bool):
                raise self._refusal(value, where)
            return value
        if self.unit == "choice":
            if not isinstance(value, str) or value not in self.choices:
                raise self._refusal(value, where)
            return value
        return self._check_number(value, where)

    def number(self, value: object, where: str = "") -> float:
        """`value` as `check` has it, of a quantity that is a number and may not be left out."""
        if value is None:
            raise CorsetkitError(f"{where}{self.label} is missing: {self.allowed}")
        return self._check_number(value, where)

    def read(self, text: str, unit: str = "cm", where: str = "") -> Value:
        """What a person typed, as `check` returns it; blank is None where it may be left out.

        A length is read in `unit` ("cm" or "in") unless the text names its own.
        """
        if not text.strip():
            return self.check(None, where)
        if self.is_length:
            # A text that names its unit was not given in the wrong one.
            named = any(mark.isalpha() or mark in "\"'″”" for mark in text)
            length = parse_length(text, unit, what=where + self.label)
            return self._check_number(length, where, () if named else (unit,))
        if self.unit == "choice":
            return self.check(text.strip(), where)
        if self.unit == "yes or no":
            return self.check(_YES_NO.get(text.strip().lower(), text), where)
        typed = text.strip().replace(",", ".")
        hundredths = self.unit == "share" and typed.endswith("%")
        try:
            number = float(typed.removesuffix("%") if hundredths else typed)
        except ValueError:
            raise self._refusal(text, where) from None
        # A share may be typed as it is said, 75 %, without its sign, or as a decimal.
        if hundredths or (self.unit == "share" and number > 1):
            number /= 100
        return self.check(number, where)

    def say(self, value: Value, unit: str = "cm") -> str:
        """`value` in words, lengths in `unit`: "14 1/2 in", "25.8 degrees", "45 %", "yes"."""
        if value is None:
            return "not given"
        if self.unit == "yes or no":
            return "yes" if value else "no"
        if isinstance(value, str):
            return dict(zip(self.choices, self.choice_words)).get(value, value)
        if self.is_length:
            return say_length(value, unit)
        if self.unit == "share":
            return f"{say_number(100 * value, 1)} %"
        return say_number(value, 2) + (" degrees" if self.unit == "degrees" else "")

    def limits_in(self, unit: str) -> tuple[float, float, float]:
        """Low, high and step for a slider; lengths in `unit`, the others as declared.

        In inches the step is a half, a quarter, ... a sixteenth, both ends are whole steps, and both
        lie within the declared limits.
        """
        check_unit(unit)
        if unit == "cm" or not self.is_length:
            return self.limits
        step = max(1 / 16, 2.0 ** round(math.log2(self.limits[2] / CM_PER_INCH)))
        return *self._inches_within(step), step

    @property
    def allowed(self) -> str:
        """What may be given, in words, lengths in both units."""
        if self.unit == "yes or no":
            return "allowed are yes and no"
        if self.unit == "choice":
            return "allowed are " + ", ".join(self.choices)
        low, high, _ = self.limits
        if self.is_length:
            least, most = (say_length(e * CM_PER_INCH, "in") for e in self._inches_within(1 / 16))
            inches = f"{least.removesuffix(' in')} to {most}"
            return f"allowed are {_range(low, high)} cm ({inches})"
        if self.unit == "share":
            return f"allowed are {_range(100 * low, 100 * high)} %"
        kind = "whole numbers from " if self.unit == "count" else ""
        tail = " degrees" if self.unit == "degrees" else ""
        return f"allowed are {kind}{_range(low, high)}{tail}"

    def _inches_within(self, step: float) -> tuple[float, float]:
        """Lowest and highest whole number of steps (in) within the limits."""
        low, high = (end / CM_PER_INCH / step for end in self.limits[:2])
        return math.ceil(low - _SLACK) * step, math.floor(high + _SLACK) * step

    def _check_number(self, value: object, where: str, typed: tuple[str, ...] = UNITS_TYPED) -> float | int:
        low, high, _ = self.limits
        if not is_number(value):
            raise self._refusal(value, where, "which is not a number")
        number = to_float(value)
        if math.isnan(number) or (self.unit == "count" and not number.is_integer()):
            raise self._refusal(value, where, "which is not a number" if math.isnan(number) else "")
        if not low - _SLACK <= number <= high + _SLACK:
            raise CorsetkitError(f"{where}{self.label} is {self._given(number)}: {self.allowed}{self._remedy(number, typed)}")
        number = min(max(number, low), high)
        return int(number) if self.unit == "count" else float(number)

    def _given(self, number: float) -> str:
        if abs(number) > 1e6:
            return shown(number)
        if not self.is_length:
            return self.say(number)
        return f"{say_number(number, 2)} cm ({say_length(number, 'in')})"

    def _remedy(self, number: float, typed: tuple[str, ...]) -> str:
        """The usual mistake with lengths is the wrong unit: say so where it would explain it."""
        if not self.is_length:
            return ""
        low, high, _ = self.limits
        if "cm" in typed and low <= number * CM_PER_INCH <= high:
            return "; it looks like inches given as centimetres"
        if "in" in typed and low <= number / CM_PER_INCH <= high:
            return "; it looks like centimetres given as inches"
        return ""

    def _refusal(self, value: object, where: str, why: str = "") -> CorsetkitError:
        why = f", {why}" if why else ""
        return CorsetkitError(f"{where}{self.label} is {shown(value)}{why}: {self.allowed}")


def declared(meaning: str, *, default: Any = MISSING, **more: Any) -> Any:
    """A dataclass field that carries its Quantity; `more` are the other fields of `Quantity`.

    Without `default` a value must be given; `default=None` with `optional=True` may be left out.
    """
    known = None if default is MISSING else default
    quantity = Quantity("(not named yet)", meaning, default=known, **more)
    return field(default=default, metadata={"quantity": quantity})


_named: dict[type, tuple[Quantity, ...]] = {}


def quantities(cls: type[Any]) -> tuple[Quantity, ...]:
    """The declared quantities of a dataclass, named after their fields, in their order."""
    if cls not in _named:
        own = (one for one in fields(cls) if "quantity" in one.metadata)
        _named[cls] = tuple(replace(one.metadata["quantity"], name=one.name) for one in own)
    return _named[cls]


def given_by_name(cls: type[Declared]) -> type[Declared]:
    """A class decorator over @dataclass: a value without its name, or under a name the class does not have, is refused
    with a sentence that says which name may have been meant."""
    build, names = cast(Any, cls).__init__, [one.name for one in fields(cast(Any, cls))]
    kind = cls.__name__

    @wraps(build)
    def __init__(self: Declared, *nameless: Any, **values: Any) -> None:
        if nameless:
            raise CorsetkitError(f"{kind} was given {shown(nameless[0])} without a name: write {kind}({names[0]}=...)")
        for name in values:
            if name not in names:
                near = difflib.get_close_matches(name, names, n=1)
                meant = f"did you mean {near[0]}" if near else f"allowed are {', '.join(names)}"
                raise CorsetkitError(f"{shown(name)} is no value of {kind}: {meant}")
        build(self, **values)

    cast(Any, cls).__init__ = __init__
    return cls


def under_present_names(cls: type[Any], values: dict[str, Any]) -> dict[str, Any]:
    """What a file holds for a declared class, each value under its name of today; one given under both keeps today's."""
    now = {old: one.name for one in quantities(cls) for old in one.formerly}
    return {
        **{now[name]: value for name, value in values.items() if name in now},
        **{name: value for name, value in values.items() if name not in now},
    }


def check_all(instance: object, where: str = "") -> None:
    """Check and normalise every declared field of a frozen dataclass; for its __post_init__."""
    for quantity in quantities(type(instance)):
        value = quantity.check(getattr(instance, quantity.name), where)
        object.__setattr__(instance, quantity.name, value)


def _range(low: float, high: float) -> str:
    return f"{say_number(low, 2)} to {say_number(high, 2)}"
