"""python tests/benchmarks: runs every bench_*.py of this folder, one after the other.

Words choose: `python tests/benchmarks draft` runs those with "draft" in their name.
"""

import os
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
ROOT = os.path.dirname(os.path.dirname(HERE))
# The set-up alone, not the package around it: that one needs a newer Python than may run this.
sys.path.insert(0, os.path.join(ROOT, "corsetkit"))

import setup.start  # noqa: E402


def found(folder):
    return sorted(name for name in os.listdir(folder) if name.startswith("bench_") and name.endswith(".py"))


def chosen(names, words):
    """The benchmarks that the words mean, in the folder's order; ValueError for a word that means none."""
    for word in words:
        if not any(word in name for name in names):
            raise ValueError(
                "No benchmark has {!r} in its name; there are: {}.".format(
                    word, ", ".join(name[: -len(".py")] for name in names) or "none"
                )
            )
    return [name for name in names if not words or any(word in name for word in words)]


def main(words):
    setup.start.look_at_python("tests/benchmarks")
    try:
        names = chosen(found(HERE), words)
    except ValueError as error:
        setup.start.stop(str(error), 2)
    if not names:
        setup.start.stop(f"There is no bench_*.py in {HERE}.", 2)
    python = setup.start.ready("tests/benchmarks", tests=True)
    from setup import programs

    worst = 0
    for name in names:
        sys.stdout.write("== " + name + "\n")
        sys.stdout.flush()
        worst = programs.follow([python, os.path.join(HERE, name)], ROOT) or worst
    return worst


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
