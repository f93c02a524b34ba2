"""The drafts of the lesson on finishing: the wearer's pattern, and the pattern made ready to cut."""

from dataclasses import replace
from html import escape

from corsetkit.errors import CorsetkitError, sentence
from corsetkit.finish.choices import Finish
from corsetkit.finish.finished import Finished, FinishedPiece, finish, finished_pieces
from corsetkit.pattern.pattern import Pattern
from corsetkit.quantity import quantities
from corsetkit.style import Style
from corsetkit.teaching.cells import Drafts
from corsetkit.teaching.picture import Stored
from corsetkit.teaching.shared.seam_walk import kept_draft
from corsetkit.words import words_of

SHARED = words_of("shared")

_STYLE, _FINISH = ({one.name for one in quantities(cls)} for cls in (Style, Finish))


class Finishing(Drafts):
    """As `Drafts`; a pattern and its finishing are made anew only where what they rest on has changed."""

    def __init__(self, the_desk):
        super().__init__(the_desk)
        self._kept = kept_draft(the_desk)
        self._last = None

    def now(self) -> dict:
        """What the desk holds of style and finish together; their names differ."""
        return self.desk.record.style | self.desk.record.finish

    def pattern(self, values: dict) -> tuple[str, Pattern]:
        """The wearer's name and her pattern, for values of style and finish as `now` gives them."""
        return self._kept.of(style_in(values))

    def finished(self, values: dict) -> tuple[str, Finished]:
        """The wearer's name and her whole pattern ready to cut; CorsetkitError where either cannot be had."""
        name, pattern = self.pattern(values)
        choices = choices_in(values)
        if self._last is None or self._last.pattern is not pattern or _cut(self._last.choices) != _cut(choices):
            self._last = finish(pattern, choices)
        elif self._last.choices != choices:
            self._last = replace(self._last, choices=choices)
        return name, self._last

    def piece(self, values: dict, number: int) -> tuple[str, Pattern, FinishedPiece]:
        """The wearer's name, her pattern, and one of its pieces ready to cut: quicker than all of them."""
        name, pattern = self.pattern(values)
        choices = choices_in(values)
        piece = next((one for one in pattern.pieces if one.number == number), pattern.pieces[0])
        return name, pattern, finished_pieces(pattern, (piece,), choices)[0]


def _cut(choices):
    """Those of the choices that pieces and strips are cut by; bones, lacing and cloth change none."""
    return [getattr(choices, one.name) for one in quantities(Finish) if one.group == "allowances"]


def style_in(values: dict) -> dict:
    """The values of the style among them."""
    return {name: value for name, value in values.items() if name in _STYLE}


def choices_in(values: dict) -> Finish:
    """The finishing's choices among them; CorsetkitError for one that is not allowed."""
    return Finish(**{name: value for name, value in values.items() if name in _FINISH})


def offered(*names: str):
    """The declared choices of these names, in the order of the finishing; all of them where none is named."""
    return tuple(one for one in quantities(Finish) if not names or one.name in names)


def read_or_refused(make) -> Stored:
    """What `make()` gives, or the sentence that says why there is nothing to finish."""
    try:
        return make()
    except CorsetkitError as error:
        words = sentence(SHARED("finish_nothing", error=error))
        return Stored(f"<p>{escape(words)}</p>", (words,))
