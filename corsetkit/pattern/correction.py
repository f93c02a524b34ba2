"""A correction from a fitting: a named line of the draft, and by how much it moves."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Correction:
    """Move `line` by `by` cm. `fitting/lines.py` says which lines can be moved, which way is above nought, and how far."""

    line: str
    by: float
