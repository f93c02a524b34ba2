"""A drawing as the entities of a DXF block, in millimetres, and the layer that each kind of line stands on.

The numbers are those of ASTM D6673, from memory: they were not held against the standard, and no conformity with it is
claimed. Each layer says in words what it holds.
"""

from contextlib import contextmanager

from corsetkit.drawing.canvas import JOINED, NOTHING
from corsetkit.drawing.lettering import CAPITALS
from corsetkit.geometry.curve import Cubic
from corsetkit.geometry.paths import flattened

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


MM = 10.0
"""Millimetres in a centimetre."""


class DxfCanvas:
    """Draws into a block (or the model space) of an ezdxf document; words and rings lie on the layer of words.

    A path of straight lines is one polyline. Where the file may hold splines, each cubic is one, with the same control
    points; else runs are polylines within 0.001 cm.
    """

    def __init__(self, block, splines, plain, scale=1.0):
        self.scale = scale
        self._block, self._splines, self._plain = block, splines, plain
        self._layers = (WORDS,)

    def line(self, path, pen, facts=NOTHING):
        for part in _parts(path):
            if self._splines and any(type(curve) is Cubic for curve in part):
                for curve in part:
                    self._curve(curve)
            else:
                self.polyline(flattened(part))

    def area(self, path, tone, facts=NOTHING):
        """A DXF is of lines: areas are left out."""

    def dot(self, at, radius, tone, pen=None):
        self._block.add_circle(xy(at), radius * self.scale, dxfattribs=self._on(WORDS))

    def words(self, at, text, letter, anchor="middle", turn=0.0):
        from ezdxf.enums import TextEntityAlignment as Align

        entity = self._block.add_text(
            self._plain(text), height=round(letter.size * self.scale * CAPITALS, 4), rotation=turn, dxfattribs=self._on(WORDS)
        )
        entity.set_placement(xy(at), align={"start": Align.LEFT, "middle": Align.CENTER, "end": Align.RIGHT}[anchor])

    @contextmanager
    def group(self, name, facts=NOTHING):
        self._layers += (OF_GROUP.get(name, self._layers[-1]),)
        yield
        self._layers = self._layers[:-1]

    def polyline(self, points):
        """One polyline; closed where it ends where it begins. A single stroke is a line."""
        points = list(points)
        close = len(points) > 3 and abs(points[0] - points[-1]) <= JOINED
        spots = [xy(p) for p in (points[:-1] if close else points)]
        if len(spots) == 2:
            self._block.add_line(*spots, dxfattribs=self._on())
        elif self._splines:
            self._block.add_lwpolyline(spots, close=close, dxfattribs=self._on())
        else:
            self._block.add_polyline2d(spots, close=close, dxfattribs=self._on())

    def point(self, at, layer):
        self._block.add_point(xy(at), dxfattribs=self._on(layer))

    def _curve(self, curve):
        if type(curve) is Cubic:
            # A cubic is a clamped spline of degree 3 with the same four control points: exactly the same curve.
            self._block.add_open_spline(
                [(*xy(p), 0.0) for p in (curve.start, curve.first, curve.second, curve.end)], degree=3, dxfattribs=self._on()
            )
        else:
            self._block.add_line(xy(curve.start), xy(curve.end), dxfattribs=self._on())

    def _on(self, layer=None):
        return {"layer": layer or self._layers[-1]}


def xy(point):
    """A point in cm as millimetres."""
    return point.real * MM, point.imag * MM


def _parts(path):
    """The path in stretches without gaps."""
    parts = []
    for curve in path:
        if parts and abs(curve.start - parts[-1][-1].end) <= JOINED:
            parts[-1].append(curve)
        else:
            parts.append([curve])
    return [tuple(part) for part in parts]
