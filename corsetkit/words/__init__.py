"""What people read, kept as text: Python says which sentence and which values, the sentence stands in a file.

A file of sentences is `NAME.words.md`. A lesson's stands beside its text, in lessons/text/; what the package says with no
lesson open stands here. Each sentence is one line, `- name: sentence`, with a place in braces for each value:

    - mark_lies: The overbust mark lies {away} from the bust point.

All other lines are for whoever reads the file: headings, and what a group of sentences is for.

    WORDS = words_of("03_overbust")
    WORDS("mark_lies", away=say_length(7.62, "in"))

The values come as words; how a number is written, `units` says alone. A sentence that is missing, or a place that nothing
fills, never stops a lesson: what there is to say is said by its name. tests/test_words.py refuses both.
"""

import os
import re
from functools import cache, cached_property
from pathlib import Path

SUFFIX = ".words.md"
PACKAGE = Path(__file__).parent
LESSONS = PACKAGE.parents[1] / "lessons" / "text"
INSTEAD = "CORSETKIT_WORDS"
"""Names a folder whose files of sentences take the place of ours of the same name: the course in another language."""

LINE = re.compile(r"- (?P<name>[a-z][a-z0-9_]*): (?P<text>\S.*)")
_PLACE = re.compile(r"\{(\w+)\}")


class Words:
    """The sentences of one file, read when the first of them is said."""

    def __init__(self, name: str):
        self.name = name

    def __call__(self, name: str, /, **values) -> str:
        """The sentence of that name with its values, which are words already, in their places."""
        parts = self._parts.get(name)
        if parts is None:
            return " ".join((name.replace("_", " "), *map(str, values.values())))
        if len(parts) == 1:
            return parts[0]
        # By turns what stands in the file and the name of a place.
        return "".join(str(values.get(part, f"{{{part}}}")) if place % 2 else part for place, part in enumerate(parts))

    def counted(self, name: str, count: int, /, **values) -> str:
        """The sentence `name_one` for one thing, `name_many` for any other number; its place {count} is that number."""
        return self(f"{name}_one" if count == 1 else f"{name}_many", count=count, **values)

    @cached_property
    def _parts(self) -> dict[str, list[str]]:
        try:
            text = file_of(self.name).read_text(encoding="utf-8")
        except OSError:
            return {}
        return {name: _PLACE.split(sentence) for _, name, sentence in lines(text)}


@cache
def words_of(name: str) -> Words:
    """The sentences of the file `name`.words.md, wherever it stands."""
    return Words(name)


def file_of(name: str) -> Path:
    """Where the sentences of that name stand."""
    folders = [Path(os.environ[INSTEAD])] if os.environ.get(INSTEAD) else []
    found = [folder / f"{name}{SUFFIX}" for folder in (*folders, PACKAGE, LESSONS)]
    return next((path for path in found if path.is_file()), found[-1])


def lines(text: str):
    """(number of the line, name, sentence) of each sentence in the text of a file."""
    for number, line in enumerate(text.splitlines(), 1):
        found = LINE.fullmatch(line.rstrip())
        if found:
            yield number, found["name"], found["text"]


def places(sentence: str) -> set[str]:
    """The names of a sentence's places."""
    return set(_PLACE.findall(sentence))
