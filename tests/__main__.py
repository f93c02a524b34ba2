"""python tests: sets up what the tests need, then runs everything.

Further words go to pytest; with a path among them, only that is run (a notebook under nbval):

    python tests
    python tests tests/test_setup.py -k stamp
    python tests lessons/00_measuring.ipynb
    python tests/benchmarks
"""

import os
import sys

ROOT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
# The set-up alone, not the package around it: that one needs a newer Python than may run this.
sys.path.insert(0, os.path.join(ROOT, "corsetkit"))

import setup.start  # noqa: E402

if __name__ == "__main__":
    python = setup.start.ready("tests", tests=True)
    from setup import programs, words

    here = os.getcwd()
    sys.exit(programs.follow([python, "-m", "pytest"] + words.for_pytest(sys.argv[1:], here, ROOT), ROOT))
