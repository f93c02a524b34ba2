"""The types hold: mypy finds nothing in the package, as pyproject.toml asks it to look."""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parent.parent


def test_mypy_finds_nothing():
    """What it found before stands in .mypy_cache, so that a second run looks only at what has changed."""
    done = subprocess.run([sys.executable, "-m", "mypy"], cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr


def test_the_package_says_that_it_bears_types():
    """Without the marker file no checker reads the types of an installed package (PEP 561)."""
    assert (ROOT / "corsetkit" / "py.typed").exists()
