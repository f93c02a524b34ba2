"""Rigid moves of paper: a part slid and turned, never stretched and never turned over."""

from dataclasses import dataclass

from corsetkit.geometry.points import Point, direction


@dataclass(frozen=True)
class Move:
    """The rigid move that takes the point z to `turn * z + shift`, with `abs(turn)` one."""

    turn: complex = 1 + 0j
    shift: complex = 0j

    def __call__(self, point: Point) -> Point:
        return self.turn * point + self.shift

    def then(self, later: "Move") -> "Move":
        """This move followed by `later`, as one move."""
        return Move(later.turn * self.turn, later.turn * self.shift + later.shift)

    @property
    def inverse(self) -> "Move":
        """The move that undoes this one."""
        turn = self.turn.conjugate()
        return Move(turn, -turn * self.shift)


STAY = Move()


def turned_about(centre: Point, degrees: float) -> Move:
    """The move that turns counter-clockwise by `degrees` about `centre`."""
    turn = direction(degrees)
    return Move(turn, centre - turn * centre)


def slid(step: complex) -> Move:
    """The move that slides by `step`."""
    return Move(1 + 0j, step)
