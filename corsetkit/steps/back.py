"""Step 7, the back: the waist taken in, the back yoke, the lacing gap and the modesty panel.

After this step the back's side seam is as long as the front's closed one, above and below the waist mark; the
back yoke's lower edge is as long as the two panels' tops; and the finished waist, the lacing gap counted, is the
body's less the stated reduction.

The custom squares the taken-in dart up to the yoke line; panels and yoke would then not meet there, and the bust
would lose girth, so the dart runs to nothing at the bust level and the panels part along its line above.
"""

from dataclasses import dataclass
from functools import cached_property

from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Cubic, Curves, Line, curve
from corsetkit.geometry.move import slid
from corsetkit.geometry.points import Point
from corsetkit.pattern.pattern import Waste
from corsetkit.steps.back_waist import BackWaist
from corsetkit.steps.block import Block
from corsetkit.steps.half import Half
from corsetkit.steps.necklines import yoke_neckline
from corsetkit.steps.underbust import Underbust
from corsetkit.style import Style
from corsetkit.units import say_both

LEAST_ABOVE_DART = 1.0
"""Panel kept between the back dart's top and the yoke line, cm."""
NECK_DIP = 0.4
"""How far the new back neckline lies below the old one at the centre back, cm: course convention."""


@dataclass(frozen=True, kw_only=True)
class AtLacing:
    """A line from the side towards the centre back, parted where the lacing edge will be: kept, and trimmed."""

    kept: Curves
    trimmed: Curves

    def __repr__(self) -> str:
        return f"<AtLacing {paths.path_length(self.kept):.1f} cm kept, {paths.path_length(self.trimmed):.1f} cm trimmed>"

    @property
    def edge(self) -> Point:
        """Where the lacing edge meets the line."""
        return paths.path_end(self.kept)

    @property
    def whole(self) -> Curves:
        return (*self.kept, *self.trimmed)


@dataclass(frozen=True, kw_only=True)
class Back:
    """The back's lines, on the back block; those that cross it run from the side to the centre.

    The panels part along `upper_parting`, from the yoke line to the dart's top, along the dart's legs, and along
    `lower_parting`, from its end to the hem; `hem_parts` and `yoke_parts` are hem and yoke line parted there.
    `opening` is the back opening's edge, empty where there is none, from the yoke line to the lacing edge.
    """

    underbust: Underbust
    hem: AtLacing
    hem_parts: tuple[Curves, Curves]
    yoke_line: AtLacing
    yoke_parts: tuple[Curves, Curves]
    armscye_yoke: Curves
    armscye_panel: Curves
    side_below: Curves
    side_past_hem: Curves
    upper_parting: Curves
    lower_parting: Curves
    yoke_neck: Point
    neckline: AtLacing
    opening: Curves
    opening_sewn: float
    modesty: tuple[Curves, Curves, Curves, Curves]
    warnings: tuple[str, ...]

    def __repr__(self) -> str:
        lengths = (paths.path_length(line.kept) for line in (self.hem, self.yoke_line))
        return "<Back: hem {:.1f} cm, yoke line {:.1f} cm>".format(*lengths)

    @property
    def block(self) -> Block:
        return self.underbust.block

    @property
    def waist(self) -> BackWaist:
        return self.underbust.waist

    @property
    def neck_waste(self) -> Waste:
        """What lies between the block's neckline and the yoke's."""
        back, nape = self.block.back, paths.path_end(self.neckline.whole)
        return Waste(
            "back neck",
            "back",
            (
                Line(back.neck_side, self.yoke_neck),
                *self.neckline.whole,
                Line(nape, back.neck_centre),
                *paths.turned_round(back.neckline),
            ),
        )

    @property
    def lacing_gap_waste(self) -> Waste:
        """The strip between the lacing edge and the centre back."""
        return Waste(
            "lacing gap",
            "back",
            (
                *self.hem.trimmed,
                Line(paths.path_end(self.hem.whole), paths.path_end(self.neckline.whole)),
                *paths.turned_round(self.neckline.trimmed),
                Line(self.neckline.edge, self.hem.edge),
            ),
        )

    @property
    def hem_waste(self) -> Waste:
        """What of the back lies below the hem."""
        back, foot = self.block.back, paths.path_end(self.hem.whole)
        return Waste(
            "below the back hem",
            "back",
            (
                *self.side_past_hem,
                Line(back.hip_side, back.hip_centre),
                Line(back.hip_centre, foot),
                *paths.turned_round(self.hem.whole),
            ),
        )

    @property
    def dart_waste(self) -> Waste | None:
        """The back dart; None where it takes nothing."""
        if self.waist.dart <= 1e-9:
            return None
        side, centre = self.waist.legs
        return Waste("back dart", "back", (*side, *paths.turned_round(centre)))

    @property
    def side_waist_waste(self) -> Waste | None:
        """What is taken in at the side of the waist; None where that is nothing."""
        back, waist = self.block.back, self.waist
        if waist.at_side <= 1e-9:
            return None
        old, new = paths.parted_alike((*back.side_waist, *back.side_hip), (*waist.side_waist, *waist.side_hip))
        return Waste("side waist, taken in", "back", (*old, *paths.turned_round(new)))

    @property
    def opening_waste(self) -> Waste | None:
        """The back opening; None where there is none."""
        if not self.opening:
            return None
        free = paths.cut_along(self.yoke_line.kept, self.opening_sewn)[1]
        edge = Line(self.yoke_line.edge, paths.path_end(self.opening))
        return Waste("back opening", "back", (*free, edge, *paths.turned_round(self.opening)))

    @cached_property
    def waste(self) -> tuple[Waste, ...]:
        """What this step cuts away."""
        made = (self.dart_waste, self.side_waist_waste, self.opening_waste)
        return self.neck_waste, self.lacing_gap_waste, self.hem_waste, *(one for one in made if one)


