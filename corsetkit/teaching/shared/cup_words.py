"""The words to know of the two cup lessons, each with its small drawing."""

from corsetkit.drawing.step_sheet import Drawn
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.geometry.move import slid
from corsetkit.teaching.shared.vignette import card
from corsetkit.words import words_of

TWO = words_of("05_two_part_cup")
THREE = words_of("06_three_part_cup")


def two_part_words(steps):
    """The words of lesson 05, drawn from `steps`."""
    cup, point = steps.two_part_cup, steps.darts.overbust.bust_point
    darts = cup.darts
    thin = [
        Drawn(darts.inner.line, "before"),
        Drawn(darts.outer.line, "before"),
        *(
            Drawn(paths.moved(path, close), "before")
            for path, close in (
                (darts.overbust.top_inner, darts.inner.close),
                (darts.overbust.top_outer, darts.outer.close),
                (darts.overbust.armscye_cup_part, darts.outer.close),
            )
        ),
    ]
    seams = [Drawn(cup.seam.inner, "new"), Drawn(cup.seam.outer, "new")]
    cuts = [Drawn(leg, "before") for leg in (cup.seam.inner_blend.before, cup.seam.outer_blend.before)]
    whole = (point.real - 12.5, point.imag - 9.5, point.real + 15.5, point.imag + 10.5)
    # Lifted apart a little, so that the two strokes are seen as two.
    lifted = [
        Drawn(paths.moved(path, slid(complex(step, 0))), "before")
        for path, step in ((cup.seam.inner, -1.2), (cup.seam.outer, 1.2))
    ]
    return (
        card(
            TWO,
            "inner_cup",
            [*thin, *(Drawn(one.path, "new") for one in (thin[0], thin[2])), seams[0], Drawn(cup.seam.outer, "before")],
            whole,
        ),
        card(
            TWO,
            "outer_cup",
            [
                *thin,
                *(Drawn(one.path, "new") for one in (thin[1], thin[3], thin[4])),
                seams[1],
                Drawn(cup.seam.inner, "before"),
            ],
            whole,
        ),
        card(TWO, "cup_seam", [*thin, *cuts, *seams], whole),
        card(
            TWO,
            "notch",
            [*lifted, *(_stroke(one.path, cup.seam.to_bust_point) for one in lifted)],
            (point.real - 4.5, point.imag - 3.2, point.real + 4.5, point.imag + 3.2),
        ),
    )


def three_part_words(steps):
    """The words of lesson 06, drawn from `steps`."""
    cup, point = steps.three_part_cup, steps.darts.overbust.bust_point
    darts, o = cup.darts, cup.darts.overbust
    turned = lambda path: paths.moved(paths.moved(path, darts.outer.close), cup.close_top)
    upper = [
        cup.upper_centre,
        paths.moved(o.top_inner, darts.inner.close),
        turned(o.top_outer),
        cup.cut_inner,
        cup.cut_outer,
        paths.moved(cup.armscye_upper, cup.close_top),
    ]
    open_cut = paths.moved(cup.cut_outer, cup.close_top.inverse)
    lower = [cup.lower_inner, cup.cut_inner, cup.seam.inner, darts.outer.line, open_cut, cup.seam.outer, cup.armscye_lower]
    box = (point.real - 13, point.imag - 9.5, point.real + 15, point.imag + 13.5)

    def strongly(*lines):
        return [*(Drawn(path, "before") for path in (*upper, *lower)), *(Drawn(path, "new") for path in lines)]

    legs = [
        Drawn((Line(point, move(end)),), "new")
        for end, move in ((o.top_left, darts.inner.close), (o.top_right, darts.outer.close))
    ]
    return (
        card(THREE, "upper_cup", strongly(*upper), box),
        card(THREE, "lower_cups", strongly(*lower), box),
        card(THREE, "cut_across", strongly(cup.cut_inner, cup.cut_outer, open_cut), box),
        card(
            THREE,
            "close_dart",
            [
                *(
                    Drawn(path, "before")
                    for path in (
                        paths.moved(o.top_inner, darts.inner.close),
                        paths.moved(o.top_outer, darts.outer.close),
                        *lower,
                    )
                ),
                *legs,
            ],
            box,
        ),
    )


def _stroke(path, along):
    """A notch, drawn long enough to be seen in a small drawing."""
    at, across = paths.point_along(path, along), paths.tangent_along(path, along) * 0.7j
    return Drawn((Line(at - across, at + across),), "new")
