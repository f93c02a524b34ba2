"""Files written from lesson 08 in a real JupyterLab: the page tells how far it is; and a wide table keeps to the page."""

import pytest
from lab_page import PATIENCE, ROOT, browser_path, open_lab, open_page, run_all

from corsetkit.output import FILES

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(browser_path() is None, reason="no browser of the Chromium family is installed on this machine"),
]

LESSON = ROOT / "lessons" / "08_finish.ipynb"
BOARD = ".corset[aria-label='The files']"
# What the page says while it works, and whether it ever says that nobody answers.
WATCH = """() => {
  window.heard = [];
  const board = document.querySelector(".corset[aria-label='The files']");
  new MutationObserver(() => {
    const words = board.querySelector('.corset-work-words').textContent;
  const silent = board.querySelector('.corset-silence').textContent;
    for (const one of [words, silent]) if (one && heard[heard.length - 1] !== one) heard.push(one);
  }).observe(board, { subtree: true, childList: true, characterData: true });
}"""


@pytest.fixture(scope="module")
def place(tmp_path_factory):
    folder = tmp_path_factory.mktemp("files")
    with open_lab(folder, LESSON) as address:
        yield folder, address


def test_a_folder_that_is_written_shows_how_far_it_is(place):
    """While all files are written the page counts them as they come, and never says that the course does not answer."""
    folder, address = place
    with open_page(address) as page:
        run_all(page)
        board = page.locator(BOARD)
        board.scroll_into_view_if_needed()
        board.locator("input[value=all]").check()
        page.evaluate(WATCH)
        board.get_by_role("button", name="Write the files").click()
        page.wait_for_selector(f"{BOARD} .corset-work:not([hidden]) progress:not([hidden])", timeout=PATIENCE)
        page.screenshot(path=folder / "writing.png")
        page.wait_for_function(
            "(one) => document.querySelector(one).textContent.startsWith('Written')",
            arg=f"{BOARD} .corset-answer",
            timeout=PATIENCE,
        )
        heard = page.evaluate("heard")
        counted = [int(words.split(", ")[1].split(" of ")[0]) for words in heard if " of " in words]
        # A file that is there within a moment need not be told.
        assert len(counted) >= 2 and counted == sorted(set(counted)) and max(counted) <= len(FILES)
        assert not [words for words in heard if "does not answer" in words]
        assert page.locator(f"{BOARD} .corset-work").is_hidden()
        page.screenshot(path=folder / "written.png")
        assert page.troubles == []


@pytest.mark.parametrize("width", (1280, 1180, 1024))
def test_the_table_of_walked_seams_keeps_to_the_page(place, width):
    """A table of words is never wider than the page, and no figure of it is broken over two lines."""
    _, address = place
    with open_page(address, width) as page:
        run_all(page)
        page.wait_for_selector("caption:has-text('walked')")
        board = page.locator(".corset-board", has=page.locator("caption", has_text="walked"))
        assert board.evaluate("(one) => one.scrollWidth - one.clientWidth") == 0
        figures = board.locator("td.corset-figure")
        assert figures.count() > 20
        text = """(one) => { const range = document.createRange(); range.selectNodeContents(one);
                             return new Set([...range.getClientRects()].map((box) => box.top)).size; }"""
        assert {figure.evaluate(text) for figure in figures.all()} == {1}
