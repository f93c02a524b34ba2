"""One learner at one table: values asked for, the last picture that could be drawn, and undo.

Nothing here knows of a page or a widget; a dict comes in, a dict goes out, and a mistake of the
learner's is never an exception.
"""

from dataclasses import dataclass

from corsetkit.errors import CorsetkitError, sentence
from corsetkit.teaching.controls import Control
from corsetkit.units import in_one_unit
from corsetkit.words import words_of

SHARED = words_of("shared")

_NOTHING = {"svg": "", "description": "", "said": [], "warnings": []}


@dataclass(frozen=True)
class Panel:
    """At most three live controls with one question; `names` are those of the quantities."""

    question: str
    names: tuple[str, ...]

    def __post_init__(self):
        if not 1 <= len(self.names) <= 3:
            raise ValueError(f"a panel has one to three controls, not {len(self.names)}")


class Play:
    """The values of one table.

    `quantities` are the declarations, `show(values)` gives the Picture or raises CorsetkitError, and
    `keep(values)` is called with values that draw, once a movement has come to rest. Values are held
    as what differs from the declared defaults: undo without end stays small.
    """

    def __init__(self, panels, quantities, values, unit, show, keep=lambda values: None):
        self.panels = tuple(panels)
        self.quantities = {one.name: one for one in quantities}
        if missing := [n for panel in self.panels for n in panel.names if n not in self.quantities]:
            raise ValueError(f"no such quantities: {', '.join(missing)}")
        self.show, self.keep = show, keep
        self.asked = self._changes(values)
        self.rests = [self.asked]
        self.picture = _NOTHING
        self.refused = ""
        self.typed: dict[str, str] = {}
        self.set_unit(unit)
        self.draw()

    def set_unit(self, unit: str) -> None:
        self.unit = unit
        self.controls = {name: Control(one, unit) for name, one in self.quantities.items()}

    def take(self, quantities, values: dict, unit: str) -> None:
        """Go on from other declarations, values and another unit; where the values are others, that is a step to undo.

        What is under the hand and has not come to rest moves on, unless it is refused or declared otherwise now.
        """
        before, rest = self.quantities, self.rests[-1]
        moving = (
            {}
            if self.refused
            else {name: self.value(name) for name, one in before.items() if self.value(name) != rest.get(name, one.default)}
        )
        self.quantities = {one.name: one for one in quantities}
        self.set_unit(unit)
        self.typed = {}
        values = self._changes(values)
        if values != rest:
            self.rests.append(values)
        self.asked = self._changes(
            values | {name: value for name, value in moving.items() if self.quantities.get(name) == before[name]}
        )
        self.draw()

    def draw(self) -> None:
        """Draw what is asked for; where that is refused, the last picture stays and the reason is kept."""
        try:
            picture = self.show(dict(self.asked))
        except CorsetkitError as error:
            self.refused = sentence(in_one_unit(str(error), self.unit))
            return
        self.refused = ""
        self.picture = {
            "svg": picture.svg,
            "description": picture.description,
            "said": list(picture.said),
            "warnings": [sentence(in_one_unit(one, self.unit)) for one in picture.warnings],
        }

    def handle(self, message: dict) -> None:
        """Do what the page asks: set controls, come to rest, undo, start afresh."""
        kind = message.get("kind")
        if kind != "keep":
            self.typed = {}
        if kind == "set":
            self._set(message.get("changes") or {})
        elif kind == "undo":
            self._undo()
        elif kind == "afresh":
            self.asked = {}
            self.draw()
        if message.get("keep") or kind in ("keep", "undo", "afresh"):
            self._rest(kind)

    def shown(self) -> dict:
        """The whole state of the page, but for the controls' own descriptions."""
        return {
            **self.picture,
            "refused": self.refused,
            "state": {name: self._state(name) for name in self.controls},
            "undo": len(self.rests) > 1 or self.asked != self.rests[-1] or bool(self.typed),
            "fresh": not self.asked,
        }

    def layout(self) -> dict:
        """What stands where: the panels, then all other controls folded away under their groups."""
        live = [name for panel in self.panels for name in panel.names]
        groups: dict[str, list] = {}
        for name, one in self.quantities.items():
            if name not in live:
                title = (one.group or "other").replace("_", " ").capitalize()
                groups.setdefault(title, []).append(self.controls[name].page())
        return {
            "panels": [
                {"question": one.question, "controls": [self.controls[n].page() for n in one.names]} for one in self.panels
            ],
            "folded": [{"title": title, "controls": inside} for title, inside in groups.items()],
        }

    def value(self, name: str):
        return self.asked.get(name, self.quantities[name].default)

    def _state(self, name: str) -> dict:
        state = self.controls[name].state(self.value(name)) | {"idle": self._idle(name)}
        if name in self.typed:
            # What cannot be read stays as it was typed, to be mended.
            state |= {"words": self.typed[name], "wrong": True}
        return state

    def _idle(self, name: str) -> str:
        """Why the control does nothing at present; empty where it counts."""
        only = self.quantities[name].only
        if only is None or only[0] not in self.quantities or self.value(only[0]) == only[1]:
            return ""
        other = self.controls[only[0]].quantity
        return SHARED("counts_only", name=other.label, value=other.say(only[1]))

    def _set(self, changes: dict) -> None:
        asked = {name: self.value(name) for name in self.quantities}
        refused = ""
        for name, answer in changes.items():
            if name not in self.controls:
                continue
            try:
                asked[name] = self.controls[name].read(answer)
            except CorsetkitError as error:
                refused = refused or sentence(in_one_unit(str(error), self.unit))
                self.typed[name] = str(answer.get("text") or "")
        self.asked = self._changes(asked)
        self.draw()
        self.refused = refused or self.refused

    def _rest(self, kind: str | None) -> None:
        if self.refused:
            return
        if self.asked != self.rests[-1]:
            self.rests.append(self.asked)
        elif kind == "keep" or kind == "set":
            return
        self.keep(dict(self.asked))

    def _undo(self) -> None:
        # What is refused or still moving was never at rest: leaving it is the first step back.
        if self.asked == self.rests[-1] and not self.refused and len(self.rests) > 1:
            self.rests.pop()
        self.asked = self.rests[-1]
        self.draw()

    def _changes(self, values: dict) -> dict:
        """Only what differs from the defaults; names that are not declared are left out."""
        return {
            name: value for name, value in values.items() if name in self.quantities and value != self.quantities[name].default
        }
