"""What to move on paper where two sides of a seam differ, said in a sentence or two."""

from corsetkit.errors import CorsetkitError
from corsetkit.finish.trueing import redrawn

_AND = {"free": "", "corner": " Move the corner so that its {beyond} stays as long as it is, for that is sewn too.",
        "along": " Move its {beyond} along with the corner as it is, for that is sewn too, and redraw the next edge to it.",
        "bent": " Leave both its corners where they are, and bend the line rounder."}


def move_said(stretch, start, off, by):
    """What to move at a stretch's far end, the walk having set out at `start`.

    The shorter side is lengthened, or its notch is moved; where that cannot be drawn, it is said what to do instead.

    Args:
        off: by how much the first side has come farther than the second, cm. by: the same in words.
    """
    shorter = 1 if off > 0 else 0
    piece, edge, beyond = stretch.ends[shorter]
    other, longer, _ = stretch.ends[1 - shorter]
    if beyond is None:
        return (f"Move {stretch.end} on the {piece.name}'s {edge.name} by {by} away from {start}: up to there the "
                f"{other.name} is longer.")
    place = next(i for i, one in enumerate(piece.edges) if one is edge)
    at_end = piece.edges[(place + 1) % len(piece.edges)] is beyond
    try:
        how = redrawn(piece, [one.run for one in piece.edges], place, at_end, abs(off)).how
    except CorsetkitError:
        return (f"Draw the {other.name}'s {longer.name} again, {by} shorter from {start}: the {piece.name}'s {edge.name} "
                f"cannot be lengthened at the {beyond.name}.")
    return (f"Lengthen the {piece.name}'s {edge.name} by {by} at the {beyond.name}: measured from {start}, "
            f"the {other.name} is longer.{_AND[how].format(beyond=beyond.name)}")
