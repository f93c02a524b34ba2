"""The drawing protocol: what anything that draws may ask of anything that is drawn on.

Places are complex numbers in cm, y up, where the drawing says; widths and letters are mm as seen
(see pens.py), which a canvas multiplies by the sheet's scale. SVG, PDF and the recorder stand behind it,
so that they cannot disagree.
"""

from typing import Protocol

from corsetkit.geometry.curve import Line

NOTHING = {}
"""No facts told of a line or a group; never written to."""

JOINED = 1e-6
"""Curves whose ends lie this near (cm) are drawn as one stroke: rounding may part what was drawn together."""


class Canvas(Protocol):
    """What is drawn on. Later calls lie on top of earlier ones."""

    scale: float
    """How many centimetres of the drawing are seen as one."""

    def line(self, run, pen, facts=NOTHING):
        """Draw the run's true curves; where it has a gap, a new stroke begins. `facts` are words told of the line."""

    def area(self, run, tone, facts=NOTHING):
        """Fill the closed run with the tone's colour. Hatching is laid by `hatching.fill`, not by a canvas."""

    def dot(self, at, radius, tone, pen=None):
        """A round dot of `radius` mm as seen, with a rim where a pen is given."""

    def words(self, at, text, letter, anchor="middle", turn=0.0):
        """Write one line of text standing on `at`, anchored at its "start", "middle" or "end".

        `turn` is degrees counter-clockwise about `at`.
        """

    def group(self, name, facts=NOTHING):
        """A context that holds what is drawn within it together, under a name."""


def box_run(left, bottom, right, top):
    """A rectangle as a closed run, counter-clockwise."""
    a, b, c, d = left + bottom * 1j, right + bottom * 1j, right + top * 1j, left + top * 1j
    return Line(a, b), Line(b, c), Line(c, d), Line(d, a)


def box_area(canvas, box, tone):
    """Fill a box (left, bottom, right, top)."""
    canvas.area(box_run(*box), tone)


def tick(canvas, start, end, pen):
    """One straight stroke."""
    canvas.line((Line(start, end),), pen)
