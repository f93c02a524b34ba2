"""The order of sewing to read: each stage folded away under its name, with its cautions first."""

from html import escape

from corsetkit.errors import CorsetkitError
from corsetkit.printing.names import file_name
from corsetkit.sewing.stage import LACING, TRIED_ON
from corsetkit.sewing.text import sewing_order, write_sewing
from corsetkit.sewing.work import listed
from corsetkit.teaching.picture import Stored
from corsetkit.teaching.shared.finished_drafts import read_or_refused
from corsetkit.units import in_one_unit
from corsetkit.words import words_of

WORDS = words_of("09_sewing")
SHARED = words_of("shared")

CHOICES = (("text", WORDS("as_text")),)
_EACH_TIME = (TRIED_ON, LACING)
"""What is said of the wearer's own body is said in full wherever it matters; all else once, and then by its name."""


def order_board(drafts) -> Stored:
    """The stages for the desk's wearer, or the sentence that says why there are none."""
    return read_or_refused(lambda: _board(drafts))


def _board(drafts):
    name, finished = drafts.finished(drafts.now())
    unit = drafts.desk.record.unit
    heading, note = WORDS("order_heading", name=name), WORDS("order_note")
    parts, told, warned = [], [heading, note], {}
    for number, stage in enumerate(sewing_order(finished), 1):
        title = f"{number}. {stage.title}"
        cautions = [
            (WORDS("take_care", dangers=one.of), in_one_unit(one.text, unit))
            for one in stage.cautions
            if one not in warned or one in _EACH_TIME
        ]
        if again := [one for one in stage.cautions if one in warned and one not in _EACH_TIME]:
            stages = sorted({warned[one] for one in again})
            cautions.append(
                (
                    WORDS("take_care", dangers=listed(one.of for one in again)),
                    WORDS.counted("as_said", len(stages), stages=listed(map(str, stages))),
                )
            )
        warned = dict.fromkeys(stage.cautions, number) | warned
        moves = [in_one_unit(move.text, unit) for move in stage.moves]
        parts.append(_stage(title, cautions, moves))
        told += [f"{title}.", *(f"{first} {text}" for first, text in cautions), *moves]
    return Stored(f"<p><b>{escape(heading)}</b> {escape(note)}</p>{''.join(parts)}", told)


def _stage(title, cautions, moves):
    warned = "".join(f'<p style="margin:4px 0"><b>{escape(first)}</b> {escape(text)}</p>' for first, text in cautions)
    steps = "".join(f'<li style="margin:6px 0">{escape(one)}</li>' for one in moves)
    return f"<details><summary>{escape(title)}</summary>{warned}<ol>{steps}</ol></details>"


def write_order(drafts, choice: str) -> str:
    """Write the order of sewing as a text, and say where it is."""
    if choice not in dict(CHOICES):
        raise CorsetkitError(f"the choice is {choice}: allowed is text")
    name, finished = drafts.finished(drafts.now())
    folder, base = drafts.desk.make_folder(), file_name(name)
    path = write_sewing(finished, folder / f"sewing_{base}.txt", drafts.desk.record.unit, name)
    return f"{SHARED('files_written', folder=folder, files=path.name)} {base.said}".rstrip()
