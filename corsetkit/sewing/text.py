"""The whole order of sewing of one finished pattern, and as a text file in one unit."""

import textwrap

from corsetkit.drawing.lettering import one_line
from corsetkit.errors import sentence
from corsetkit.files import write_whole
from corsetkit.finish.bill import bill
from corsetkit.printing.draft_print import said_date, target
from corsetkit.sewing.inside import back_edges, bones, eyelets, lacing, lining, top_edge
from corsetkit.sewing.outside import inside_out
from corsetkit.sewing.preparing import cutting, layering, toile
from corsetkit.sewing.work import listed, work_of
from corsetkit.units import check_unit, in_one_unit
from corsetkit.words import words_of

WORDS = words_of("sewing")


def sewing_order(finished):
    """The stages of sewing a `Finished` pattern, from the toile to the first lacing: a tuple of `Stage`.

    Every seam of the pattern is sewn in exactly one move, after the seams it crosses; every bone and eyelet of the bill
    is put in.
    """
    work = work_of(finished)
    return (
        toile(work),
        cutting(work),
        layering(work),
        *inside_out(work),
        back_edges(work),
        bones(work),
        top_edge(work),
        lining(work),
        eyelets(work),
        lacing(work),
    )


WIDTH = 92
"""Letters in a line: what prints on A4 and Letter alike, and reads well on a screen."""
_INDENT = "    "


def sewing_text(finished, unit="in", wearer="", date=None):
    """The stages in words, numbered, their lengths in `unit`, as plain text."""
    check_unit(unit)
    name = one_line(wearer)
    parts = [
        WORDS("heading_for", wearer=name) if name else WORDS("heading"),
        WORDS("preface_in" if unit == "in" else "preface_cm", date=said_date(date)),
    ]
    if told := (*finished.warnings, *bill(finished).warnings):
        lines = [_wrapped(f"- {sentence(in_one_unit(one, unit))}", _INDENT) for one in told]
        parts.append("\n".join([WORDS("worth_knowing"), *lines]))
    warned = set()
    for number, stage in enumerate(sewing_order(finished), 1):
        title = f"{number}. {stage.title}"
        lines = [title, "-" * len(title)]
        lines += [_wrapped(WORDS("take_care", caution=one.text), _INDENT) for one in stage.cautions if one not in warned]
        if again := [one.of for one in stage.cautions if one in warned]:
            lines.append(_wrapped(WORDS("take_care_again", dangers=listed(again)), _INDENT))
        warned.update(stage.cautions)
        lines += [
            _wrapped(f"{number}.{place} {in_one_unit(move.text, unit)}", _INDENT) for place, move in enumerate(stage.moves, 1)
        ]
        parts.append("\n".join(lines))
    return "\n\n".join(part if "\n" in part else _wrapped(part) for part in parts) + "\n"


def _wrapped(text, indent=""):
    return textwrap.fill(text, WIDTH, subsequent_indent=indent, break_long_words=False, break_on_hyphens=False)


def write_sewing(finished, path, unit="in", wearer="", date=None):
    """Write `sewing_text` to `path`, whole or not at all, and hand the path back.

    Raises:
        CorsetkitError: one sentence, for an unknown unit, and where the file cannot be written.
    """
    path = target(path, "sewing.txt")
    write_whole(path, sewing_text(finished, unit, wearer, date).encode("utf-8"))
    return path
