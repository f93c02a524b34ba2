"""What a person meets who types: the package's own names, pieces by name, pictures in a notebook,
short words for long values."""

import ast
import doctest
import importlib
import subprocess
import sys
from pathlib import Path

import pytest
from figures import FEW, figure, ready_to_cut

import corsetkit
from corsetkit.drawing.shown import html_of
from corsetkit.errors import CorsetkitError
from corsetkit.pattern.pattern import Pattern

ROOT = Path(__file__).parent.parent

EXAMPLES = ["units", "quantity", "measurements", "style", "wearers", "drafting", "pattern.pattern", "finish.finished"]
"""The public modules whose words show how they are used."""


def test_the_package_lists_its_own_names():
    """`dir(corsetkit)` is what the package offers, every name of it is there, and an editor is told of each."""
    assert dir(corsetkit) == sorted(corsetkit.__all__)
    assert all(getattr(corsetkit, name) is not None for name in dir(corsetkit))
    with pytest.raises(AttributeError, match="corsetkit has no drafted"):
        corsetkit.drafted  # noqa: B018
    tree = ast.parse(Path(corsetkit.__file__).read_text(encoding="utf-8"))
    told = {alias.asname for node in ast.walk(tree) if isinstance(node, ast.ImportFrom) for alias in node.names} - {None}
    assert told | {"__version__"} == set(corsetkit.__all__)


@pytest.mark.parametrize("case", FEW)
def test_a_piece_is_found_by_its_name(case):
    """Every piece stands under its own name; under any other, one sentence names those that there are."""
    pattern = figure(*case)
    assert [pattern[name] for name in pattern] == list(pattern.pieces)
    assert all(piece.name in pattern for piece in pattern.pieces) and "sleeve" not in pattern and 0 not in pattern
    for name in ("sleeve", "", 0, None):
        with pytest.raises(CorsetkitError) as caught:
            pattern[name]
        assert isinstance(caught.value, KeyError)
        names = ", ".join(piece.name for piece in pattern.pieces)
        assert str(caught.value) == f"{name!r} is no piece of this pattern: there are {names}"


LOOKED_AT = """
import sys
sys.path.insert(0, sys.argv[1])
from corsetkit import draft
before = "corsetkit.drawing.svg" in sys.modules
from corsetkit import demo_wearers
from IPython.core.formatters import DisplayFormatter
pattern = draft(demo_wearers()[0][1])
drawn_yet = "corsetkit.drawing.svg" in sys.modules
for value in (pattern, pattern["side back"]):
    shown, _ = DisplayFormatter().format(value)
    assert shown["text/html"].startswith("<img ") and "data:image/svg+xml" in shown["text/html"], shown
    assert len(shown["text/plain"]) < 200
print(before, drawn_yet)
"""


def test_a_notebook_draws_a_pattern_and_a_piece():
    """After `from corsetkit import draft` alone both are drawn; the drawing loads only when one is looked at."""
    done = subprocess.run([sys.executable, "-c", LOOKED_AT, str(ROOT)], capture_output=True, text=True, check=False)
    assert done.stdout.split() == ["False", "False"], done.stderr


def test_a_piece_is_drawn_with_its_own_words():
    """A piece's picture has its number, name and seams' letters, and no other piece's name."""
    pattern = figure("Maren")
    for piece in pattern.pieces:
        picture = html_of(piece)
        assert f'alt="{piece.number} {piece.name}. ' in picture
        assert all(edge.name in picture for edge in piece.edges)
    with pytest.raises(TypeError, match="a int is not drawn"):
        html_of(3)


@pytest.mark.parametrize("case", FEW)
def test_long_values_say_themselves_in_short(case):
    """A pattern ready to cut, and each piece of it, is one short line."""
    made = ready_to_cut(figure(*case))
    for one in (made, *made.pieces):
        assert len(repr(one)) < 200 and "\n" not in repr(one)
    assert f"{len(made.pieces)} pieces" in repr(made)


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_examples_are_true(name, tmp_path, monkeypatch):
    """What the words of a public module show comes out as they show it."""
    monkeypatch.chdir(tmp_path)
    found = doctest.testmod(importlib.import_module(f"corsetkit.{name}"), optionflags=doctest.ELLIPSIS)
    assert found.attempted > 0 and not found.failed


def test_every_public_name_shows_how_it_is_used():
    """Whatever the package offers has an example in its words, which the test above runs."""
    offered = [getattr(corsetkit, name) for name in corsetkit.__all__ if name not in ("__version__", "CorsetkitError")]
    for one in (*offered, Pattern):
        assert ">>> " in one.__doc__, one
        assert one.__module__.removeprefix("corsetkit.") in EXAMPLES
