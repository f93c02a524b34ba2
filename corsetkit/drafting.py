"""The whole draft: the steps run in order, the pieces cut and numbered, the seams sewn, the promises checked."""

from .errors import CorsetkitError
from .pattern.pattern import Pattern
from .pieces.fullness import fullness
from .pieces.girths import girths
from .pieces.proof import prove
from .pieces.sewing import cut_and_sew
from .steps.run import run_steps
from .style import Style


def draft(measurements, style=None, corrections=(), *, earlier=None):
    """Draft the whole pattern.

    Args:
        measurements: the wearer's `Measurements`, cm.
        style: the `Style`; to the wearer, with its defaults, where none is given.
        corrections: `Correction` values from a fitting. No line can be corrected yet.
        earlier: a `Pattern` drafted before; steps whose values have not changed are taken over from it.

    Returns:
        A `Pattern`.

    Raises:
        CorsetkitError: one sentence, where the wearer cannot be drafted in this style.
    """
    style = style or Style()
    for correction in corrections:
        raise CorsetkitError(f"correction of {correction.line!r}: no line of the draft can be corrected yet; give none")
    steps = run_steps(measurements, style, earlier.steps if earlier else None)
    pieces, seams, waste, said = cut_and_sew(steps, style)
    prove(steps, pieces, seams, waste)
    warnings = [*measurements.warnings]
    for step in steps.in_order:
        warnings.extend(step.warnings)
    warnings.extend(said)
    return Pattern(measurements, style, pieces, seams, girths(measurements, style, steps.overbust, steps.back),
                   fullness(measurements, steps.overbust), waste, tuple(dict.fromkeys(warnings)), steps)
