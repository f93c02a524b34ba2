"""The page's view of one guess."""

from corsetkit.teaching.guess import Guess
from corsetkit.teaching.widgets import Answering, page


class GuessWidget(Answering):
    """The page's view of one `Guess`; `kept()`, where it is given, is what the desk now keeps for it."""

    _esm = page("common.js", "guess.js")

    def __init__(self, guess: Guess, kept=None):
        self.guess, self.kept = guess, kept
        super().__init__(shown=guess.shown())

    def answer(self, message, buffers):
        self.guess.handle(message)
        return self.guess.shown()

    def refresh(self) -> None:
        """Ask again, for something on the desk has changed: wearer, unit or style."""
        if self.kept:
            self.guess.take(self.kept())
        else:
            self.guess.refresh()
        self.renew(self.guess.shown())
