"""One thing to predict: the guess locks, the line moves, the gap is told in the learner's numbers.

Nothing here knows of a page or a widget; a dict comes in, a dict goes out, and what cannot be read or drawn is a
sentence. The answer is in no state before the line has arrived.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass
from html import escape

from corsetkit.errors import CorsetkitError, sentence
from corsetkit.teaching import guess_said
from corsetkit.teaching.picture import Picture, Stored
from corsetkit.words import words_of

SHARED = words_of("shared")

STEPS = 24
"""In how many steps the line moves."""
_SAME = 1e-6
"""A kept guess whose values differ by more than this was for another wearer or another style."""
_UNITS = {"in": SHARED("inches"), "cm": SHARED("centimetres"), "degrees": SHARED("in_degrees")}
_HOW = {"in": SHARED("guess_write_in"), "cm": SHARED("guess_write_cm"), "degrees": SHARED("guess_write_degrees")}
_SEEN = SHARED("guess_seen")
_PRACTICE = SHARED("guess_practice")
_ANEW = SHARED("guess_anew")
_LATER = SHARED("guess_later")


@dataclass(frozen=True)
class Asked:
    """One question for one wearer.

    `question` is a sentence with her numbers in her unit, `label` says what the box is for. `start` (now), `right` (what
    the engine gives after the move) and `near` (within which a guess is as good as right) are in `unit`, "cm" or "degrees".
    `slips` are known misconceptions: the value each leads to, and the likely reason as a sentence. `why` says why the line
    moves as it does; `move(share)` draws it, from share 0 (before) to 1 (after).
    """

    question: str
    label: str
    unit: str
    start: float
    right: float
    near: float
    slips: tuple[tuple[float, str], ...]
    why: str
    move: Callable[[float], Picture]

    def __post_init__(self):
        if self.unit not in ("cm", "degrees"):
            raise ValueError(f"a guess is in cm or degrees, not in {self.unit!r}")
        if not all(math.isfinite(one) for one in (self.start, self.right, self.near)):
            raise ValueError("start, right and near of a guess are numbers")
        if self.start < -_SAME or self.right < -_SAME or self.near <= 0:
            raise ValueError("what is guessed is never negative, and near is above zero")


class Guess:
    """One learner before one question.

    `asked()` gives the Asked of the desk as it is now, or raises CorsetkitError; `unit()` is the learner's unit. `kept` is
    a locked guess of earlier, as `keep` was given it: its text, value, right and start in the question's unit, and what it
    was asked `of`. It stays locked with the numbers it was given for until the learner guesses again; `earlier` (an
    `AsItStood`) asks of them anew where the pattern has changed since.
    """

    def __init__(self, asked, unit, kept, keep, earlier=None):
        self._ask, self._unit, self._keep, self._earlier = asked, unit, keep, earlier
        self.asked = self.kept = None
        self.since = ""
        self.at, self.arrived = 0, False
        self.picture = Picture("", "")
        self._fresh()
        self.take(kept)

    def take(self, kept) -> None:
        """Go on from what is kept now, and from the desk as it is now."""
        if kept != self.kept:
            # A guess given or taken away from outside: nothing of the present one holds.
            self.asked = None
        self.kept = kept
        self.refresh()

    def refresh(self) -> None:
        """Ask anew, for something on the desk has changed; where the question is the same, all stays but its words."""
        before = self.asked
        try:
            present, self.refused = self._ask(), ""
        except CorsetkitError as error:
            present, self.refused = None, sentence(str(error))
        then = None if self.kept is None or present and _same(self.kept, present) else self._asked_then()
        self.asked, self.since = then or present, self._earlier.since(self.kept["of"]) if then else ""
        if self.asked is None:
            return
        if before is None or not _same(vars(before), self.asked):
            self._fresh()
            self.at, self.arrived = (STEPS, True) if self.locked else (0, False)
        if self.locked and self._earlier and "of" not in self.kept:
            # It was kept by a course that did not say it; as long as the question stands, what it is asked of is known.
            self.kept = {**self.kept, "of": self._earlier.now()}
            self._keep(dict(self.kept))
        self._draw()

    @property
    def locked(self) -> bool:
        """Whether there is a guess for the question that is shown."""
        return self.asked is not None and self.kept is not None and _same(self.kept, self.asked)

    def handle(self, message: dict) -> None:
        """Do what the page asks; what does not fit the state is left undone."""
        kind = message.get("kind")
        if self.asked is None:
            return
        if kind == "lock" and not self.locked:
            self._lock(" ".join(str(message.get("text") or "").split()))
        elif kind == "show" and self.locked:
            self._show(message.get("at"))
        elif kind == "again" and self.arrived:
            # The answer that was seen is that of the numbers then.
            note = "" if self.since else _SEEN
            self._keep_now(None)
            self._fresh(note)
            self.refresh()

    def shown(self) -> dict:
        """The whole state of the page."""
        asked, unit, locked = self.asked, self._unit(), self.locked
        kind = "degrees" if asked and asked.unit == "degrees" else unit
        text, words = (self._text(), self._words()) if locked else (self.typed, "")
        return {
            "question": asked.question if asked else "",
            "label": asked.label if asked else "",
            "unit": _UNITS[kind],
            "how": _HOW[kind],
            "locked": locked,
            "text": text,
            "words": words,
            "unread": self.unread,
            "note": self.since or self.note,
            "again": _ANEW if self.since else _PRACTICE,
            "at": self.at,
            "steps": STEPS,
            "svg": self.picture.svg,
            "description": self.picture.description,
            "told": guess_said.told(self.kept["text"], self.kept["value"], asked, unit) if locked and self.arrived else [],
            "refused": self.refused,
        }

    def stored(self, svg_image) -> Stored:
        """The still state, without the answer; `svg_image` makes an <img> with its description of an SVG text."""
        if self.asked is None:
            return Stored(f"<p>{escape(self.refused)}</p>", (self.refused,))
        picture = self.asked.move(0.0)
        html = f"{svg_image(picture.svg)}<p><b>{escape(self.asked.question)}</b></p><p>{_LATER}</p>"
        return Stored(html, (picture.description, self.asked.question, _LATER))

    def _lock(self, text: str) -> None:
        try:
            value = guess_said.read_guess(text, self.asked, self._unit())
        except CorsetkitError as error:
            self.typed, self.unread = text, sentence(str(error))
            return
        self._fresh(self.note)
        of = {"of": self._earlier.now()} if self._earlier else {}
        self._keep_now({"text": text, "value": value, "right": self.asked.right, "start": self.asked.start, **of})
        self._draw()

    def _asked_then(self):
        """The question of a locked guess, as it was asked then; None where that is not known,
        or comes to something else now."""
        if self._earlier is None or "of" not in self.kept:
            return None
        try:
            then = self._earlier.asked(self.kept["of"])
        except CorsetkitError:
            return None
        return then if _same(self.kept, then) else None

    def _keep_now(self, kept) -> None:
        self.kept = kept
        self.at, self.arrived = 0, False
        self._keep(kept and dict(kept))

    def _show(self, at) -> None:
        if isinstance(at, bool) or not isinstance(at, int):
            return
        self.at = min(max(at, 0), STEPS)
        self.arrived = self.arrived or self.at == STEPS
        self._draw()

    def _fresh(self, note: str = "") -> None:
        """Nothing typed, nothing said of it."""
        self.typed, self.unread, self.note = "", "", note

    def _draw(self) -> None:
        """Draw the line where it is; where that is refused, the last drawing stays and the reason is kept."""
        try:
            self.picture, self.refused = self.asked.move(self.at / STEPS), ""
        except CorsetkitError as error:
            self.refused = sentence(str(error))

    def _text(self) -> str:
        """What was typed; in another unit than it was typed in, what it comes to."""
        text, value = self.kept["text"], self.kept["value"]
        if guess_said.reads_as(text, value, self.asked, self._unit()):
            return text
        return guess_said.say_value(value, self.asked, self._unit())

    def _words(self) -> str:
        return guess_said.say_guess(self.kept["text"], self.kept["value"], self.asked, self._unit())


def _same(values, asked: Asked) -> bool:
    return all(abs(values[one] - getattr(asked, one)) <= _SAME for one in ("start", "right"))
