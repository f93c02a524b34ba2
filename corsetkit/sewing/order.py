"""What is joined to what, and in which turn, read off the pieces themselves.

A piece that reaches the hem is a panel, one with a shoulder is a yoke, one that copies another is no part of the shell, and
what is left is a cup. Which panels are back ones is known from the block they were cut from.
"""

from dataclasses import dataclass

from corsetkit.finish.notches import is_back
from corsetkit.pattern.edge import Kind

CUP, PANEL, YOKE = "cup", "panel", "yoke"


@dataclass(frozen=True)
class Order:
    """A pattern's seams in the groups in which they are sewn, each group in the order of its sewing."""

    cups: tuple
    front: tuple
    back: tuple
    underbust: tuple
    side: tuple
    back_yoke: tuple
    overbust: tuple
    shoulder: tuple

    @property
    def seams(self):
        """All seams in their order."""
        return tuple(seam for group in vars(self).values() for seam in group)


def part_of(piece):
    """What the piece is of the garment; None for a copy."""
    if piece.copied:
        return None
    kinds = {edge.kind for edge in piece.edges}
    return PANEL if Kind.HEM in kinds else YOKE if Kind.SHOULDER in kinds else CUP


def order_of(pattern):
    """The `Order` of a pattern's seams."""
    block = getattr(pattern.steps, "block", None)

    def joining(*parts):
        return [seam for seam in pattern.seams if {part_of(one) for one in seam.pieces} == set(parts)]

    panels = joining(PANEL)
    fronts = [seam for seam in panels if not any(is_back(one, block) for one in seam.pieces)]
    backs = [seam for seam in panels if all(is_back(one, block) for one in seam.pieces)]
    return Order(
        _in_turn(joining(CUP)),
        _from_centre(fronts, Kind.FOLD),
        _from_centre(backs, Kind.LACING),
        tuple(joining(CUP, PANEL)),
        tuple(seam for seam in panels if seam not in fronts and seam not in backs),
        tuple(joining(YOKE, PANEL)),
        tuple(joining(YOKE, CUP)),
        tuple(joining(YOKE)),
    )


def _in_turn(seams):
    """First the seams between single pieces, then those whose sides are made of several."""
    return tuple(sorted(seams, key=lambda seam: (len(seam.pieces), seam.number)))


def _from_centre(seams, kind):
    """The seams from the piece with an edge of that kind outwards."""
    reached = {piece for seam in seams for piece in seam.pieces if any(edge.kind is kind for edge in piece.edges)}
    rest, made = list(seams), []
    while rest:
        # Where no piece has such an edge, the seams keep the order of their numbers.
        found = [seam for seam in rest if reached & set(seam.pieces)] or rest[:1]
        for seam in found:
            rest.remove(seam)
            made.append(seam)
        reached |= {piece for seam in found for piece in seam.pieces}
    return tuple(made)
