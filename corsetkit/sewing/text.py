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
    heading = f"How the corset for {one_line(wearer)} is sewn" if one_line(wearer) else "How the corset is sewn"
    parts = [
        heading,
        f"{said_date(date)}. Lengths are in {'inches' if unit == 'in' else 'centimetres'}. The order of work "
        "is common "
        "practice, no source. Letters name seams; numbers before names are those of the pieces.",
    ]
    if told := (*finished.warnings, *bill(finished).warnings):
        parts.append(
            "Worth knowing before you begin:\n" + "\n".join(_entry("-", sentence(in_one_unit(one, unit))) for one in told)
        )
    warned = set()
    for number, stage in enumerate(sewing_order(finished), 1):
        title = f"{number}. {stage.title}"
        lines = [title, "-" * len(title)]
        lines += [_entry("TAKE CARE:", one.text) for one in stage.cautions if one not in warned]
        if again := [one.of for one in stage.cautions if one in warned]:
            lines.append(_entry("TAKE CARE", f"of {listed(again)}, as said before."))
        warned.update(stage.cautions)
        lines += [_entry(f"{number}.{place}", in_one_unit(move.text, unit)) for place, move in enumerate(stage.moves, 1)]
        parts.append("\n".join(lines))
    return "\n\n".join(part if "\n" in part else _wrapped(part) for part in parts) + "\n"


def _entry(mark, text):
    return _wrapped(f"{mark} {text}", _INDENT)


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
