"""Each lesson in a real JupyterLab and a real browser: run, every slider moved, seen to change.

nbval proves nothing about widgets; this does. Whatever is waited for is a condition, so that a busy machine only takes longer.
"""

import pytest
from lab_page import IN_FRONT, PATIENCE, ROOT, browser_path, end_kernels, open_lab, open_page, run_again, run_all

LESSONS = sorted((ROOT / "lessons").glob("*.ipynb"))
SIZES = ((1280, 800), (1024, 768))

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(browser_path() is None, reason="no browser of the Chromium family is installed on this machine"),
]

# Every drawn line of the table, as it is painted.
PATHS = "[...document.querySelectorAll('.corset-paper path')].map((one) => one.getAttribute('d')).join(' ')"

# Pairs of texts whose boxes overlap by more than half a pixel each way. Measured on the drawing at 3000
# pixels: in small print a browser rounds a line's height up to whole pixels.
COLLISIONS = """[...document.querySelectorAll('.corset-paper > svg')].flatMap((svg) => {
  svg.style.cssText = 'width: 3000px !important; max-height: none !important; flex: none';
  const boxes = [...svg.querySelectorAll('text')].map((one) => [one.textContent, one.getBoundingClientRect()]);
  const meet = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.5
                      && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 0.5;
  svg.style.cssText = '';
  return boxes.flatMap(([word, a], i) => boxes.slice(i + 1).filter(([, b]) => meet(a, b)).map(([other]) => [word, other]));
})"""

OUTSIDE = """[...document.querySelectorAll('.corset-paper > svg')].flatMap((svg) => {
  const sheet = svg.getBoundingClientRect();
  // Beyond a window's borders lines may run on.
  return [...svg.querySelectorAll(svg.matches('.ck-window') ? 'text' : 'text, path')].filter((one) => {
    const box = one.getBoundingClientRect();
    return box.left < sheet.left - 1 || box.right > sheet.right + 1
        || box.top < sheet.top - 1 || box.bottom > sheet.bottom + 1;
  }).map((one) => one.textContent || one.getAttribute('class'));
})"""

# Newest value wins, so "settled" is: no question under way, and each drawing is of its sliders' values.
SETTLED = "() => [...document.querySelectorAll('.corset-table')].every((one) => one.dataset.quiet === 'yes')"

# The drawn lines of one table.
OWN_PATHS = (
    "(one) => [...one.querySelectorAll('.corset-paper path, .corset-paper circle')].map((line) => line.outerHTML).join(' ')"
)


@pytest.fixture(scope="module", params=LESSONS, ids=lambda path: path.stem)
def place(request, tmp_path_factory):
    folder = tmp_path_factory.mktemp(request.param.stem)
    with open_lab(folder, request.param) as address:
        yield folder, address


def settle(page):
    page.wait_for_function(SETTLED)


def slide(page, slider, key):
    """Move as a hand on the keyboard does."""
    slider.focus()
    page.keyboard.press(key)
    settle(page)


def texts_apart(page):
    assert page.evaluate(COLLISIONS) == []
    assert page.evaluate(OUTSIDE) == []


SCROLLED = f"document.querySelector('{IN_FRONT} .jp-WindowedPanel-outer').scrollTop"


def test_a_lesson_runs_by_itself_and_stays_at_its_title(place):
    folder, address = place
    with open_page(address) as page:
        page.screenshot(path=folder / "fresh.png")
        run_all(page)
        assert page.evaluate(SCROLLED) == 0
        assert page.locator(f"{IN_FRONT} h1").first.bounding_box()["y"] < 200
        # Nothing beside it, and the way to the other lessons is one press.
        assert not page.locator("#jp-left-stack:visible, #jp-right-stack:visible, .jp-SideBar.jp-mod-right:visible").count()
        assert page.locator(".jp-SideBar.jp-mod-left [data-id=filebrowser]").is_visible()
        page.screenshot(path=folder / "opened.png")
        assert page.troubles == []


def test_the_button_leaves_the_page_where_it_is_read(place):
    folder, address = place
    with open_page(address) as page:
        run_all(page)
        settle(page)
        outer = page.locator(f"{IN_FRONT} .jp-WindowedPanel-outer")
        for part in (0.3, 0.6, 1):
            outer.evaluate("(one, part) => { one.scrollTop = part * (one.scrollHeight - one.clientHeight); }", part)
            at = page.evaluate(SCROLLED)
            assert at > 0
            for _ in range(2):
                run_again(page)
                settle(page)
                assert abs(page.evaluate(SCROLLED) - at) <= 1
        assert page.troubles == []


def refusal(table):
    return table.locator(".corset-refused").first.inner_text()


def step_back(table):
    """Undo, and wait: the page stands as it did before."""
    table.locator(".corset-back button").first.click()
    settle(table.page)


