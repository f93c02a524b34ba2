"""A walked seam trued in one call: notches moved, the shorter side lengthened, and what lies beyond redrawn to fit."""

from collections.abc import Sequence

from corsetkit.errors import CorsetkitError
from corsetkit.finish.stops import stops_of
from corsetkit.finish.truing import redrawn, resewn
from corsetkit.finish.walk import TOLERANCE, Walked
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Curves
from corsetkit.pattern.pattern import Pattern
from corsetkit.pattern.piece import Blend, Piece
from corsetkit.pattern.seam import Seam

SLIGHT = 0.002
"""What an edge misses by no more than this, cm, is left: it cannot be drawn, and seams agree within 0.1 mm."""


def true_seam(pattern: Pattern, walked: Walked, tolerance: float = TOLERANCE) -> Pattern:
    """The pattern with a walked seam true again.

    What was measured on paper counts, not what the pattern's edges were drafted to: the longer side is drawn as it came out
    on paper, and the shorter side is lengthened to it (common practice, no source); so in the pattern given back both sides
    are as long as the longer one was measured, and every notch meets. A seam walked with the pattern's own lengths has only
    its shorter side redrawn. One that nowhere differs by more than `tolerance` cm is left as it is.

    The edges beyond the seam's ends are redrawn as `trueing` says, the sewn ones to their own lengths, so all other seams
    agree as before. Each redrawn line is a blend of its piece.

    Args:
        pattern: the `Pattern`. walked: one of its seams, as `walk` gives it.

    Returns:
        A new `Pattern`, or the one given where nothing is to be moved.

    Raises:
        CorsetkitError: where the seam is none of the pattern's, or a side cannot be redrawn, with what to do instead.
    """
    seam = walked.seam
    if not any(one is seam for one in pattern.seams):
        raise CorsetkitError(f"the seam {seam.name} that was walked is none of this pattern's: walk this pattern's own")
    goals = walked.goals(tolerance)
    if goals is None:
        return pattern
    stops, begins = stops_of(seam), walked.begins
    all_paths = {id(piece): [edge.path for edge in piece.edges] for piece in pattern.pieces}
    blends: dict[int, tuple[Blend, ...]] = {}
    for side in (0, 1):
        wanted = [goal[side] for goal in goals]
        own = [stop[side] for stop in stops]
        for piece, places, first, last in _groups(seam, side, own):
            drawn, against = all_paths[id(piece)], seam.against[side]
            near = min(max(begins, first), last)
            for number, far, at_end in ((places[0], first, against), (places[-1], last, not against)):
                by = abs(wanted[far] - wanted[near]) - abs(own[far] - own[near])
                if abs(by) > SLIGHT:
                    made = redrawn(piece, drawn, number, at_end, by)
                    blends[id(piece)] = (*blends.get(id(piece), ()), *made.blends)
                    for i, path in made.edge_paths.items():
                        drawn[i] = path
            _parted(drawn, places, against, [wanted[i] - wanted[first] for i in _inner(own, seam, side, first, last)])
    new = {id(edge): path for piece in pattern.pieces for edge, path in zip(piece.edges, all_paths[id(piece)])}
    marks = tuple(goal[0] - goals[0][0] for goal in goals[1:-1])
    return resewn(pattern, new, blends, {id(seam): marks})


def _groups(seam: Seam, side: int, own: Sequence[float]) -> list[tuple[Piece, list[int], int, int]]:
    """For each piece of a side: the piece, its edges' places in the seam's order, and the stops where it begins and ends."""
    found: list[tuple[Piece, list[int], int, int]] = []
    along = 0.0
    for edge in seam.sides[side]:
        piece, place = edge.piece, edge.piece.place_of(edge)
        start, along = _stop(own, along), along + edge.length
        if found and found[-1][0] is piece:
            found[-1] = (piece, [*found[-1][1], place], found[-1][2], _stop(own, along))
        else:
            found.append((piece, [place], start, _stop(own, along)))
    return found


def _inner(own: Sequence[float], seam: Seam, side: int, first: int, last: int) -> list[int]:
    """The stops between two others at which one edge of the side gives way to the next."""
    along, found = 0.0, []
    for edge in seam.sides[side][:-1]:
        along += edge.length
        if first < (number := _stop(own, along)) < last:
            found.append(number)
    return found


def _stop(own: Sequence[float], along: float) -> int:
    """The number of the stop at `along` cm."""
    return min(range(len(own)), key=lambda i: abs(own[i] - along))


def _parted(drawn: list[Curves], places: list[int], against: bool, lengths: list[float]) -> None:
    """Several edges of one piece in a side, parted anew at `lengths` cm from where the seam comes upon the piece."""
    if not lengths:
        return

    def turn(path: Curves) -> Curves:
        return paths.turned_round(path) if against else path

    whole = tuple(curve for place in places for curve in turn(drawn[place]))
    along = 0.0
    for place, length in zip(places, [*lengths, None]):
        if length is None:
            part = whole
        else:
            part, whole = paths.cut_along(whole, length - along)
            along = length
        drawn[place] = turn(part)
