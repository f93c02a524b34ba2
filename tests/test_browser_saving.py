"""A lesson saved in a real JupyterLab: by the key, by the menu, and after its words were edited.

What the server keeps of it is tested without a browser in test_setup_lab.py; here it is seen that Lab agrees.
"""

import json

import pytest
from lab_page import IN_FRONT, ON_LEAVING, ROOT, browser_path, open_lab, open_page, run_again, run_all

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(browser_path() is None, reason="no browser of the Chromium family is installed on this machine"),
]

LESSON = ROOT / "lessons" / "01_block.ipynb"


@pytest.fixture
def place(tmp_path):
    with open_lab(tmp_path, LESSON) as address:
        yield tmp_path / "pages" / LESSON.name, address


def save(page, how=lambda page: page.keyboard.press("Control+s")):
    """Save, and wait until the server has done it and Lab has heard of it."""
    with page.expect_response(lambda one: one.request.method == "PUT" and "/api/contents/" in one.url) as answer:
        how(page)
    assert answer.value.ok
    page.wait_for_timeout(500)


def by_the_menu(page):
    page.get_by_role("menuitem", name="File", exact=True).click()
    page.locator(".lm-Menu-itemLabel", has_text="Save Notebook").first.click()


def no_question(page):
    """Nothing stands on the page to be answered, nothing is marked as unsaved, and it can be left."""
    assert page.locator(".jp-Dialog").count() == 0
    assert page.locator(".jp-mod-dirty").count() == 0
    assert page.evaluate(ON_LEAVING) == ""


def test_a_lesson_saved_by_key_or_menu_leaves_its_file_as_it_was(place):
    """However often a lesson that runs is saved, its file and its stored drawings stay as they were, and Lab asks nothing."""
    file, address = place
    before = file.read_bytes()
    with open_page(address) as page:
        run_all(page)
        # From a slider too, where other keys are not Lab's.
        page.locator(".corset-live input[type=range]").first.press("End")
        for how in (lambda page: page.keyboard.press("Control+s"), by_the_menu):
            save(page, how)
            assert file.read_bytes() == before
            no_question(page)
            assert page.locator(".corset-table .corset-paper svg").count() > 0, "the page goes on as it was"
        run_again(page)
        no_question(page)
        page.wait_for_timeout(1100)  # a file written in the same second would not look changed
        save(page)
        assert file.read_bytes() == before
        no_question(page)
        assert page.troubles == []


def test_an_edited_text_is_saved_and_the_drawings_stay(place):
    """Who edits a text of a lesson and saves changes that text in the file and nothing else."""
    file, address = place
    before = json.loads(file.read_bytes())
    with open_page(address) as page:
        run_all(page)
        page.locator(f"{IN_FRONT} .jp-MarkdownCell h1").first.click()
        page.keyboard.press("Enter")
        page.wait_for_function("document.activeElement?.closest('.jp-MarkdownCell .cm-editor')")
        page.keyboard.press("Control+End")
        page.keyboard.type(" My own note.")
        page.keyboard.press("Shift+Enter")
        assert page.evaluate(ON_LEAVING) != "", "this is somebody's work"
        save(page)
        no_question(page)
        after = json.loads(file.read_bytes())
        changed = [place for place, (old, new) in enumerate(zip(before["cells"], after["cells"], strict=True)) if old != new]
        assert changed == [0]
        first = before["cells"][0]
        assert after["cells"][0] == first | {"source": [*first["source"][:-1], first["source"][-1] + " My own note."]}
        assert after | {"cells": before["cells"]} == before
        # What is saved is no unsaved work, whatever runs after it.
        run_again(page)
        no_question(page)
        page.reload()
        run_all(page)
        assert "My own note." in page.locator(f"{IN_FRONT} .jp-MarkdownCell").first.inner_text()
        assert page.troubles == []
