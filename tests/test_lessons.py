"""The lessons as notebooks: text and notebook agree, stored states hold, cells stand alone."""

import inspect
import json
import random
import re

import pytest

from corsetkit.drawing.svg import svg_image, svg_text
from corsetkit.measurements import Measurements
from corsetkit.quantity import quantities
from corsetkit.setup.lab import RUN_LABEL
from corsetkit.teaching import cells as course
from corsetkit.teaching import lesson
from corsetkit.teaching.build import HIDDEN, LESSONS, METADATA, built, cells, lesson_names, notebook, read_text
from corsetkit.teaching.lessons.measuring.body import TAPES, landmarks_sheet, tape_sheet
from corsetkit.teaching.picture import STORED
from corsetkit.teaching.shared import pattern_said as said

NAMES = lesson_names()


def stored_notebook(name):
    return json.loads((LESSONS / f"{name}.ipynb").read_text(encoding="utf-8"))


def source(cell):
    return "".join(cell["source"])


def shown_cells(name):
    """The names of the cells that the lesson's text shows."""
    return [re.search(r"\.(\w+)\(\)$", one.source)[1] for one in cells(name, read_text(name)) if one.kind == "code"]


class TestTextAndNotebook:
    def test_each_text_has_its_notebook_and_each_notebook_its_text(self):
        assert NAMES and sorted(path.stem for path in LESSONS.glob("*.ipynb")) == NAMES

    @pytest.mark.parametrize("name", NAMES)
    def test_the_notebook_says_what_its_text_says(self, name):
        """Where they differ, the command that mends it is: python -m corsetkit.teaching.build"""
        wanted, there = notebook(name, read_text(name)), stored_notebook(name)
        for a, b in zip(wanted["cells"], there["cells"]):
            for key in ("cell_type", "id", "metadata"):
                assert a[key] == b[key], a["id"]
            assert source(a) == source(b), f"{a['id']} differs: run python -m corsetkit.teaching.build"
        assert len(wanted["cells"]) == len(there["cells"])
        assert {key: there[key] for key in ("metadata", "nbformat", "nbformat_minor")} == {
            key: wanted[key] for key in ("metadata", "nbformat", "nbformat_minor")
        }

    @pytest.mark.parametrize("name", NAMES)
    def test_building_again_gives_the_same_bytes(self, name):
        assert built(name) == (LESSONS / f"{name}.ipynb").read_bytes()

    @pytest.mark.parametrize("name", NAMES)
    def test_every_cell_of_the_lesson_is_shown_once_and_each_is_one_harmless_line(self, name):
        own = [word for word, _ in inspect.getmembers(type(lesson(name)), inspect.isfunction)
               if not word.startswith("_") and word not in lesson(name).tools]  # fmt: skip
        assert sorted(shown_cells(name)) == sorted(own)
        for cell in stored_notebook(name)["cells"]:
            if cell["cell_type"] == "code":
                line = re.fullmatch(r"from corsetkit\.teaching import lesson; lesson\(\"(\w+)\"\)\.\w+\(\)", source(cell))
                assert line and line[1] == name
                assert cell["metadata"] == HIDDEN

    def test_nothing_of_this_machine_stands_in_a_notebook(self):
        for name in NAMES:
            book = stored_notebook(name)
            assert book["metadata"] == METADATA
            text = json.dumps(book)
            assert str(LESSONS.parent) not in text and "://" not in text.replace("http://www.w3.org/2000/svg", "")

    def test_the_button_is_called_what_the_text_calls_it(self):
        assert all(f"**{RUN_LABEL}**" in read_text(name) for name in NAMES)

    @pytest.mark.parametrize("name", NAMES)
    def test_a_lesson_opens_with_what_is_drawn_learned_and_needed(self, name):
        first = cells(name, read_text(name))[0].source
        assert list(re.findall(r"^\*\*You will (\w+)\*\*", first, re.M)) == ["draw", "learn", "need"]

    @pytest.mark.parametrize(
        ("text", "why"),
        [("```show\npattern\n", "not closed"), ("```show\nrm -rf\n```\n", "line 2"), ("```python\n# a\n", "not closed")],
    )
    def test_a_text_that_cannot_be_read_says_where(self, text, why):
        with pytest.raises(ValueError, match=why):
            cells("00_measuring", text)

    def test_headings_part_cells_but_not_inside_a_block_of_text(self):
        found = cells("00_x", "# A\na\n```\n# no heading\n```\n## B\n```show\none\ntwo\n```\nb\n")
        assert [one.kind for one in found] == ["markdown", "markdown", "code", "code", "markdown"]
        assert found[0].source == "# A\na\n```\n# no heading\n```"
        assert found[3].source.endswith('lesson("00_x").two()')


