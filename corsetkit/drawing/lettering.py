"""How wide words come out, so that a drawing can give each text room before it is drawn.

Advance widths of DejaVu Sans, in thousandths of the letter's height, rounded up: the print embeds that very
font, and the screen's fonts named in svg.py are as wide or narrower. Letters with accents take their base
letter's width; what is not in the table counts as the widest.
"""

import unicodedata
from collections.abc import Iterable
from functools import lru_cache
from math import cos, radians, sin
from typing import TypeAlias

from corsetkit.drawing.pens import Letter

ASCENT, DESCENT, CAPITALS = 0.93, 0.24, 0.73
"""How far letters reach above and below the line they stand on, and how high capitals are, in heights."""

PITCH = 1.3
"""From one line of a block to the next, in heights: some more than ascent and descent, as screens round up."""

_PLAIN = (
    318,
    401,
    460,
    838,
    637,
    951,
    780,
    275,
    391,
    391,
    500,
    838,
    318,
    361,
    318,
    337,
    637,
    637,
    637,
    637,
    637,
    637,
    637,
    637,
    637,
    637,
    337,
    337,
    838,
    838,
    838,
    531,
    1000,
    685,
    687,
    699,
    771,
    632,
    576,
    775,
    752,
    295,
    295,
    656,
    558,
    863,
    749,
    788,
    604,
    788,
    695,
    635,
    611,
    732,
    685,
    989,
    686,
    611,
    686,
    391,
    337,
    391,
    838,
    500,
    500,
    613,
    635,
    550,
    635,
    616,
    353,
    635,
    634,
    278,
    278,
    580,
    278,
    975,
    634,
    612,
    635,
    635,
    412,
    521,
    393,
    634,
    592,
    818,
    592,
    592,
    525,
    637,
    337,
    637,
    838,
)
_BOLD = (
    349,
    457,
    521,
    838,
    696,
    1002,
    873,
    307,
    458,
    458,
    523,
    838,
    380,
    416,
    380,
    366,
    696,
    696,
    696,
    696,
    696,
    696,
    696,
    696,
    696,
    696,
    400,
    400,
    838,
    838,
    838,
    581,
    1000,
    774,
    763,
    734,
    831,
    684,
    684,
    821,
    837,
    373,
    373,
    775,
    638,
    996,
    837,
    851,
    733,
    851,
    771,
    721,
    683,
    813,
    774,
    1104,
    771,
    725,
    726,
    458,
    366,
    458,
    838,
    500,
    500,
    675,
    716,
    593,
    716,
    679,
    436,
    716,
    712,
    343,
    343,
    666,
    343,
    1042,
    712,
    688,
    716,
    716,
    494,
    596,
    479,
    712,
    652,
    924,
    646,
    652,
    583,
    712,
    366,
    712,
    838,
)
_WIDEST = 1250
_CARON_BESIDE = 110
"""A small d, l, t or L carries its caron as a stroke beside it, which the base letter's width does not count."""


Box: TypeAlias = tuple[float, float, float, float]
"""Left, bottom, right and top in cm."""


@lru_cache(maxsize=4096)
def width_in_heights(text: str, bold: bool = False) -> float:
    """The text's width as a multiple of the letters' height, never less than what is drawn."""
    table = _BOLD if bold else _PLAIN
    total = 0
    for letter in text:
        code = ord(letter)
        if not 32 <= code < 127:
            parts = unicodedata.normalize("NFD", letter)
            if unicodedata.combining(letter):
                continue
            code = 32 if letter == "\u00a0" else ord(parts[0])
            if "\u030c" in parts:
                total += _CARON_BESIDE
        total += table[code - 32] if 32 <= code < 127 else _WIDEST
    return total / 1000


def text_width(text: str, letter: Letter, scale: float) -> float:
    """The text's width in cm of the drawing."""
    return width_in_heights(text, letter.bold) * letter.size * scale / 10


def text_box(at: complex, text: str, letter: Letter, anchor: str, turn: float, scale: float) -> Box:
    """The box (left, bottom, right, top) in cm that the text stays within, its line starting from `at`."""
    size = letter.size * scale / 10
    width = width_in_heights(text, letter.bold) * size
    start = {"start": 0.0, "middle": -width / 2, "end": -width}[anchor]
    low, high = -DESCENT * size, ASCENT * size
    if not turn:
        return at.real + start, at.imag + low, at.real + start + width, at.imag + high
    c, s = cos(radians(turn)), sin(radians(turn))
    corners = [(x * c - y * s, x * s + y * c) for x in (start, start + width) for y in (low, high)]
    xs, ys = zip(*corners)
    return at.real + min(xs), at.imag + min(ys), at.real + max(xs), at.imag + max(ys)


def overlap(a: Box, b: Box, gap: float = 0.0) -> bool:
    """Whether two boxes come nearer to each other than `gap`."""
    return a[0] < b[2] + gap and b[0] < a[2] + gap and a[1] < b[3] + gap and b[1] < a[3] + gap


def grown(box: Box, by: float) -> Box:
    return box[0] - by, box[1] - by, box[2] + by, box[3] + by


def within(start: complex, end: complex, box: Box) -> tuple[float, float]:
    """From which share of a straight line to which it lies in the box; the first not below the second where nowhere."""
    step, enter, leave = end - start, 0.0, 1.0
    for at, by, low, high in ((start.real, step.real, box[0], box[2]), (start.imag, step.imag, box[1], box[3])):
        if by:
            first, second = (low - at) / by, (high - at) / by
            if first > second:
                first, second = second, first
            enter, leave = max(enter, first), min(leave, second)
        elif not low <= at <= high:
            return 1.0, 0.0
    return enter, leave


def crosses(start: complex, end: complex, box: Box) -> bool:
    """Whether some of a straight line lies in the box."""
    enter, leave = within(start, end, box)
    return enter < leave


def around(boxes: Iterable[Box]) -> Box:
    """The box around boxes."""
    lefts, bottoms, rights, tops = zip(*boxes)
    return min(lefts), min(bottoms), max(rights), max(tops)


_HIDDEN = {"Cc", "Cf", "Cs", "Zl", "Zp"}


def one_line(text: object) -> str:
    """A name as it can be written on one line: blanks joined, signs that no font draws left out."""
    return " ".join(
        "".join(letter for letter in " ".join(str(text).split()) if unicodedata.category(letter) not in _HIDDEN).split()
    )


def fitted(text: str, letter: Letter, width: float, scale: float) -> str:
    """The text, its end replaced by an ellipsis where it is wider than `width` cm."""
    if text_width(text, letter, scale) <= width:
        return text
    while text and text_width(text + "\u2026", letter, scale) > width:
        text = text[:-1].rstrip()
    return text + "\u2026"


def wrapped(text: str, letter: Letter, width: float, scale: float) -> list[str]:
    """The text's words on as few lines as its width needs; a no-break space holds two words together."""
    lines = [""]
    for word in text.split(" "):
        longer = f"{lines[-1]} {word}".strip()
        if lines[-1] and text_width(longer, letter, scale) > width:
            lines.append(word)
        else:
            lines[-1] = longer
    return lines
