"""python lessons: sets up what the course needs, then opens it in JupyterLab at lesson 00.

python lessons
python lessons --no-browser --port 8890
"""

import os
import sys

ROOT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
# The set-up alone, not the package around it: that one needs a newer Python than may run this.
sys.path.insert(0, os.path.join(ROOT, "corsetkit"))

import setup.start  # noqa: E402

FIRST = os.path.join(ROOT, "lessons", "00_measuring.ipynb")


def options(words):
    import argparse

    parser = argparse.ArgumentParser(prog="python lessons", description="Opens the course in JupyterLab.")
    parser.add_argument("--no-browser", action="store_true", help="print the address and open no browser")
    parser.add_argument(
        "--port", type=int, metavar="N", help="the port to use, 1024 to 65535 (8888, or the next one that is free)"
    )
    chosen = parser.parse_args(words)
    if chosen.port is not None and not 1024 <= chosen.port <= 65535:
        parser.error(f"--port is {chosen.port}; give a number from 1024 to 65535")
    return chosen


def main(words):
    setup.start.look_at_python("lessons")
    chosen = options(words)
    python = setup.start.ready("lessons")
    from setup import lab

    port = lab.free_port(chosen.port)
    if port is None:
        setup.start.stop(
            "Port {} is in use: give another with --port, or end the program that uses it.".format(
                chosen.port or "8888 (and the next hundred)"
            )
        )
    return lab.open_lesson(python, FIRST, port, browser=not chosen.no_browser)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
