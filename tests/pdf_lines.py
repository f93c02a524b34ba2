"""The lines of a PDF as its own reader finds them, for the tests of what is printed."""

from corsetkit.geometry.curve import Cubic, Line


def curves(path):
    """The PDF's own path as curves, in points."""
    found, here = [], None
    for command, *points in path:
        points = [complex(*p) for p in points]
        if command == "c":
            found.append(Cubic(here, *points))
        elif command == "l":
            found.append(Line(here, *points))
        here = points[-1] if points else here
    return found
