"""A drawing as the entities of a DXF block, in millimetres: once with true splines, once with polylines only."""

from contextlib import contextmanager

from corsetkit.geometry.curve import Cubic
from corsetkit.geometry.paths import flattened
from corsetkit.drawing.canvas import JOINED, NOTHING
from corsetkit.drawing.lettering import CAPITALS
from corsetkit.exchange.layers import OF_GROUP, WORDS

MM = 10.0
"""Millimetres in a centimetre."""


class DxfCanvas:
    """Draws into a block (or the model space) of an ezdxf document; words and rings lie on the layer of words.

    A run of straight lines is one polyline. Where the file may hold splines, each cubic is one, with the same control
    points; else runs are polylines within 0.001 cm.
    """

    def __init__(self, block, splines, plain, scale=1.0):
        self.scale = scale
        self._block, self._splines, self._plain = block, splines, plain
        self._layers = (WORDS,)

    def line(self, run, pen, facts=NOTHING):
        for part in _parts(run):
            if self._splines and any(type(curve) is Cubic for curve in part):
                for curve in part:
                    self._curve(curve)
            else:
                self.polyline(flattened(part))

    def area(self, run, tone, facts=NOTHING):
        """A DXF is of lines: areas are left out."""

    def dot(self, at, radius, tone, pen=None):
        self._block.add_circle(xy(at), radius * self.scale, dxfattribs=self._on(WORDS))

    def words(self, at, text, letter, anchor="middle", turn=0.0):
        from ezdxf.enums import TextEntityAlignment as Align

        entity = self._block.add_text(self._plain(text), height=round(letter.size * self.scale * CAPITALS, 4), rotation=turn,
                                      dxfattribs=self._on(WORDS))
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
            self._block.add_open_spline([(*xy(p), 0.0) for p in (curve.start, curve.first, curve.second, curve.end)],
                                        degree=3, dxfattribs=self._on())
        else:
            self._block.add_line(xy(curve.start), xy(curve.end), dxfattribs=self._on())

    def _on(self, layer=None):
        return {"layer": layer or self._layers[-1]}


def xy(point):
    """A point in cm as millimetres."""
    return point.real * MM, point.imag * MM


def _parts(run):
    """The run in stretches without gaps."""
    parts = []
    for curve in run:
        if parts and abs(curve.start - parts[-1][-1].end) <= JOINED:
            parts[-1].append(curve)
        else:
            parts.append([curve])
    return [tuple(part) for part in parts]
