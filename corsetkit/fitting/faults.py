"""Faults seen on the toile: what is seen, the likely cause, what is measured, and the line that moves first.

The first moves are course conventions. Whatever is moved: measure the pinch, move an edge by no more than 6 mm in one pass,
walk the seam, sew the toile again and look anew.
"""

from dataclasses import dataclass
from typing import TypeAlias

from corsetkit.fitting.lines import Line, line_named
from corsetkit.pattern.pattern import Correction
from corsetkit.quantity import Quantity
from corsetkit.style import COURSE, Style

Shares: TypeAlias = tuple[tuple[str, float], ...]
"""Lines by their names, each with the share of the pinch that it moves by."""


@dataclass(frozen=True)
class Fault:
    """A fault.

    `pinch` is what the learner measures on the toile, in cm. `moves` and `further` are (line, share): the line moves by that
    share of the pinch; `further` is for the next pass, where the first move was not enough.
    """

    seen: str
    cause: str
    pinch: Quantity
    moves: Shares
    caution: str
    further: Shares = ()
    source: str = COURSE

    def corrections(self, pinch: float | None = None) -> tuple[Correction, ...]:
        """The first move as `Correction`s, for a pinch in cm or the usual one; CorsetkitError where it is not allowed."""
        return _corrections(self.moves, self.pinch, pinch)

    def further_corrections(self, pinch: float | None = None) -> tuple[Correction, ...]:
        """The next pass's move, as `corrections`; empty where there is only one."""
        return _corrections(self.further, self.pinch, pinch)

    @property
    def lines(self) -> tuple[Line, ...]:
        """The `Line`s of the first move."""
        return tuple(line_named(name) for name, _ in self.moves)

    def fits(self, style: Style) -> bool:
        """Whether the fault can be seen in this style: one of the yoke needs a yoke."""
        return all(not line.only or getattr(style, line.only[0]) == line.only[1] for line in self.lines)


def _corrections(moves: Shares, quantity: Quantity, pinch: float | None) -> tuple[Correction, ...]:
    amount = quantity.number(quantity.default if pinch is None else pinch)
    return tuple(Correction(name, share * amount) for name, share in moves)


def _pinch(name: str, meaning: str, low: float, high: float, usual: float) -> Quantity:
    return Quantity(
        name,
        meaning,
        "cm",
        low=low,
        high=high,
        step=0.1,
        default=usual,
        source=COURSE,
        group="fitting",
        why_range="less is not worth a pass, and more is asked of the next one",
    )


_GAP = "how much wider the gap is there than it should be"

