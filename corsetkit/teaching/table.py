"""The drafting table: a drawing, beside it the panel of controls, below it what is to be said."""

import traitlets

from corsetkit.teaching.play import Play
from corsetkit.teaching.widgets import Answering, page


class Table(Answering):
    """The page's view of one `Play`; `renewed()` gives what the desk now has, as the arguments of its `take`."""

    _esm = page("common.js", "edges.js", "edge_table.js", "controls.js", "table.js")

    parts = traitlets.Dict().tag(sync=True)

    def __init__(self, play: Play, renewed):
        self.play, self.renewed = play, renewed
        super().__init__(parts=play.layout(), shown=self._state())

    def answer(self, message, buffers):
        self.play.handle(message)
        return self._state()

    def refresh(self) -> None:
        """Draw again, for something on the desk has changed: wearer, unit or style."""
        self.play.take(*self.renewed())
        self.parts = self.play.layout()
        self.renew(self._state())

    def _state(self):
        return self.play.shown()
