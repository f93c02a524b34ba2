"""The page's line to the kernel, alone in a browser: no JupyterLab, a pretended kernel, and a clock that the test moves."""

import pytest
from lab_page import BROWSER_WORDS, browser_path
from page_tools import SOURCES

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(browser_path() is None, reason="no browser of the Chromium family is installed on this machine"),
]

SITE = "http://course.test/"

# One cell with one widget; `begin` puts a new line into it, as a lesson that runs again does.
PRETENDED = """
  const signal = () => { const all = new Set(); return { connect: (one) => all.add(one), disconnect: (one) => all.delete(one),
                                                         emit: () => all.forEach((one) => one()) }; };
  document.body.innerHTML = '<div class="jp-Cell"></div>';
  const cell = document.querySelector('.jp-Cell');
  let line, model, kernel, sign;
  function begin(more) {
    if (line) line.close();
    kernel = { status: 'idle', connectionStatus: 'connected', isDisposed: false,
               statusChanged: signal(), connectionStatusChanged: signal(), disposed: signal() };
    const heard = {}, traits = {};
    model = { sent: [], gone: false, widget_manager: { kernel }, get: (name) => traits[name],
      on: (name, done) => { heard[name] = done; }, off: () => {},
      set: (name, value) => { traits[name] = value; heard[`change:${name}`]?.(); },
      send: (message) => { if (model.gone) throw new Error('Cannot send'); model.sent.push(structuredClone(message)); } };
    cell.innerHTML = '<section class="corset"><input type="range"><p></p></section>';
    sign = cell.querySelector('p');
    line = new Line(model, sign, { holds: ['set', 'pick'], ...more });
  }
  const status = (word) => { kernel.status = word; kernel.statusChanged.emit(); };
  // The last question is answered.
  const answer = () => line.answered({ asker: line.asker, number: line.number });
  const set = (value, keep) => line.ask({ kind: 'set', changes: { hem: { at: value } }, keep });
  const asked = () => model.sent.map(({ kind, changes, keep }) => [kind, changes?.hem?.at, Boolean(keep)]);
  const said = () => [sign.textContent,
                      document.querySelector('.corset-work:not([hidden]) .corset-work-words')?.textContent || ''];
  begin();
"""


@pytest.fixture(scope="module")
def browser():
    from playwright.sync_api import sync_playwright

    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=browser_path(), args=list(BROWSER_WORDS))
        yield browser
        browser.close()


@pytest.fixture
def page(browser):
    page = browser.new_page()
    page.troubles = []
    page.on("pageerror", lambda error: page.troubles.append(str(error)))
    page.clock.install()
    # The modules as they are written, from a site that is only pretended.
    page.route(SITE + "*", lambda asked: asked.fulfill(path=SOURCES / asked.request.url.removeprefix(SITE)))
    page.route(SITE, lambda asked: asked.fulfill(content_type="text/html", body="<!doctype html><body></body>"))
    page.goto(SITE)
    page.evaluate("async () => { window.Line = (await import('./line.js')).Line; }")
    page.add_script_tag(content=PRETENDED)
    yield page
    assert page.troubles == []
    page.close()


def passed(page, milliseconds):
    page.clock.run_for(milliseconds)
    return page.evaluate("said()")


def test_what_was_set_and_not_kept_is_asked_for_by_the_next_line(page):
    """A value that the kernel took along unanswered, or answered and not kept, is asked for again when the widget is back."""
    page.evaluate("set(1, false); set(2, false); set(3, false)")
    assert page.evaluate("asked()") == [["set", 1, False]], "one question is under way at most"
    page.evaluate("status('restarting'); set(4, false)")
    page.evaluate("begin()")
    assert page.evaluate("asked()") == [["set", 4, True]]
    # Answered, but a movement is kept only once it rests.
    page.evaluate("answer(); set(5, false); answer(); begin()")
    assert page.evaluate("asked()") == [["set", 5, True]]
    page.evaluate("answer(); set(6, false); answer(); line.ask({ kind: 'keep' }); answer(); begin()")
    assert page.evaluate("asked()") == [], "what is kept is the kernel's to show"


def test_a_question_that_cannot_be_sent_waits_for_the_next_line(page):
    """Where the widget's other end is gone, nothing is thrown, and what is asked is asked of the next widget."""
    page.evaluate("model.gone = true; set(7, false); line.ask({ kind: 'pick', who: 'Maren' })")
    assert passed(page, 300)[0] != ""
    page.evaluate("begin()")
    page.evaluate("answer()")
    assert [one["kind"] for one in page.evaluate("model.sent")] == ["set", "pick"]


