"""The page's view of the closer lay: it goes on answering while a search runs."""

import time

import traitlets

from corsetkit.teaching.parts.closer_lay import PAPERS, SECONDS, CloserLay, in_a_thread
from corsetkit.teaching.parts.cloth_wanted import choices
from corsetkit.teaching.widgets import Answering, page

_EVERY = 0.15
"""Seconds between two words of a search's progress to the page."""


class LayWidget(Answering):
    """The page's view of one `CloserLay`."""

    _esm = page("common.js", "lay.js")
    _css = page("look.css", "sewing.css")

    parts = traitlets.Dict().tag(sync=True)

    def __init__(self, drafts, start=in_a_thread):
        self.lay = CloserLay(drafts, self._told, start)
        self._last = 0.0
        parts = {"choices": choices(drafts.desk.record.unit), "seconds": list(SECONDS),
                 "papers": [list(one) for one in PAPERS]}
        super().__init__(parts=parts, progress={"share": 0.0, "words": ""}, shown=self.lay.shown())

    def answer(self, message, buffers):
        self.lay.handle(message)
        return self.lay.shown()

    def refresh(self) -> None:
        self.lay.note = ""
        self.renew(self.lay.shown())

    def _told(self, progress):
        if progress is None:
            self.progress = {"share": 0.0, "words": ""}
            self.renew(self.lay.shown())
        elif time.monotonic() - self._last >= _EVERY:
            self._last = time.monotonic()
            self.progress = progress
