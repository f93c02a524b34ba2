"""The tape laid level round half a block: which stretches of paper it crosses from centre front to centre back."""

from dataclasses import dataclass

from corsetkit.geometry import paths as path
from corsetkit.geometry.curve import Line
from corsetkit.geometry.points import unit

NEAR = 1e-9


@dataclass(frozen=True)
class Level:
    """The tape at one level: the stretches of paper it crosses, in order from centre front to centre back.

    `front` and `back` are tuples of stretches, each a run; what lies between two stretches of a half is its waist dart.
    `name` is "bust", "waist" or "hip" where the level has a measurement, else "". `below_bust` is how far down from the
    bust line it lies on the front, cm, and `height` how far above the waist, on the front too.
    """

    name: str
    below_bust: float
    height: float
    front: tuple
    back: tuple

    @property
    def stretches(self):
        return (*self.front, *self.back)

    @property
    def width(self):
        """What all stretches come to, laid end to end, cm."""
        return sum(map(path.run_length, self.stretches))


def whole_way(block):
    """From the bust line down to the hip, on the front, cm."""
    return block.front.bust_level + block.measurements.waist_to_hip


def to_waist(block):
    """From the bust line down to the waist, on the front, cm."""
    return block.front.bust_level


def level_at(block, below_bust, near=NEAR):
    """The `Level` that lies `below_bust` cm below the bust line; one within `near` of bust, waist or hip is that one."""
    for name, at in (("waist", to_waist(block)), ("hip", whole_way(block)), ("bust", 0.0)):
        if abs(below_bust - at) <= near:
            return _level(block, at, name)
    return _level(block, below_bust, "")


def _level(block, below_bust, name):
    front, back = block.front, block.back
    height = front.bust_level - below_bust
    if name == "bust":
        centre = complex(back.waist_centre.real, back.bust_level)
        return Level(name, below_bust, height, ((Line(complex(0, height), complex(front.width, height)),),),
                     ((Line(centre - back.width, centre),),))
    if height > 0:
        return _above_the_waist(block, below_bust, height, name)
    return Level(name, below_bust, height, _straight(front, complex(0, height), _on_side(front, height)),
                 _straight_back(back, height, _on_side(back, height)))


def _above_the_waist(block, below_bust, height, name):
    """Between waist and bust the front is longer than the back, so the level lies at the same share of the way on both.

    At the side it comes to the same place of the seam on both. On the front it runs level to the waist dart, and from
    there to the side it dips, for the side dart is open: with the dart closed it would lie about level.
    """
    front, back = block.front, block.back
    back_height = height / front.bust_level * back.bust_level
    at_side = _on_side(back, back_height)
    up = _up_to(back, at_side)
    side_leg, centre_leg = _legs_at(front, height)
    inner = (Line(complex(0, height), centre_leg),)
    outer = _to_the_side(block, side_leg, up)
    parts = (inner, outer) if abs(side_leg - centre_leg) > NEAR else (inner + outer,)
    return Level(name, below_bust, height, parts, _straight_back(back, back_height, at_side))


def _straight(half, centre, side):
    """The stretches of a level line from the half's centre to its side, parted by its dart."""
    side_leg, centre_leg = _legs_at(half, centre.imag)
    ends = ((centre, centre_leg), (side_leg, side)) if abs(side_leg - centre_leg) > NEAR else ((centre, side),)
    return tuple((Line(a, b),) for a, b in ends)


def _straight_back(back, height, side):
    """The same on the back, from its side to its centre."""
    stretches = _straight(back, complex(back.waist_centre.real, height), side)
    return tuple(path.turned_round(run) for run in reversed(stretches))


def _legs_at(half, height):
    """Where the level meets the waist dart's legs, the side's first; twice its own line where there is none."""
    none = complex(half.dart_axis, height)
    if not half.dart_legs:
        return none, none
    found = [path.at_level(leg, height) for leg in half.dart_legs]
    return tuple(none if at is None else at for at in found)


def _on_side(half, height):
    """Where the level meets the side seam; at the seam's ends rounding must not miss it."""
    at = path.at_level(half.side, height)
    if at is None:
        at = min((half.underarm, half.waist_side, half.hip_side), key=lambda end: abs(end.imag - height))
    return at


def _up_to(half, point):
    """How far up the side seam from the waist a point of it lies, cm along the seam."""
    up = path.turned_round((*half.side_above, *half.side_waist))
    index, t = min(path.on_line(up, point, 1 + 0j), key=lambda place: abs(up[place[0]].point(place[1]) - point))
    return path.run_length(path.cut_at(up, index, t)[0])


def _to_the_side(block, start, up):
    """From `start` to the place `up` cm above the waist on the front's side seam, its dart closed."""
    front, point = block.front, block.bust_point
    below = path.turned_round(front.side_waist)
    rest = up - path.run_length(below)
    if rest <= NEAR or not block.side_dart:
        side = (*below, *path.turned_round(front.side_above))
        return (Line(start, path.point_along(side, up)),)
    # The level comes out above the dart's mouth: it crosses the dart, from one leg to the same place on the other.
    end = path.point_along(path.turned_round(front.side_above), rest)
    out = abs(block.mouth_upper - point) * (1 - min(1.0, rest / (point.imag - block.mouth_upper.imag)))
    lower, upper = (point + unit(mouth - point) * out for mouth in (block.mouth_lower, block.mouth_upper))
    return Line(start, lower), Line(upper, end)


def gaps(level):
    """The straight ways across the darts, between the stretches of one half."""
    return tuple(Line(path.run_end(a), path.run_start(b)) for half in (level.front, level.back)
                 for a, b in zip(half, half[1:]))
