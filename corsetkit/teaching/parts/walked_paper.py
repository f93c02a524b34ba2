"""Seams walked on paper: a table of all stretches, and one seam that came out longer, trued."""

from dataclasses import dataclass, replace
from html import escape

from corsetkit.errors import CorsetkitError
from corsetkit.finish.trueing import trued
from corsetkit.finish.walk import TOLERANCE, small, walk
from corsetkit.quantity import declared, quantities
from corsetkit.showing.marks import seam_letter
from corsetkit.showing.svg import svg_text
from corsetkit.showing.lessons.trued_sheet import trued_sheet
from corsetkit.teaching.parts.finishing import Finishing, read_or_refused
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.stored import Stored
from corsetkit.units import CM_PER_INCH, say_length

_HEADS = ("seam", "from", "to", "first side", "length", "second side", "length", "they differ by", "verdict")
_LEFT = ' style="text-align:left"'


@dataclass(frozen=True)
class Paper:
    """One seam as it came out on paper; the choice of seams is the pattern's own."""

    longer_by: float = declared(
        "how much longer the first piece's sewing line came out on your paper than it was drafted", unit="cm", low=0,
        high=CM_PER_INCH / 2, step=CM_PER_INCH / 16, default=CM_PER_INCH / 8)
    seam: str = declared("which seam is walked, by its letter in the pattern", unit="choice", choices=("C",), default="C")
    redrawn: bool = declared("whether the shorter side is lengthened and its free edge redrawn", unit="yes or no",
                             default=False)


def paper_of(drafts: Finishing):
    """The quantities of `Paper` for the desk's wearer; as they are declared where she cannot be drafted."""
    longer, seam, redrawn = quantities(Paper)
    try:
        letters = tuple(walkable(drafts.pattern(drafts.now())[1]))
    except CorsetkitError:
        # The table says why; meanwhile the choice is as it is declared.
        return longer, seam, redrawn
    return longer, replace(seam, choices=letters, default=letters[0]), redrawn


def walkable(pattern) -> dict:
    """The walked seams, by their letters, that cross the waist and end below on free edges: there they can be trued."""
    found = {}
    for seam in pattern.seams:
        walked = walk(seam, pattern.pieces)
        last = walked.stretches[-1]
        # Where the walk goes both ways from one place, that is the waist.
        both_ways = len(walked.stretches) > 1 and walked.stretches[0].start == last.start
        if both_ways and all(beyond is not None and beyond.seam is None for _, _, beyond in last.ends):
            found[seam_letter(seam.number)] = walked
    return found


def walked_picture(drafts: Finishing, values: dict) -> Picture:
    """The picture for values of style and finish and of `Paper`."""
    name, pattern = drafts.pattern(values)
    unit, drafted = drafts.desk.record.unit, walkable(pattern)
    given = {one.name: values[one.name] for one in quantities(Paper) if one.name in values}
    letter = given.get("seam", next(iter(drafted)))
    longer, redrawn = given.get("longer_by", Paper.longer_by), given.get("redrawn", False)
    if letter not in drafted:
        raise CorsetkitError(f"seam {letter} has no free end below the waist in this pattern: choose one of {', '.join(drafted)}")
    walked = drafted[letter]
    *before, last = (one.lengths for one in walked.stretches)
    paper = walk(walked.seam, pattern.pieces, (*before, (last[0] + longer, last[1])))
    stretch = paper.stretches[-1]
    piece, edge, at = stretch.ends[1]
    new = None
    if redrawn and longer:
        new = next(one for one in trued(pattern, edge, longer, at).pieces if one.number == piece.number)
    title = f"Seam {letter}, {walked.seam.name}, walked, for {name}"
    sheet = trued_sheet(paper, stretch, longer, new, unit, title)
    return Picture(svg_text(sheet), sheet.description, tuple(_said(paper, stretch, at, new, unit)))


def _said(paper, stretch, at, new, unit):
    yield stretch.said(unit)
    moves = paper.moves(unit=unit)
    if moves:
        yield f"That is more than the {small(TOLERANCE, unit)} that marking by hand may miss."
        yield from moves
    else:
        yield f"That is no more than the {small(TOLERANCE, unit)} that marking by hand may miss: nothing is to be moved."
    if new is not None:
        blend = new.blends[-1]
        yield (f"Redrawn: the {at.name} of the {new.name} keeps its direction at the corner and runs into the old line after "
               f"{say_length(sum(curve.length for curve in blend.after), unit)}; it moves by at most "
               f"{small(blend.largest_move, unit)}. The two sides agree again.")


def walk_table(drafts: Finishing) -> Stored:
    """All seams stretch by stretch, as they are drafted."""
    return read_or_refused(lambda: _table(drafts))


def _table(drafts):
    name, pattern = drafts.pattern(drafts.now())
    unit = drafts.desk.record.unit
    rows, said = [], []
    for seam in pattern.seams:
        walked = walk(seam, pattern.pieces)
        for one in walked.stretches:
            (first, _, _), (second, _, _) = one.ends
            off = small(one.difference, unit)
            verdict = ("eased" if one.is_eased else "true") if abs(one.difference) <= TOLERANCE else "differs"
            rows.append((f"{seam_letter(seam.number)} {seam.name}" if one is walked.stretches[0] else "", one.start, one.end,
                         first.name, _tape(one.lengths[0], unit), second.name, _tape(one.lengths[1], unit), off, verdict))
            said.append(f"{seam_letter(seam.number)}, {seam.name}: {one.said(unit)}")
    heads = "".join(f'<th scope="col"{_LEFT}>{head}</th>' for head in _HEADS)
    cells = "".join(f'<tr><th scope="row"><b>{escape(row[0])}</b></th>'
                    + "".join(f"<td{_LEFT}>{escape(one)}</td>" for one in row[1:]) + "</tr>" for row in rows)
    html = (f"<table><caption>{escape(name)}'s seams, walked</caption><thead><tr>{heads}</tr></thead>"
            f"<tbody>{cells}</tbody></table>")
    return Stored(html, said)


def _tape(cm, unit):
    return f"{cm:.1f} cm" if unit == "cm" else small(cm, unit)
