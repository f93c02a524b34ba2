"""The one long dart on the front, from the bust point through the underbust and the waist to its end above the hem.

Its legs are mirror images about its own line: at the underbust mark they run on as the cup's legs do, so that the
underbust line stays smooth where the panels are sewn; at the waist and at the end they run along the dart's line.
"""

import math

from corsetkit.geometry import paths
from corsetkit.geometry.curve import Cubic, Line
from corsetkit.geometry.points import direction
from corsetkit.geometry.roots import root_near


def long_dart(block, radius, intake, side_share, end_level):
    """The dart of a given intake at the mark: its lean, half angle, leg ends, legs and end."""
    to_side = math.degrees(math.atan2(intake * side_share, radius))
    to_front = math.degrees(math.atan2(intake * (1 - side_share), radius))
    lean, half_angle = (to_side - to_front) / 2, (to_side + to_front) / 2
    down, across = direction(-90 + lean), direction(lean)
    point = block.bust_point
    end = point + down * ((point.imag - end_level) / math.cos(math.radians(lean)))
    waist = point + down * (point.imag / math.cos(math.radians(lean)))

    def legs(width):
        made = []
        for sign in (-1, 1):
            method = direction(-90 + lean + sign * half_angle)
            top, low = point + radius * method, waist + sign * width / 2 * across
            span = abs(low - top)
            path = [Cubic(top, top + method * 0.2 * span, low - down * 0.35 * span, low)]
            if width > 1e-9:
                reach = 0.35 * abs(end - low)
                path.append(Cubic(low, low + down * reach, end - down * reach, end))
            else:
                path.append(Line(low, end))
            made.append(tuple(path))
        return made

    taken = block.front.waist_dart
    width = 0.0
    if taken > 1e-9:

        def missing(width):
            inner, outer = (paths.at_level(leg, 0.0) for leg in legs(width))
            return abs(outer.real - inner.real) - taken

        width = root_near(missing, taken, 0.5 * taken, 1.5 * taken)
    inner_leg, outer_leg = legs(width)
    return lean, half_angle, inner_leg[0].start, outer_leg[0].start, inner_leg, outer_leg, end
