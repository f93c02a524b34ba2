"""A correction from a fitting: a named line of the draft, and by how much it moves."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Correction:
    """Move `line` by `by` cm. Which lines can be moved is the draft's to say."""

    line: str
    by: float
