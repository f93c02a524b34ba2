"""JupyterLab as a lesson opens in it: by itself, from the list of files, without its own part, with a press at once.

One lesson stands for all here; test_browser.py opens each of them.
"""

import json
import shutil

import pytest
from lab_page import IN_FRONT, ON_LEAVING, ROOT, browser_path, end_kernels, open_lab, open_page, run_again, run_all, runs

from corsetkit.setup import lab

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(browser_path() is None, reason="no browser of the Chromium family is installed on this machine"),
]

LESSON = ROOT / "lessons" / "00_measuring.ipynb"
DRAWN = ".corset-table .corset-paper svg"
RUN = f".jp-NotebookPanel [data-command='{lab.RUN_COMMAND}']"
OWN_OUTPUT = f"{IN_FRONT} .jp-OutputArea-output pre:text-is('42')"


def own_notebook():
    """Somebody's own notebook: it asks for no lesson of the course."""
    said = {"output_type": "stream", "name": "stdout", "text": "kept"}
    cell = {"cell_type": "code", "id": "own", "metadata": {}, "execution_count": None, "outputs": [said],
            "source": "print(6 * 7)"}  # fmt: skip
    kernel = {"display_name": "Python 3", "language": "python", "name": "python3"}
    return {"cells": [cell], "metadata": {"kernelspec": kernel}, "nbformat": 4, "nbformat_minor": 5}


@pytest.fixture(scope="module")
def opened(tmp_path_factory):
    folder = tmp_path_factory.mktemp("opening")
    with open_lab(folder, LESSON) as address:
        shutil.copy(LESSON, folder / "pages" / "another.ipynb")
        (folder / "pages" / "own.ipynb").write_text(json.dumps(own_notebook()))
        yield folder, address


@pytest.fixture
def place(opened):
    lab.forget_old_tabs(str(opened[0]))  # as at each start of the course
    return opened


def at(address, name):
    return address.replace(LESSON.name, name)


def test_who_has_scrolled_already_keeps_the_place_while_the_lesson_starts(place):
    folder, address = place
    heading = f"{IN_FRONT} h2:has-text('The whole pattern')"
    with open_page(address) as page:
        end_kernels(page)
        page.reload()
        page.wait_for_selector(f"{IN_FRONT} .jp-OutputArea-output img")
        page.locator(heading).evaluate("(one) => one.scrollIntoView({ block: 'start' })")
        before = page.locator(heading).bounding_box()["y"]
        assert runs(page) == 0 and before < 300
        run_all(page)
        # The measurements' form and the live table, above and below it, are not as high as their pictures.
        assert abs(page.locator(heading).bounding_box()["y"] - before) <= 2
        assert page.troubles == []


def test_another_lesson_from_the_list_of_files_runs_too_and_the_list_stays_open(place):
    folder, address = place
    with open_page(address) as page:
        run_all(page)
        page.locator(".jp-SideBar [data-id=filebrowser]").click()
        page.locator(".jp-DirListing-item", has_text="another.ipynb").click()
        page.wait_for_function("document.title.startsWith('another')")
        run_all(page)
        assert page.locator(".jp-DirListing").is_visible()
        page.locator(".jp-DirListing-item", has_text=LESSON.name).click()
        page.wait_for_function("document.title.startsWith('00_')")
        page.wait_for_selector(f"{IN_FRONT} {DRAWN}")
        assert runs(page) == 1, "gone back to, it has run already"
        run_again(page)
        page.screenshot(path=folder / "list.png")
        page.reload()
        run_all(page)
        assert page.evaluate(ON_LEAVING) == "", "a run is nothing to save"
        assert page.troubles == []


def test_any_other_notebook_is_left_alone_until_its_button_is_pressed(place):
    folder, address = place
    with open_page(at(address, "own.ipynb")) as page:
        page.wait_for_selector(f"{IN_FRONT} .jp-Notebook-ExecutionIndicator[data-status=idle]")
        page.wait_for_timeout(2000)
        assert page.locator(f"{IN_FRONT} .jp-OutputArea-output").inner_text().strip() == "kept"
        assert page.locator("#jp-left-stack").is_visible()
        page.locator(RUN).click()
        page.wait_for_selector(OWN_OUTPUT)
        assert page.evaluate(ON_LEAVING) != "", "this may be somebody's work"
        assert page.troubles == []


def test_a_press_before_the_kernel_is_there_is_not_lost(place):
    folder, address = place
    held = []
    hold = lambda asked: held.append(asked) if asked.request.method == "POST" else asked.continue_()
    with open_page(at(address, "own.ipynb")) as page:
        end_kernels(page)
        page.route("**/api/sessions*", hold)
        page.reload()
        page.locator(RUN).click()
        page.wait_for_timeout(1500)
        assert held, "no kernel was asked for"
        assert page.locator(OWN_OUTPUT).count() == 0
        for asked in held:
            asked.continue_()
        page.wait_for_selector(OWN_OUTPUT)
        assert page.troubles == []


def test_a_press_after_the_kernel_was_ended_brings_a_new_one(place):
    folder, address = place
    with open_page(address) as page:
        run_all(page)
        end_kernels(page)
        run_again(page)
        page.wait_for_function("!document.querySelector('.corset-table .corset-silence').textContent")


def test_a_lab_without_what_our_part_needs_still_shows_the_lesson_and_runs_it_by_its_menu(place):
    folder, address = place

    def another_lab(page):
        def without_cells(route):
            answer = route.fetch()
            route.fulfill(response=answer, body=answer.text().replace('"@jupyterlab/cells"', '"@jupyterlab/of-another-lab"'))

        page.route(f"**/{lab.EXTENSION_NAME}/**", without_cells)

    with open_page(address, before=another_lab) as page:
        page.wait_for_selector(f"{IN_FRONT} .jp-Notebook-ExecutionIndicator[data-status=idle]")
        page.wait_for_timeout(2000)
        images = page.locator(".jp-OutputArea-output img")
        assert images.count() > 0 and page.locator(DRAWN).count() == 0
        assert all(image.evaluate("(one) => one.complete && one.naturalWidth > 0") for image in images.all())
        assert page.locator(RUN).count() == 0
        page.get_by_role("menuitem", name="Run", exact=True).click()
        page.get_by_role("menuitem", name="Run All Cells", exact=True).click()
        page.wait_for_selector(DRAWN)
        assert page.troubles == []
