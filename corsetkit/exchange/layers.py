"""On which layer of a DXF each kind of line stands.

The numbers are those of ASTM D6673, from memory: they were not held against the standard, and no conformity with it is
claimed. Each layer says in words what it holds.
"""

NUMBERS = {
    1: "cutting line",
    2: "turn points of the cutting line",
    3: "curve points of the cutting line",
    4: "notches",
    6: "fold",
    7: "grain",
    8: "internal lines",
    14: "sewing lines",
    15: "words",
}
"""Layer numbers and what they hold. No line of ours is internal, so layer 8 is empty."""

OF_GROUP = {"cutting": "1", "notches": "4", "fold": "6", "grain": "7", "sewing": "14", "words": "15", "fold-mark": "15"}
"""The layer of the canvas's groups, the innermost counting."""
TURN, CURVE, NOTCH, GRAIN, WORDS = "2", "3", "4", "7", "15"
SQUARE = "TEST_SQUARE"
"""A layer of its own, so that a cutter can leave it out."""

SAID = "Layer numbers as in ASTM D6673, from memory; no conformity claimed."
