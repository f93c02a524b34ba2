"""The words to know of the two cup lessons, each with its small drawing."""

from corsetkit.drawing.step_sheet import Drawn
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.geometry.move import slid
from corsetkit.teaching.shared.vignette import vignette
from corsetkit.teaching.word_cards import Word


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
        Word("inner cup", "the cup's part beside the centre front",
             vignette("Inner cup", "the left one of the two cups drawn strongly.",
                      [*thin, *(Drawn(one.path, "new") for one in (thin[0], thin[2])), seams[0],
                       Drawn(cup.seam.outer, "before")], whole)),
        Word("outer cup", "the cup's part beside the arm; it is sewn to the inner cup",
             vignette("Outer cup", "the right one of the two cups drawn strongly.",
                      [*thin, *(Drawn(one.path, "new") for one in (thin[1], thin[3], thin[4])), seams[1],
                       Drawn(cup.seam.inner, "before")], whole)),
        Word("cup seam", "the seam from the top edge through the bust point to the underbust line",
             vignette("Cup seam", "two curves that come near each other at the bust point.",
                      [*thin, *cuts, *seams], whole)),
        Word("notch", "a short stroke across the sewing line, on both pieces, where the two edges must meet",
             vignette("Notch", "two edges side by side, a short stroke across each of them at the bust point.",
                      [*lifted, *(_stroke(one.path, cup.seam.to_bust_point) for one in lifted)],
                      (point.real - 4.5, point.imag - 3.2, point.real + 4.5, point.imag + 3.2))),
    )  # fmt: skip


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

    def card(title, words, new, more=()):
        thin = [Drawn(path, "before") for path in (*upper, *lower)]
        return vignette(title, words, [*thin, *(Drawn(path, "new") for path in new), *more], box)

    legs = [
        Drawn((Line(point, move(end)),), "new")
        for end, move in ((o.top_left, darts.inner.close), (o.top_right, darts.outer.close))
    ]
    return (
        Word("upper cup", "the cup's part above the cut, in one piece from the centre front to the armscye",
             card("Upper cup", "the long piece above the two others drawn strongly.", upper)),
        Word("lower cups", "the two parts below the cut; the seam between them runs over the bust point",
             card("Lower cups", "the two pieces below drawn strongly.", lower)),
        Word("cut across", "the line along which the upper cup is cut off, and sewn on again",
             card("Cut across", "the lower edge of the upper cup, and the same line on the lower cups.",
                  (cup.cut_inner, cup.cut_outer, open_cut))),
        Word("to close a dart", "to turn one side of the paper about the dart's point until the two legs lie on each other",
             vignette("To close a dart", "the two legs of the tightening dart above the bust point.",
                      [Drawn(path, "before") for path in (paths.moved(o.top_inner, darts.inner.close),
                                                        paths.moved(o.top_outer, darts.outer.close), *lower)] + legs, box)),
    )  # fmt: skip


def _stroke(path, along):
    """A notch, drawn long enough to be seen in a small drawing."""
    at, across = paths.point_along(path, along), paths.tangent_along(path, along) * 0.7j
    return Drawn((Line(at - across, at + across),), "new")
