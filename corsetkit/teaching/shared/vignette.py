"""A small drawing that explains one word: a window on a draft, with nothing written but what the word needs."""

from corsetkit.drawing.canvas import Sheet, box_area
from corsetkit.drawing.hatching import fill
from corsetkit.drawing.name_places import Clutter
from corsetkit.drawing.pens import PAPER_TONE, SPOT, SPOT_TONE, SPOT_WORDS, WASTE
from corsetkit.drawing.step_sheet import PENS
from corsetkit.geometry.paths import flattened
from corsetkit.teaching.word_cards import Word

SEEN = 5.0
"""How wide a small drawing is seen, cm."""


def vignette(title, description, drawn, box, spots=()):
    """The sheet of a window on `drawn` lines.

    Args:
        title, description: what it shows, for those who do not see it.
        drawn: `Drawn` lines; those of the role "new" are what the word is about. Their names are not written.
        box: (left, bottom, right, top) of the window, cm; lines may run beyond it, and are cut off there.
        spots: `Spot` marks, their names written beside them where there is room.
    """
    left, bottom, right, top = box
    scale = (right - left) / SEEN
    low, high = complex(left, bottom), complex(right, top)
    inside = 0.12 * scale
    clutter = Clutter((left + inside, bottom + inside, right - inside, top - inside), scale)
    for line in drawn:
        clutter.draw(flattened(line.path, 0.05), 3 if line.role == "new" else 1)
    for spot in spots:
        clutter.dot(spot.point)
    names = [clutter.beside(spot.point, spot.name, SPOT_WORDS) for spot in spots if spot.name]

    def paint(canvas):
        box_area(canvas, box, PAPER_TONE)
        for role, pen in PENS.items():
            for line in drawn:
                if line.role == role:
                    if role == "waste":
                        fill(canvas, line.path, WASTE)
                    canvas.line(line.path, pen)
        for spot in spots:
            canvas.dot(spot.point, 0.8, SPOT_TONE if spot.role == "new" else PAPER_TONE, SPOT)
        for place in names:
            if place:
                canvas.words(*place)

    return Sheet(low, high, title, description, paint, scale, True)


def card(words, name, drawn, box, spots=()):
    """The `Word` of that name in a lesson's `words`, which hold it, what it means (`name_means`) and what its small drawing
    shows (`name_drawing`); the rest as for `vignette`."""
    word = words(name)
    sheet = vignette(word[:1].upper() + word[1:], words(f"{name}_drawing"), drawn, box, spots)
    return Word(word, words(f"{name}_means"), sheet)
