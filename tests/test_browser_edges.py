"""The edges of the drawing in a real browser: pointed at, stepped through, read in the table, kept while a slider moves.

What the page says is held against the facts that the drawing's lines carry, which name each partner themselves.
"""

import pytest
from lab_page import ROOT, browser_path, open_lab, open_page, run_all

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(browser_path() is None, reason="no browser of the Chromium family is installed on this machine"),
]

# What the drawing itself tells: of each edge its full name, facts, and the middle of its line on the screen.
EDGES = """[...document.querySelectorAll('.corset-table .corset-paper path[data-edge]')].map((path) => {
  const half = path.getTotalLength() / 2, at = path.getPointAtLength(half), near = path.getPointAtLength(half + 0.5);
  const on = (p) => new DOMPoint(p.x, p.y).matrixTransform(path.getScreenCTM());
  const a = on(at), b = on(near), long = Math.hypot(b.x - a.x, b.y - a.y);
  return { ...path.dataset, name: `${path.closest('g').dataset.name}, ${path.dataset.edge}`, at: [a.x, a.y],
           across: [(a.y - b.y) / long, (b.x - a.x) / long] };
})"""
# What is marked on it: the names of the edges right above each band.
MARKED = """(kind) => [...document.querySelectorAll(`.corset-table .corset-paper .corset-band.corset-${kind}`)].map((band) =>
  `${band.closest('g').dataset.name}, ${band.nextElementSibling.dataset.edge}`)"""
QUIET = "document.querySelector('.corset-table').dataset.quiet === 'yes'"
WORDS, BAR, TABLE = ".corset-table .corset-edge-words", ".corset-table .corset-edge-bar", ".corset-table .corset-edges"
ROWS = f"[...document.querySelectorAll('{TABLE} tbody tr')].map((row) => [...row.children].map((cell) => cell.textContent))"


@pytest.fixture(scope="module")
def address(tmp_path_factory):
    with open_lab(tmp_path_factory.mktemp("edges"), ROOT / "lessons" / "00_measuring.ipynb") as address:
        yield address


@pytest.fixture
def page(address):
    with open_page(address) as page:
        run_all(page)
        to_sight(page)
        yield page
        assert page.troubles == []


def to_sight(page):
    page.wait_for_function(QUIET)
    page.locator(".corset-table").evaluate("(one) => one.scrollIntoView({ block: 'start' })")


def words(page):
    return page.locator(WORDS).inner_text()


def pairs(page):
    """Edges that are sewn to one edge alone, with that one, as the drawing's own facts name it."""
    told = page.evaluate(EDGES)
    by_name = {f"{one['piece']} {one['name']}": one for one in told}
    lonely = [one for one in told if sum(each.get("seam") == one.get("seam") for each in told) == 2]
    return [(one, by_name[one["partner"]]) for one in lonely if one.get("seam")]


def sentence(one, other):
    return f"{one['name']}: {one['length']}, sewn to {other['name']} ({other['length']}). Seam {one['seam']}."


def chosen(page, name):
    """Step through the edges to the one of that name."""
    page.locator(BAR).focus()
    for _ in page.evaluate(EDGES):
        page.keyboard.press("ArrowRight")
        if words(page).startswith(f"{name}:"):
            return
    raise AssertionError(f"no edge {name} was met")


def test_pointing_near_an_edge_says_it_and_marks_its_partner(page):
    hint = words(page)
    found = pairs(page)
    assert len(found) > 6
    for one, other in found:
        x, y = (place + 5 * tangent for place, tangent in zip(one["at"], one["across"]))
        page.mouse.move(x, y)
        assert words(page) == sentence(one, other)
        assert page.evaluate(MARKED, "meant") == [one["name"]] and page.evaluate(MARKED, "partner") == [other["name"]]
    # Whole and broken, not blue and orange alone.
    dash = "(kind) => getComputedStyle(document.querySelector(`.corset-band.corset-${kind}`)).strokeDasharray"
    assert page.evaluate(dash, "meant") == "none" and page.evaluate(dash, "partner") != "none"
    page.mouse.move(2, 2)
    assert words(page) == hint and not page.evaluate("document.querySelector('.corset-band, .corset-lit')")


def test_a_tap_beside_an_edge_chooses_it_and_keys_go_on_from_there(page):
    one, other = pairs(page)[0]
    x, y = (place + 12 * tangent for place, tangent in zip(one["at"], one["across"]))
    # Farther than a mouse reaches, nearer than a finger does.
    page.mouse.move(x, y)
    assert not words(page).startswith(one["name"])
    page.evaluate(
        """([x, y]) => {
          const at = document.elementFromPoint(x, y), more = { bubbles: true, clientX: x, clientY: y, pointerType: 'touch' };
          at.dispatchEvent(new PointerEvent('pointerdown', more));
          at.dispatchEvent(new PointerEvent('pointerup', more));
          at.dispatchEvent(new MouseEvent('click', more));
        }""",
        [x, y],
    )
    assert words(page) == sentence(one, other)
    page.keyboard.press("Enter")
    assert words(page) == sentence(other, one)


