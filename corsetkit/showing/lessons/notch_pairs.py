"""Which notches meet: all of a pattern's notch marks seam by seam, and a sheet on which one pair is lit."""

from dataclasses import dataclass

from corsetkit.finish.notches import back_seams
from corsetkit.geometry import paths as path
from corsetkit.geometry.move import slid
from corsetkit.units import say_length
from corsetkit.drawing.canvas import tick
from corsetkit.drawing.pens import SEWING
from corsetkit.drawing.marks import seam_letter
from corsetkit.drawing.pens import BEFORE, GUIDE, NEW, SPOT, SPOT_TONE
from corsetkit.showing.lessons.ready_sheet import Whole
from corsetkit.drawing.canvas import Sheet

_KEY = ((NEW, "the seam, both sides"), (GUIDE, "these two meet"), (BEFORE, "cutting line"), (SEWING, "other sewing lines"))


@dataclass(frozen=True)
class NotchPair:
    """One mark of a seam: how far from its start, cm, how many cuts it has, and its place on either side.

    `places` are (edge, cm along it, piece); `cut` says for either side whether a notch is cut there, or the piece's own
    corner is the mark.
    """

    seam: object
    at: float
    count: int
    places: tuple
    cut: tuple


def notch_pairs(finished):
    """All `NotchPair`s of a `Finished` pattern, in the order in which the seams are sewn."""
    pattern = finished.pattern
    backs = back_seams(pattern.pieces, getattr(pattern.steps, "block", None))
    owners = {id(edge): piece for piece in pattern.pieces for edge in piece.edges}
    there = {(id(one.edge), round(one.along, 4)) for piece in finished.pieces for one in piece.notches}
    found = []
    for seam in pattern.seams:
        for number, at in enumerate(seam.marks):
            places = tuple(seam.places(side)[number] for side in (0, 1))
            found.append(NotchPair(seam, at, 2 if seam.number in backs else 1,
                                   tuple((edge, along, owners[id(edge)]) for edge, along in places),
                                   tuple((id(edge), round(along, 4)) in there for edge, along in places)))
    return tuple(found)


def notch_sheet(finished, pair, unit, title):
    """The whole pattern with both sides of the pair's seam and its two places lit."""
    whole = Whole(finished, title, _KEY)
    spots = [path.point_along(edge.run, along) + whole.step(edge) for edge, along, _ in pair.places]

    def paint(canvas):
        whole.paint(canvas, unit, BEFORE)
        for number, side in enumerate(pair.seam.sides, 1):
            for edge in side:
                facts = {"role": "new", "name": f"{pair.seam.name}, {whole.owners[id(edge)].name}", "side": number,
                         "seam": f"{seam_letter(pair.seam.number)} lit", "length": say_length(edge.length, unit)}
                canvas.line(path.moved(edge.run, slid(whole.step(edge))), NEW, facts)
        tick(canvas, *spots, GUIDE)
        for at in spots:
            canvas.dot(at, 1.0, SPOT_TONE, SPOT)

    names = " and ".join(piece.name for _, _, piece in pair.places)
    return Sheet(whole.low, whole.high, title, f"{title}: the {pair.seam.name} lit on both sides, and the place at which "
                 f"{names} meet, {say_length(pair.at, unit)} from the seam's start.", paint, whole.scale)
