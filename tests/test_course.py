"""The course as a table of contents: step, lesson, text, notebook, tests and README line agree, and each adds one thing."""

import re

import pytest

from corsetkit.steps import ORDER
from corsetkit.teaching import lesson
from corsetkit.teaching.build import LESSONS, cells, lesson_names, read_text
from corsetkit.teaching.course_lesson import CourseLesson
from corsetkit.teaching.step_lesson import StepLesson

ROOT = LESSONS.parent
FIRST = ["measuring"]
"""Lessons before the first step."""
LAST = ["finish", "sewing"]
"""Lessons after the last step: each teaches what a folder of the package makes."""
WORDS = [*FIRST, *ORDER, *LAST]
STEPS, DRAWN = (
    [f"{number:02d}_{word}" for number, word in enumerate(WORDS) if word in among] for among in (ORDER, [*ORDER, *LAST])
)
"""The lessons of the steps, and all that have the course's one form."""

HEADINGS = ["Whose corset?", "Words to know", "The drawing so far", "Guess first", "Try this", "By hand",
            "Check it with the tape", "Ask yourself", "What comes next"]  # fmt: skip
CELLS = ["wearer", "words", "drawing", "guess", "hand", "tape"]


def missing(names, there):
    """Which of the names have none, and which are there without a name: both empty where all agree."""
    return sorted(set(names) - set(there)), sorted(set(there) - set(names))


def modules(folder):
    return [path.stem for path in (ROOT / "corsetkit" / folder).glob("*.py") if not path.stem.startswith("_")]


def folders_with(folder, module):
    """The folders that hold a module of that name."""
    return [path.parent.name for path in (ROOT / "corsetkit" / folder).glob(f"*/{module}.py")]


def text_cells(name):
    return [re.search(r"\.(\w+)\(\)$", one.source)[1] for one in cells(name, read_text(name)) if one.kind == "code"]


def headings(name):
    return re.findall(r"^## (.+)$", read_text(name), re.M)


class TestAgreement:
    names = [f"{number:02d}_{word}" for number, word in enumerate(WORDS)]

    def test_each_lesson_has_its_text(self):
        there = [name for name in lesson_names() if name[3:] in WORDS]
        assert missing(self.names, there) == ([], [])

    def test_each_lesson_has_its_notebook(self):
        assert missing(lesson_names(), [path.stem for path in LESSONS.glob("*.ipynb")]) == ([], [])

    def test_each_lesson_has_its_folder_of_code(self):
        assert missing([name[3:] for name in lesson_names()], folders_with("teaching/lessons", "lesson")) == ([], [])

    def test_each_step_has_its_module_of_the_same_name(self):
        assert not set(ORDER) - set(modules("steps"))

    def test_each_step_has_its_module_of_hand_instructions(self):
        assert not set(ORDER) - set(modules("hand"))

    def test_each_lesson_after_the_steps_has_its_folder_of_the_same_name_and_a_test(self):
        assert all((ROOT / "corsetkit" / word / "__init__.py").exists() for word in LAST)
        assert all((ROOT / "tests" / f"test_lesson_{word}.py").exists() for word in LAST)

    def test_each_step_has_a_test_and_its_lesson_another(self):
        there = {path.stem for path in (ROOT / "tests").glob("test_*.py")}
        assert not {f"test_{word}" for word in ORDER} - there
        assert not {f"test_lesson_{word}" for word in ORDER} - there

    def test_each_lesson_has_its_line_in_the_readme_in_order(self):
        lines = re.findall(r"^\| (\d\d) ([\w -]+?) \| \S", (ROOT / "README.md").read_text("utf-8"), re.M)
        assert [f"{number}_{words.replace(' ', '_').replace('-', '_')}" for number, words in lines] == lesson_names()

    @pytest.mark.parametrize("name", lesson_names())
    def test_the_lesson_bears_the_name_of_its_file(self, name):
        assert lesson(name).name == name
        title = re.match(r"# Lesson (\d\d): (.+)", read_text(name))
        assert f"{title[1]}_{title[2].lower().replace(' ', '_').replace('-', '_')}" == name


@pytest.mark.parametrize("name", STEPS)
def test_a_lesson_of_a_step_draws_that_step(name):
    one = lesson(name)
    assert isinstance(one, StepLesson) and one.step == name[3:]


@pytest.mark.parametrize("name", DRAWN)
class TestOneForm:
    def test_it_is_a_lesson_of_the_one_form(self, name):
        assert isinstance(lesson(name), CourseLesson)

    def test_its_parts_come_in_the_one_order(self, name):
        assert [one for one in headings(name) if one in HEADINGS] == HEADINGS

    def test_it_has_the_cells_of_every_lesson_in_the_one_order_and_something_of_its_own(self, name):
        there = text_cells(name)
        assert [cell for cell in there if cell in CELLS] == CELLS
        assert set(there) - set(CELLS), "what this lesson alone makes seen"

    def test_its_questions_are_answered_and_hide_their_answers(self, name):
        asked = re.findall(r"<details><summary>(.+?)</summary>\n\n(.+?)\n\n</details>", read_text(name), re.S)
        assert 1 <= len(asked) <= 3 and all(question.endswith("?") and len(answer) > 40 for question, answer in asked)

    def test_each_panel_asks_one_question_about_three_sliders_at_most(self, name):
        for panel in lesson(name).panels:
            assert panel.question.count("?") == 1 and panel.question.endswith("?") and 1 <= len(panel.names) <= 3

    def test_it_says_what_comes_next(self, name):
        last = read_text(name).rpartition("## What comes next")[2]
        assert ("The course ends here" if name == DRAWN[-1] else f"Lesson {int(name[:2]) + 1:02d}") in last


def test_every_word_of_a_lesson_is_explained_with_a_drawing(monkeypatch):
    """And no two lessons explain one word: each lesson adds to the one before."""
    seen = {}
    for name in DRAWN:
        stored = lesson(name).words()
        words = re.findall(r"<b>(.+?)</b><br>", stored.html)
        assert 2 <= len(words) <= 7 and stored.html.count("<img ") == len(words), name
        for word in words:
            assert seen.setdefault(word, name) == name, f"{word} is explained in {seen[word]} already"
