"""The course's widgets: the page's side is kept as text, so that no path leaks and no network is asked."""

from pathlib import Path

import anywidget
import traitlets

from corsetkit.teaching.progress import heard_by

_PAGE = Path(__file__).with_name("page")


def page(*names: str) -> str:
    """The named files of the page's side, one after the other, as one text."""
    return "\n".join((_PAGE / name).read_text(encoding="utf-8") for name in names)


class Answering(anywidget.AnyWidget):
    """A widget that answers each message of the page with a whole new state.

    The answer carries the asker and the number of the message, so that the page knows which of its
    questions is answered and has at most one under way. `shown` is a trait and no message, so that a
    page opened later sees the same. The page is told even of what should never happen, for else it
    would wait in vain; the error itself goes on to the log.

    An answer that takes long says how far it is by `progress.say_working`; that goes to the page at once, while the kernel
    is still at work.
    """

    _css = page("look.css")

    shown = traitlets.Dict().tag(sync=True)
    progress = traitlets.Dict().tag(sync=True)

    def __init__(self, **more):
        self._desk = self._sight = None
        super().__init__(**more)
        self.on_msg(self._on_page)

    def stands_on(self, desk, sight) -> None:
        """Look at the `desk` again before each message, for another lesson may have changed what is kept; the `InSight`
        is told whether the page is in sight."""
        self._desk, self._sight = desk, sight

    def answer(self, message: dict, buffers) -> dict:
        """The state after `message`."""
        raise NotImplementedError

    def _on_page(self, _widget, message, buffers):
        if message.get("kind") == "sight":
            if self._sight:
                self._sight.told(str(message.get("page", "")), bool(message.get("seen")))
            return
        asked = {"asker": message.get("asker", ""), "number": message.get("number", 0)}
        try:
            if self._desk:
                self._desk.look_again()
            with heard_by(self._working):
                state = self.answer(message, buffers)
        except Exception as error:
            wrong = f"The course itself made a mistake ({type(error).__name__}: {error})."
            self.shown = {**self.shown, **asked, "refused": wrong}
            raise
        self.shown = {**state, **asked}

    def _working(self, words: str, share: float | None) -> None:
        # Numbered, for a page is not told what is as it was.
        self.progress = {"words": words, "share": share, "number": self.progress.get("number", 0) + 1}

    def renew(self, state: dict) -> None:
        """Show `state`, which no page asked for."""
        self.shown = {**state, "asker": "", "number": 0}

    def __repr__(self):
        # Beside the picture, never a memory address.
        return "Sliders and forms show here once the lesson runs in JupyterLab."
