"""The whole draft: corrections made, the steps run in order, pieces cut and numbered, seams sewn, the promises checked."""

from collections.abc import Iterable

from corsetkit.errors import CorsetkitError
from corsetkit.fitting.correct import corrected
from corsetkit.fitting.correct import said as said_of
from corsetkit.measurements import Measurements
from corsetkit.pattern.pattern import Correction, Pattern
from corsetkit.pieces.measured import fullness, girths, shape_warnings
from corsetkit.pieces.proof import prove
from corsetkit.pieces.seam_table import cut_and_sew
from corsetkit.steps.run import run_steps
from corsetkit.style import Style
from corsetkit.units import check_kind, shown


def draft(
    measurements: Measurements,
    style: Style | None = None,
    corrections: Iterable[Correction] = (),
    *,
    earlier: Pattern | None = None,
) -> Pattern:
    """Draft the whole pattern.

    Args:
        measurements: the wearer's `Measurements`, cm.
        style: the `Style`; fitted, with its defaults, where none is given.
        corrections: `Correction` values from a fitting, in any order; those of one line add up. `fitting/lines.py` says
            which lines can be corrected and by how much in one pass.
        earlier: a `Pattern` drafted before; steps whose values have not changed are taken over from it.

    Returns:
        A `Pattern`; every seam of it is proven, with corrections as without.

    Raises:
        CorsetkitError: one sentence, where a correction is not allowed, or the wearer cannot be drafted in this style.

    >>> from corsetkit import Correction, Style, demo_wearers, draft
    >>> name, measurements = demo_wearers()[0]
    >>> pattern = draft(measurements, Style(cup_parts=2, yoke=False))
    >>> pattern
    <Pattern: 7 pieces, 5 seams, bust 91.4 cm, underbust 76.2 cm, waist 66.0 cm, hem 92.2 cm>
    >>> [piece.name for piece in pattern.pieces]
    ['inner cup', 'outer cup', 'centre front', 'side front', 'side back', 'centre back', 'modesty panel']
    >>> max(abs(seam.difference) for seam in pattern.seams) < 0.01
    True
    >>> wider = draft(measurements, pattern.style, [Correction("waist_girth", 1)], earlier=pattern)
    >>> round(wider.girths["waist"].finished - pattern.girths["waist"].finished, 6)
    1.0
    """
    check_kind(
        measurements,
        Measurements,
        "measurements",
        "give Measurements(bust_girth=..., ...), or a wearer's out of read_wearers or demo_wearers",
    )
    style = Style() if style is None else check_kind(style, Style, "style", "give Style(...), or None for the course's own")
    if earlier is not None:
        check_kind(earlier, Pattern, "earlier", "give a Pattern that was drafted before, or None")
    corrections = _listed(corrections)
    body, drawn_in = corrected(measurements, style, corrections)
    try:
        return _drafted(measurements, style, corrections, body, drawn_in, earlier)
    except CorsetkitError as refusal:
        made = said_of(corrections, None)
        if not made:
            raise
        # Who cannot be drafted at all is told that, and not of corrections.
        _drafted(measurements, style, (), measurements, style, None)
        raise CorsetkitError(
            f"after the fitting ({', '.join(made)}) this cannot be drawn, so take a correction back or make "
            f"it smaller: {refusal}"
        ) from None


def _listed(corrections: object) -> tuple[Correction, ...]:
    """The corrections as a tuple; what each of them is, is looked at where it is made."""
    if isinstance(corrections, Iterable) and not isinstance(corrections, (str, bytes, dict)):
        return tuple(corrections)
    raise CorsetkitError(f"corrections is {shown(corrections)}: give a list of Correction values, or () for none")


def _drafted(
    measurements: Measurements,
    style: Style,
    corrections: tuple[Correction, ...],
    body: Measurements,
    drawn_in: Style,
    earlier: Pattern | None,
) -> Pattern:
    """The pattern as `draft` gives it, drawn from the corrected body and style."""
    steps = run_steps(body, drawn_in, earlier.steps if earlier else None)
    pieces, seams, waste, said = cut_and_sew(steps, drawn_in)
    prove(steps, pieces, seams, waste)
    warnings = [*measurements.warnings]
    for step in steps.in_order:
        warnings.extend(step.warnings)
    warnings.extend(said)
    found, cup = girths(body, drawn_in, steps.overbust, steps.back), fullness(body, steps.overbust)
    warnings.extend(shape_warnings(drawn_in, found, cup, steps.overbust))
    return Pattern(
        measurements=measurements,
        style=style,
        pieces=pieces,
        seams=seams,
        girths=found,
        fullness=cup,
        waste=waste,
        warnings=tuple(dict.fromkeys(warnings)),
        steps=steps,
        corrections=corrections,
    )
