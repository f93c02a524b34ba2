"""The one form of the lessons that draw: wearer, words, drawing, guess, hand, tape are the same cells for all."""

from corsetkit.drawing.svg import svg_image
from corsetkit.teaching.cells import Drafts, Lesson
from corsetkit.teaching.desk import Desk
from corsetkit.teaching.picture import Stored
from corsetkit.teaching.play import Panel
from corsetkit.teaching.word_cards import cards
from corsetkit.words import words_of

SHARED = words_of("shared")


class CourseLesson(Lesson):
    """A lesson of the course's form. Each public method is one cell.

    A lesson says its `panels` (of the drawing) and fills in the methods that raise NotImplementedError. What makes its
    drafts is `drafts_of`: the desk's `Drafts`, unless a lesson needs more than these give.
    """

    tools = (*Lesson.tools, "picture", "offered", "drafts_of")
    panels: tuple[Panel, ...] = ()
    drafts_of = Drafts

    # What a lesson fills in.

    def picture(self, drafts, values: dict):
        """The main drawing of the wearer for these values, with what is to be said of it."""
        raise NotImplementedError

    def offered(self):
        """The style values that the main drawing offers."""
        raise NotImplementedError

    def _words_on(self, drafts):
        """The `Word`s to know, drawn from the drafts of the first demo wearer."""
        raise NotImplementedError

    def _asked_of(self, desk, drafts):
        """The `Asked` of the guess, for the desk as it is."""
        raise NotImplementedError

    def _moves(self, desk, drafts) -> Stored:
        """The lesson's work by hand."""
        raise NotImplementedError

    def _checks(self, desk, drafts) -> Stored:
        """How to check it with the tape."""
        raise NotImplementedError

    # The cells.

    def wearer(self):
        """Who is drafted for, and in which unit."""
        return self.show("wearer", _wearer_still, _wearer_alive)

    def words(self) -> Stored:
        """The few words to know, each with a small drawing; on one figure, so a word looks the same whoever is drawn."""
        return cards(self._words_on(self.drafts_of(Desk())))

    def drawing(self):
        """The main drawing, with the panels."""
        return self.drawn("drawing", self.panels, self.drafts_of, self.picture, self.offered())

    def guess(self):
        """One thing to predict."""
        return self.show("guess", self._guess_still, self._guess_alive)

    def hand(self):
        """The work by hand."""
        return self._to_read("hand", SHARED("by_hand"), self._moves)

    def tape(self):
        """How to check it on paper."""
        return self._to_read("tape", SHARED("with_tape"), self._checks)

    # How they are made.

    @property
    def title(self) -> str:
        """The lesson's name for people: "Underbust"."""
        return self.name.partition("_")[2].replace("_", " ").capitalize()

    def _guess_still(self, desk):
        from corsetkit.teaching.guess import Guess

        drafts = self.drafts_of(desk)
        return Guess(lambda: self._asked_of(desk, drafts), lambda: desk.record.unit, None, lambda kept: None).stored(svg_image)

    def _guess_alive(self, desk, key):
        from corsetkit.teaching.as_it_stood import AsItStood
        from corsetkit.teaching.guess import Guess
        from corsetkit.teaching.widgets import GuessWidget

        drafts = self.drafts_of(desk)

        def keep(kept):
            others = {one: told for one, told in desk.record.guesses.items() if one != key}
            desk.change(key, guesses=others | ({key: kept} if kept else {}))

        def kept():
            return desk.record.guesses.get(key)

        earlier = AsItStood(desk, lambda then: self._asked_of(then, self.drafts_of(then)))
        return GuessWidget(Guess(lambda: self._asked_of(desk, drafts), lambda: desk.record.unit, kept(), keep, earlier), kept)

    def _to_read(self, cell, title, read, *button):
        """A cell to read that keeps up with the desk; `read(desk, drafts)` gives the Stored,
        `button` what a `Board` may have."""

        def alive(desk, key):
            from corsetkit.teaching.board import Board

            drafts = self.drafts_of(desk)
            return Board(title, lambda: read(desk, drafts), *button)

        return self.show(cell, lambda desk: read(desk, self.drafts_of(desk)), alive)


def _wearer_still(desk) -> Stored:
    name, _ = desk.body()
    words = SHARED("wearer_later", name=name)
    return Stored(f"<p>{words}</p>", (words,))


def _wearer_alive(desk, key):
    from corsetkit.teaching.form import Form
    from corsetkit.teaching.widgets import FormWidget

    return FormWidget(Form(desk, key), compact=True)
