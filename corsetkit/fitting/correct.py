"""Corrections applied: each moves a style value, an amount of the fitting or a measurement, before the first step is drawn.

Everything after follows by itself: lines, pieces, seams, girths, the hand's instructions, and the proof.
"""

import math
from collections.abc import Iterable
from typing import Any

from corsetkit.errors import CorsetkitError
from corsetkit.fitting.lines import LINES, Line, line_named
from corsetkit.measurements import Measurements
from corsetkit.pattern.pattern import Correction
from corsetkit.style import Fitting, Style
from corsetkit.units import shown


def check(correction: object, where: str = "") -> Correction:
    """The correction with its line's own name and a float; CorsetkitError, one sentence, where it is not allowed.

    `where` is put before the sentence ("Anna: ").
    """
    if not isinstance(correction, Correction):
        raise CorsetkitError(f"{where}correction is {shown(correction)}: allowed is a Correction of a line by so many cm")
    try:
        line = line_named(correction.line)
        return Correction(line.name, line.quantity.number(correction.by))
    except CorsetkitError as refusal:
        raise CorsetkitError(f"{where}{_with_remedy(correction, refusal)}") from None


def _with_remedy(correction: Correction, refusal: CorsetkitError) -> str:
    """Millimetres are the toile's unit, so an amount given in them is the usual mistake."""
    try:
        (low, high, _), by = line_named(correction.line).quantity.limits, float(correction.by)
    except (CorsetkitError, TypeError, ValueError, OverflowError):
        return str(refusal)
    plain = f"correction of {str(refusal).partition(';')[0]} in one pass"
    if abs(by) >= 2 and math.isfinite(by) and by.is_integer() and low <= by / 10 <= high:
        return f"{plain}; it looks like millimetres given as centimetres"
    return f"{plain}; correct less, sew the toile again and look anew"


def totals(corrections: Iterable[Correction]) -> dict[str, float]:
    """How far each line is moved in all: {name: cm}, in the order of the lines, those that come to zero left out."""
    found: dict[str, list[float]] = {}
    for one in map(check, corrections):
        found.setdefault(one.line, []).append(one.by)
    sums = {line.name: math.fsum(found[line.name]) for line in LINES if line.name in found}
    return {name: by for name, by in sums.items() if by}


def said(corrections: Iterable[Correction], unit: str | None = "cm") -> tuple[str, ...]:
    """What is corrected in all, a sentence's part for each line, for the list of pieces: "hem at the side: 1 cm higher".

    `unit` is "cm", "in", or None for both.
    """
    return tuple(line_named(name).said(by, unit) for name, by in totals(corrections).items())


def corrected(measurements: Measurements, style: Style, corrections: Iterable[Correction]) -> tuple[Measurements, Style]:
    """The measurements and the style that the steps draw from once the corrections are made.

    Corrections of one line add up, and their order does not matter; without any, both are handed back as they are.

    Args:
        measurements: the wearer's `Measurements`, as measured.
        style: the `Style`, as chosen.
        corrections: `Correction`s, in any order.

    Returns:
        (measurements, style).

    Raises:
        CorsetkitError: one sentence, where a line or an amount is not allowed, or all passes together go too far.
    """
    for name, by in totals(corrections).items():
        line = line_named(name)
        if line.only and getattr(style, line.only[0]) != line.only[1]:
            raise CorsetkitError(
                f"correction of {line.said(by, None)}: this style has no {line.only[0].replace('_', ' ')}, so "
                "nothing would move; take the correction back"
            )
        try:
            measurements, style = _moved(line, by, measurements, style)
        except CorsetkitError as refusal:
            # What would be measured again or typed otherwise is no remedy here, so the refusal's own is left out.
            raise CorsetkitError(
                f"correction of {line.said(by, None)}, all passes together, goes too far, for then "
                f"{str(refusal).partition(';')[0]}; correct less"
            ) from None
    return measurements, style


def _moved(line: Line, by: float, measurements: Measurements, style: Style) -> tuple[Measurements, Style]:
    owners: dict[type, dict[str, Any]] = {Measurements: {}, Style: {}, Fitting: {}}
    held: dict[type, Any] = {Measurements: measurements, Style: style, Fitting: style.fitting}
    for owner, field, factor in line.moves:
        owners[owner][field] = getattr(held[owner], field) + factor * by
    if owners[Fitting]:
        owners[Style]["fitting"] = style.fitting.replaced(**owners[Fitting])
    return (
        measurements.replaced(**owners[Measurements]) if owners[Measurements] else measurements,
        style.replaced(**owners[Style]) if owners[Style] else style,
    )
