"""Where a line moved most, and on which half of the block it lies."""

from corsetkit.geometry.points import dot

_PLACES = 24
"""At how many places of a curve its move is looked at."""


def on_back(name):
    """Whether a line of that name lies on the back."""
    return name.startswith("back") or name == "lacing edge"


def farthest(one):
    """Where a line moved most: a point of it after and one of it before, the one the nearest to the other on its line."""
    pairs = [(p, _nearest(p, one.before)) for p in _looked_at(one.after)]
    pairs += [(_nearest(q, one.after), q) for q in _looked_at(one.before)]
    return max(pairs, key=lambda pair: abs(pair[0] - pair[1]))


def _looked_at(run):
    """Places along a run; each curve by itself, for a side seam has a gap where its dart lies open."""
    return [curve.point(i / _PLACES) for curve in run for i in range(_PLACES + 1)]


def _nearest(p, run):
    """The point of a run that is the nearest to p."""
    feet = [_foot(p, a, b) for curve in run for points in [curve.flattened(0.005)]
            for a, b in zip(points, points[1:] or points)]
    return min(feet, key=lambda foot: abs(p - foot))


def _foot(p, a, b):
    """The point of a straight line that is the nearest to p."""
    step = b - a
    return a + step * min(1.0, max(0.0, dot(p - a, step) / abs(step) ** 2)) if step else a
