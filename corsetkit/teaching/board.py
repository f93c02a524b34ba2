"""A board: a table to read that keeps up with the desk, with at most one choice and one button."""

import traitlets

from corsetkit.errors import CorsetkitError, sentence
from corsetkit.teaching.picture import Stored
from corsetkit.teaching.widgets import Answering, bundle
from corsetkit.words import words_of

SHARED = words_of("shared")


class Board(Answering):
    """`read()` gives what is to be read, as Stored; `do(choice)` does what the button says and returns a sentence.

    A choice is its name, its words and, where there are many, what it is for; those for the same stand side by side.
    """

    _esm = bundle("board")

    parts = traitlets.Dict().tag(sync=True)

    def __init__(self, title: str, read, choices=(), button: str = "", do=None):
        self.read, self.do = read, do
        parts = {"title": title, "choices": [list(one) for one in choices], "button": button}
        super().__init__(parts=parts, shown=self._state())

    def answer(self, message, buffers):
        said = ""
        if message.get("kind") == "do" and self.do:
            try:
                said = self.do(str(message.get("choice", "")))
            except CorsetkitError as error:
                said = sentence(SHARED("not_done", error=error))
        return self._state(said)

    def refresh(self) -> None:
        self.renew(self._state())

    def _state(self, answer: str = "") -> dict:
        stored: Stored = self.read()
        return {"html": stored.html, "answer": answer, "refused": ""}
