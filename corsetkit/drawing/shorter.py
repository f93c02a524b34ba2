"""An SVG text written shorter for an image that is stored: whoever looks at it sees the same.

A page finds its way in a live drawing by classes and facts, and a length is read back from it to 0.01 mm. In an image
nothing is looked up: there the words and groups for that go, points that lie on the line between their neighbours go, places
are whole steps counted from point to point, lines in one pen are one path, and what looks alike has its look from one rule.
Nothing moves by more than 1/4000 of the picture's larger side, which on a page is a quarter of a pixel.
"""

import math
import re
from collections import Counter

_PATH = re.compile(r'(?<= d=")[MLCZz0-9 .-]*(?=")')
_COMMAND = re.compile(r"([MLCZ])([^MLCZ]*)")
_SIZE = re.compile(r'viewBox="0 0 (\S+) (\S+)"')
_LOOKED_UP = re.compile(r' (?:class|data-[\w-]+|role|aria-label)="[^"]*"|<title>.*?</title>|<desc>.*?</desc>', re.DOTALL)
_NO_TURN = re.compile(r' transform="rotate\(-?0(?:\.0+)? [^"]*\)"')

_DRAWN = re.compile(r'<path d="([^"]*)"([^>]*)/>')
_ONE_PEN = re.compile(r' stroke="([^"]*)"(?: stroke-width="[^"]*")?(?: stroke-dasharray="[^"]*")?')
_ROUND = 'stroke-linecap="round" stroke-linejoin="round"'
_LOOK = re.compile(r'((?: (?:stroke|stroke-width|stroke-dasharray|fill|font-size|font-weight|text-anchor|style)="[^"]*")+)')
_PLACE = re.compile(r' (x|y|cx|cy)="([0-9.-]+)"')
_SIZES = re.compile(r' (r|width|height|font-size|stroke-width|stroke-dasharray|viewBox)="([0-9. ]+)"')
_TURN = re.compile(r"(?<=rotate\()(\S+) (\S+) (\S+)(?=\))")
_START = re.compile(r"M(\S+ [0-9.-]+)")
_NUMBER = re.compile(r"-?\d*\.?\d+")
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
    svg = re.sub(r">\s+<", "><", _NO_TURN.sub("", _LOOKED_UP.sub("", svg.replace(' width="100%"', "", 1))))
    svg = _one_pen_one_path(_without_bare_groups(svg))
    if ' style="' in svg:
        # A chart has lengths among its styles, so its unit stays, and its places are tenths or hundredths of it.
        decimals = max(0, -math.floor(math.log10(side * STEP)))
        steps = 10.0**decimals
        svg = _PLACE.sub(lambda at: f' {at[1]}="{_written(round(float(at[2]) * steps), decimals)}"', svg)
    else:
        decimals, steps = 0, 1 / (side * STEP)
        svg = _in_steps(svg, steps)
    return _with_rules(_PATH.sub(lambda path: _shorter_path(path[0], side * AWAY, steps, decimals), svg))


def _without_bare_groups(svg: str) -> str:
    """Names that nothing in the drawing refers to go, and then groups that say nothing."""
    asked = set(re.findall(r"#([\w-]+)", svg))
    svg = re.sub(r' id="([^"]*)"', lambda name: name[0] if name[1] in asked else "", svg)
    parts, open_groups = [], []
    for text in re.split(r"(</?g\b[^>]*>)", svg):
        if text.startswith("<g"):
            open_groups.append(text != "<g>")
            text = text if open_groups[-1] else ""
        elif text == "</g>":
            text = text if open_groups.pop() else ""
        parts.append(text)
    return "".join(parts)


def _in_steps(svg: str, steps: float) -> str:
    """The step is the drawing's unit: places are whole numbers of it, sizes have one decimal."""

    def sized(numbers):
        return _NUMBER.sub(lambda n: _written(round(float(n[0]) * steps * 10), 1), numbers)

    def placed(number):
        return _written(round(float(number) * steps), 0)

    svg = _TURN.sub(lambda at: f"{float(at[1]):g} {placed(at[2])} {placed(at[3])}", svg)
    svg = _PLACE.sub(lambda at: f' {at[1]}="{placed(at[2])}"', svg)
    return _SIZES.sub(lambda size: f' {size[1]}="{sized(size[2])}"', svg)


def _one_pen_one_path(svg: str) -> str:
    """An area with its own outline drawn over it is one path, and so are lines that follow each other in one pen.

    Lines of one colour cover each other in any order, so those in one pen go together.
    """
    goes_on = _ROUND in svg.partition(">")[0]
    parts: list[str] = []
    run: list[tuple[str, str]] = []

    def close():
        area = _DRAWN.fullmatch(parts[-1]) if parts and run else None
        if area and "stroke=" not in area[2] and area[1] in (run[0][0], run[0][0] + "Z"):
            parts[-1] = f'<path d="{run[0][0]}"{area[2]}{run.pop(0)[1]}/>'
        paths: dict[str, str] = {}
        for data, look in run:
            paths[look] = _joined(paths[look], data, goes_on and "dash" not in look) if look in paths else data
        parts.extend(f'<path d="{data}"{look}/>' for look, data in paths.items())
        run.clear()

    for text in re.split(r"(<path [^>]*/>)", svg):
        found = _DRAWN.fullmatch(text)
        pen = _ONE_PEN.fullmatch(found[2]) if found else None
        if not text:
            continue
        if not pen or (run and _ONE_PEN.fullmatch(run[-1][1])[1] != pen[1]):
            close()
        if pen:
            run.append(found.groups())
        else:
            parts.append(text)
    close()
    return "".join(parts)


