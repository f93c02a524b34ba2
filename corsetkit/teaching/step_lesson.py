"""The one form of the lessons that draw a step: wearer, words, drawing, guess, hand, tape."""

from corsetkit.showing.step_lines import draft_so_far, near
from corsetkit.showing.svg import svg_image, svg_text
from corsetkit.steps.run import bears_on
from corsetkit.style import Style
from corsetkit.teaching import on_paper
from corsetkit.teaching.course import Drafts, Lesson
from corsetkit.teaching.desk import Desk
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.stored import Stored
from corsetkit.teaching.word_cards import cards


class StepLesson(Lesson):
    """A lesson that draws one step. Each public method is one cell.

    A lesson says its `step` (the step's name), its `panels` (of the drawing), `fixed` (style values that it sets
    whatever the desk holds, as the number of the cup's parts), and fills in the methods with a leading underscore.
    """

    tools = (*Lesson.tools, "picture", "offered")
    step = ""
    panels = ()
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

    def _sheet(self, steps, unit: str, title: str):
        """The drawing so far, near where this step draws."""
        return draft_so_far(steps, self.step, unit, title, window=near(steps, self.step))

    # The cells.

    def wearer(self):
        """Who is drafted for, and in which unit."""
        return self.show("wearer", _wearer_still, _wearer_alive)

    def words(self) -> Stored:
        """The few words to know, each with a small drawing; on one figure, so a word looks the same whoever is drawn."""
        _, steps = Drafts(Desk()).steps(self.fixed, self.step)
        return cards(self._words(steps))

    def drawing(self):
        """The drawing so far, with the panels."""
        return self.show(
            "drawing", lambda desk: self.picture(Drafts(desk), desk.record.style).stored(svg_image), self._drawing_alive)

    def guess(self):
        """One thing to predict."""
        return self.show("guess", self._guess_still, self._guess_alive)

    def hand(self):
        """The step by hand."""
        return self._paper("hand", "By hand", on_paper.moves)

    def tape(self):
        """How to check it on paper."""
        return self._paper(
            "tape", "With the tape",
            lambda name, steps, step, unit: on_paper.checks(name, steps, step, unit, self._tape(steps, unit)))

    # How they are made.

    def picture(self, drafts: Drafts, style: dict) -> Picture:
        """The drawing so far of the wearer, in that style, with what is to be said of it."""
        name, steps = drafts.steps({**style, **self.fixed}, self.step)
        unit = drafts.desk.record.unit
        sheet = self._sheet(steps, unit, f"{self.title} for {name}")
        warnings = [one for value in steps.in_order for one in value.warnings]
        return Picture(svg_text(sheet), sheet.description, tuple(self._said(steps, unit)), tuple(dict.fromkeys(warnings)))

    @property
    def title(self) -> str:
        """The lesson's name for people: "Underbust"."""
        return self.name.partition("_")[2].replace("_", " ").capitalize()

    def offered(self):
        """The style values that bear on the drawing and are not fixed."""
        return tuple(one for one in bears_on(self.step) if one.name not in self.fixed)

    def _drawing_alive(self, desk, key):
        drafts = Drafts(desk)
        return self.table(desk, key, self.panels, self.offered(), lambda style: self.picture(drafts, style))

    def _guessing(self, desk):
        drafts = Drafts(desk)

        def asked():
            name, steps = drafts.steps({**desk.record.style, **self.fixed}, self.step)
            return self._asked(name, steps, desk.record.unit, drafts)

        return asked

    def _guess_still(self, desk):
        from corsetkit.teaching.guess import Guess

        return Guess(self._guessing(desk), lambda: desk.record.unit, None, lambda kept: None).stored(svg_image)

    def _guess_alive(self, desk, key):
        from corsetkit.teaching.guess import Guess
        from corsetkit.teaching.guess_widget import GuessWidget

        def keep(kept):
            others = {one: told for one, told in desk.record.guesses.items() if one != key}
            desk.change(key, guesses=others | ({key: kept} if kept else {}))

        def kept():
            return desk.record.guesses.get(key)

        return GuessWidget(Guess(self._guessing(desk), lambda: desk.record.unit, kept(), keep), kept)

    def _paper(self, cell, title, make):
        def read(desk, drafts):
            return on_paper.of_desk(
                desk, drafts, self.step, self.fixed,
                lambda name, steps: make(name, steps, self.step, desk.record.unit))  # fmt: skip

        def alive(desk, key):
            drafts = Drafts(desk)
            return _board(title, lambda: read(desk, drafts))

        return self.show(cell, lambda desk: read(desk, Drafts(desk)), alive)


def style_of(steps) -> dict:
    """What differs from Style() in the style that `steps` were drawn in: to draw them again with other values."""
    return {one: value for one, value in vars(steps.style).items() if value != getattr(Style(), one)}


def _board(title, read):
    from corsetkit.teaching.board import Board

    return Board(title, read)


def _wearer_still(desk) -> Stored:
    name, _ = desk.body()
    words = f"Drafting for {name}, an invented wearer. The list to choose from shows here once the lesson runs."
    return Stored(f"<p>{words}</p>", (words,))


def _wearer_alive(desk, key):
    from corsetkit.teaching.form import Form
    from corsetkit.teaching.form_widget import FormWidget

    return FormWidget(Form(desk, key), compact=True)
