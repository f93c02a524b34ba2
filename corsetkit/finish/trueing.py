"""An edge lengthened or shortened at one end, and what lies beyond that end redrawn so that all still fits.

Four ways, tried in this order. Where the edge beyond is free, the edge runs straight on, and the free edge is redrawn to its
new end. Where the edge beyond is sewn itself, the corner is moved, and both edges are redrawn so that the one beyond keeps
its length and still meets its partner. Where that one is too short to be redrawn, it is moved along as it is, and a free edge
next to it is redrawn. Where none of these can be, a line that is curved already is bent rounder between its two corners.
All of them are common practice, no source; their limits are course convention.
"""

from dataclasses import dataclass, replace

from corsetkit.errors import CorsetkitError
from corsetkit.geometry import path, polygon
from corsetkit.geometry.move import slid
from corsetkit.geometry.points import turn_between
from corsetkit.pattern.edge import Edge, Kind
from corsetkit.pattern.piece import Blend
from corsetkit.pattern.seam import sew
from corsetkit.pieces.proof import SHARPEST
from corsetkit.units import say_both
from corsetkit.finish.redrawing import REACH, bent, corner_moved, redrawn_from, run_on, steep

MOST = 2.0
"""An edge is trued by no more than this, cm; what is farther out was measured or cut amiss: course convention."""
STRAIGHT = (Kind.FOLD, Kind.CENTRE_FRONT, Kind.LACING)
"""Edges that have to stay as straight as they are: a corner on one of them is not moved."""
FARTHEST = 3.0
"""A corner is moved by no more than so many times what its edge gains: course convention."""
BENT_MOST = 0.8
"""A line is bent rounder by no more than this, cm: course convention."""


@dataclass(frozen=True)
class Redrawn:
    """What truing one end of an edge makes of a piece: `how` ("free", "corner", "along", "bent"), runs by edges' places, blends."""

    how: str
    runs: dict
    blends: tuple


def trued(pattern, edge, by, at, reach=REACH):
    """The pattern with one edge lengthened by `by` cm (shortened below nought) at the edge `at` of the same piece.

    A free `at` is redrawn as one curve over `reach` cm, and no more than four fifths of it, from its new end to where it is
    undisturbed. It leaves the corner as it did before. A sewn `at` keeps its length: the corner is moved, or the edge bent.
    The piece's blends say how far each line moved. All edges and seams are made anew; seams keep their marks.

    Returns:
        A new `Pattern`; the one given is as it was.

    Raises:
        CorsetkitError: where `at` does not lie beside the edge, or the edge cannot be trued there.
    """
    piece = next(one for one in pattern.pieces if any(edge is mine for mine in one.edges))
    place = next(i for i, one in enumerate(piece.edges) if one is edge)
    at_end = piece.edges[(place + 1) % len(piece.edges)] is at
    if not at_end and piece.edges[place - 1] is not at:
        raise CorsetkitError(f"{at.name} does not lie beside {edge.name} on the {piece.name}: choose one of its neighbours")
    made = redrawn(piece, [one.run for one in piece.edges], place, at_end, by, reach)
    return resewn(pattern, {id(piece.edges[i]): run for i, run in made.runs.items()}, {id(piece): made.blends})


def redrawn(piece, runs, place, at_end, by, reach=REACH):
    """How a piece's edge number `place` is made `by` cm longer at its end, or at its start, the piece being drawn as `runs`.

    Returns:
        A `Redrawn`.

    Raises:
        CorsetkitError: where `by` is more than can be trued, or none of the four ways serves.
    """
    edge, way = piece.edges[place], 1 if at_end else -1
    places = tuple((place + step * way) % len(runs) for step in (0, 1, 2))
    beyond, after = (piece.edges[number] for number in places[1:])
    if not -min(MOST, path.run_length(runs[place]) / 2) <= by <= MOST:
        raise CorsetkitError(f"{edge.name} of the {piece.name} is to be trued by {say_both(by)}: allowed is at most "
                             f"{say_both(MOST)}; measure it again")
    ways = []
    if beyond.kind not in STRAIGHT:
        ways.append(("corner", _corner) if beyond.seam else ("free", _free))
        if beyond.seam and after.seam is None and after.kind not in STRAIGHT:
            ways.append(("along", _along))
    # Each way looks at the piece as if the edge were trued at its end.
    ahead = [runs[number] if at_end else path.turned_round(runs[number]) for number in places]
    for how, draw in (*ways, ("bent", _bent)):
        try:
            found = draw(ahead, by, reach)
        except ValueError:
            continue
        made = {number: one[0] for number, one in zip(places, found)}
        blends = [(number, one[1], one[2]) for number, one in zip(places, found) if one[1]]
        if not at_end:
            made = {number: path.turned_round(run) for number, run in made.items()}
            blends = [(number, path.turned_round(was), path.turned_round(now)) for number, was, now in blends]
        if _fits(piece, runs, made):
            return Redrawn(how, made, tuple(Blend(_why(piece.edges[number], edge), was, now) for number, was, now in blends))
    raise CorsetkitError(f"{edge.name} of the {piece.name} cannot be made {say_both(abs(by))} "
                         f"{'longer' if by > 0 else 'shorter'} at the {beyond.name}: {_why_not(beyond)}; draw both sides of its seam again, alike")


