"""The two lacing edges as they stand on the body: how far apart they are, and what of the gap the modesty panel covers."""

from dataclasses import dataclass
from functools import cached_property
from math import asin, cos, degrees, radians, tan

from corsetkit.geometry import paths as path
from corsetkit.geometry.curve import Cubic, Line
from corsetkit.geometry.move import slid, turned_about

EVEN = 0.32
"""Edges whose gaps differ by no more than this, cm (1/8 in), count as parallel: course convention."""
PARALLEL, WIDE_ABOVE, WIDE_BELOW = "parallel", "V", "inverted V"


@dataclass(frozen=True)
class Laced:
    """A `Back` laced, its lacing edges `gap_above` apart at the top and `gap_below` at the hem, cm.

    The centre back stands at nought across; the left half lies as it was drawn, slid and turned, the right one mirrored.
    `yoke` says whether the lacing runs up over the yoke.
    """

    back: object
    gap_above: float
    gap_below: float
    yoke: bool = True

    @property
    def foot(self):
        """The lacing edge's lower end as it was drawn."""
        return self.back.hem.edge

    @property
    def head(self):
        """Its upper end as it was drawn."""
        return self.back.neckline.edge if self.yoke else self.back.yoke_line.edge

    @property
    def length(self):
        return abs(self.head - self.foot)

    @cached_property
    def turn(self):
        """Degrees by which the left half leans outwards above, counter-clockwise."""
        return degrees(asin((self.gap_above - self.gap_below) / 2 / self.length))

    @cached_property
    def move(self):
        """The rigid move that lays the left half."""
        return turned_about(self.foot, self.turn).then(slid(complex(-self.gap_below / 2 - self.foot.real, 0.0)))

    @property
    def top(self):
        """The level of the edges' upper ends as they stand, cm above the waist."""
        return self.foot.imag + self.length * cos(radians(self.turn))

    def gap_at(self, y):
        """How far the edges are apart at the level `y`, cm."""
        return self.gap_below + 2 * (y - self.foot.imag) * tan(radians(self.turn))

    @property
    def shape(self):
        if abs(self.gap_above - self.gap_below) <= EVEN + 1e-9:
            return PARALLEL
        return WIDE_ABOVE if self.gap_above > self.gap_below else WIDE_BELOW

    @property
    def ends(self):
        """Between which levels the modesty panel has its whole width, for its ends may slope: the lower and the upper one."""
        low, _, high, _ = self.back.modesty
        return max(p.imag for p in (path.run_start(low), path.run_end(low))), min(
            p.imag for p in (path.run_start(high), path.run_end(high)))

    @property
    def panel_width(self):
        """How wide the modesty panel is, opened out, cm."""
        fold, side = self.back.modesty[1][0], self.back.modesty[3][0]
        return 2 * abs(fold.start.real - side.start.real)

    def under(self, y):
        """How far the modesty panel reaches under each edge at the level `y`, cm; below nought where skin shows."""
        return (self.panel_width - self.gap_at(y)) / 2

    @cached_property
    def half(self):
        """The left half's cloth beside the lacing edge, as named runs where they lie, counter-clockwise.

        It is torn off beyond what the modesty panel can ever reach, for the rest of the back says nothing here.
        """
        back, torn = self.back, self._torn
        hem, foot = _beyond(back.hem.kept, torn)
        if self.yoke:
            top, head = _beyond((Line(back.block.back.shoulder_tip, back.yoke_neck), *back.neckline.kept), torn)
        else:
            top, head = _beyond(back.yoke_line.kept, torn)
        runs = {"hem": hem, "lacing edge": (Line(self.foot, self.head),),
                "neckline" if self.yoke else "top": path.turned_round(top), "torn": (Line(head, foot),)}
        return {name: path.moved(run, self.move) for name, run in runs.items()}

    @cached_property
    def seams(self):
        """The seams in that cloth: the back dart's, closed as it is sewn, and the yoke's where there is one."""
        back = self.back
        runs = {"back dart seam": (*back.upper_parting, *back.waist.legs[1], *back.lower_parting)}
        if self.yoke:
            runs["back yoke line"] = _beyond(back.yoke_line.kept, self._torn)[0]
        return {name: path.moved(run, self.move) for name, run in runs.items()}

    @property
    def _torn(self):
        """How far from the side the cloth is torn off, on the block."""
        least = path.run_start(self.back.yoke_line.kept).real + 0.3
        return max(least, min(self.foot.real - self.panel_width / 2, self.back.waist.axis) - 1.2)

    @property
    def panel(self):
        """The modesty panel's whole outline, opened out about the centre back."""
        low, _, high, side = (path.moved(run, slid(complex(-self.back.block.back.waist_centre.real, 0.0)))
                              for run in self.back.modesty)
        return (*low, *mirrored(low), *mirrored(side), *mirrored(high), *high, *side)


def _beyond(run, x):
    """What of the run, which runs away from the side, lies beyond `x`, and where that begins."""
    after = path.cut_at(run, *path.on_line(run, complex(x, 0.0), 1j)[0])[1]
    return after, path.run_start(after)


def mirrored(run):
    """The run on the other side of the centre back, run the other way round."""
    flip = lambda p: -p.conjugate()  # noqa: E731
    return tuple(Cubic(flip(c.end), flip(c.second), flip(c.first), flip(c.start)) if isinstance(c, Cubic)
                 else Line(flip(c.end), flip(c.start)) for c in reversed(run))
