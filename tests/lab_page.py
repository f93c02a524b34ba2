"""A lesson open in JupyterLab in a real browser, for the browser test and its benchmark.

The notebook is a copy and the learner's folder an empty one, so that nothing of the clone changes.
"""

import os
import secrets
import shutil
import socket
import subprocess
import sys
import time
from contextlib import contextmanager
from pathlib import Path

from corsetkit.setup import lab, places

ROOT = Path(__file__).resolve().parents[1]
BROWSERS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome", "microsoft-edge")
BROWSER_WORDS = (
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync",
)  # fmt: skip


PATIENCE = 120_000
"""Milliseconds that anything waited for may take, on a machine with other work; a page that is stuck still fails."""


def browser_path() -> str | None:
    """The first browser of the Chromium family that this machine has."""
    return next((path for name in BROWSERS if (path := shutil.which(name))), None)


def _any_port() -> int:
    """A free port that two runs at once do not both find."""
    with socket.socket() as door:
        door.bind((lab.HOST, 0))
        return door.getsockname()[1]


@contextmanager
def open_lab(folder: Path, notebook: Path, dark=False):
    """JupyterLab on a copy of `notebook` in `folder`; gives the address of the copy."""
    if dark:
        settings = Path(places.jupyter_folders(str(folder))["JUPYTERLAB_SETTINGS_DIR"])
        theme = settings / "@jupyterlab" / "apputils-extension" / "themes.jupyterlab-settings"
        theme.parent.mkdir(parents=True)
        theme.write_text('{"theme": "JupyterLab Dark"}')
    pages = folder / "pages"
    pages.mkdir()
    copy = shutil.copy(notebook, pages)
    port = _any_port()
    token = secrets.token_hex(16)
    given = {name: value for name, value in os.environ.items() if name != "CORSETKIT_STORED"}
    # Lab with the course's own settings and its own part, as they are now, and no learner's.
    lab.write_settings(str(folder))
    more = {
        "JUPYTER_TOKEN": token,
        "CORSETKIT_WORK": str(folder / "my_work"),
        "JUPYTER_CONFIG_PATH": lab.server_folder(str(folder)),
    }
    surroundings = places.surroundings(str(folder), given) | more
    Path(surroundings["IPYTHONDIR"]).parent.mkdir(parents=True, exist_ok=True)
    words = lab.command(sys.executable, copy, port, False, lab.is_root_user())
    words.append(f"--LabApp.extra_labextensions_path={lab.extensions_folder(str(folder))}")
    with open(folder / "lab.log", "wb") as log:
        program = subprocess.Popen(words, cwd=pages, env=surroundings, stdout=log, stderr=log)
        try:
            until = time.monotonic() + PATIENCE / 1000
            while not lab.answers(port):
                if program.poll() is not None or time.monotonic() > until:
                    raise RuntimeError((folder / "lab.log").read_text(errors="replace"))
                time.sleep(0.1)
            yield lab.address(copy, port, token)
        finally:
            program.terminate()
            try:
                program.wait(20)
            except subprocess.TimeoutExpired:
                program.kill()
                program.wait()


# What Lab itself calls an error when a kernel is restarted while something is still under way.
_OF_A_RESTART = ("Canceled future for", "Comm not found for comm id")


def _is_trouble(text: str) -> bool:
    return not any(words in text for words in _OF_A_RESTART)


@contextmanager
def open_page(address: str, width=1280, height=800, before=lambda page: None):
    """A page at the address, with `page.troubles`: what the console called an error.

    `before` gets the page before it goes anywhere."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=browser_path(), args=list(BROWSER_WORDS))
        page = browser.new_page(viewport={"width": width, "height": height})
        page.set_default_timeout(PATIENCE)
        page.troubles = []
        heard = lambda text: page.troubles.append(text) if _is_trouble(text) else None
        page.on("console", lambda one: heard(one.text) if one.type == "error" else None)
        page.on("pageerror", lambda error: heard(str(error)))
        before(page)
        page.goto(address)
        page.wait_for_selector(".jp-Notebook .jp-OutputArea-output", timeout=PATIENCE)
        try:
            yield page
        finally:
            browser.close()


# What Lab answers when the page is left: "" where it has nothing to ask.
ON_LEAVING = """() => {
  const event = document.createEvent('BeforeUnloadEvent');
  event.initEvent('beforeunload', false, true);
  window.dispatchEvent(event);
  return event.returnValue;
}"""

# The page in front; in Lab's simple mode an earlier lesson stays open behind it.
IN_FRONT = ".jp-NotebookPanel:not(.lm-mod-hidden)"


def runs(page) -> int:
    """How often the lesson in front has run, all its drawings there."""
    return int(page.locator(IN_FRONT).get_attribute("data-lesson-runs") or 0)


def _until_run(page, there, times):
    page.wait_for_function(
        "([front, n]) => Number(document.querySelector(front)?.dataset.lessonRuns || 0) >= n",
        arg=[IN_FRONT, times], timeout=PATIENCE,
    )  # fmt: skip
    page.wait_for_selector(f"{IN_FRONT} {there}", timeout=PATIENCE)


def run_all(page, there=".corset-table .corset-paper svg"):
    """Wait until the lesson, just opened, has run by itself."""
    _until_run(page, there, 1)


def run_again(page, there=".corset-table .corset-paper svg"):
    """Press the course's own button, and wait until the lesson has run once more."""
    before = runs(page)
    page.locator(IN_FRONT).get_by_role("button", name=lab.RUN_LABEL).click()
    _until_run(page, there, before + 1)


def end_kernels(page):
    """As when the computer slept or the kernel ran out of memory: each is ended from outside."""
    page.evaluate(
        """async () => {
          const token = JSON.parse(document.getElementById('jupyter-config-data').textContent).token;
          const ask = (path, how) => fetch(path, { method: how, headers: { Authorization: `token ${token}` } });
          for (const one of await (await ask('/api/kernels', 'GET')).json()) await ask(`/api/kernels/${one.id}`, 'DELETE');
        }"""
    )
