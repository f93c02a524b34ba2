"""An edge lengthened or shortened at one end, and the free edge it ends on redrawn to its new end."""

from dataclasses import replace

from ..errors import CorsetkitError
from ..geometry import path
from ..geometry.curve import Line, curve
from ..pattern.edge import Edge
from ..pattern.piece import Blend
from ..pattern.seam import sew
from ..units import say_both

REACH = 5.0
"""How far from the moved corner the free edge is redrawn, cm: course convention."""
MOST = 2.0
"""An edge is trued by no more than this, cm; what is farther out was measured or cut amiss: course convention."""


def trued(pattern, edge, by, at, reach=REACH):
    """The pattern with one edge lengthened by `by` cm (shortened below nought) at the free edge `at` of the same piece.

    The edge runs on straight, or is cut back; `at` is redrawn as one curve over `reach` cm, and no more than four fifths of
    it, from its new end to where it is undisturbed. It leaves the corner as it did before. The piece's blend says how far
    it moved. All edges and seams are made anew; seams keep their marks.

    Returns:
        A new `Pattern`; the one given is as it was.

    Raises:
        CorsetkitError: where `at` is sewn itself or does not lie beside the edge, or `by` is more than can be trued.
    """
    piece = next(one for one in pattern.pieces if any(edge is mine for mine in one.edges))
    place = next(i for i, one in enumerate(piece.edges) if one is edge)
    at_end = piece.edges[(place + 1) % len(piece.edges)] is at
    if not at_end and piece.edges[place - 1] is not at:
        raise CorsetkitError(f"{at.name} does not lie beside {edge.name} on the {piece.name}: choose one of its neighbours")
    if at.seam is not None:
        raise CorsetkitError(f"{at.name} of the {piece.name} is sewn itself, and would no longer fit its partner: true "
                             f"{edge.name} at its other end")
    if not -min(MOST, edge.length / 2) <= by <= MOST:
        raise CorsetkitError(f"{edge.name} of the {piece.name} is to be trued by {say_both(by)}: allowed is at most "
                             f"{say_both(MOST)}; measure it again")
    run, blend = _redrawn(edge.run, at.run, by, reach) if at_end else _from_the_start(edge.run, at.run, by, reach)
    why = f"{at.name} redrawn to the trued {edge.name}"
    return resewn(pattern, {id(edge): run, id(at): blend[0]}, {id(piece): Blend(why, *blend[1:])})


def resewn(pattern, runs, blends=None):
    """The pattern made anew with some edges' runs replaced; `runs` are kept by edges' ids, `blends` by pieces' ids."""
    blends = blends or {}
    fresh = {id(edge): Edge(edge.name, runs.get(id(edge), edge.run), edge.kind)
             for piece in pattern.pieces for edge in piece.edges}
    pieces = tuple(replace(piece, edges=tuple(fresh[id(edge)] for edge in piece.edges),
                           blends=(*piece.blends, *([blends[id(piece)]] if id(piece) in blends else [])))
                   for piece in pattern.pieces)
    seams = tuple(sew(seam.name, seam.number, *(tuple(fresh[id(edge)] for edge in side) for side in seam.sides),
                      *seam.against, ease=seam.ease, marks=seam.marks) for seam in pattern.seams)
    return replace(pattern, pieces=pieces, seams=seams)


def _redrawn(run, free, by, reach):
    """The run with its end moved, and (the free run from there on, what it was, what it became)."""
    end, way = path.run_end(run), run[-1].way(1.0)
    moved = (*run, Line(end, end + way * by)) if by > 0 else path.cut_along(run, path.run_length(run) + by)[0]
    cut, kept = path.cut_along(free, min(reach, 0.8 * path.run_length(free)))
    corner = path.run_end(moved)
    joint = curve(corner, cut[0].way(0.0), cut[-1].way(1.0), path.run_end(cut))
    return moved, ((joint, *kept), (Line(corner, path.run_start(cut)), *cut), (joint,))


def _from_the_start(run, free, by, reach):
    """The same at the run's start, both runs looked at from their other ends."""
    moved, blend = _redrawn(path.turned_round(run), path.turned_round(free), by, reach)
    return path.turned_round(moved), tuple(path.turned_round(one) for one in blend)