class TestStored:
    @pytest.mark.parametrize("name", NAMES)
    def test_a_stored_output_shows_itself_untrusted_and_is_no_widget(self, name):
        for number, cell in enumerate((c for c in stored_notebook(name)["cells"] if c["cell_type"] == "code"), 1):
            assert cell["execution_count"] == number
            (output,) = cell["outputs"]
            assert output["output_type"] == "execute_result"
            assert set(output["data"]) == {"text/html", "text/plain"}
            html, plain = ("".join(output["data"][kind]) for kind in ("text/html", "text/plain"))
            # What stands in quotes is an attribute's value, such as an image's address.
            bare = re.sub(r'"[^"]*"', '""', html)
            assert "<svg" not in bare and "<script" not in html
            for image in re.findall(r'<img (?:[^>"]|"[^"]*")*>', html):
                assert re.search(r'alt="[^"]{10,}"', image) and "data:image/svg+xml,<svg" in image
            assert " at 0x" not in plain and plain.strip().endswith(".")

    def test_the_whole_pattern_is_stored_with_its_lengths(self, monkeypatch):
        monkeypatch.setenv(STORED, "1")
        stored = lesson("00_measuring").pattern()
        assert "<img " in stored.html
        text = repr(stored)
        for said_there in ("Waist: finished 26 in, body 28 in, intended 26 in.", "in each the two sides are equally long."):
            assert said_there in text

    @pytest.mark.parametrize("name", NAMES)
    def test_the_stored_state_does_not_depend_on_what_the_learner_kept(self, work, monkeypatch, name):
        course.desk().change(wearer="Solveig", unit="cm", style={"cup_parts": 2})
        assert (work / "record.json").exists()
        monkeypatch.setenv(STORED, "1")
        there = [c for c in stored_notebook(name)["cells"] if c["cell_type"] == "code"]
        for cell, stored in zip(shown_cells(name), there, strict=True):
            assert repr(getattr(lesson(name), cell)()) == "".join(stored["outputs"][0]["data"]["text/plain"])


@pytest.mark.parametrize("name", NAMES)
class TestAnyOrder:
    def run(self, name, order):
        """What each cell shows; a widget its state, but for who asked last."""
        shown = {}
        for cell in order:
            one = getattr(lesson(name), cell)()
            state = getattr(one, "shown", None)
            shown[cell] = repr(one) if state is None else {k: v for k, v in state.items() if k not in ("asker", "number")}
        return shown

    @pytest.mark.parametrize("seed", range(3))
    def test_cells_in_any_order_and_twice_show_the_same(self, work, name, seed):
        first = self.run(name, shown_cells(name))
        order = shown_cells(name) * 2
        random.Random(seed).shuffle(order)
        assert self.run(name, order) == first

    def test_each_cell_stands_alone(self, work, monkeypatch, name):
        first = self.run(name, shown_cells(name))
        for cell in shown_cells(name):
            monkeypatch.setattr(course, "_live", {})
            monkeypatch.setattr(course, "_desks", {})
            assert self.run(name, [cell]) == {cell: first[cell]}

    def test_a_cell_run_again_and_again_leaves_one_observer_and_one_widget(self, work, name):
        for cell in shown_cells(name):
            widgets = [getattr(lesson(name), cell)() for _ in range(4)]
            if hasattr(widgets[0], "shown"):
                assert len({id(one) for one in widgets}) == 1
        watchers = list(course.desk()._watchers)
        assert len(watchers) == len(set(watchers)) <= len(shown_cells(name))

    def test_the_first_state_is_the_stored_one(self, work, monkeypatch, name):
        """Opened for the first time, a lesson shows what the page showed before it ran."""
        first = self.run(name, shown_cells(name))
        monkeypatch.setenv(STORED, "1")
        for cell, shown in first.items():
            stored = getattr(lesson(name), cell)()
            if isinstance(shown, dict) and shown.get("svg"):
                assert svg_image(shown["svg"]) in stored.html, cell
                assert all(one in repr(stored) for one in (*shown.get("said", ()), *shown.get("warnings", ()))), cell

    def drawn_or_refused(self, cells_, name):
        """Every cell shows something, or a sentence says why not; widgets as they stand, for a change has told them."""
        for cell, one in cells_.items():
            if not hasattr(one, "shown"):
                getattr(lesson(name), cell)()
            elif isinstance(one.shown, dict) and one.shown.get("refused"):
                assert one.shown["refused"].endswith(".")

    def test_every_demo_wearer_in_both_units_is_drawn_or_refused_in_a_sentence(self, work, name):
        """No cell raises, whoever is chosen; what cannot be drawn says so in the drawing's place."""
        cells_ = {cell: getattr(lesson(name), cell)() for cell in shown_cells(name)}
        for number, wearer in enumerate(course.desk().demo):
            course.desk().change(wearer=wearer, unit=("cm", "in")[number % 2])
            self.drawn_or_refused(cells_, name)

    def test_what_is_chosen_by_the_guides_is_drawn_or_refused_in_a_sentence(self, work, name):
        cells_ = {cell: getattr(lesson(name), cell)() for cell in shown_cells(name)}
        course.desk().change(style={"method": "guides"})
        for wearer in course.desk().demo:
            course.desk().change(wearer=wearer)
            self.drawn_or_refused(cells_, name)


