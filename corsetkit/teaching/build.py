"""python -m corsetkit.teaching.build: makes the notebooks of the lessons from their texts.

    python -m corsetkit.teaching.build                  all lessons
    python -m corsetkit.teaching.build 00_measuring     one
    python -m corsetkit.teaching.build --check          write nothing; say which differ

Each is run once in the stored mode, so that a fresh clone shows its drawings before anything is run.
"""

import argparse
import os
import sys

from corsetkit.errors import CorsetkitError
from corsetkit.files import write_whole
from corsetkit.teaching.stored import STORED
from corsetkit.teaching.text import LESSONS, lesson_names, notebook, read_text, written


def built(name: str) -> bytes:
    """The notebook of lesson `name` with its stored outputs, as a file holds it."""
    import nbformat
    from nbclient import NotebookClient

    book = nbformat.from_dict(notebook(name, read_text(name)))
    before = os.environ.get(STORED)
    os.environ[STORED] = "1"
    try:
        NotebookClient(book, timeout=300, record_timing=False, kernel_name="python3").execute()
    finally:
        if before is None:
            del os.environ[STORED]
        else:
            os.environ[STORED] = before
    # The kernel tells more of itself than the lesson needs: versions, that is, of one machine.
    book.metadata = nbformat.from_dict(notebook(name, ""))["metadata"]
    for cell in book.cells:
        for output in cell.get("outputs", ()):
            output.metadata = {}
    return written(_split(book))


def _split(book) -> dict:
    """The notebook with each text as a list of lines: a changed line is a changed line in git."""
    from nbformat.v4.rwbase import split_lines, strip_transient

    return split_lines(strip_transient(book))


def main(words) -> int:
    parser = argparse.ArgumentParser(
        prog="python -m corsetkit.teaching.build", description="Makes the notebooks from their texts."
    )
    parser.add_argument("--check", action="store_true", help="write nothing; say which notebooks differ")
    parser.add_argument("lessons", nargs="*", metavar="LESSON", help="such as 00_measuring; all where none is named")
    chosen = parser.parse_args(words)
    differ = 0
    for name in chosen.lessons or lesson_names():
        path = LESSONS / f"{name}.ipynb"
        new = built(name)
        if path.exists() and path.read_bytes() == new:
            print(f"{name}: the same")
            continue
        differ += 1
        if chosen.check:
            print(f"{name}: the notebook differs from what its text gives")
        else:
            write_whole(path, new)
            print(f"{name}: written")
    return 1 if differ and chosen.check else 0


if __name__ == "__main__":
    try:
        sys.exit(main(sys.argv[1:]))
    except CorsetkitError as error:
        sys.exit(str(error))
