"""A declared quantity as a control on the page: where a slider stops, and each stop in words.

The page knows no units. It is told the words of every stop, moves an index, and sends back the
index or the text that was typed; what they mean is decided here, from the declaration.
"""

import math
from bisect import bisect_left
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from corsetkit.errors import CorsetkitError
from corsetkit.quantity import Quantity
from corsetkit.units import CM_PER_INCH, check_unit, shown

_YES_NO = ("no", "yes")
# Steps that read well in centimetres: the declared ones are often eighths of an inch.
_CM_STEPS = (0.1, 0.2, 0.5, 1.0)
_SLACK = 1e-6
_FEW = 4


@dataclass(frozen=True)
class Control:
    """One quantity as the page shows it; lengths in `unit`, "cm" or "in"."""

    quantity: Quantity
    unit: str

    def __post_init__(self):
        check_unit(self.unit)

    @cached_property
    def stops(self) -> tuple:
        """The values at which the control stops, from the lowest to the highest, in the package's unit."""
        if self.quantity.unit == "yes or no":
            return (False, True)
        if self.quantity.unit == "choice":
            return self.quantity.choices
        low, high, step = self._grid()
        count = math.floor((high - low) / step + _SLACK)
        per = CM_PER_INCH if self.quantity.is_length and self.unit == "in" else 1
        stops = [(low + i * step) * per for i in range(count + 1)]
        if high - low - count * step > step * _SLACK:
            stops.append(high * per)
        return tuple(self.quantity.check(stop) for stop in stops)

    @property
    def is_slider(self) -> bool:
        """Whether it slides; a number with few stops is chosen like a word, each stop in sight."""
        return self.quantity.is_number and len(self.stops) > _FEW

    @cached_property
    def words(self) -> tuple[str, ...]:
        """Each stop as people say it."""
        return tuple(self.quantity.say(stop, self.unit) for stop in self.stops)

    def place(self, value) -> int:
        """The stop nearest to `value`."""
        if not self.quantity.is_number:
            return self.stops.index(value)
        above = bisect_left(self.stops, value)
        near = range(max(above - 1, 0), min(above + 1, len(self.stops)))
        return min(near, key=lambda i: abs(self.stops[i] - value))

    def read(self, answer):
        """The value that the page asks for: {"at": index} or {"text": what was typed}.

        Raises CorsetkitError for a text that says no allowed value, and for any other answer.
        """
        at, text = answer.get("at"), answer.get("text")
        if isinstance(text, str) and text.strip():
            return self.quantity.read(text, self.unit)
        if isinstance(at, int) and not isinstance(at, bool) and 0 <= at < len(self.stops):
            return self.stops[at]
        given = shown(text if text is not None else at)
        raise CorsetkitError(f"{self.quantity.label} is {given}: {self.quantity.allowed}")

    def state(self, value) -> dict:
        """Where the control stands for `value`, and the value in words."""
        return {"at": self.place(value), "words": self.quantity.say(value, self.unit)}

    def page(self) -> dict:
        """What the page must know to build the control."""
        told: dict[str, Any] = {
            "name": self.quantity.name,
            "label": self.quantity.label.capitalize(),
            "meaning": self.quantity.meaning,
            "words": list(self.words),
            "start": self.quantity.say(self.quantity.default, self.unit),
            "kind": "slider" if self.is_slider else "choice",
        }
        if self.is_slider:
            many = 4 if self.unit == "in" and self.quantity.is_length else 5
            told["steps"] = [1] if len(self.stops) <= 2 * many else [1, many]
            told["amounts"] = [self._amount(steps) for steps in told["steps"]]
        return told

    def _grid(self) -> tuple[float, float, float]:
        low, high, step = self.quantity.limits_in(self.unit)
        if self.unit == "cm" and self.quantity.is_length:
            step = min(_CM_STEPS, key=lambda nice: abs(math.log(nice / step)))
            low = math.ceil(low / step - _SLACK) * step
            high = math.floor(high / step + _SLACK) * step
        return low, high, step

    def _amount(self, steps: int) -> str:
        """What so many steps add, without its unit: short enough for a button."""
        words = self.quantity.say((self.stops[1] - self.stops[0]) * steps, self.unit)
        return words.removesuffix(f" {self.unit}").removesuffix(" degrees")
