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
from corsetkit.geometry.curve import Cubic, Line, curve
from corsetkit.geometry.move import slid
from corsetkit.pattern.pattern import Waste
from corsetkit.steps.necklines import yoke_neckline
from corsetkit.units import say_both

LEAST_ABOVE_DART = 1.0
"""Panel kept between the back dart's top and the yoke line, cm."""
NECK_DIP = 0.4
"""How far the new back neckline lies below the old one at the centre back, cm: course convention."""


@dataclass(frozen=True)
class AtLacing:
    """A line from the side towards the centre back, parted where the lacing edge will be: kept, and trimmed."""

    kept: tuple
    trimmed: tuple

    @property
    def edge(self):
        """Where the lacing edge meets the line."""
        return paths.path_end(self.kept)

    @property
    def whole(self):
        return (*self.kept, *self.trimmed)


@dataclass(frozen=True)
class Back:
    """The back's lines, on the back block; those that cross it run from the side to the centre.

    The panels part along `upper_parting`, from the yoke line to the dart's top, along the dart's legs, and along
    `lower_parting`, from its end to the hem; `hem_parts` and `yoke_parts` are hem and yoke line parted there.
    `opening` is the back opening's edge, empty where there is none, from the yoke line to the lacing edge.
    """

    underbust: object
    hem: AtLacing
    hem_parts: tuple
    yoke_line: AtLacing
    yoke_parts: tuple
    armscye_yoke: tuple
    armscye_panel: tuple
    side_below: tuple
    side_past_hem: tuple
    upper_parting: tuple
    lower_parting: tuple
    yoke_neck: complex
    neckline: AtLacing
    opening: tuple
    opening_sewn: float
    modesty: tuple
    warnings: tuple

    @property
    def block(self):
        return self.underbust.block

    @property
    def waist(self):
        return self.underbust.waist

    @cached_property
    def waste(self):
        """What this step cuts away: the neck, the lacing strip, dart and side waist, the opening, below the hem."""
        back, waist = self.block.back, self.waist
        nape = paths.path_end(self.neckline.whole)
        foot = paths.path_end(self.hem.whole)
        made = [
            Waste(
                "back neck",
                "back",
                (
                    Line(back.neck_side, self.yoke_neck),
                    *self.neckline.whole,
                    Line(nape, back.neck_centre),
                    *paths.turned_round(back.neckline),
                ),
            ),
            Waste(
                "lacing gap",
                "back",
                (
                    *self.hem.trimmed,
                    Line(foot, nape),
                    *paths.turned_round(self.neckline.trimmed),
                    Line(self.neckline.edge, self.hem.edge),
                ),
            ),
            Waste(
                "below the back hem",
                "back",
                (
                    *self.side_past_hem,
                    Line(back.hip_side, back.hip_centre),
                    Line(back.hip_centre, foot),
                    *paths.turned_round(self.hem.whole),
                ),
            ),
        ]
        if waist.dart > 1e-9:
            made.append(Waste("back dart", "back", (*waist.legs[0], *paths.turned_round(waist.legs[1]))))
        if waist.at_side > 1e-9:
            made.append(
                Waste(
                    "side waist, taken in",
                    "back",
                    (*back.side_waist, *back.side_hip, *paths.turned_round((*waist.side_waist, *waist.side_hip))),
                )
            )
        if self.opening:
            sewn = paths.cut_along(self.yoke_line.kept, self.opening_sewn)[1]
            made.append(
                Waste(
                    "back opening",
                    "back",
                    (*sewn, Line(self.yoke_line.edge, paths.path_end(self.opening)), *paths.turned_round(self.opening)),
                )
            )
        return tuple(made)


def back(underbust, style):
    """Draw the back's hem, yoke, dart and lacing edge, and the modesty panel.

    Args:
        underbust: the `Underbust`, which already knows how the waist is taken in.
        style: reads its "back" values, yoke_shoulder, and what a fitting adds to the yoke.

    Returns:
        A `Back`.

    Raises:
        CorsetkitError: where yoke, opening or gap do not fit this back.
    """
    half, waist, warnings = underbust.block.back, underbust.waist, []
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
    yoke_parts = paths.cut_at(yoke_line.kept, *parting_top)
    opening, sewn = _opening(yoke_line, neckline, yoke_parts, style, warnings)
    return Back(
        underbust,
        hem,
        paths.cut_at(hem.kept, *parting_foot),
        yoke_line,
        yoke_parts,
        armscye_yoke,
        armscye_panel,
        side_below,
        past,
        (Line(top, waist.dart_top),),
        (Line(waist.dart_end, low),),
        yoke_neck,
        neckline,
        opening,
        sewn,
        _modesty(hem, yoke_line, centre, style),
        tuple(warnings),
    )


def _on_upright(path, x):
    found = paths.on_line(path, complex(x, 0.0), 1j)
    return found[0] if found else None


def _at_lacing(path, x):
    place = _on_upright(path, x)
    if place is None:
        raise CorsetkitError("the lacing gap is wider than this back allows: choose a smaller lacing gap")
    return AtLacing(*paths.cut_at(path, *place))


def _yoke_line(half, style, side, waist, lacing, warnings):
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


def _opening(yoke_line, neckline, yoke_parts, style, warnings):
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
    method = paths.tangent_along(yoke_line.kept, length - width) * 1j
    return (
        Cubic(start, start + method * height * style.opening_roundness, end - width * style.opening_roundness, end),
    ), length - width


def _modesty(hem, yoke_line, centre, style):
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