def back(underbust: Underbust, style: Style) -> Back:
    """Draw the back's hem, yoke, dart and lacing edge, and the modesty panel.

    Args:
        underbust: the `Underbust`, which already knows how the waist is taken in.
        style: reads its "back" values, yoke_shoulder, and what a fitting adds to the yoke.

    Returns:
        A `Back`.

    Raises:
        CorsetkitError: where yoke, opening or gap do not fit this back.
    """
    half, waist = underbust.block.back, underbust.waist
    warnings: list[str] = []
    centre = half.waist_centre.real
    lacing = centre - style.lacing_gap / 2

    below = paths.path_length(underbust.side_below)
    side_below, past = paths.cut_along(waist.side_hip, below)
    hem_side = paths.path_end(side_below)
    square = side_below[-1].tangent(1.0) * 1j
    foot = complex(centre, underbust.hem_level)
    hem = _at_lacing(
        (Cubic(hem_side, hem_side + square * 0.3 * (centre - hem_side.real), foot - 0.5 * (centre - hem_side.real), foot),),
        lacing,
    )

    whole = paths.path_length(half.armscye)
    if style.back_yoke_armscye > whole - 4:
        raise CorsetkitError(
            f"back yoke armscye is {say_both(style.back_yoke_armscye)}: on this armscye allowed is at most "
            f"{say_both(whole - 4)}"
        )
    armscye_yoke, armscye_panel = paths.cut_along(half.armscye, whole - style.back_yoke_armscye)
    yoke_line = _yoke_line(half, style, paths.path_end(armscye_yoke), waist, lacing, warnings)

    parting_top = _on_upright(yoke_line.kept, waist.axis)
    parting_foot = _on_upright(hem.kept, waist.axis)
    if parting_top is None or parting_foot is None:
        raise CorsetkitError(
            f"lacing gap is {say_both(style.lacing_gap)}: the lacing edge would pass the back dart; choose a "
            "smaller gap or a back dart place farther from the centre"
        )
    yoke_parts, hem_parts = paths.cut_at(yoke_line.kept, *parting_top), paths.cut_at(hem.kept, *parting_foot)
    top, low = (path[i].point(t) for path, (i, t) in ((yoke_line.kept, parting_top), (hem.kept, parting_foot)))
    if top.imag < waist.dart_top.imag + LEAST_ABOVE_DART - 1e-9:
        raise CorsetkitError(
            f"back yoke depth is {say_both(style.back_yoke_depth)} and back yoke armscye "
            f"{say_both(style.back_yoke_armscye)}: the yoke would reach below the top of the back dart; choose "
            "a smaller depth or end it higher on the armscye"
        )

    if style.yoke_shoulder > half.shoulder[0].length - 3:
        raise CorsetkitError(f"yoke shoulder is {say_both(style.yoke_shoulder)}: too little shoulder would be left")
    yoke_neck = paths.point_along(half.shoulder, style.yoke_shoulder)
    neckline = _at_lacing(
        yoke_neckline(yoke_neck, half.shoulder[0].tangent(0), half.neck_centre - 1j * NECK_DIP, -1 + 0j), lacing
    )
    opening, sewn = _opening(yoke_line, neckline, yoke_parts, style, warnings)
    return Back(
        underbust=underbust,
        hem=hem,
        hem_parts=hem_parts,
        yoke_line=yoke_line,
        yoke_parts=yoke_parts,
        armscye_yoke=armscye_yoke,
        armscye_panel=armscye_panel,
        side_below=side_below,
        side_past_hem=past,
        upper_parting=(Line(top, waist.dart_top),),
        lower_parting=(Line(waist.dart_end, low),),
        yoke_neck=yoke_neck,
        neckline=neckline,
        opening=opening,
        opening_sewn=sewn,
        modesty=_modesty(hem, yoke_line, centre, style),
        warnings=tuple(warnings),
    )