FAULTS = (
    Fault(
        "the top edge gapes",
        "there is more edge than breast above the bust point",
        _pinch("wedge", "what is pinched out at the top edge, running to nothing at the bust point", 0.4, 1.2, 0.8),
        (("tightening dart", 1.0),),
        "Take the wedge into the cup seam, never into the centre front, and let it end at the bust point.",
    ),
    Fault(
        "the breast spills over the top edge",
        "the cup ends too low, or is too flat",
        _pinch("rise", "how much higher the edge must lie to hold the breast", 0.3, 1.0, 0.6),
        (("overbust mark", 1.0),),
        "Look whether the cup is filled: a cup that is too flat spills as well.",
        (("centre front dart", 0.5),),
    ),
    Fault(
        "the breast spills out at the underarm",
        "the cup's outline ends on the breast and not behind it",
        _pinch("reach", "how far the breast's edge lies beyond the seam, at the bust level", 0.3, 1.0, 0.5),
        (("cup to the side", 1.0),),
        "Keep a strip of lower front between cup and side seam.",
    ),
    Fault(
        "the cup's seam lies on the breast at the centre front",
        "the cup's outline ends on the breast and not beside it",
        _pinch("reach", "how far the breast's edge lies beyond the seam, towards the centre front", 0.3, 1.0, 0.5),
        (("cup to the front", 1.0),),
        "Keep a strip of lower front between the cup and the centre front.",
    ),
    Fault(
        "wrinkles lie about the bust point, and the cup is empty there",
        "the cup is more pointed than the breast",
        _pinch("fold", "what is pinched out across the folds, half of it on each side of the point", 0.2, 0.9, 0.4),
        (("centre front dart", -1.0),),
        "Lift the breast into the cup first; an empty point may be a low breast.",
    ),
    Fault(
        "wrinkles radiate from the bust point",
        "the cup is flatter than the breast, and is drawn tight over it",
        _pinch("pull", "how far a slit across the pull opens", 0.2, 0.9, 0.4),
        (("centre front dart", 1.0),),
        "Let out at the point before you let out the edges: the edges may be right.",
    ),
    Fault(
        "only the lower cup wrinkles",
        "from the bust point to the underbust line the cup is too long",
        _pinch("fold", "what the folds take up, measured upright", 0.3, 1.0, 0.5),
        (("underbust line", -1.0),),
        "The line must still lie in the fold under the breast, not on the breast.",
    ),
    Fault(
        "the underbust rides up",
        "the ring under the breast is too large to hold",
        _pinch("slack", "what can be pinched out all round at the underbust", 0.4, 2.4, 1.2),
        (("underbust girth", -1.0),),
        "A line that lies above the breast's fold rides up too: then it must lie lower.",
        (("underbust line", 0.4),),
    ),
    Fault(
        "the centre front stands away at its top",
        "the front is longer there than the hollow between the breasts",
        _pinch("bridge", "what is pinched out at the top of the centre front, on each half", 0.2, 0.6, 0.3),
        (("centre front", 1.0),),
        "It can lie flat only where the cups are deep enough.",
    ),
    Fault(
        "the cup seam lies beside the bust point",
        "the bust points are farther apart, or nearer together, than measured",
        _pinch(
            "aside",
            "how far the breast's point lies from the seam towards the side; below zero, towards the front",
            -1.0,
            1.0,
            0.5,
        ),
        (("bust point sideways", 1.0),),
        "Measure bust point width again; every seam through the point moves with it.",
    ),
    Fault(
        "the cup seam's turn lies above or below the bust point",
        "the bust point lies higher or lower than was measured",
        _pinch("above", "how far the breast's point lies above the seam's turn; below zero, beneath it", -1.0, 1.0, 0.5),
        (("bust point height", 1.0),),
        "Measure neck to bust point again, in the corset: it lifts the breast.",
    ),
    Fault(
        "the lacing gap is wide at the top, like a V",
        "the corset is too small above the waist",
        _pinch("gap", f"{_GAP}, at the top", 0.5, 4.8, 2.0),
        (("top girth", 1.0),),
        "Let out evenly at the side and back seams above the waist, never only at the centre back.",
    ),
    Fault(
        "the lacing gap is wide at the bottom, like a V upside down",
        "the corset is too small below the waist",
        _pinch("gap", f"{_GAP}, at the bottom", 0.5, 4.8, 2.0),
        (("hip girth", 1.0),),
        "Let out evenly at the side and back seams below the waist, never only at the centre back.",
    ),
    Fault(
        "the lacing gap is wide at the waist, like ( )",
        "the corset is too small at the waist",
        _pinch("gap", f"{_GAP}, at the waist", 0.4, 2.4, 1.2),
        (("waist girth", 1.0),),
        "Lace it evenly first: a gap can be the lacing's and not the pattern's.",
    ),
    Fault(
        "the lacing gap is narrow at the waist, like ) (",
        "the corset is too large at the waist, or too small at its ends",
        _pinch("gap", "how much wider the gap is at both ends than at the waist", 0.4, 4.8, 2.0),
        (("waist girth", -0.5), ("top girth", 0.5), ("hip girth", 0.5)),
        "Half of it is taken in at the waist, half is let out at both ends.",
    ),
    Fault(
        "the side seam leans, or stands before or behind the side",
        "front and back do not share the girth as this body does",
        _pinch("offset", "how far in front of the body's side the seam stands; below zero, behind it", -0.6, 0.6, 0.3),
        (("side seam", 1.0),),
        "See first that the gap is even. The front gains what the back loses, so the girth stays.",
    ),
    Fault(
        "folds lie round the body above the waist, and the waist is tight",
        "the ring at the waist is too small to stay there",
        _pinch("missing", "how far the waist must open for the folds to go", 0.4, 2.4, 1.2),
        (("waist girth", 1.0),),
        "Folds that stay with the lacing open are of length and not of girth.",
    ),
    Fault(
        "folds lie round the body above the waist, and the waist is easy",
        "the corset is too long between bust and waist",
        _pinch("fold", "what the folds take up, measured upright", 0.3, 1.0, 0.5),
        (("length above the waist", -1.0),),
        "Front and back are shortened alike, so that the waist stays level.",
    ),
    Fault(
        "the hem digs in at the front when she sits",
        "the front is longer than the lap allows",
        _pinch("rise", "how much must be turned up for her to sit at ease", 0.3, 1.0, 1.0),
        (("hem at the front", 1.0),),
        "Let her sit on a hard chair; the side keeps its length.",
    ),
    Fault(
        "the hem digs in at the side when she sits",
        "the side is longer than the thigh allows",
        _pinch("rise", "how much must be turned up for her to sit at ease", 0.3, 1.0, 1.0),
        (("hem at the side", 1.0),),
        "Let her sit on a hard chair; front and back keep their length at the centre.",
    ),
    Fault(
        "the yoke is loose on the shoulder",
        "the yoke is longer than the way over the shoulder",
        _pinch("slack", "what can be pinched out along the shoulder seam", 0.3, 1.0, 1.0),
        (("back yoke", -1.0), ("yoke neckline", -1.0)),
        "Two lines move together: the back takes up the slack, and the end nearer to the neck keeps it from slipping.",
    ),
)
"""In the order in which a toile is looked at: cup, front, lacing, side, hem, yoke."""
