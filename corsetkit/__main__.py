"""`python -m corsetkit` runs the command in command.py."""

try:
    # Within the try, for Ctrl-C may come before anything is loaded.
    import sys

    from .stopping import stoppable

    def _command(stop):
        try:
            from .command import main
        except ModuleNotFoundError as missing:
            if stop.asked:
                raise
            print(
                f"{missing.name} is not installed for this Python: open the course once with python lessons, and then run "
                "this with the Python in the folder .venv.",
                file=sys.stderr,
            )
            return 2
        return main(stop=stop)

    if __name__ == "__main__":
        sys.exit(stoppable(_command))
except KeyboardInterrupt:
    import sys

    print("Nothing was written: stopped by hand.", file=sys.stderr)
    sys.exit(130)
