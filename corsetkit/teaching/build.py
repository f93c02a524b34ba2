"""python -m corsetkit.teaching.build: makes the notebooks of the lessons from their texts.

A lesson is written in Markdown, in lessons/text/. Each heading of the first or second rank begins a new
cell. What the package shows stands as a fenced block whose word is `show`, one cell's name a line:

    ```show
    pattern
    ```

which becomes the hidden line  lesson("00_measuring").pattern() . The notebook is the same byte for byte at
each build: cell ids come from lesson and place, metadata hold nothing of the machine.

    python -m corsetkit.teaching.build                  all lessons
    python -m corsetkit.teaching.build 00_measuring     one
    python -m corsetkit.teaching.build --check          write nothing; say which differ

Each is run once in the stored mode, so that a fresh clone shows its drawings before anything is run.
"""

import argparse
import json
import os
import re
import sys
from dataclasses import dataclass
from pathlib import Path

from corsetkit.errors import CorsetkitError
from corsetkit.files import write_whole
from corsetkit.teaching.picture import STORED
from corsetkit.words import SUFFIX

LESSONS = Path(__file__).parents[2] / "lessons"
TEXTS = LESSONS / "text"

# Every key by which a reader of notebooks hides code.
HIDDEN = {"jupyter": {"source_hidden": True}, "tags": ["hide-input", "remove-input"]}
METADATA = {
    "kernelspec": {"display_name": "Python 3 (ipykernel)", "language": "python", "name": "python3"},
    "language_info": {"name": "python"},
}

_FENCE = re.compile(r"^```(\S*)\s*$")


@dataclass(frozen=True)
class Cell:
    """One cell: its kind, "markdown" or "code", and its source."""

    kind: str
    source: str


def lesson_names() -> list[str]:
    """The lessons that have a text, in order; beside each text stand the lesson's sentences (corsetkit.words)."""
    return sorted(path.stem for path in TEXTS.glob("[0-9][0-9]_*.md") if not path.name.endswith(SUFFIX))


def read_text(name: str) -> str:
    try:
        return (TEXTS / f"{name}.md").read_text(encoding="utf-8")
    except OSError as error:
        raise CorsetkitError(f"lesson {name} has no text to read: {error.strerror}") from None


def cells(name: str, text: str) -> list[Cell]:
    """The cells that the text of lesson `name` stands for."""
    found: list[Cell] = []
    words: list[str] = []
    fence = None

    def close():
        source = "\n".join(words).strip()
        if source:
            found.append(Cell("markdown", source))
        words.clear()

    for number, line in enumerate(text.splitlines(), 1):
        opening = _FENCE.match(line)
        if fence == "show":
            if opening:
                fence = None
            elif line.strip().isidentifier():
                found.append(Cell("code", code(name, line.strip())))
            else:
                raise CorsetkitError(f"{name}.md, line {number}: {line!r} is not the name of a cell")
            continue
        if opening:
            fence = opening[1] if fence is None else None
            if fence == "show":
                close()
                continue
        elif fence is None and re.match(r"^##? ", line):
            close()
        words.append(line)
    if fence is not None:
        raise CorsetkitError(f"{name}.md: the last fenced block is not closed")
    close()
    return found


def code(name: str, cell: str) -> str:
    """The one harmless line of a cell."""
    return f'from corsetkit.teaching import lesson; lesson("{name}").{cell}()'


def notebook(name: str, text: str) -> dict:
    """The notebook of a lesson, its outputs still empty."""
    made = []
    for place, cell in enumerate(cells(name, text)):
        one: dict[str, object] = {"cell_type": cell.kind, "id": f"{name.replace('_', '-')}-{place:02d}"}
        if cell.kind == "code":
            one |= {"execution_count": None, "metadata": HIDDEN, "outputs": []}
        else:
            one |= {"metadata": {}}
        made.append({**one, "source": cell.source})
    return {"cells": made, "metadata": METADATA, "nbformat": 4, "nbformat_minor": 5}


def written(book: dict) -> bytes:
    """The notebook as a file holds it, laid out as JupyterLab would save it."""
    return (json.dumps(book, indent=1, ensure_ascii=False, sort_keys=True) + "\n").encode("utf-8")


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