def _on_upright(path: Curves, x: float) -> paths.Place | None:
    found = paths.on_line(path, complex(x, 0.0), 1j)
    return found[0] if found else None


def _at_lacing(path: Curves, x: float) -> AtLacing:
    place = _on_upright(path, x)
    if place is None:
        raise CorsetkitError("the lacing gap is wider than this back allows: choose a smaller lacing gap")
    kept, trimmed = paths.cut_at(path, *place)
    return AtLacing(kept=kept, trimmed=trimmed)


def _yoke_line(half: Half, style: Style, side: Point, waist: BackWaist, lacing: float, warnings: list[str]) -> AtLacing:
    """The back yoke's lower edge, level at the centre back, kept above the back dart."""
    depth = style.back_yoke_depth + style.fitting.back_yoke
    level = half.neck_centre.imag - depth
    least = waist.dart_top.imag + LEAST_ABOVE_DART
    if level < least:
        warnings.append(
            f"back yoke depth of {say_both(depth)} would reach the back dart; the yoke ends "
            f"{say_both(half.neck_centre.imag - least)} below the neck"
        )
        level = least
    end = complex(half.waist_centre.real, level)
    return _at_lacing((curve(side, end - side, 1 + 0j, end),), lacing)


def _opening(
    yoke_line: AtLacing, neckline: AtLacing, yoke_parts: tuple[Curves, Curves], style: Style, warnings: list[str]
) -> tuple[Curves, float]:
    """The back opening's edge and how much of the yoke line, from the side, is still sewn."""
    length = paths.path_length(yoke_line.kept)
    if not style.back_opening:
        return (), length
    room = paths.path_length(yoke_parts[1]) - 0.6
    tall = abs(neckline.edge - yoke_line.edge) - 2.0
    width, height = style.back_opening_width, style.back_opening_height
    if width > room or height > tall:
        warnings.append(
            f"the back opening is drawn {say_both(min(width, room))} wide and "
            f"{say_both(min(height, tall))} high, as this back allows"
        )
        width, height = min(width, room), min(height, tall)
    if width < 0.6 or height < 0.6:
        raise CorsetkitError("back opening leaves no room on this back yoke: choose a smaller lacing gap, or no opening")
    start = paths.point_along(yoke_line.kept, length - width)
    end = yoke_line.edge + 1j * height
    upward = paths.tangent_along(yoke_line.kept, length - width) * 1j
    return (
        Cubic(start, start + upward * height * style.opening_roundness, end - width * style.opening_roundness, end),
    ), length - width


def _modesty(hem: AtLacing, yoke_line: AtLacing, centre: float, style: Style) -> tuple[Curves, Curves, Curves, Curves]:
    """Half the modesty panel, the back copied on the fold: hem, fold, top and side as four paths."""
    x = centre - style.lacing_gap / 2 - style.modesty_overlap
    found = []
    for path, lift in ((hem.whole, style.modesty_shorter), (yoke_line.whole, -style.modesty_shorter)):
        place = _on_upright(path, x)
        if place is None:
            raise CorsetkitError("modesty overlap is wider than this back: choose a smaller one")
        found.append(paths.moved(paths.cut_at(path, *place)[1], slid(1j * lift)))
    low, high = found
    return (
        low,
        (Line(paths.path_end(low), paths.path_end(high)),),
        paths.turned_round(high),
        (Line(paths.path_start(high), paths.path_start(low)),),
    )