def _joined(earlier: str, later: str, goes_on: bool) -> str:
    """Two paths' data as one. With round ends and corners a line that begins where the last one ended simply goes on."""
    start = _START.match(later)
    if goes_on and start and earlier.endswith(start[1]) and not earlier[-len(start[1]) - 1].isdigit():
        return earlier + later[start.end() :]
    return earlier + later


def _with_rules(svg: str) -> str:
    """Looks that several elements share stand once, as rules, and the elements name them."""
    head, end, rest = svg.partition(">")
    # A name costs about twelve letters wherever it stands, the rule its look and a little more.
    often = [look for look, times in Counter(_LOOK.findall(rest)).most_common() if times * (len(look) - 12) > len(look)]
    names = {look: _name(number) for number, look in enumerate(often)}
    if not names:
        return svg
    rest = _LOOK.sub(lambda found: f' class="{names[found[1]]}"' if found[1] in names else found[1], rest)
    rules = "".join(f".{name}{{{_rule(look)}}}" for look, name in names.items())
    return f"{head}{end}<style>{rules}</style>{rest}"


def _name(number: int) -> str:
    """a to z, then a1 to z1 and so on."""
    return chr(ord("a") + number % 26) + (str(number // 26) if number > 25 else "")


def _rule(look):
    pairs = re.findall(r'([\w-]+)="([^"]*)"', look)
    return ";".join(
        value if name == "style" else f"{name}:{value}{'px' if name in _IN_PIXELS else ''}" for name, value in pairs
    )


def _shorter_path(data: str, room: float, steps: float, decimals: int) -> str:
    """Path data in whole steps, each counted from the one before, so that no rounding adds up."""
    here, start, words = (0, 0), (0, 0), []

    def whole(p):
        return round(p.real * steps), round(p.imag * steps)

    def told(letter, points, origin):
        numbers = [_written(n - o, decimals) for p in points for n, o in zip(p, origin)]
        if letter == "l" and "0" in numbers:
            # Level or upright: one number says it.
            letter, numbers = ("v", numbers[1:]) if numbers[0] == "0" else ("h", numbers[:1])
        return letter + " ".join(numbers).replace(" -", "-")

    for letter, points in _straightened(data, room):
        at = [whole(p) for p in points]
        if letter == "Z":
            words.append("z")
            here = start
        elif letter == "M":
            words.append(min(told("M", at, (0, 0)), told("m", at, here), key=len))
            here = start = at[0]
        elif letter == "C":
            words.append(told("c", at, here))
            here = at[-1]
        else:
            for p in at:
                if p != here:
                    words.append(told("l", [p], here))
                    here = p
    # Lines and curves need their letter only where the command before had another one.
    text, last = "", ""
    for word in words:
        go_on = word[0] == last and last in "lc"
        text += (word[1:] if word[1] == "-" else f" {word[1:]}") if go_on else word
        last = word[0]
    return text


def _written(n: int, decimals: int) -> str:
    text = f"{n / 10**decimals:.{decimals}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return re.sub(r"^(-?)0\.", r"\1.", text)


def _straightened(data, room):
    """(letter, points) for each command; straight lines that follow each other are one command, thinned out."""
    run, here = [], 0j
    for letter, numbers in _COMMAND.findall(data.replace("z", "Z")):
        values = [float(n) for n in numbers.split()]
        points = [complex(x, y) for x, y in zip(values[::2], values[1::2])]
        at = run[-1] if run else here
        if letter == "L" or (letter == "C" and all(_away(p, at, points[2]) < room for p in points[:2])):
            run += points if letter == "L" else points[2:]
            continue
        if run:
            yield "L", thinned([here, *run], room)[1:]
            here, run = run[-1], []
        yield letter, points
        here = points[-1] if points else here
    if run:
        yield "L", thinned([here, *run], room)[1:]


def _away(p: complex, start: complex, end: complex) -> float:
    """How far a point is from a straight line, the line ending where it ends."""
    step, off = end - start, p - start
    along = (off * step.conjugate()).real / abs(step) ** 2 if step else 0.0
    return abs(off - step * min(1.0, max(0.0, along)))


def thinned(points: list[complex], room: float) -> list[complex]:
    """The fewest of the points, ends kept, by halving where the farthest lies (Douglas and Peucker): none is more than
    `room` from the line that is left."""
    kept, todo = {0, len(points) - 1}, [(0, len(points) - 1)]
    while todo:
        first, last = todo.pop()
        far, at = room, None
        for k in range(first + 1, last):
            away = _away(points[k], points[first], points[last])
            if away > far:
                far, at = away, k
        if at is not None:
            kept.add(at)
            todo += [(first, at), (at, last)]
    return [points[k] for k in sorted(kept)]
