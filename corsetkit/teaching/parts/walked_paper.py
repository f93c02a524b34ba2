"""Seams walked on paper: a table of all stretches, and one seam that came out longer, trued."""

from dataclasses import dataclass, replace
from html import escape

from corsetkit.errors import CorsetkitError
from corsetkit.finish.true_seam import true_seam
from corsetkit.finish.walk import TOLERANCE, small, walk
from corsetkit.pattern.edge import Kind
from corsetkit.quantity import declared, quantities
from corsetkit.drawing.marks import seam_letter
from corsetkit.drawing.svg import svg_text
from corsetkit.showing.lessons.trued_sheet import trued_sheet
from corsetkit.teaching.parts.finishing import Finishing, read_or_refused
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.stored import Stored
from corsetkit.units import CM_PER_INCH, say_length

_HEADS = ("seam", "from", "to", "first side", "length", "second side", "length", "they differ by", "verdict")
_LEFT = ' style="text-align:left"'


_PENCIL = {"in": "1/16 in", "cm": "1.5 mm"}
"""`TOLERANCE` as people say it."""


@dataclass(frozen=True)
class Paper:
    """One seam as it came out on paper; the choice of seams is the pattern's own."""

    longer_by: float = declared(
        "how much longer the first piece's sewing line came out on your paper than it was drafted", unit="cm", low=0,
        high=CM_PER_INCH / 2, step=CM_PER_INCH / 16, default=CM_PER_INCH / 8)
    seam: str = declared("which seam is walked, by its letter in the pattern, and from the waist which way", unit="choice",
                         choices=("C",), default="C")
    redrawn: bool = declared("whether the shorter side is lengthened and the edges beyond its end redrawn", unit="yes or no",
                             default=False)


def paper_of(drafts: Finishing):
    """The quantities of `Paper` for the desk's wearer; as they are declared where she cannot be drafted."""
    longer, seam, redrawn = quantities(Paper)
    try:
        ways = walkable(drafts.pattern(drafts.now())[1])
    except CorsetkitError:
        # The table says why; meanwhile the choice is as it is declared.
        return longer, seam, redrawn
    return longer, replace(seam, choices=tuple(ways), default=_first(ways)), redrawn


def walkable(pattern) -> dict:
    """Every seam of the pattern, walked, and the number of the stretch that ends where the seam does.

    Known by the seam's letter, which says as well which way from the waist where it is walked up and down.
    """
    found = {}
    for seam in pattern.seams:
        walked = walk(seam, pattern.pieces)
        begun = [number for number, one in enumerate(walked.stretches) if one.begins]
        last = [number - 1 for number in begun[1:]] + [len(walked.stretches) - 1]
        for number, way in zip(last, (" up", " down") if len(begun) > 1 else ("",)):
            found[seam_letter(seam.number) + way] = walked, number
    return found


def _first(ways):
    """The first that ends at the hem, as most do that are walked down from the waist."""
    ends = {letter: walked.stretches[number].ends[1][2] for letter, (walked, number) in ways.items()}
    return next((letter for letter, beyond in ends.items() if beyond.kind is Kind.HEM), next(iter(ends)))


def walked_picture(drafts: Finishing, values: dict) -> Picture:
    """The picture for values of style and finish and of `Paper`."""
    name, pattern = drafts.pattern(values)
    unit, ways = drafts.desk.record.unit, walkable(pattern)
    given = {one.name: values[one.name] for one in quantities(Paper) if one.name in values}
    letter = given.get("seam", _first(ways))
    longer, redrawn = given.get("longer_by", Paper.longer_by), given.get("redrawn", False)
    if letter not in ways:
        raise CorsetkitError(f"seam {letter} is not in this pattern: choose one of {', '.join(ways)}")
    drafted, number = ways[letter]
    measured = [one.lengths for one in drafted.stretches]
    measured[number] = measured[number][0] + longer, measured[number][1]
    paper = walk(drafted.seam, pattern.pieces, measured)
    stretch = paper.stretches[number]
    new = true_seam(pattern, paper) if redrawn else pattern
    pieces = () if new is pattern else tuple(new.pieces[pattern.pieces.index(piece)] for piece, _, _ in stretch.ends)
    title = f"Seam {letter}, {paper.seam.name}, walked, for {name}"
    sheet = trued_sheet(paper, stretch, longer, pieces, unit, title)
    return Picture(svg_text(sheet), sheet.description, tuple(_said(paper, stretch, pieces, unit)))


def _said(paper, stretch, pieces, unit):
    yield stretch.said(unit)
    moves = paper.moves(unit=unit)
    if moves:
        yield f"That is more than the {_PENCIL[unit]} that marking by hand may miss."
        yield from moves
    else:
        yield f"That is no more than the {_PENCIL[unit]} that marking by hand may miss: nothing is to be moved."
    if pieces:
        yield f"{_redrawn(stretch, pieces, unit)} The two sides agree again."


def _redrawn(stretch, pieces, unit):
    """What was redrawn on the shorter side."""
    (_, edge, at), new = stretch.ends[1], pieces[1]
    blends = new.blends[len(stretch.ends[1][0].blends):]
    most = small(max(blend.largest_move for blend in blends), unit)
    if at.seam is None:
        after, whole = blends[-1].after, next(one for one in new.edges if blends[-1].after[0] in one.run)
        if most.startswith("0 "):
            return f"Redrawn: the {at.name} of the {new.name} begins farther on, on the line that it had."
        if len(after) == len(whole.run):
            return (f"Redrawn: the {at.name} of the {new.name} is too short to run into its old line smoothly, so the whole of "
                    f"it is turned about its other corner; it moves by at most {most}.")
        return (f"Redrawn: the {at.name} of the {new.name} keeps its direction at the corner and runs into the old line after "
                f"{say_length(sum(curve.length for curve in after), unit)}; it moves by at most {most}.")
    return (f"Redrawn: the {edge.name} of the {new.name} to its new end, and the {at.name}, which is "
            f"{say_length(at.length, unit)} long as before, for it is sewn too; no line moves by more than {most}.")


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