def test_keys_alone_go_to_every_edge_to_its_partner_and_away(page):
    hint = words(page)
    bar = page.locator(BAR)
    bar.focus()
    for key, back in (("Tab", "Shift+Tab"), ("Shift+Tab", "Tab")):
        page.keyboard.press(key)
        assert not bar.evaluate("(one) => one.contains(document.activeElement)"), "one stop, not one for each edge"
        page.keyboard.press(back)
        assert bar.evaluate("(one) => one === document.activeElement")
    names = [one["name"] for one in page.evaluate(EDGES)]
    met = []
    for _ in names:
        page.keyboard.press("ArrowDown")
        met.append(words(page).partition(":")[0])
    assert sorted(met) == sorted(names)
    page.keyboard.press("ArrowRight")
    assert words(page).startswith(f"{met[0]}:")
    page.keyboard.press("ArrowLeft")
    assert words(page).startswith(f"{met[-1]}:")
    one, other = pairs(page)[0]
    chosen(page, one["name"])
    page.keyboard.press("Enter")
    assert words(page) == sentence(other, one)
    page.keyboard.press("Space")
    assert words(page) == sentence(one, other)
    page.keyboard.press("Escape")
    assert words(page) == hint and not page.evaluate("document.querySelector('.corset-band')")
    assert bar.evaluate("(one) => one === document.activeElement"), "none of these keys went to JupyterLab"
    ring = page.locator(".corset-table .corset-sheet").evaluate("(one) => getComputedStyle(one).outlineStyle")
    assert ring == "solid"


def test_the_table_says_the_same_and_is_made_only_when_opened(page):
    assert page.evaluate(ROWS) == []
    page.locator(f"{TABLE} > summary").focus()
    page.keyboard.press("Enter")
    page.wait_for_function(f"{ROWS}.length > 0")
    rows = list(page.evaluate(ROWS))
    told = page.evaluate(EDGES)
    assert [row[:2] for row in rows if len(row) == 4] == [[one["name"], one["length"]] for one in told]
    for one, other in pairs(page):
        assert [one["name"], one["length"], other["name"], other["length"]] in rows
    # An edge that meets several has a row for each.
    assert len(rows) == sum(len(one.get("partner", "").split("; ")) for one in told)
    page.keyboard.press("Tab")
    one = told[0]
    assert page.evaluate(MARKED, "meant") == [one["name"]]
    page.keyboard.press("ArrowDown")
    assert page.evaluate(MARKED, "meant") == [told[1]["name"]] and words(page).startswith(f"{told[1]['name']}:")
    current = page.locator(f"{TABLE} tr[aria-current=true] > th")
    assert current.all_inner_texts() == [told[1]["name"]]
    page.locator(f"{TABLE} tbody th").nth(3).hover()
    assert page.evaluate(MARKED, "meant") == [told[3]["name"]]


def test_what_was_chosen_stays_chosen_while_a_slider_moves(page):
    slider = page.locator(".corset-live input[type=range][data-name=overbust_mark]")
    slider.focus()
    page.keyboard.press("Home")
    page.wait_for_function(QUIET)
    one, other = next(pair for pair in pairs(page) if pair[0]["seamName"] == "overbust")
    chosen(page, one["name"])
    page.locator(f"{TABLE} > summary").click()
    page.wait_for_function(f"{ROWS}.length > 0")
    slider.focus()
    for _ in range(6):
        page.keyboard.press("ArrowRight")
    page.wait_for_function(QUIET)
    now = {each["name"]: each for each in page.evaluate(EDGES)}
    assert words(page) == sentence(now[one["name"]], now[other["name"]])
    assert page.evaluate(MARKED, "partner") == [other["name"]]
    page.wait_for_function(f"!document.querySelector('{WORDS}').hasAttribute('aria-busy')")
    assert [row[:2] for row in page.evaluate(ROWS) if len(row) == 4] == [
        [each["name"], each["length"]] for each in now.values()
    ]
    assert now[one["name"]]["length"] != one["length"]
    chosen(page, "upper cup, top")
    # In a cup of two parts there is no such edge any more.
    page.locator(".corset-live input[type=radio][data-name=cup_parts]:not(:checked)").check()
    page.wait_for_function(QUIET)
    assert "upper cup, top" not in {each["name"] for each in page.evaluate(EDGES)}
    assert not words(page).startswith("upper cup") and not page.evaluate("document.querySelector('.corset-band')")
    page.locator(".corset-panel .corset-back button").nth(1).click()
    page.wait_for_function(QUIET)


def test_nothing_jumps_and_a_zoomed_drawing_follows(address):
    with open_page(address, 1024, 768) as page:
        run_all(page)
        to_sight(page)
        bar = page.locator(BAR)
        high = bar.bounding_box()["height"]
        nearer = page.get_by_role("button", name="Drawing larger")
        nearer.click()
        nearer.click()
        nearer.click()
        bar.focus()
        for _ in page.evaluate(EDGES):
            page.keyboard.press("ArrowRight")
            assert bar.bounding_box()["height"] == high, words(page)
            line, frame = (page.locator(part).bounding_box() for part in (".corset-band.corset-meant", ".corset-paper"))
            middle = [line[place] + line[size] / 2 for place, size in (("x", "width"), ("y", "height"))]
            assert frame["x"] <= middle[0] <= frame["x"] + frame["width"], words(page)
            assert frame["y"] <= middle[1] <= frame["y"] + frame["height"], words(page)
        assert page.troubles == []