class TestAlive:
    def test_another_wearer_reaches_every_cell(self, work):
        form, table, numbers = (getattr(lesson("00_measuring"), cell)() for cell in ("wearer", "pattern", "both_methods"))
        form._on_page(form, {"kind": "pick", "who": "demo:Solveig", "asker": "a", "number": 1}, [])
        assert "Corset pattern for Solveig" in table.shown["svg"] and "<b>Solveig</b>" in numbers.shown["html"]
        form._on_page(form, {"kind": "unit", "unit": "cm", "asker": "a", "number": 2}, [])
        assert table.shown["said"][0] == "Bust: finished 104 cm, body 104 cm, intended 104 cm."

    def test_a_slider_at_rest_reaches_the_numbers_and_the_next_start(self, work):
        table, numbers = (getattr(lesson("00_measuring"), cell)() for cell in ("pattern", "both_methods"))
        before = numbers.shown["html"]
        table._on_page(table, {"kind": "set", "changes": {"waist_reduction": {"at": 0}}, "keep": True}, [])
        assert numbers.shown["html"] != before
        course._desks.clear()
        course._live.clear()
        assert lesson("00_measuring").pattern().shown["state"]["waist_reduction"]["at"] == 0

    def test_unfinished_own_measurements_are_said_in_the_drawings_place(self, work):
        form, table = (getattr(lesson("00_measuring"), cell)() for cell in ("wearer", "pattern"))
        form._on_page(form, {"kind": "pick", "who": "own"}, [])
        assert table.shown["refused"].startswith("The wearer's form is not finished; still to fill in: bust girth")
        assert "<svg" in table.shown["svg"], "the last good drawing is still there"

    @pytest.mark.parametrize("paper", ["A4", "Letter"])
    def test_the_print_is_written_where_it_is_said_to_be(self, work, paper):
        board = lesson("00_measuring").print()
        board._on_page(board, {"kind": "do", "choice": paper}, [])
        path = re.match(r"Written, \d+ pages: (.*\.pdf) \. ", board.shown["answer"])[1]
        assert open(path, "rb").read(5) == b"%PDF-" and path.startswith(str(work))

    def test_an_unknown_paper_writes_nothing_and_says_so(self, work):
        board = lesson("00_measuring").print()
        board._on_page(board, {"kind": "do", "choice": "A0"}, [])
        assert board.shown["answer"].startswith("Not done: paper is A0") and not list(work.glob("*.pdf"))


class TestMeasuring:
    def test_each_measurement_has_its_drawing_and_its_usual_mistake(self):
        assert list(TAPES) == [one.name for one in quantities(Measurements)]
        drawings = {name: svg_text(tape_sheet(name)) for name in TAPES}
        assert len(set(drawings.values())) == len(drawings)
        assert all('class="ck-tape"' in svg for svg in drawings.values())

    def test_the_reference_says_meaning_limits_and_the_standards_term(self):
        stored = lesson("00_measuring").tapes()
        for one in quantities(Measurements):
            assert one.meaning in repr(stored) and one.allowed in stored.html
            assert one.standard is None or one.standard in stored.html
        assert "common practice, no source" in stored.html

    def test_the_places_are_named_where_they_are_drawn(self):
        svg = svg_text(landmarks_sheet())
        for word in ("side neck point", "back neck point", "bust point", "underarm level", "waist"):
            assert f">{word}<" in svg

    def test_both_methods_stand_side_by_side_and_a_refused_one_says_why(self):
        from corsetkit.drafting import draft
        from corsetkit.style import Style
        from corsetkit.wearers import demo_wearers

        body = demo_wearers()[0][1]
        methods = {method: draft(body, Style(method=method)) for method in said.METHODS}
        html, sentences = said.both_methods(methods, "in")
        for level in said.LEVELS:
            assert f'<th scope="row">{level}</th>' in html
        assert "Fitted: waist: finished 26 in, body 28 in, intended 26 in." in sentences
        assert any(one.startswith("Fixed guides: fullness at the bust point: ") for one in sentences)
        html, sentences = said.both_methods({**methods, "guides": "the outline <crosses> itself"}, "in")
        assert "Fixed guides: not drawn.</b> The outline &lt;crosses&gt; itself." in html
        assert "Fixed guides: not drawn. The outline <crosses> itself." in sentences
