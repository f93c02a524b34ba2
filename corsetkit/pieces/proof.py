"""The proof before cloth is cut: outlines end to end and simple, parts that tile the block, seams that meet.

Parts and waste are cut along shared lines, so that their boundaries cancel but for the block's own. Where each
of them is simple and runs counter-clockwise, they tile the block: no overlap, nothing left out.
"""

from collections.abc import Iterable
from typing import cast

from corsetkit.errors import CorsetkitError
from corsetkit.geometry import polygon
from corsetkit.geometry.curve import Curves
from corsetkit.geometry.points import turn_between
from corsetkit.pattern.pattern import Waste
from corsetkit.pattern.piece import Piece
from corsetkit.pattern.seam import Seam
from corsetkit.quantity import Quantity, quantities
from corsetkit.steps.run import Steps
from corsetkit.style import Style
from corsetkit.units import say_both

SEAM_TOLERANCE = 0.01
"""Sides of a seam differ by no more than 0.1 mm, the intended ease taken off."""
SHARPEST = 10.0
"""The sharpest corner of a piece, degrees: course convention."""
JOINT = 1e-6
"""How nearly an edge begins where the one before it ends, cm."""


def prove(steps: Steps, pieces: Iterable[Piece], seams: Iterable[Seam], waste: Iterable[Waste]) -> None:
    """Refuse, with one sentence, a pattern that does not keep its promises."""
    for piece in pieces:
        _whole(piece.path, piece.name, steps.style)
        for before, after in zip(piece.edges, piece.edges[1:] + piece.edges[:1]):
            if abs(turn_between(before.path[-1].tangent(1.0), after.path[0].tangent(0.0))) > 180 - SHARPEST:
                raise CorsetkitError(
                    f"the {piece.name} would end in a spike between {before.name} and {after.name}, too sharp to "
                    f"sew: {_remedy(steps.style)}"
                )
    for piece in pieces:
        for part in piece.parts:
            if part.outline == piece.path:
                continue  # cut from the block as it stands, so it has been looked at already
            _whole(part.outline, part.name, steps.style)
    for cut in waste:
        _whole(cut.outline, f'waste "{cut.name}"', steps.style)
    for seam in seams:
        if abs(seam.difference) > SEAM_TOLERANCE:
            raise CorsetkitError(
                f"the two sides of the seam {seam.name} differ by {10 * abs(seam.difference):.2f} mm, which "
                "this draft does not allow; please report this wearer"
            )
        if any(edge.length < 0.2 for side in seam.sides for edge in side):
            raise CorsetkitError(
                f"an edge of the seam {seam.name} is shorter than 2 mm on this wearer in this style: {_remedy(steps.style)}"
            )


def _whole(path: Curves, name: str, style: Style) -> None:
    if max(polygon.gaps(path)) > JOINT or polygon.area(path) <= 0 or not polygon.is_simple(path):
        raise CorsetkitError(
            f"the {name} cannot be drawn on this wearer in this style, for its outline crosses itself: {_remedy(style)}"
        )


def _remedy(style: Style) -> str:
    """What to change: the style values farthest from their defaults, or, with none changed, what to measure again."""
    changed = [
        (abs(getattr(style, q.name) - q.default) / (q.limits[1] - q.limits[0]), q)
        for q in quantities(Style)
        if q.is_number and q.unit != "count"
    ]
    far = sorted((pair for pair in changed if pair[0] > 0.01), key=lambda pair: -pair[0])[:2]
    if not far:
        return (
            "measure neck to bust point, bust point width, front waist length and armscye depth again, which place the "
            "cup on the block"
        )
    return "; ".join(
        f"{q.label} is {_said(q, getattr(style, q.name))}, choose nearer to {_said(q, cast(float, q.default))}" for _, q in far
    )


def _said(quantity: Quantity, value: float) -> str:
    return say_both(value) if quantity.is_length else quantity.say(value)
