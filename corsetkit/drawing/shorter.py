"""An SVG text written shorter for an image that is stored: whoever looks at it sees the same.

A page finds its way in a live drawing by classes and facts, and a length is read back from it to 0.01 mm. In an image
nothing is looked up: there the words for that go, points that lie on the line between their neighbours go, path data
count from point to point, lines that follow each other in one pen are one path, and what looks alike has its look from
one rule. Nothing moves by more than 1/4000 of the picture's larger side, which on a page is a quarter of a pixel.
"""

import math
import re
from collections import Counter

_PATH = re.compile(r'(?<= d=")[MLCZ0-9 .-]*(?=")')
_COMMAND = re.compile(r"([MLCZ])([^MLCZ]*)")
_SIZE = re.compile(r'viewBox="0 0 (\S+) (\S+)"')
_LOOKED_UP = re.compile(r' (?:class|data-[\w-]+|role|aria-label)="[^"]*"|<title>.*?</title>|<desc>.*?</desc>', re.DOTALL)

_DRAWN = re.compile(r'<path d="([^"]*)"([^>]*)/>')
_LOOK = re.compile(r'((?: (?:stroke|stroke-width|stroke-dasharray|fill|font-size|font-weight|text-anchor|style)="[^"]*")+)')
_PLACE = re.compile(r' (x|y|cx|cy|r)="([0-9.-]+)"')
_IN_PIXELS = ("font-size",)

STEP, AWAY = 1 / 4000, 1 / 8000
"""Shares of the larger side: the largest step of what is written, so that rounding moves a point by half of it, and how far a
point may lie from the line that is drawn without it. Course convention."""


def shorter(svg: str) -> str:
    """The SVG text of `svg_text`, as short as its image allows."""
    found = _SIZE.search(svg)
    if not found:
        return svg
    side = max(float(found[1]), float(found[2]))
    decimals = max(0, -math.floor(math.log10(side * STEP)))
    svg = _PATH.sub(lambda path: _shorter_path(path[0], side * AWAY, decimals), _LOOKED_UP.sub("", svg))
    svg = re.sub(r">\s+<", "><", svg)
    svg = _PLACE.sub(lambda at: f' {at[1]}="{_written(round(float(at[2]) * 10**decimals), decimals)}"', svg)
    return _with_rules(_one_pen_one_path(svg))


def _one_pen_one_path(svg: str) -> str:
    """An area with its own outline drawn over it is one path, and so are lines that follow each other in one pen."""
    parts = []
    for text in re.split(r"(<path [^>]*/>)", svg):
        found, before = _DRAWN.fullmatch(text), _DRAWN.fullmatch(parts[-1]) if parts else None
        if not text:
            continue
        if found and before:
            (data, look), (earlier, its_look) = found.groups(), before.groups()
            if "stroke=" in look and "fill=" not in look:
                if its_look == look:
                    parts[-1] = f'<path d="{earlier}{data}"{look}/>'
                    continue
                if "stroke=" not in its_look and earlier in (data, data + "z"):
                    parts[-1] = f'<path d="{data}"{its_look}{look}/>'
                    continue
        parts.append(text)
    return "".join(parts)


def _with_rules(svg: str) -> str:
    """Looks that several elements share stand once, as rules, and the elements name them."""
    head, end, rest = svg.partition(">")
    often = [look for look, times in Counter(_LOOK.findall(rest)).most_common() if times > 2]
    names = {look: f"l{number}" for number, look in enumerate(often)}
    if not names:
        return svg
    rest = _LOOK.sub(lambda found: f' class="{names[found[1]]}"' if found[1] in names else found[1], rest)
    rules = "".join(f".{name}{{{_rule(look)}}}" for look, name in names.items())
    return f"{head}{end}<style>{rules}</style>{rest}"


def _rule(look):
    pairs = re.findall(r'([\w-]+)="([^"]*)"', look)
    return ";".join(
        value if name == "style" else f"{name}:{value}{'px' if name in _IN_PIXELS else ''}" for name, value in pairs
    )


def _shorter_path(data: str, room: float, decimals: int) -> str:
    """Path data in whole steps of the last decimal, each counted from the one before, so that no rounding adds up."""
    scale, here, start, words = 10**decimals, (0, 0), (0, 0), []

    def whole(p):
        return round(p.real * scale), round(p.imag * scale)

    def told(letter, points, origin):
        numbers = [_written(n - o, decimals) for p in points for n, o in zip(p, origin)]
        text, go_on = letter, words and letter in "lc" and words[-1][0] == letter
        for k, number in enumerate(numbers):
            text += number if (not k and not go_on) or number.startswith("-") else " " + number
        if go_on:
            words[-1] += text[1:]
        else:
            words.append(text)

    for letter, points in _straightened(data, room):
        at = [whole(p) for p in points]
        if letter == "Z":
            words.append("z")
            here = start
        elif letter == "M":
            told("M", at, (0, 0))
            here = start = at[0]
        elif letter == "C":
            told("c", at, here)
            here = at[-1]
        else:
            for p in at:
                if p != here:
                    told("l", [p], here)
                    here = p
    return "".join(words)


def _written(n: int, decimals: int) -> str:
    text = f"{n / 10**decimals:.{decimals}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return re.sub(r"^(-?)0\.", r"\1.", text)


def _straightened(data, room):
    """(letter, points) for each command; straight lines that follow each other are one command, thinned out."""
    run, here = [], 0j
    for letter, numbers in _COMMAND.findall(data):
        values = [float(n) for n in numbers.split()]
        points = [complex(x, y) for x, y in zip(values[::2], values[1::2])]
        if letter == "L":
            run += points
            continue
        if run:
            yield "L", thinned([here, *run], room)[1:]
            here, run = run[-1], []
        yield letter, points
        here = points[-1] if points else here
    if run:
        yield "L", thinned([here, *run], room)[1:]


def thinned(points: list[complex], room: float) -> list[complex]:
    """The fewest of the points, ends kept, by halving where the farthest lies (Douglas and Peucker): none is more than
    `room` from the line that is left."""
    kept, todo = {0, len(points) - 1}, [(0, len(points) - 1)]
    while todo:
        first, last = todo.pop()
        a, step = points[first], points[last] - points[first]
        far, at = room, None
        for k in range(first + 1, last):
            off = points[k] - a
            along = (off * step.conjugate()).real / abs(step) ** 2 if step else 0.0
            away = abs(off - step * min(1.0, max(0.0, along)))
            if away > far:
                far, at = away, k
        if at is not None:
            kept.add(at)
            todo += [(first, at), (at, last)]
    return [points[k] for k in sorted(kept)]
