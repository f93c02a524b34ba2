"""How a value is shown where pictures are, as in a notebook.

The pattern knows no drawing. Whoever stands above it and does, the package's front door, says once how its values are
drawn; a value is drawn when it is looked at, and not before.
"""

from collections.abc import Callable

_painters: list[Callable[["Shown"], str]] = []


def let_paint(painter: Callable[["Shown"], str]) -> None:
    """Have values drawn by `painter`, which gives a value's picture as HTML; the last one told is asked."""
    _painters[:] = [painter]


class Shown:
    """A value that a notebook shows as a drawing; in its short words where nobody has said how it is drawn."""

    def _repr_html_(self) -> str | None:
        return _painters[0](self) if _painters else None
