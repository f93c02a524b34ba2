"""Lesson 00, measuring: how to take each measurement, and the whole pattern as a first look."""

from html import escape

from corsetkit.drawing.svg import svg_image, svg_text
from corsetkit.errors import CorsetkitError, sentence
from corsetkit.measurements import Measurements
from corsetkit.quantity import quantities
from corsetkit.style import Style
from corsetkit.teaching.cells import Drafts, Lesson
from corsetkit.teaching.lessons.measuring.body import landmarks_sheet, reference
from corsetkit.teaching.picture import Stored, sentences_html
from corsetkit.teaching.play import Panel
from corsetkit.teaching.shared import pattern_said as said
from corsetkit.teaching.shared.whole_pattern import both_methods, picture
from corsetkit.teaching.widgets import say_working
from corsetkit.words import words_of

WORDS = words_of("00_measuring")

PANELS = (Panel(WORDS("ask_pattern"), ("waist_reduction", "overbust_mark", "cup_parts")),)
PAPERS = (("A4", WORDS("paper_a4")), ("Letter", WORDS("paper_letter")))


class Measuring(Lesson):
    name = "00_measuring"

    def places(self) -> Stored:
        """The places on the body that measurements run between."""
        sheet = landmarks_sheet()
        return Stored(svg_image(svg_text(sheet)), (f"{sheet.title}: {sheet.description}",))

    def tapes(self) -> Stored:
        """How each measurement is taken."""
        return reference()

    def wearer(self):
        """Who is drafted for."""
        return self.show("wearer", _wearer_still, _wearer_alive)

    def pattern(self):
        """The whole pattern with a few sliders."""
        return self.drawn("pattern", PANELS, Drafts, picture, quantities(Style))

    def both_methods(self):
        """Fitted and with fixed guides, side by side in numbers."""
        return self.show("both_methods", numbers, _numbers_alive)

    def print(self):
        """A button that writes the print."""
        return self.show("print", _print_still, _print_alive)


def numbers(desk) -> Stored:
    """Both methods for the desk's wearer and style."""
    try:
        name, methods = both_methods(desk)
    except CorsetkitError as error:
        words = sentence(str(error))
        return Stored(f"<p>{words}</p>", (words,))
    html, sentences = said.both_methods(methods, desk.record.unit)
    return Stored(f"<p><b>{escape(name)}</b></p>{html}", sentences)


def _wearer_still(desk) -> Stored:
    name, body = desk.body()
    rows = [(one.label.capitalize(), one.say(getattr(body, one.name), desk.record.unit)) for one in quantities(Measurements)]
    cells = "".join(f'<tr><th scope="row" style="text-align:left">{a}</th><td>{b}</td></tr>' for a, b in rows)
    opening = WORDS("wearer_numbers", name=name)
    html = f"<table><caption>{opening}</caption><tbody>{cells}</tbody></table>"
    return Stored(
        html + sentences_html(body.warnings, "warnings"), (opening, *(f"{a}: {b}." for a, b in rows), *body.warnings)
    )


def _wearer_alive(desk, key):
    from corsetkit.teaching.form import Form
    from corsetkit.teaching.widgets import FormWidget

    return FormWidget(Form(desk, key))


def _numbers_alive(desk, key):
    from corsetkit.teaching.board import Board

    return Board(WORDS("both_methods"), lambda: numbers(desk))


def _print_still(desk) -> Stored:
    said_ = WORDS("print_later")
    return Stored(f"<p>{said_}</p>", (said_,))


def _print_alive(desk, key):
    from corsetkit.teaching.board import Board

    def write(paper: str) -> str:
        if paper not in dict(PAPERS):
            raise CorsetkitError(f"paper is {paper}: allowed are A4 and Letter")
        return write_pattern(desk, paper)

    return Board(
        WORDS("print"), lambda: Stored(f"<p>{escape(WORDS('print_pages'))}</p>", ()),
        PAPERS, WORDS("print_write"), write,
    )  # fmt: skip


def write_pattern(desk, paper: str) -> str:
    """Write the print of the desk's wearer and style, and say where it is."""
    from corsetkit.printing.draft_print import write_print
    from corsetkit.printing.names import file_name

    name, pattern = Drafts(desk).of(desk.record.style)
    path = desk.make_folder() / f"pattern_{file_name(name).text}_{paper}.pdf"
    say_working(WORDS("print_writing", file=path.name))
    done = write_print(pattern, path, paper=paper, unit=desk.record.unit, wearer=name)
    return WORDS("print_written", pages=done.pages, path=done.path)


LESSON = Measuring()
