"""The proof before cloth is cut: outlines end to end and simple, parts that tile the block, seams that meet.

Parts and waste are cut along shared lines, so that their boundaries cancel but for the block's own. Where each
of them is simple and runs counter-clockwise, they tile the block: no overlap, nothing left out.
"""

from ..errors import CorsetkitError
from ..geometry import polygon
from ..geometry.points import turn_between

SEAM_TOLERANCE = 0.01
"""Sides of a seam differ by no more than 0.1 mm, the intended ease taken off."""
SHARPEST = 10.0
"""The sharpest corner of a piece, degrees: course convention."""
JOINT = 1e-6
"""How nearly an edge begins where the one before it ends, cm."""


def prove(steps, pieces, seams, waste):
    """Refuse, with one sentence, a pattern that does not keep its promises."""
    for piece in pieces:
        _whole(piece.run, piece.name)
        for before, after in zip(piece.edges, piece.edges[1:] + piece.edges[:1]):
            if abs(turn_between(before.run[-1].way(1.0), after.run[0].way(0.0))) > 180 - SHARPEST:
                raise CorsetkitError(
                    f"the {piece.name} would end in a spike between {before.name} and {after.name}, too sharp to sew: choose "
                    "style values nearer to the middle of their range")
    for piece in pieces:
        for part in piece.parts:
            _whole(part.outline, part.name)
    for cut in waste:
        _whole(cut.outline, f"waste \"{cut.name}\"")
    for seam in seams:
        if abs(seam.difference) > SEAM_TOLERANCE:
            raise CorsetkitError(f"the two sides of the seam {seam.name} differ by {10 * abs(seam.difference):.2f} mm, which "
                                 "this draft does not allow; please report this wearer")
        if any(edge.length < 0.2 for side in seam.sides for edge in side):
            raise CorsetkitError(f"an edge of the seam {seam.name} is shorter than 2 mm on this wearer in this style: choose "
                                 "values nearer to the middle of their range")


def _whole(run, name):
    if max(polygon.gaps(run)) > JOINT or polygon.area(run) <= 0 or not polygon.is_simple(run):
        raise CorsetkitError(f"the {name} cannot be drawn on this wearer in this style, for its outline crosses itself: "
                             "choose style values nearer to the middle of their range, or measure the wearer again")
