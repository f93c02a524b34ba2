"""What a cell shows for one set of values: a drawing and its sentences, live, or stored before anything is run.

A stored output must show itself in a fresh clone, in which nothing is trusted, and must compare
exactly: so it is an <img> inside text/html and plain sentences, and never the view of a widget.
"""

import os
from dataclasses import dataclass
from html import escape

from corsetkit.errors import sentence
from corsetkit.units import in_one_unit

STORED = "CORSETKIT_STORED"
MOST_PLAIN = 4000
"""How many letters of a cell's sentences are kept beside its page: who compares needs no more to see a change."""


def stored_mode() -> bool:
    """Whether cells are to give their stored state: the builder and the tests ask for it."""
    return bool(os.environ.get(STORED))


class Stored:
    """A cell's still result: `html` for the page, `sentences` for whoever compares or cannot see."""

    def __init__(self, html: str, sentences):
        self.html = html
        self.sentences = tuple(sentences)

    def __repr__(self):
        """The sentences, of many only the first: the page has them all, and a notebook is not to hold them twice."""
        kept, room = [], MOST_PLAIN
        for one in self.sentences:
            room -= len(one) + 1
            if room < 0 and kept:
                return "\n".join([*kept, f"{len(self.sentences) - len(kept)} more on the page."])
            kept.append(one)
        return "\n".join(kept)

    def _repr_mimebundle_(self, include=None, exclude=None):
        return {"text/html": self.html, "text/plain": repr(self)}


def sentences_html(sentences, kind: str = "said") -> str:
    """Sentences as a list; what warns says so in a word, for colour is never the only sign."""
    mark = "<b>Note:</b> " if kind == "warnings" else ""
    items = "".join(f"<li>{mark}{escape(one)}</li>" for one in sentences)
    return f"<ul>{items}</ul>" if items else ""


@dataclass(frozen=True)
class Picture:
    """An SVG text with its description, sentences of values, and warnings."""

    svg: str
    description: str
    said: tuple[str, ...] = ()
    warnings: tuple[str, ...] = ()

    def stored(self, svg_image, unit="in") -> Stored:
        """The still state; `svg_image` makes an <img> with its description of an SVG text."""
        warnings = [sentence(in_one_unit(one, unit)) for one in self.warnings]
        html = svg_image(self.svg) + sentences_html(self.said)
        return Stored(
            html + sentences_html(warnings, "warnings"), (self.description, *self.said, *(f"Note: {one}" for one in warnings))
        )
