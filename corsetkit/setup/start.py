"""The way in: looks at the Python that runs this, then sees to the environment.

Written so that a Python far too old can still read it and say its one sentence.
"""
from __future__ import print_function

import os
import subprocess
import sys

ROOT = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
OLDEST, NEWEST = (3, 11), (3, 13)  # pyproject.toml says the same; a test compares


def wrong_python(version, bits, words, found=None):
    """One sentence where this Python will not do, else None."""
    if OLDEST <= tuple(version[:2]) <= NEWEST and bits == 64:
        return None
    names = ["{0}.{1}".format(OLDEST[0], minor) for minor in range(OLDEST[1], NEWEST[1] + 1)]
    sentence = "Python {0} or {1}, please (this is Python {2}.{3}{4}): ".format(
        ", ".join(names[:-1]), names[-1], version[0], version[1],
        "" if bits == 64 else ", of 32 bits; 64 are needed")
    if found:
        return sentence + "there is one on this machine, so type  {0} {1}".format(found, words)
    return sentence + "install one of them, then type  python {0}  with that one.".format(words)


def another_python():
    """How to call a fitting Python that is on this machine, or None."""
    for minor in range(NEWEST[1], OLDEST[1] - 1, -1):
        name = "{0}.{1}".format(OLDEST[0], minor)
        command = ["py", "-" + name] if os.name == "nt" else ["python" + name]
        try:
            # Asked, not only looked for: some tools leave names behind that start nothing.
            code = subprocess.call(command + ["--version"], stdout=subprocess.PIPE,
                                   stderr=subprocess.PIPE)
        except OSError:
            continue
        if code == 0:
            return " ".join(command)
    return None


def stop(sentence, code=1):
    sys.stdout.flush()
    sys.stderr.write(sentence + "\n")
    sys.exit(code)


def look_at_python(words):
    bits = 64 if sys.maxsize > 2 ** 32 else 32
    if wrong_python(sys.version_info, bits, words):
        stop(wrong_python(sys.version_info, bits, words, another_python()))


def in_own_environment():
    """Whether the environment's own Python runs this: it cannot take itself down to be made anew."""
    own = os.path.join(ROOT, ".venv")
    return os.path.exists(own) and os.path.realpath(sys.prefix) == os.path.realpath(own)


def ready(words, tests=False):
    """The path of the environment's Python, with all set up; ends the program with one sentence
    where that cannot be. `words` is what the user typed after python: lessons, tests."""
    look_at_python(words)
    from . import install, places, problems
    pins = places.TESTS if tests else places.COURSE
    try:
        if in_own_environment():
            code = install.again_from_base(ROOT, pins)
            if code is not None:
                sys.exit(code)
        return install.ready(ROOT, pins)
    except problems.SetupProblem as problem:
        return stop(str(problem))
    except KeyboardInterrupt:
        return stop("The set-up was stopped; the next start does it again.", 130)
