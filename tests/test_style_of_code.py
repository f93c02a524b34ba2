"""The code is written as one formatter writes it and as the linter's rules in pyproject.toml have it, all of it."""

import shutil
import subprocess
import sysconfig
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
RUFF = shutil.which("ruff", path=sysconfig.get_path("scripts")) or "ruff"
WORDS = {"formatted": ["format", "--diff"], "linted": ["check", "--output-format", "concise"]}


def said(words, *more, **given):
    done = subprocess.run([RUFF, *words, "--no-cache", *more], capture_output=True, text=True, **given)
    return done.returncode, done.stdout + done.stderr


@pytest.mark.parametrize("words", WORDS.values(), ids=WORDS)
def test_nothing_departs(words):
    """What departs is told by file and line; `ruff format` or `ruff check --fix` mends most of it."""
    code, text = said(words, "corsetkit", "tests", "lessons", cwd=ROOT)
    assert code == 0, text


@pytest.mark.parametrize("words", WORDS.values(), ids=WORDS)
def test_what_departs_is_told(words):
    """A module that is neither formatted nor used as it says is refused by both, under this project's own rules."""
    code, text = said(
        words, "--config", str(ROOT / "pyproject.toml"), "--stdin-filename", "odd.py", "-", input="import  sys\n"
    )
    assert code == 1 and "odd.py" in text
