"""A lesson whose kernel starts anew, in a real JupyterLab: by the menu, and by itself after it was ended from outside.

What a page does with what it was asked meanwhile is tested without JupyterLab in test_browser_line.py.
"""

import json
import os
import signal

import psutil
import pytest
from lab_page import PATIENCE, ROOT, browser_path, open_lab, open_page, run_all, runs

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(browser_path() is None, reason="no browser of the Chromium family is installed on this machine"),
]

LESSON = ROOT / "lessons" / "01_block.ipynb"
PATHS = "(one) => [...one.querySelectorAll('.corset-paper path')].map((line) => line.getAttribute('d')).join(' ')"
AWAY = ".corset-table.corset-away .corset-sheet .corset-silence"


@pytest.fixture
def place(tmp_path):
    with open_lab(tmp_path, LESSON) as address:
        yield tmp_path, address


def kept(folder):
    return json.loads((folder / "my_work" / "record.json").read_text())["style"]


def slider(page, name):
    return page.locator(f".corset-live input[type=range][data-name={name}]").first


def table_of(page, name):
    return page.locator(".corset-table", has=page.locator(f".corset-live input[data-name={name}]")).first


def settle(page):
    page.wait_for_function("[...document.querySelectorAll('.corset-table')].every((one) => one.dataset.quiet === 'yes')")


def move(page, name, key):
    slider(page, name).focus()
    page.keyboard.press(key)
    settle(page)


def until_run_anew(page, before):
    page.wait_for_function(
        "(n) => Number(document.querySelector('.jp-NotebookPanel').dataset.lessonRuns) > n"
        " && !document.querySelector('.corset-away')",
        arg=before, timeout=PATIENCE,
    )  # fmt: skip
    page.wait_for_timeout(500)  # a new widget takes over as soon as it stands in its cell
    settle(page)


def restart_by_the_menu(page, meanwhile=lambda: None):
    page.get_by_role("menuitem", name="Kernel", exact=True).click()
    item = page.locator(".lm-Menu-itemLabel", has_text="Restart Kernel").first
    item.hover()
    meanwhile()
    item.click()


def test_a_restart_by_the_menu_runs_the_lesson_and_keeps_what_was_set(place):
    """After Kernel, Restart Kernel the lesson runs by itself, and thumb,
    drawing and record are those of the value last set."""
    folder, address = place
    with open_page(address) as page:
        run_all(page)
        settle(page)
        move(page, "bust_ease", "End")
        page.wait_for_timeout(500)  # a movement is at rest after 350 ms
        before, drawn = runs(page), table_of(page, "bust_ease").evaluate(PATHS)
        # The hand's last movement is not at rest yet.
        restart_by_the_menu(
            page,
            lambda: slider(page, "bust_ease").evaluate(
                "(one) => { one.value = 3; one.dispatchEvent(new Event('input', { bubbles: true })); }"
            ),
        )
        page.wait_for_selector(AWAY)
        assert "starting again" in page.locator(AWAY).first.inner_text()
        assert slider(page, "bust_ease").evaluate("(one) => one.closest('[inert]') !== null")
        page.screenshot(path=folder / "away.png")
        until_run_anew(page, before)
        page.screenshot(path=folder / "anew.png")
        assert runs(page) == before + 1
        assert slider(page, "bust_ease").input_value() == "3"
        assert kept(folder) == {"bust_ease": pytest.approx(3 * 0.3175)}
        assert table_of(page, "bust_ease").evaluate(PATHS) != drawn
        move(page, "bust_ease", "End")
        assert table_of(page, "bust_ease").evaluate(PATHS) == drawn
        assert page.troubles == []


def test_a_value_that_no_file_keeps_outlives_a_restart_too(place):
    """How far something is turned or opened on one table stands after a restart as it stood, thumb and drawing alike."""
    folder, address = place
    with open_page(address) as page:
        run_all(page)
        move(page, "dart_closed_by", "End")
        at, drawn, before = (
            slider(page, "dart_closed_by").input_value(),
            table_of(page, "dart_closed_by").evaluate(PATHS),
            runs(page),
        )
        restart_by_the_menu(page)
        until_run_anew(page, before)
        assert slider(page, "dart_closed_by").input_value() == at
        assert table_of(page, "dart_closed_by").evaluate(PATHS) == drawn
        move(page, "dart_closed_by", "Home")
        assert table_of(page, "dart_closed_by").evaluate(PATHS) != drawn
        assert page.troubles == []


def test_a_kernel_that_ends_and_is_started_again_gets_what_was_asked_meanwhile(place):
    """What is moved while nobody has noticed yet that the kernel is gone is drawn and kept once there is another."""
    folder, address = place
    with open_page(address) as page:
        run_all(page)
        move(page, "bust_ease", "Home")
        before, still = runs(page), table_of(page, "bust_ease").evaluate(PATHS)
        slider(page, "bust_ease").focus()
        for one in psutil.process_iter(["cmdline"]):
            if "ipykernel_launcher" in " ".join(one.info["cmdline"] or ()) and str(folder) in " ".join(one.info["cmdline"]):
                one.send_signal(signal.SIGTERM if os.name == "nt" else signal.SIGKILL)
        for _ in range(5):
            page.keyboard.press("ArrowRight")
        until_run_anew(page, before)
        assert slider(page, "bust_ease").input_value() == "5"
        assert kept(folder) == {"bust_ease": pytest.approx(5 * 0.3175)}
        assert table_of(page, "bust_ease").evaluate(PATHS) != still
        assert page.locator(".jp-Dialog").count() == 0, "the page itself has said what happens"
        assert page.troubles == []
