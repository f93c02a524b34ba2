"""The words after `python tests` and `python tests/benchmarks` find their way."""

import os
import pathlib
import re
import runpy
import subprocess
import sys

import pytest

from corsetkit.setup import words

ROOT = pathlib.Path(__file__).resolve().parent.parent


@pytest.mark.parametrize(
    "given, options, paths",
    [
        ([], [], []),
        (["-x", "tests/test_a.py"], ["-x"], ["tests/test_a.py"]),
        (["-k", "tests", "-q"], ["-k", "tests", "-q"], []),
        (["-ktests", "lessons"], ["-ktests"], ["lessons"]),
        (["--maxfail", "1", "a.py::test_b[x y]"], ["--maxfail", "1"], ["a.py::test_b[x y]"]),
        (["--maxfail=1", "a.py"], ["--maxfail=1"], ["a.py"]),
        (["--deselect", "tests/test_a.py", "--durations", "5"], ["--deselect", "tests/test_a.py", "--durations", "5"], []),
        (["--lf", "lessons/00.ipynb", "-m", "not browser"], ["--lf", "-m", "not browser"], ["lessons/00.ipynb"]),
        (["-v", "--", "-odd.py"], ["-v"], ["-odd.py"]),
    ],
)
def test_words_are_sorted_into_options_and_paths(given, options, paths):
    assert words.sort(given) == (options, paths)


def test_every_option_that_takes_a_word_is_known_here():
    # Asked of pytest's own help, so that a new pytest with a new option is noticed.
    told = subprocess.run(
        [sys.executable, "-m", "pytest", "--help"], cwd=ROOT, capture_output=True, text=True, check=True
    ).stdout
    told = told.split("[pytest] configuration options")[0].split("[pytest] ini-options")[0]
    taking = set()
    for line in re.findall(r"(?m)^  (-.*?)(?:   .*)?$", told):
        for option in line.split(", "):
            found = re.fullmatch(r"(--?[\w-]+)[ =]([^\[\s].*)", option)
            if found:
                taking.add(found.group(1))
    assert {"-k", "--maxfail", "--ignore"} < taking
    assert sorted(taking - words.TAKES_A_WORD) == []


@pytest.fixture
def clone(tmp_path):
    """A folder like a clone, with a space in its path."""
    root = tmp_path / "corset kit"
    for name in ("tests/test_a.py", "lessons/00_a.ipynb"):
        (root / name).parent.mkdir(parents=True, exist_ok=True)
        (root / name).touch()
    return root


def test_without_a_path_everything_runs_in_two_workers_and_lessons_run_under_nbval(clone):
    said = words.for_pytest(["-q", "-n", "0"], str(clone), str(clone))
    assert said == ["--nbval", *words.ALL, "-q", "-n", "0", str(clone / "tests"), str(clone / "lessons")]


@pytest.mark.parametrize(
    "given, nbval, path",
    [
        ("tests/test_a.py", False, "tests/test_a.py"),
        ("tests/test_a.py::test_b", False, "tests/test_a.py::test_b"),
        ("lessons/00_a.ipynb", True, "lessons/00_a.ipynb"),
        ("lessons", True, "lessons"),
    ],
)
@pytest.mark.parametrize("stands_in", [".", "tests", "..", "/"])
def test_a_path_is_found_from_anywhere(clone, given, nbval, path, stands_in):
    here = os.path.normpath(os.path.join(clone, stands_in))
    assert words.for_pytest([given], here, str(clone)) == ["--nbval"] * nbval + [str(clone / path)]


def test_where_the_user_stands_comes_before_the_root(clone):
    assert words.for_pytest(["test_a.py"], str(clone / "tests"), str(clone)) == [str(clone / "tests" / "test_a.py")]


def test_a_path_that_is_not_there_is_left_to_pytest_and_nbval_is_not_asked_twice(clone):
    assert words.for_pytest(["tests/test_z.py"], str(clone), str(clone)) == ["tests/test_z.py"]
    assert words.for_pytest(["--nbval-lax", "lessons"], str(clone), str(clone)) == ["--nbval-lax", str(clone / "lessons")]


def test_a_word_chooses_benchmarks_and_a_wrong_one_is_told():
    chosen = runpy.run_path(str(ROOT / "tests" / "benchmarks" / "__main__.py"))["chosen"]
    there = ["bench_browser.py", "bench_draft.py"]
    assert chosen(there, []) == there
    assert chosen(there, ["draft"]) == ["bench_draft.py"]
    with pytest.raises(ValueError, match="'sowing'.*bench_browser, bench_draft"):
        chosen(there, ["draft", "sowing"])