def resewn(pattern, runs, blends=None, marks=None):
    """The pattern made anew with some edges' runs replaced.

    `runs` are kept by edges' ids, tuples of `blends` by pieces' ids, and new `marks` by seams' ids.
    """
    blends, marks = blends or {}, marks or {}
    fresh = {id(edge): Edge(edge.name, runs.get(id(edge), edge.run), edge.kind)
             for piece in pattern.pieces for edge in piece.edges}
    pieces = tuple(replace(piece, edges=tuple(fresh[id(edge)] for edge in piece.edges),
                           blends=(*piece.blends, *blends.get(id(piece), ()))) for piece in pattern.pieces)
    seams = tuple(sew(seam.name, seam.number, *(tuple(fresh[id(edge)] for edge in side) for side in seam.sides),
                      *seam.against, ease=seam.ease, marks=marks.get(id(seam), seam.marks)) for seam in pattern.seams)
    return replace(pattern, pieces=pieces, seams=seams)


def _free(ahead, by, reach):
    """The edge run on and the free edge redrawn, each as (run, before, after); the edge is no blend, for it only runs on."""
    run, free, _ = ahead
    moved, other = run_on(run, free, by, reach)
    return (moved, (), ()), other


def _corner(ahead, by, reach):
    """The corner moved and both edges redrawn, each as (run, before, after)."""
    run, beside, _ = ahead
    back = path.turned_round(run)
    first, second = corner_moved(back, beside, by, path.run_length(beside), reach)
    step = abs(path.run_start(first[0]) - path.run_start(back))
    shortest = min(path.run_length(before) for _, before, _ in (first, second))
    if step > FARTHEST * abs(by) or steep(step, shortest):
        raise ValueError("the corner would be moved too far")
    return tuple(path.turned_round(one) for one in first), second


def _along(ahead, by, reach):
    """The edge run on, the sewn edge beyond moved along as it is, and the free edge next to it redrawn."""
    run, beside, free = ahead
    step = run[-1].way(1.0) * by
    run, _ = run_on(run, beside, by, reach)
    there = path.moved(beside, slid(step))
    joint, was, now = redrawn_from(path.run_end(there), free, reach)
    return (run, (), ()), (there, beside, there), (joint, was, now)


def _bent(ahead, by, reach):
    """The edge alone, bent rounder."""
    run = bent(ahead[0], by)
    if Blend("", ahead[0], run).largest_move > BENT_MOST:
        raise ValueError("the line would be bent too far")
    return ((run, ahead[0], run),)


def _why(redrawn_edge, edge):
    return f"{edge.name} trued" if redrawn_edge is edge else f"{redrawn_edge.name} redrawn to the trued {edge.name}"


def _fits(piece, runs, made):
    """Whether the piece's outline is simple still, and has no corner too sharp to sew."""
    drawn = [made.get(i, run) for i, run in enumerate(runs)]
    whole = tuple(curve for run in drawn for curve in run)
    return (polygon.area(whole) > 0 and polygon.is_simple(whole)
            and all(abs(turn_between(before[-1].way(1.0), after[0].way(0.0))) <= 180 - SHARPEST
                    for before, after in zip(drawn, drawn[1:] + drawn[:1])))


def _why_not(beyond):
    if beyond.kind in STRAIGHT:
        return f"the {beyond.name} has to stay as it is"
    if beyond.seam is None:
        return f"the {beyond.name} would cross another line of the piece"
    return f"the {beyond.name} is sewn itself, and cannot follow within reason and keep its length"
