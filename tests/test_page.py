"""The page's side: modules that name what they take from each other, bundles made of them, and a linter's word.

Beside each check that needs Node, bundler and linter stands one that needs none of them.
"""

import json
import re

import pytest
from page_tools import BUILT, LISTED, SOURCES, NotToBeHad, bundled, lint, tools, widgets

from corsetkit.teaching.board import Board
from corsetkit.teaching.lessons.sewing.closer_lay import LayWidget
from corsetkit.teaching.lessons.sewing.lesson import FittingWidget
from corsetkit.teaching.widgets import FormWidget, GuessWidget, Table

WIDGETS = {
    "board.js": Board, "fitting.js": FittingWidget, "form.js": FormWidget, "guess.js": GuessWidget, "lay.js": LayWidget,
    "table.js": Table,
}  # fmt: skip

IMPORTED = re.compile(r'^import \{ ([^}]+) \} from "\./([^"]+)";$', re.M)
EXPORTED = re.compile(r"^export (?:const|function|class) (\w+)", re.M)


@pytest.fixture(scope="module")
def with_tools():
    try:
        tools()
    except NotToBeHad as error:
        pytest.skip(str(error))


def committed():
    return {path.name: path.read_text("utf-8") for path in sorted(BUILT.iterdir())}


def test_what_is_committed_is_what_the_sources_make(with_tools):
    made = bundled()
    assert list(committed()) == list(made)
    stale = [name for name, text in committed().items() if text != made[name]]
    assert not stale, "run  .venv/bin/python tests/page_tools.py  and commit what it makes"


def test_the_linter_has_nothing_against_the_pages_side(with_tools):
    assert lint() == ""


@pytest.mark.parametrize(
    ("written", "rule"), [("export default make('p');", "no-undef"), ("const dead = () => {};", "no-unused-vars")]
)
def test_the_linter_sees_a_name_that_is_nowhere_and_one_that_nobody_uses(with_tools, written, rule):
    for folder in ("corsetkit/teaching/page", "corsetkit/setup/lab_extension/static"):
        text = written if "page" in folder else f"(() => {{ {written.removeprefix('export default ')} }})();"
        assert rule in lint("--stdin", "--stdin-filename", f"{folder}/new.js", input=text)


def test_each_widget_runs_its_own_bundle_and_no_bundle_lies_about():
    assert [path.name for path in widgets()] == list(committed()) == list(WIDGETS)
    for name, text in committed().items():
        assert WIDGETS[name]._esm == text
        # A blob has no folder to import from.
        assert "as default}" in text and not re.search(r"\bimport\b", text) and "://" not in text


def test_what_a_module_takes_another_gives_and_nothing_is_given_in_vain():
    texts = {path.name: path.read_text("utf-8") for path in SOURCES.glob("*.js")}
    given = {(name, one) for name, text in texts.items() for one in EXPORTED.findall(text)}
    taken = {(name, one) for text in texts.values() for many, name in IMPORTED.findall(text) for one in many.split(", ")}
    # Every import and export is written in the way that is looked for here.
    assert all(len(IMPORTED.findall(text)) == len(re.findall(r"^import\b", text, re.M)) for text in texts.values())
    assert all(len(EXPORTED.findall(text)) == len(re.findall(r"^export (?!default\b)", text, re.M)) for text in texts.values())
    assert given == taken


def test_the_tools_are_pinned_by_version_and_hash_and_by_no_address():
    listed = json.loads((LISTED / "package.json").read_text("utf-8"))["devDependencies"]
    lock = json.loads((LISTED / "package-lock.json").read_text("utf-8"))["packages"]
    assert lock.pop("")["devDependencies"] == listed and {"esbuild", "eslint"} <= listed.keys()
    for name, version in listed.items():
        assert lock[f"node_modules/{name}"]["version"] == version
    for name, one in lock.items():
        assert one["integrity"].startswith("sha512-") and "resolved" not in one, name
