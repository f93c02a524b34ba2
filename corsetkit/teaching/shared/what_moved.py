"""What moved between two blocks, in sentences: drawn anew, come along, stayed."""

from corsetkit.teaching.shared.listed import listed
from corsetkit.units import CM_PER_INCH, say_length, say_number
from corsetkit.words import words_of

SHARED = words_of("shared")

_LEAST = {"in": CM_PER_INCH / 16, "cm": 0.1}
"""The smallest length that is said in each unit, cm."""
_OF_BOTH = ("neckline", "shoulder", "armscye", "side seam", "waist dart", "hip line")
"""What front and back both have, and is named once where it moved alike in both."""
_LEAST_ANGLE = 0.05
"""The smallest angle that is said, degrees."""


def what_moved(lines, before, after, unit: str) -> tuple[str, ...]:
    """Sentences on the `Compared` `lines` of the `Block`s `before` and `after`, lengths in `unit`."""
    anew = [(line, _anew(line, before, after, unit)) for line in lines if line.step is None]
    along = [(line, _way(line.step, line.half, unit)) for line in lines if line.came_along]
    stayed = [(line, "") for line in lines if line.stayed]
    if not anew and not along:
        return (SHARED("no_line_moved"),)
    return tuple(
        SHARED(f"lines_{which}", lines="; ".join(_grouped(group)))
        for which, group in (("anew", anew), ("along", along), ("stayed", stayed))
        if group
    )


def far(cm: float, unit: str) -> str:
    """A length that is above zero, even where a tape would not show it."""
    return SHARED("less_than", length=say_length(_LEAST[unit], unit)) if _hardly(cm, unit) else say_length(cm, unit)


def _hardly(cm, unit):
    """Whether a tape would show nothing of it."""
    return cm < _LEAST[unit] / 2


def degrees(angle: float) -> str:
    """An angle in words: "1 degree", "18.3 degrees"."""
    number = say_number(angle, 1)
    return SHARED("degree_one" if number == "1" else "degrees", angle=number)


def _anew(line, before, after, unit):
    if not line.before:
        return SHARED("line_new")
    if not line.after:
        return SHARED("line_gone")
    if line.name == "side dart":
        more = after.side_dart - before.side_dart
        if abs(more) >= _LEAST_ANGLE:
            return SHARED("dart_wider" if more > 0 else "dart_narrower", angle=degrees(abs(more)))
    if line.name.endswith("waist dart"):
        more = getattr(after, line.half).waist_dart - getattr(before, line.half).waist_dart
        if not _hardly(abs(more), unit):
            return SHARED("dart_takes_more" if more > 0 else "dart_takes_less", length=say_length(abs(more), unit))
    return SHARED("line_hardly" if _hardly(line.most, unit) else "line_most", most=far(line.most, unit))


def _way(step, half, unit):
    """How far and whither, in words: the front's side lies to the right, the back's to the left."""
    aside = step.real if half == "front" else -step.real
    parts = ((step.imag, "up" if step.imag > 0 else "down"), (aside, "to_side" if aside > 0 else "to_centre"))
    return listed(SHARED(f"moved_{which}", far=far(abs(cm), unit)) for cm, which in parts if abs(cm) > 1e-6)


def _grouped(group):
    """The lines' names, those with the same words together; a line of both halves is named once."""
    by_words = {}
    for line, words in group:
        by_words.setdefault(words, []).append(line.name)
    for words, names in by_words.items():
        names = _both(names)
        told = SHARED("pair", one=", ".join(names[:-1]), other=names[-1]) if names[1:] else names[0]
        yield SHARED("names_how", lines=told, how=words) if words else told


def _both(names):
    names = list(names)
    for one in _OF_BOTH:
        pair = [f"front {one}", f"back {one}"]
        if all(name in names for name in pair):
            names[names.index(pair[0])] = SHARED(f"both_{one.replace(' ', '_')}")
            names.remove(pair[1])
    if "centre front" in names and "centre back" in names:
        names[names.index("centre front")] = SHARED("both_centre_lines")
        names.remove("centre back")
    return names
