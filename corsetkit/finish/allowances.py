"""Where each piece is cut: its allowances, and its cutting line outside the sewing line."""

from collections.abc import Collection, Iterable, Sequence

from corsetkit.errors import CorsetkitError
from corsetkit.finish.choices import Finish, allowance, choice_of
from corsetkit.finish.corners import Meeting, corner, meeting
from corsetkit.finish.cutting_line import Stroke, crossing, strokes, without_loops
from corsetkit.geometry import paths
from corsetkit.geometry.points import Point, dot
from corsetkit.pattern.edge import Edge, Kind
from corsetkit.pattern.piece import Piece
from corsetkit.pattern.seam import Seam
from corsetkit.units import say_both

BEYOND_FOLD = 0.01
"""How far a piece on the fold may reach beyond it by rounding, cm."""
_SAME = 1e-6
_STEP = 0.1


def widths(piece: Piece, choices: Finish) -> tuple[float, ...]:
    """The allowances of the piece's edges in cm, in their order."""
    return tuple(allowance(edge, choices) for edge in piece.edges)


class Reaches:
    """How far the allowances of a pattern's seams go on at the seams' ends: both partners alike.

    Each piece asks for its own corner; the lesser of the two serves both, so that neither shows beyond the later edge.
    """

    def __init__(self, pieces: Iterable[Piece], choices: Finish) -> None:
        own: dict[tuple[Seam, int], list[Meeting]] = {}
        for piece in pieces:
            for met in _meetings(strokes(piece, widths(piece, choices))):
                place = seam_end(met)
                if place:
                    own.setdefault(place, []).append(met)
        self._common: dict[tuple[Seam, int], float] = {}
        for place, both in own.items():
            least = max(met.least_reach for met in both)
            self._common[place] = max(min(met.reach for met in both), least)

    def at(self, met: Meeting) -> float | None:
        """The reach at a meeting, None where only its own piece has a say."""
        place = seam_end(met)
        return self._common.get(place) if place else None


def seam_end(met: Meeting) -> tuple[Seam, int] | None:
    """The seam whose end lies at the corner, and which end (0 start, 1 end); None where no seam is sewn first there."""
    first = met.first
    seam = first.stroke.edge.seam if first else None
    if first is None or seam is None:
        return None
    edge, at_end = first.stroke.edge, first is met.arriving
    for side, against in zip(seam.sides, seam.against):
        if edge is side[0] and at_end == against:
            return seam, 0
        if edge is side[-1] and at_end != against:
            return seam, 1
    return None


def cutting_line(piece: Piece, choices: Finish | None = None, reaches: Reaches | None = None) -> tuple[Point, ...]:
    """The piece's cutting line: a closed polyline of points in cm, counter-clockwise, without its first point doubled.

    `reaches` is the `Reaches` of the whole pattern; without it the piece's corners are its own. A piece on the fold
    keeps its fold as its border, and reaches nowhere beyond it.

    Raises:
        CorsetkitError: where an allowance makes the line cross itself, or a piece reaches beyond its own fold.
    """
    choices = choices or Finish()
    _check_fold(piece)
    given = widths(piece, choices)
    points, owners = _line(piece, given, reaches)
    met = crossing(points)
    if met:
        raise CorsetkitError(_refusal(piece, choices, given, {owners[i] for i in met}, reaches))
    return points


def _check_fold(piece: Piece) -> None:
    """Refuse a piece that reaches beyond its fold: opened out, it would lie on itself."""
    for fold in (edge for edge in piece.edges if edge.kind is Kind.FOLD):
        start, away = paths.path_start(fold.path), fold.path[0].tangent(0.0) * 1j
        edge, beyond = min(
            ((edge, dot(point - start, away)) for edge in piece.edges for point in paths.flattened(edge.path, 0.05)),
            key=lambda one: one[1],
        )
        if beyond < -BEYOND_FOLD:
            raise CorsetkitError(
                f"the {piece.name} reaches {say_both(-beyond)} beyond its fold at {edge.name}, so it cannot be cut on the "
                "fold: choose a larger centre front taking in, or let the cups begin lower (a larger centre front depth)"
            )


def _line(piece: Piece, given: Sequence[float], reaches: Reaches | None) -> tuple[tuple[Point, ...], tuple[int, ...]]:
    """The closed polyline, and for each of its points the number of the edge it stands beside."""
    made = strokes(piece, given)
    numbers = {id(edge): number for number, edge in enumerate(piece.edges)}
    corners = [corner(met, reaches.at(met) if reaches else None) for met in _meetings(made)]
    points: list[Point] = []
    owners: list[int] = []
    for stroke, before, after in zip(made, (corners[-1], *corners), corners):
        room = max(stroke.length - before.off_leaving - after.off_arriving, 0.0)
        if room > _SAME:
            laid = stroke.cut(before.off_leaving, after.off_arriving).outside
        else:
            laid = stroke.cut(0.0, stroke.length / 2).outside[-1:]
        for point in (*laid, *after.points):
            if not points or abs(point - points[-1]) > _SAME:
                points.append(point)
                owners.append(numbers[id(stroke.edge)])
    if abs(points[0] - points[-1]) <= _SAME:
        points.pop()
        owners.pop()
    for edge in piece.edges:
        if edge.kind is Kind.FOLD:
            points, owners = _kept_left(points, owners, edge, numbers[id(edge)])
    return without_loops(points, owners)


def _meetings(made: list[Stroke]) -> list[Meeting]:
    """The meeting at the end of each stroke."""
    return [meeting(one, two) for one, two in zip(made, made[1:] + made[:1])]


def _kept_left(points: list[Point], owners: list[int], fold: Edge, number: int) -> tuple[list[Point], list[int]]:
    """What of a closed polyline lies on the left of the fold's endless line."""
    start = paths.path_start(fold.path)
    away = fold.path[0].tangent(0.0) * 1j
    kept, owned = [], []
    for p, q, owner in zip(points, points[1:] + points[:1], owners):
        here, there = dot(p - start, away), dot(q - start, away)
        if here > -_SAME:
            kept.append(p - away * here if abs(here) <= _SAME else p)
            owned.append(owner)
        if min(here, there) < -_SAME and max(here, there) > _SAME:
            kept.append(p + (q - p) * here / (here - there))
            owned.append(number if here > there else owner)
    return kept, owned


def _refusal(piece: Piece, choices: Finish, given: Sequence[float], numbers: Collection[int], reaches: Reaches | None) -> str:
    """One sentence for an allowance that makes the cutting line cross itself."""
    number = max(numbers, key=lambda one: given[one])
    edge, width = piece.edges[number], given[number]
    name = choice_of(edge, choices)
    label = name.replace("_", " ") if name else "allowance"
    allowed = width
    while allowed > 0:
        allowed = round(allowed - _STEP, 6)
        changed = tuple(max(allowed, 0.0) if choice_of(one, choices) == name else own for one, own in zip(piece.edges, given))
        if not crossing(_line(piece, changed, reaches)[0]):
            break
    said = f"at most {say_both(max(allowed, 0.0))}" if allowed > 0 else "none, for this edge has to be bound"
    return (
        f"{label} is {say_both(width)}: beside {edge.name} of the {piece.name} the cutting line would cross itself; "
        f"allowed there is {said}"
    )
