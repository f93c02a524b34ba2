"""The lessons that draw a step of the draft: the course's one form, filled in from the wearer's steps."""

from corsetkit.drawing.step_lines import draft_so_far, ghosts, near
from corsetkit.drawing.svg import svg_text
from corsetkit.errors import CorsetkitError
from corsetkit.steps.run import bears_on
from corsetkit.style import Style
from corsetkit.teaching import on_paper
from corsetkit.teaching.cells import Drafts
from corsetkit.teaching.course_lesson import CourseLesson
from corsetkit.teaching.picture import Picture
from corsetkit.words import words_of

SHARED = words_of("shared")


class StepLesson(CourseLesson):
    """A lesson that draws one step. Each public method is one cell.

    A lesson says its `step` (the step's name), its `panels` (of the drawing), `fixed` (style values that it sets
    whatever the desk holds, as the number of the cup's parts), and fills in the methods with a leading underscore.
    """

    step = ""
    fixed: dict = {}

    # What a lesson fills in.

    def _words(self, steps):
        """The `Word`s to know, drawn from `steps` of the first demo wearer."""
        raise NotImplementedError

    def _said(self, steps, unit: str):
        """Sentences of the drawing's values that carry meaning, lengths in `unit`."""
        raise NotImplementedError

    def _asked(self, name: str, steps, unit: str, drafts):
        """The `Asked` of the guess for the wearer's `steps`; `drafts.steps` draws what comes of another value."""
        raise NotImplementedError

    def _tape(self, steps, unit: str):
        """Sentences on what else to check with the tape, beside the step's own checks."""
        return ()

    def _sheet(self, steps, unit: str, title: str, more=()):
        """The drawing so far with `more` lines, near where this step draws."""
        return draft_so_far(steps, self.step, unit, title, more, window=near(steps, self.step))

    # How they are made.

    def picture(self, drafts: Drafts, style: dict) -> Picture:
        """The drawing so far of the wearer, in that style, with what is to be said of it."""
        name, steps = drafts.steps({**style, **self.fixed}, self.step)
        unit = drafts.desk.record.unit
        sheet = self._sheet(steps, unit, SHARED("title_for", lesson=self.title, name=name), self._ghosts(drafts, style, steps))
        warnings = [one for value in steps.in_order for one in value.warnings]
        return Picture(svg_text(sheet), sheet.description, tuple(self._said(steps, unit)), tuple(dict.fromkeys(warnings)))

    def _ghosts(self, drafts, style, steps):
        """This step's lines as the course draws them, where a slider has moved them; nothing where that cannot be drawn."""
        start = {name: value for name, value in style.items() if name not in {one.name for one in self.offered()}}
        if start == style:
            return ()
        try:
            return ghosts(steps, self.step, drafts.start(start | self.fixed, self.step))
        except CorsetkitError:
            return ()

    def offered(self):
        """The style values that bear on the drawing and are not fixed."""
        return tuple(one for one in bears_on(self.step) if one.name not in self.fixed)

    def _words_on(self, drafts):
        return self._words(drafts.steps(self.fixed, self.step)[1])

    def _asked_of(self, desk, drafts):
        name, steps = drafts.steps({**desk.record.style, **self.fixed}, self.step)
        return self._asked(name, steps, desk.record.unit, drafts)

    def _moves(self, desk, drafts):
        return self._paper(desk, drafts, on_paper.moves)

    def _checks(self, desk, drafts):
        return self._paper(
            desk, drafts, lambda name, steps, step, unit: on_paper.checks(name, steps, step, unit, self._tape(steps, unit))
        )

    def _paper(self, desk, drafts, make):
        return on_paper.of_desk(
            desk, drafts, self.step, self.fixed, lambda name, steps: make(name, steps, self.step, desk.record.unit)
        )


def style_of(steps) -> dict:
    """What differs from Style() in the style that `steps` were drawn in: to draw them again with other values."""
    return {one: value for one, value in vars(steps.style).items() if value != getattr(Style(), one)}
