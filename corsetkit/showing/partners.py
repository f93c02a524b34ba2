"""Which pieces an edge is sewn to, told beside its seam's letter."""

_MEET = 0.3
"""A partner that meets an edge over less than this, cm, only touches it at a corner."""


def partner_words(edge, piece, owners):
    """To which pieces an edge is sewn: "to 4, 5", those that meet it along its own stretch of the seam."""
    met = _numbers(partners_along(edge), owners)
    if not met:
        return ""
    return "to itself" if set(met) == {piece.number} else f"to {', '.join(map(str, met))}"


def seam_pieces(seam, side, owners):
    """The numbers of the pieces on one side of a seam, in its order."""
    return _numbers(seam.sides[side], owners)


def _numbers(edges, owners):
    """The numbers of the edges' pieces, each once."""
    return tuple(dict.fromkeys(owners[id(one)].number for one in edges if id(one) in owners))


def partners_along(edge):
    """The edges on the seam's other side that lie against this one, in the seam's order."""
    seam = edge.seam
    side = 0 if any(edge is mine for mine in seam.sides[0]) else 1
    start, end = next((a, b) for one, a, b in _shares(seam, side) if one is edge)
    least = min(_MEET, (end - start) / 2)
    return tuple(one for one, a, b in _shares(seam, 1 - side) if min(b, end) - max(a, start) > least)


def _shares(seam, side):
    """Each edge of a side with where it begins and ends, cm of the seam's first side from its start."""
    at, by = 0.0, seam.lengths[0] / seam.lengths[side]
    for edge in seam.sides[side]:
        yield edge, at, at + edge.length * by
        at += edge.length * by
