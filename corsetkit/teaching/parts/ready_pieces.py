"""One piece ready to cut, or the whole pattern: the picture with its sentences, and which piece is chosen."""

from dataclasses import dataclass, replace

from corsetkit.errors import CorsetkitError
from corsetkit.finish.finished import CLOTHS
from corsetkit.geometry import paths as path
from corsetkit.pattern.edge import Kind
from corsetkit.quantity import declared, quantities
from corsetkit.showing.lessons.ready_sheet import all_pieces, one_piece
from corsetkit.drawing.svg import svg_text
from corsetkit.teaching.parts.finishing import Finishing, choices_in
from corsetkit.teaching.picture import Picture
from corsetkit.units import say_length

ALL = 0


@dataclass(frozen=True)
class Looked:
    """Which piece is looked at; its range and default are the pattern's own."""

    piece: int = declared("the piece you look at, by its number; 0 shows the whole pattern", unit="count", low=0, high=12,
                          step=1, default=ALL)


def looked_at(drafts: Finishing):
    """The quantity of `Looked` for the desk's wearer; as it is declared where she cannot be drafted."""
    (one,) = quantities(Looked)
    try:
        pieces = drafts.pattern(drafts.now())[1].pieces
    except CorsetkitError:
        # The table says why; meanwhile the slider is as it is declared.
        return (one,)
    return (replace(one, high=max(piece.number for piece in pieces), default=most_telling(pieces).number),)


def most_telling(pieces):
    """The piece to begin with: one that has seams of panels and of cups, and a hem."""
    wanted = {Kind.HEM, Kind.PANEL_SEAM, Kind.CUP_SEAM}
    there = [one for one in pieces if wanted <= {edge.kind for edge in one.edges}]
    return next((one for one in there if not one.on_fold), (there or pieces)[0])


def ready_picture(drafts: Finishing, values: dict) -> Picture:
    """The picture for values of style and finish, and the `piece` among them."""
    number = values.get("piece")
    if number is None:
        (number,) = (one.default for one in looked_at(drafts))
    unit = drafts.desk.record.unit
    if number == ALL:
        name, finished = drafts.finished(values)
        sheet = all_pieces(finished, unit, f"Ready to cut, for {name}")
        return Picture(svg_text(sheet), sheet.description, tuple(_all_said(finished)), tuple(finished.warnings))
    name, pattern, finished = drafts.piece(values, number)
    sheet = one_piece(finished, pattern.pieces, choices_in(values), unit, f"Ready to cut, for {name}")
    return Picture(svg_text(sheet), sheet.description, tuple(_said(finished, unit)), tuple(pattern.warnings))


def _said(finished, unit):
    piece = finished.piece
    say = lambda cm: say_length(cm, unit)  # noqa: E731
    cloths = ", ".join(f"{one.cloth} {one.count}" for one in finished.layers)
    how = f", {finished.layers[0].how}" if finished.layers[0].how else ""
    yield f"{piece.number} {piece.name}: {cloths}{how}."
    if across := width_at_waist(finished):
        sewn, cut = across
        half = " (half of it, for it lies on the fold)" if piece.on_fold else ""
        yield f"At the waist the sewn piece is {say(sewn)} wide, the paper {say(cut)}{half}."
    bound = [edge.name for edge, width in zip(piece.edges, finished.allowances) if not width and edge.kind is not Kind.FOLD]
    if bound:
        yield f"Bound, and cut on their own line: {', '.join(bound)}."
    if piece.on_fold:
        yield "Its fold is laid on the fold of the cloth. There is no allowance there, for the cloth runs on."


def width_at_waist(finished):
    """How wide the piece is at the waist, sewn and cut, cm; None where it does not reach it."""
    crossed = [curve.point(t).real for edge in finished.piece.edges for i, t in path.on_line(edge.run, 0j, 1 + 0j)
               for curve in (edge.run[i],)]
    cut = [p.real + (q.real - p.real) * p.imag / (p.imag - q.imag)
           for p, q in zip(finished.cutting, (*finished.cutting[1:], finished.cutting[0])) if (p.imag > 0) != (q.imag > 0)]
    if len(crossed) < 2 or finished.piece.copied:
        return None
    return max(crossed) - min(crossed), max(cut) - min(cut)


def _all_said(finished):
    counts = {cloth: sum(layer.count for one in finished.pieces for layer in one.layers if layer.cloth == cloth)
              for cloth in CLOTHS}
    told = ", ".join(f"{count} of {cloth}" for cloth, count in counts.items() if count)
    yield f"{len(finished.pieces)} pieces of paper; from them are cut {told}."
    folded = [one.piece.name for one in finished.pieces if one.piece.on_fold]
    yield f"On the fold: {', '.join(folded)}. All others are cut as pairs, a left and a right one."
