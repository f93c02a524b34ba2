"""`python -m corsetkit` runs the command in command.py."""

import sys


def _main():
    try:
        from .command import main
    except ModuleNotFoundError as missing:
        print(f"{missing.name} is not installed for this Python: open the course once with python lessons, and then run "
              "this with the Python in the folder .venv.", file=sys.stderr)
        return 2
    return main()


if __name__ == "__main__":
    sys.exit(_main())
