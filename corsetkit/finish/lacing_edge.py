"""The lacing edge from top to hem: its uninterrupted stretches, and where the waist lies on them."""

from dataclasses import dataclass
from functools import cached_property

from corsetkit.geometry import path
from corsetkit.pattern.edge import Kind

_JOINED = 1e-6


@dataclass(frozen=True)
class LacingStretch:
    """One uninterrupted stretch of a lacing edge: its (piece, edge) pairs from the top down, where the pieces lie."""

    parts: tuple

    @property
    def names(self):
        return tuple(piece.name for piece, _ in self.parts)

    @cached_property
    def run(self):
        """The stretch as one run from its top to its foot."""
        return tuple(curve for _, edge in self.parts for curve in path.turned_round(edge.run))

    @cached_property
    def length(self):
        """Its length in cm."""
        return sum(edge.length for _, edge in self.parts)

    @cached_property
    def waist(self):
        """How far from its top the waist lies, cm; None where the waist does not cross it."""
        places = path.on_line(self.run, 0j, 1 + 0j)
        if not places:
            return None
        return path.run_length(path.cut_at(self.run, *places[0])[0])


def lacing_stretches(pieces):
    """The stretches of one lacing edge, from the top down.

    Two pieces' edges are one stretch where one begins at the other's end; an opening between them parts it.
    """
    parts = [(piece, edge) for piece in pieces if not piece.copied for edge in piece.edges if edge.kind is Kind.LACING]
    parts.sort(key=lambda part: -path.run_end(part[1].run).imag)
    groups = []
    for piece, edge in parts:
        if groups and abs(path.run_end(edge.run) - path.run_start(groups[-1][-1][1].run)) < _JOINED:
            groups[-1].append((piece, edge))
        else:
            groups.append([(piece, edge)])
    return tuple(LacingStretch(tuple(group)) for group in groups)
