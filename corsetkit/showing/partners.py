"""Which pieces an edge is sewn to, told beside its seam's letter."""

TOO_LITTLE_TO_TELL = 0.3
"""A partner that meets an edge over less than this, cm, is not named beside the seam's letter: course convention."""


def partner_words(edge, piece, owners):
    """To which pieces an edge is sewn: "to 4, 5", those that meet it along its own stretch of the seam."""
    met = _numbers(edge.seam.opposite(edge, TOO_LITTLE_TO_TELL), owners)
    if not met:
        return ""
    return "to itself" if set(met) == {piece.number} else f"to {', '.join(map(str, met))}"


def seam_pieces(seam, side, owners):
    """The numbers of the pieces on one side of a seam, in its order."""
    return _numbers(seam.sides[side], owners)


def _numbers(edges, owners):
    """The numbers of the edges' pieces, each once."""
    return tuple(dict.fromkeys(owners[id(one)].number for one in edges if id(one) in owners))
