"""The words that the block's lesson needs, each with its small drawing."""

from dataclasses import replace

from corsetkit.geometry import paths as path
from corsetkit.geometry.curve import Line
from corsetkit.geometry.move import slid
from corsetkit.drawing.step_values import Drawn, Spot
from corsetkit.showing.lessons.vignette import vignette
from corsetkit.steps.block import block as drawn_block
from corsetkit.teaching.word_cards import Word
from corsetkit.units import CM_PER_INCH

_EASE = 2 * CM_PER_INCH
"""Much ease, so that the small drawing shows it, cm."""


def words(steps):
    """The `Word`s of the block, drawn from `steps`."""
    block = steps.block
    front, back, point = block.front, block.back, block.bust_point
    end = back.waist_centre.real
    whole = (-3, front.hip_side.imag - 3, end + 3, front.neck_side.imag + 3)
    paper = [Drawn(block.front_paper, "before"), Drawn(block.back_paper, "before")]
    eased = _eased_side(steps)
    both = lambda of: [Drawn(tuple(of(half)), "new") for half in (front, back)]  # noqa: E731
    return (
        Word("block", "half a front and half a back that fit the body and have no style yet; every pattern begins from it",
             vignette("Block", "half a front on the left and half a back on the right.",
                      [Drawn(block.front_paper, "new"), Drawn(block.back_paper, "new")], whole)),
        Word("centre front and centre back",
             "the body's middle line; the block ends there, for the other half is its mirror image",
             vignette("Centre front and centre back", "the straight edge on the far left and on the far right.",
                      [*paper, *both(lambda half: (Line(half.neck_centre, half.hip_centre),))], whole)),
        Word("armscye", "the opening for the arm, from the shoulder down to the underarm point",
             vignette("Armscye", "the curve from shoulder to underarm on front and back.",
                      [*paper, *both(lambda half: half.armscye)], whole)),
        Word("ease", "what a garment has beyond the body, so that the wearer can move and breathe",
             vignette("Ease", "the back's side seam close to the body, and the garment's once further out.",
                      [Drawn(block.back_paper, "before"), Drawn(eased, "new")],
                      (back.underarm.real - 7, -8, back.underarm.real + 11, 10),
                      (Spot(path.at_level(eased, 3.0), "garment"), Spot(path.at_level(back.side, -2.0), "body", "before")))),
        Word("waist dart", "a wedge with two points, which takes away cloth at the waist and nothing above and below",
             vignette("Waist dart", "two long narrow wedges, one on the front and one on the back.",
                      [*paper, *(Drawn(_closed(half.dart_legs), "waste") for half in (front, back)),
                       *(Drawn(leg, "new") for half in (front, back) for leg in half.dart_legs)], whole)),
        Word("side dart", "a wedge from the side seam to the bust point; its open end on the seam is the mouth",
             vignette("Side dart", "the wedge whose point is the bust point and whose mouth lies on the side seam.",
                      [Drawn(block.front_paper, "before"), Drawn(block.waste[0].outline, "waste"),
                       Drawn((Line(block.mouth_upper, point), Line(point, block.mouth_lower)), "new")],
                      (point.real - 5, block.mouth_lower.imag - 5, front.width + 6, front.underarm.imag + 3),
                      (Spot(point, "bust point"), Spot(path.point_along((Line(block.mouth_upper, block.mouth_lower),),
                       abs(block.mouth_upper - block.mouth_lower) / 2), "mouth", "before")))),
    )  # fmt: skip


def _eased_side(steps):
    """The back's side seam with much ease, laid so that the centre back is where it was."""
    style = replace(steps.style, bust_ease=_EASE, waist_ease=_EASE, hip_ease=_EASE)
    eased = drawn_block(steps.measurements, style).back
    return path.moved(eased.side, slid(steps.block.back.waist_centre - eased.waist_centre))


def _closed(legs):
    """The dart's outline, from its top down one leg and up the other."""
    return (*legs[0], *path.turned_round(legs[1]))
