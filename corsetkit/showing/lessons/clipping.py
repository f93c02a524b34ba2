"""Lines cut off at the borders of what is shown."""

from corsetkit.geometry.curve import Line
from corsetkit.geometry.paths import flattened
from corsetkit.geometry.points import between


def clipped(run, box):
    """What of a run lies in the box (left, bottom, right, top), cm: the run itself where all of it does, else a run of short
    straight lines, with gaps where it leaves the box; empty where nothing does."""
    left, bottom, right, top = box
    # A run may have gaps already, as hatching has, so each curve is looked at alone.
    kept, whole = [], True
    for curve in run:
        points = [curve.start, curve.end] if isinstance(curve, Line) else flattened((curve,), 0.02)
        if all(left <= p.real <= right and bottom <= p.imag <= top for p in points):
            kept.append(curve)
            continue
        whole = False
        kept += [one for a, b in zip(points, points[1:]) for one in _part(a, b, box)]
    return tuple(run) if whole else tuple(kept)


def _part(a, b, box):
    """The part of a straight line in the box, as a tuple of one Line or none."""
    step, low, high = b - a, 0.0, 1.0
    for start, way, least, most in ((a.real, step.real, box[0], box[2]), (a.imag, step.imag, box[1], box[3])):
        if abs(way) < 1e-12:
            if not least <= start <= most:
                return ()
            continue
        ends = sorted(((least - start) / way, (most - start) / way))
        low, high = max(low, ends[0]), min(high, ends[1])
    return (Line(between(a, b, low), between(a, b, high)),) if high - low > 1e-9 else ()
