"""The back's own pictures: half the back with a level across it, and the back as it is laced."""

from dataclasses import dataclass, replace

from corsetkit.pieces.measured import girths
from corsetkit.quantity import declared, quantities
from corsetkit.showing.lessons.laced import Laced
from corsetkit.showing.lessons.laced_sheet import laced_sheet
from corsetkit.drawing.svg import svg_text
from corsetkit.showing.lessons.taken_in import lowest, taken_at
from corsetkit.showing.lessons.taken_sheet import taken_sheet
from corsetkit.teaching.parts.back_said import laced_said, taken_said
from corsetkit.teaching.picture import Picture
from corsetkit.units import CM_PER_INCH

WIDER = 4 * CM_PER_INCH
"""How much wider than drafted the gap can be shown, cm."""


@dataclass(frozen=True)
class Looking:
    """Where on the back one looks; the ends and the default are the wearer's own."""

    below_the_bust: float = declared(
        "how far below the bust level the back is looked at: at the waist, unless you move it",
        unit="cm", low=0, high=30, step=CM_PER_INCH / 8, default=12)


@dataclass(frozen=True)
class Gaps:
    """How far the lacing edges are apart on the body."""

    gap_at_the_top: float = declared(
        "how far the lacing edges are apart at their upper ends when laced", unit="cm", low=0, high=30,
        step=CM_PER_INCH / 8, default=3 * CM_PER_INCH)
    gap_at_the_hem: float = declared(
        "how far the lacing edges are apart at the lower edge when laced", unit="cm", low=0, high=30,
        step=CM_PER_INCH / 8, default=3 * CM_PER_INCH)


def looking_at(back):
    """The quantities of `Looking` for that `Back`; as they are declared where there is none."""
    (looking,) = quantities(Looking)
    return (looking,) if back is None else (replace(looking, high=lowest(back), default=back.block.back.bust_level),)


def gaps_from(drafted):
    """The quantities of `Gaps`, from the drafted lacing gap, cm."""
    return tuple(replace(one, default=drafted, high=drafted + WIDER) for one in quantities(Gaps))


def waist_girth(steps):
    """The `Girth` at the waist."""
    return girths(steps.measurements, steps.style, steps.overbust, steps.back)["waist"]


def taken_picture(name, steps, unit, below=None):
    """The back with a level across it, `below` cm under the bust level, at the waist where that is None."""
    back = steps.back
    taken = taken_at(back, back.block.back.bust_level if below is None else below)
    girth = waist_girth(steps)
    told = tuple(taken_said(taken, steps.style, girth, unit))
    title = f"Taken in, for {name}"
    sheet = taken_sheet(title, back, taken, steps.style.waist_reduction, girth, unit, f"{title}: half the back. {told[0]}")
    return Picture(svg_text(sheet), sheet.description, told)


def laced_picture(name, steps, unit, above=None, below=None):
    """The back laced, its edges `above` and `below` cm apart at top and hem; as drafted where that is None."""
    drafted = steps.style.lacing_gap
    gaps = (drafted if gap is None else gap for gap in (above, below))
    laced = Laced(steps.back, *gaps, steps.style.yoke)
    told = tuple(laced_said(laced, steps.style, unit))
    title = f"Laced, for {name}"
    sheet = laced_sheet(title, laced, drafted + WIDER, unit, f"{title}, seen from behind. {told[0]}")
    return Picture(svg_text(sheet), sheet.description, told)