def both_ends(table, slider, texts=True):
    """The drawing with the slider at its lowest and at its highest; where the very end cannot be drawn, near it."""
    drawn, page = [], table.page
    for key, back in (("Home", "ArrowRight"), ("End", "ArrowLeft")):
        slide(page, slider, key)
        for _ in range(4):
            if not refusal(table):
                break
            slide(page, slider, back)
        assert refusal(table) == "", f"{slider.get_attribute('data-name')} near {key}: {refusal(table)}"
        drawn.append(table.evaluate(OWN_PATHS))
        if texts:
            texts_apart(page)
    return drawn


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
def test_every_slider_moves_its_drawing_and_nothing_complains(place, size):
    folder, address = place
    with open_page(address, *size) as page:
        run_all(page)
        settle(page)
        texts_apart(page)
        tables = page.locator(".corset-table").all()
        assert tables
        for number, table in enumerate(tables):
            sliders = table.locator(".corset-live input[type=range]").all()
            choices = table.locator(".corset-live input[type=radio]:not(:checked)").all()
            assert sliders or choices
            for slider in sliders:
                lowest, highest = both_ends(table, slider)
                assert lowest != highest, slider.get_attribute("data-name")
                page.screenshot(path=folder / f"{size[0]}_{number}_{slider.get_attribute('data-name')}.png")
                step_back(table)
            for choice in choices:
                before = table.evaluate(OWN_PATHS)
                choice.check()
                settle(page)
                assert table.evaluate(OWN_PATHS) != before, choice.get_attribute("data-name")
                texts_apart(page)
            # Drawing and first control are in sight together.
            table.evaluate("(one) => one.scrollIntoView({ block: 'start' })")
            for part in (".corset-paper", ".corset-live input"):
                box = table.locator(part).first.bounding_box()
                assert box["y"] >= 0 and box["y"] + box["height"] <= size[1], part
        assert page.troubles == []


def test_keys_reach_the_slider_and_held_keys_end_at_the_value_shown(place):
    folder, address = place
    with open_page(address) as page:
        run_all(page)
        slider = page.locator(".corset-live input[type=range]").first
        slide(page, slider, "Home")
        for _ in range(9):
            page.keyboard.press("ArrowRight", delay=2)
        settle(page)
        assert slider.input_value() == "9"
        shown = slider.get_attribute("aria-valuetext")
        assert page.locator(".corset-live input[type=text]").first.input_value() == shown
        first = page.evaluate(PATHS)
        slide(page, slider, "ArrowRight")
        slide(page, slider, "ArrowLeft")
        assert page.evaluate(PATHS) == first, "the drawing is the one of the last value"
        assert page.troubles == []


def test_a_refused_value_is_a_sentence_over_the_greyed_drawing(place):
    folder, address = place
    with open_page(address) as page:
        run_all(page)
        before = page.evaluate(PATHS)
        box = page.locator(".corset-live input[type=text]").first
        box.fill("900 in")
        box.press("Enter")
        settle(page)
        assert page.locator(".corset-refused").first.inner_text().startswith("Not drawn: ")
        assert page.evaluate(PATHS) == before
        assert float(page.locator(".corset-paper").first.evaluate("(one) => getComputedStyle(one).opacity")) < 0.5
        page.screenshot(path=folder / "refused.png")
        page.locator(".corset-panel .corset-back button").first.click()
        settle(page)
        assert page.locator(".corset-refused").first.inner_text() == ""
        assert page.troubles == []


def test_running_the_lesson_again_keeps_what_was_chosen_and_one_table(place):
    folder, address = place
    with open_page(address) as page:
        run_all(page)
        slider = page.locator(".corset-live input[type=range]").first
        slide(page, slider, "End")
        at, tables = slider.input_value(), page.locator(".corset-table").count()
        page.wait_for_timeout(500)  # a movement is at rest after 350 ms
        for _ in range(3):
            run_again(page)
        settle(page)
        assert page.locator(".corset-table").count() == tables
        assert page.locator(".corset-live input[type=range]").first.input_value() == at
        assert page.troubles == []


def test_each_control_has_a_name_and_a_size_that_a_finger_hits(place):
    folder, address = place
    with open_page(address) as page:
        run_all(page)
        for control in page.locator(".corset input:visible, .corset button:visible, .corset select:visible").all():
            named = control.evaluate(
                "(one) => one.getAttribute('aria-label') || (one.labels &&"
                " [...one.labels].map((l) => l.textContent).join(' ')) || one.textContent"
            )
            assert named.strip(), control.evaluate("(one) => one.outerHTML")
            assert control.get_attribute("data-lm-suppress-shortcuts") == "true", named
            target = control.locator("xpath=ancestor-or-self::*[self::label or self::button or self::input or self::select]")
            assert target.first.bounding_box()["height"] >= 43.5, named


def test_every_other_value_is_answered_at_both_its_ends(place):
    """A value that does nothing in this style is answered too; one that cannot be drawn is a sentence."""
    folder, address = place
    with open_page(address) as page:
        run_all(page)
        table = page.locator(".corset-table").first
        table.evaluate("(one) => one.querySelectorAll('details').forEach((each) => { each.open = true; })")
        undrawn = 0
        for slider in table.locator(".corset-folded input[type=range]").all():
            for key in ("Home", "End"):
                slide(page, slider, key)
                undrawn += refusal(table) != ""
                texts_apart(page)
            table.locator(".corset-back button").nth(1).click()
            settle(page)
            assert refusal(table) == ""
        assert undrawn <= 8, "most of what a slider offers can be drawn"
        assert page.troubles == []


def test_a_kernel_that_is_gone_is_said_to_be_gone(place):
    folder, address = place
    with open_page(address) as page:
        run_all(page)
        slider = page.locator(".corset-live input[type=range]").first
        slide(page, slider, "Home")
        end_kernels(page)
        page.wait_for_timeout(1500)
        slider.focus()
        page.keyboard.press("End")
        page.wait_for_selector(".corset-table .corset-silence:not(:empty)", timeout=PATIENCE)
        assert "does not answer" in page.locator(".corset-table .corset-silence").first.inner_text()
        # One press brings a new one.
        run_again(page)
        settle(page)
        assert page.locator(".corset-table .corset-silence").first.inner_text() == ""
        drawn = []
        for key in ("Home", "End"):
            slide(page, page.locator(".corset-live input[type=range]").first, key)
            drawn.append(page.evaluate(PATHS))
        assert drawn[0] != drawn[1]
