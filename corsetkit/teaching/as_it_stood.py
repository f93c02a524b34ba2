"""What a guess was asked of, as plain data: wearer, corrections and choices; and the question asked of them again.

A guess stays locked with the numbers it was given for, whatever is changed afterwards, so its question must be drawn
again from them: after a restart too, and in another unit.
"""

from corsetkit.fitting.corrections_file import Kept
from corsetkit.measurements import Measurements
from corsetkit.pattern.pattern import Correction
from corsetkit.quantity import quantities
from corsetkit.teaching.desk import Desk
from corsetkit.teaching.record import FILE, Record
from corsetkit.teaching.shared.corrected import read_kept
from corsetkit.words import words_of

SHARED = words_of("shared")


class AsItStood:
    """The question of one desk, now and earlier; `ask(desk)` gives the `Asked` of any desk."""

    def __init__(self, desk, ask):
        self._desk, self._ask = desk, ask
        self._last = None

    def now(self) -> dict:
        """What is asked of now; CorsetkitError where the wearer's numbers are not complete."""
        (name, body), record = self._desk.body(), self._desk.record
        return {
            "wearer": name,
            "body": {
                one.name: getattr(body, one.name) for one in quantities(Measurements) if getattr(body, one.name) is not None
            },
            "style": dict(record.style),
            "finish": dict(record.finish),
            "corrections": [{"line": one.line, "by": one.by} for one in read_kept(self._desk)[0].of(name)],
        }

    def asked(self, of: dict):
        """The question, asked of what stood then; CorsetkitError where it cannot be any more."""
        key = of, self._desk.record.unit
        if self._last is None or self._last[0] != key:
            self._last = key, self._ask(_desk_of(*key))
        return self._last[1]

    def since(self, of: dict) -> str:
        """That the pattern is another by now, in sentences."""
        who = SHARED("you") if of["wearer"] == "You" else of["wearer"]
        return SHARED("guess_of_then", who=who)


def _desk_of(of, unit):
    """A desk on which the wearer stands as she stood, and on which nothing is kept."""
    desk, name = Desk(), of["wearer"]
    desk.loaded = {name: Measurements(**of["body"])}
    desk.record = Record(FILE, name, unit, style=of["style"], finish=of["finish"])
    desk.corrections = Kept().with_more(name, [Correction(one["line"], one["by"]) for one in of["corrections"]])
    return desk