def test_a_value_that_ends_the_kernel_is_not_asked_for_without_end(page):
    """What was asked for again once, and the kernel ended again, is let go; what is set newly is not."""
    page.evaluate("set(8, true); status('autorestarting'); begin()")
    assert page.evaluate("asked()") == [["set", 8, True]]
    page.evaluate("status('autorestarting'); begin()")
    assert page.evaluate("asked()") == []
    page.evaluate("set(9, true); status('autorestarting'); begin()")
    assert page.evaluate("asked()") == [["set", 9, True]]


def test_what_was_taken_back_is_not_asked_for_again(page):
    """After Undo nothing that was set before it is asked for again, and no button is pressed by itself."""
    page.evaluate("set(3, false); answer(); line.ask({ kind: 'undo' }); status('restarting'); begin()")
    assert page.evaluate("asked()") == []


def test_what_the_kernel_alone_remembers_is_brought_back(page):
    """What a page shows and no file keeps is asked for where the new widget shows something else."""
    page.evaluate("""begin({ standing: () => ({ turned: 3 }) })""")
    page.evaluate(
        """begin({ standing: () => ({ turned: 0 }), bring: (told) => [{ kind: 'set', changes: told, keep: true }] })"""
    )
    assert [one["changes"] for one in page.evaluate("model.sent")] == [{"turned": 3}]


def test_a_kernel_at_work_is_never_said_not_to_answer(page):
    """While the kernel is busy the page says that it works, and how far it is where it tells; after long, what can be done."""
    page.evaluate("set(1, true); status('busy')")
    assert passed(page, 2000) == ["", ""], "most answers are there by then"
    quiet, working = passed(page, 4000)
    assert quiet == "" and "at work" in working
    page.evaluate("model.set('progress', { words: 'Writing 3 of 8', share: 0.25 })")
    assert passed(page, 20_000) == ["", "Writing 3 of 8"]
    assert page.evaluate("document.querySelector('.corset-work progress').value") == 0.25
    page.evaluate("answer()")
    assert passed(page, 300) == ["", ""]
    page.evaluate("set(2, true)")
    assert "Restart Kernel" in passed(page, 70_000)[1]
    assert page.evaluate("cell.querySelector('input').inert") is False, "the newest value waits its turn"


def test_progress_alone_is_a_sign_of_life(page):
    """Where nothing is known of the kernel but what it tells of its work, that is enough."""
    page.evaluate("set(1, true)")
    for share in (0.2, 0.4, 0.6):
        passed(page, 6000)
        page.evaluate("(share) => model.set('progress', { words: `Writing ${share}`, share })", share)
        assert passed(page, 300) == ["", f"Writing {share}"]
    assert "does not answer" in passed(page, 9000)[0]


def test_a_kernel_that_is_idle_and_does_not_answer_is_said_not_to(page):
    """Silence is told after a while, nothing moves then, and an answer that comes after all takes it back."""
    page.evaluate("set(1, true)")
    assert passed(page, 7000)[0] == ""
    assert "does not answer" in passed(page, 2000)[0]
    assert page.evaluate("cell.querySelector('input').inert") is True
    page.evaluate("answer()")
    assert passed(page, 300) == ["", ""] and page.evaluate("cell.querySelector('input').inert") is False


def test_while_the_kernel_is_away_nothing_moves_and_one_sentence_says_why(page):
    """From a restart on the controls rest; where no kernel comes, or it has ended, the page says what to do."""
    page.evaluate("status('restarting')")
    assert "starting again" in page.evaluate("said()")[0]
    assert page.evaluate("cell.querySelector('input').inert") is True
    page.evaluate("status('busy')")
    assert "starting again" in passed(page, 30_000)[0], "a lesson that runs anew may take its time"
    page.evaluate("status('idle')")
    assert "Run this lesson" in passed(page, 9000)[0]
    page.evaluate("begin(); status('dead')")
    assert "Run this lesson" in page.evaluate("said()")[0]


def test_a_connection_that_comes_back_brings_the_controls_back(page):
    """A connection lost for a moment stills the page for that moment only, and what was asked is still answered."""
    page.evaluate("set(1, true); kernel.connectionStatus = 'connecting'; kernel.connectionStatusChanged.emit()")
    assert "no connection" in page.evaluate("said()")[0] and page.evaluate("cell.querySelector('input').inert") is True
    page.evaluate("kernel.connectionStatus = 'connected'; kernel.connectionStatusChanged.emit()")
    assert page.evaluate("said()") == ["", ""] and page.evaluate("cell.querySelector('input').inert") is False
    assert page.evaluate("asked()") == [["set", 1, True]]
