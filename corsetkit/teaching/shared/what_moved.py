"""What moved between two blocks, in sentences: drawn anew, come along, stayed."""

from corsetkit.units import CM_PER_INCH, say_length, say_number

_LEAST = {"in": CM_PER_INCH / 16, "cm": 0.1}
"""The smallest length that is said in each unit, cm."""
_PLURALS = {"neckline": "necklines", "shoulder": "shoulders", "armscye": "armscyes", "side seam": "side seams",
            "waist dart": "waist darts", "hip line": "hip lines"}  # fmt: skip
_LESS = "less than"
_LEAST_ANGLE = 0.05
"""The smallest angle that is said, degrees."""


def what_moved(lines, before, after, unit: str) -> tuple[str, ...]:
    """Sentences on the `Compared` `lines` of the `Block`s `before` and `after`, lengths in `unit`."""
    anew = [(line, _anew(line, before, after, unit)) for line in lines if line.step is None]
    along = [(line, _way(line.step, line.half, unit)) for line in lines if line.came_along]
    stayed = [(line, "") for line in lines if line.stayed]
    if not anew and not along:
        return ("No line has moved.",)
    return tuple(
        f"{opening}: {'; '.join(_grouped(group))}."
        for opening, group in (("Drawn anew", anew), ("Came along, their shape kept", along), ("Stayed", stayed))
        if group
    )


def far(cm: float, unit: str) -> str:
    """A length that is above zero, even where a tape would not show it."""
    least = _LEAST[unit]
    return f"{_LESS} {say_length(least, unit)}" if cm < least / 2 else say_length(cm, unit)


def degrees(angle: float) -> str:
    """An angle in words: "1 degree", "18.3 degrees"."""
    number = say_number(angle, 1)
    return f"{number} degree" if number == "1" else f"{number} degrees"


def _anew(line, before, after, unit):
    if not line.before:
        return "new"
    if not line.after:
        return "gone"
    if line.name == "side dart":
        more = after.side_dart - before.side_dart
        if abs(more) >= _LEAST_ANGLE:
            return f"{degrees(abs(more))} {'wider' if more > 0 else 'narrower'}"
    if line.name.endswith("waist dart"):
        more = getattr(after, line.half).waist_dart - getattr(before, line.half).waist_dart
        if abs(more) >= _LEAST[unit] / 2:
            return f"takes {say_length(abs(more), unit)} {'more' if more > 0 else 'less'}"
    most = far(line.most, unit)
    return f"by {most}" if most.startswith(_LESS) else f"by up to {most}"


def _way(step, half, unit):
    """How far and whither, in words: the front's side lies to the right, the back's to the left."""
    aside = step.real if half == "front" else -step.real
    parts = ((step.imag, "up", "down"), (aside, "towards the side", "towards the centre"))
    return " and ".join(f"{far(abs(cm), unit)} {more if cm > 0 else less}" for cm, more, less in parts if abs(cm) > 1e-6)


def _grouped(group):
    """The lines' names, those with the same words together; a line of both halves is named once."""
    by_words = {}
    for line, words in group:
        by_words.setdefault(words, []).append(line.name)
    for words, names in by_words.items():
        yield _listed(_both(names)) + (f", {words}" if words else "")


def _both(names):
    names = list(names)
    for one, many in _PLURALS.items():
        pair = [f"front {one}", f"back {one}"]
        if all(name in names for name in pair):
            names[names.index(pair[0])] = f"both {many}"
            names.remove(pair[1])
    if "centre front" in names and "centre back" in names:
        names[names.index("centre front")] = "both centre lines"
        names.remove("centre back")
    return names


def _listed(names):
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
