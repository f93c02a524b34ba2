"""What a dressmaker chooses: every style value, declared once, in the order of the steps that read it.

Lengths are centimetres; the customs they come from are in inches, so the steps of the sliders are
eighths and sixteenths of an inch.
"""

from dataclasses import dataclass, replace
from typing import Any, cast

from corsetkit.errors import CorsetkitError
from corsetkit.quantity import Quantity, Value, check_all, declared, given_by_name, quantities
from corsetkit.units import CM_PER_INCH as INCH
from corsetkit.units import shown

EIGHTH = INCH / 8
CUSTOM = "common practice, no source"
COURSE = "course convention"

WEARER, GUIDES = "wearer", "guides"
PASSES = 3
"""For how many passes of the fitting, each of the most that a pass allows, an amount has room: course convention."""


def _fitted(meaning: str, most: float) -> Any:
    """An amount that a fitting adds: zero unless the toile asks for it, and `most` cm a pass either way."""
    return declared(
        meaning,
        unit="cm",
        low=-PASSES * most,
        high=PASSES * most,
        step=0.1,
        default=0.0,
        group="fitting",
        source=COURSE,
        why_range="zero is the draft as it is drawn, so amounts run both ways",
    )


@given_by_name
@dataclass(frozen=True, kw_only=True)
class Fitting:
    """What the fittings so far add to what the steps work out; all zero for a pattern that was never tried on.

    No lesson offers these beside the style's own values: they come from corrections alone, which see what is seen on the
    toile. A correction of a line that is a style value or a measurement moves that, and has nothing here.
    """

    tightening_dart: float = _fitted("how much more the tightening dart takes in all at the overbust mark", 1.2)
    cup_to_the_side: float = _fitted(
        "how much farther towards the side the outer end of the cup's outline lies, at the bust level", 1.0
    )
    cup_to_the_front: float = _fitted(
        "how much farther towards the centre front the inner end of the cup's outline lies, at the bust level", 1.0
    )
    underbust_line: float = _fitted("how much lower the underbust line lies below the bust point", 1.0)
    underbust_girth: float = _fitted(
        "how much larger the corset is round the underbust; the underbust darts take less for it", 2.4
    )
    top_girth: float = _fitted(
        "how much larger the corset is at the bust level, let out evenly at side seams and back seams, and running to "
        "nothing at the waist",
        4.8,
    )
    hip_girth: float = _fitted(
        "how much larger the corset is at the hip, let out evenly at side seams and back seams, from nothing at the waist", 4.8
    )
    side_seam: float = _fitted("how much farther back the side seam stands, for its whole length", 0.6)
    hem_at_the_front: float = _fitted("how much higher the hem lies at the centre front, running to nothing at the side", 1.0)
    back_yoke: float = _fitted("how much longer the back yoke is, from the shoulder down", 1.0)

    def __post_init__(self) -> None:
        check_all(self)

    def replaced(self, **changes: float) -> "Fitting":
        """These amounts with some changed, cm; each is checked like the first."""
        return replace(self, **cast(dict[str, Any], changes))


@given_by_name
@dataclass(frozen=True, kw_only=True)
class Style:
    """The choices of one corset. `Style()` drafts to the wearer; `Style(method="guides")` by the fixed guides.

    >>> style = Style(cup_parts=2, yoke=False)
    >>> style.cup_parts, style.to_the_wearer, style.replaced(method="guides").to_the_wearer
    (2, True, False)
    >>> Style(cup_part=2)
    Traceback (most recent call last):
    corsetkit.errors.CorsetkitError: 'cup_part' is no value of Style: did you mean cup_parts
    """

    # A table of declarations: three lines each, whatever the formatter thinks of it.
    # fmt: off
    method: str = declared(
        "whether darts, cup outline and waist are worked out for the wearer or taken from the fixed guides",
        unit="choice", choices=(WEARER, GUIDES), choice_words=("fitted", "fixed guides"), default=WEARER,
        group="pattern", source=COURSE, formerly=("way",))
    cup_parts: int = declared(
        "of how many parts each cup is sewn",
        unit="count", low=2, high=3, step=1, default=3, group="pattern", source=CUSTOM,
        why_range="a cup of one part or of four is another draft")
    yoke: bool = declared(
        "whether a yoke covers chest and shoulder above the cups",
        unit="yes or no", default=True, group="pattern", source=CUSTOM)

    shoulder_slope: float = declared(
        "how steeply the shoulder falls from neck to tip",
        unit="degrees", low=12, high=34, step=0.5, default=25.8, group="block",
        source="US Army 1988 (Gordon et al. 1989): mean drop 62.9 mm on 144.7 mm",
        why_range="steeper than 34 degrees the shoulder meets the armscye too low to sew")
    underarm_drop: float = declared(
        "how far below the bare underarm the armscye is cut",
        unit="cm", low=1.0, high=4.0, step=0.1, default=2.5, group="block", source=COURSE)
    bust_ease: float = declared(
        "what the block has at the bust beyond the body, all round",
        unit="cm", low=0, high=6, step=EIGHTH, default=0.0, group="block", source=CUSTOM)
    waist_ease: float = declared(
        "what the block has at the waist beyond the body, all round",
        unit="cm", low=0, high=6, step=EIGHTH, default=0.0, group="block", source=CUSTOM)
    hip_ease: float = declared(
        "what the block has at the hip beyond the body, all round",
        unit="cm", low=0, high=6, step=EIGHTH, default=0.0, group="block", source=CUSTOM)
    waist_side_share: float = declared(
        "the side seam's share of what bust has more than waist",
        unit="share", low=0.17, high=0.53, step=0.01, default=0.35, group="block", source=COURSE)
    waist_back_share: float = declared(
        "the back dart's share of what bust has more than waist; the front dart takes the rest",
        unit="share", low=0.12, high=0.38, step=0.01, default=0.25, group="block", source=COURSE)
    underbust_side_share: float = declared(
        "fitted: what the front's side edge takes at the underbust, of half of what bust has more than underbust",
        unit="share", low=0.08, high=0.24, step=0.01, default=0.16, group="block", only=("method", WEARER), source=COURSE)
    underbust_back_share: float = declared(
        "fitted: what the back takes at the underbust, of half of what bust has more than underbust; the cup takes the rest",
        unit="share", low=0.12, high=0.4, step=0.01, default=0.25, group="block", only=("method", WEARER), source=COURSE)

    corset_length: float = declared(
        "fixed guides: the corset's length from the shoulder over the bust point to the hem",
        unit="cm", low=17 * INCH, high=34.5 * INCH, step=EIGHTH, default=23 * INCH, group="underbust",
        only=("method", GUIDES), source=CUSTOM, why_range="half of it would end above the waist")
    hem_share: float = declared(
        "fitted: how far down from waist to hip the hem lies",
        unit="share", low=0.4, high=0.95, step=0.01, default=0.75, group="underbust", only=("method", WEARER),
        source=COURSE, why_range="the block ends at the hip")
    hem_raise: float = declared(
        "how much the hem rises towards the side",
        unit="cm", low=0, high=1.5 * INCH, step=EIGHTH, default=INCH, group="underbust", source=CUSTOM)
    underbust_mark: float = declared(
        "fixed guides: how far below the bust point the underbust mark lies (3 in, 7.6 cm, for a small bust; 3 "
        "1/2 in, 8.9 cm, for a full one)",
        unit="cm", low=1.5 * INCH, high=4.5 * INCH, step=EIGHTH, default=3 * INCH, group="underbust",
        only=("method", GUIDES), source=CUSTOM)
    underbust_dart: float = declared(
        "fixed guides: what the underbust dart takes in all at the underbust mark",
        unit="cm", low=INCH / 2, high=1.5 * INCH, step=EIGHTH, default=INCH, group="underbust",
        only=("method", GUIDES), source=CUSTOM)
    underbust_reduction: float = declared(
        "fitted: how much smaller than the body the corset is at the underbust",
        unit="cm", low=0, high=2 * INCH, step=EIGHTH, default=0.0, group="underbust", only=("method", WEARER),
        source=COURSE)
    dart_side_share: float = declared(
        "how much of the underbust dart lies on the side's side of the upright through the bust point",
        unit="share", low=0.37, high=0.95, step=0.01, default=0.75, group="underbust", source=CUSTOM,
        why_range="beyond the whole dart there is nothing to take")
    dart_lean: float = declared(
        "fitted: how far the underbust dart's own line leans from upright at most, whatever its shares",
        unit="degrees", low=0, high=12, step=0.5, default=4.0, group="underbust", only=("method", WEARER),
        source=COURSE)
    dart_end: float = declared(
        "where the front and back darts end, as a share of the way from waist to hem",
        unit="share", low=0.35, high=0.85, step=0.01, default=0.7, group="underbust", source=COURSE,
        why_range="a dart ends above the hem")

    overbust_mark: float = declared(
        "how far above the bust point the overbust mark lies (usually 3 in, 7.6 cm; 4 in, 10.2 cm, covers more)",
        unit="cm", low=1.5 * INCH, high=4.5 * INCH, step=EIGHTH, default=3 * INCH, group="overbust", source=CUSTOM)
    overbust_armscye: float = declared(
        "how far along the armscye from the underarm point the overbust line ends",
        unit="cm", low=2 * INCH, high=6 * INCH, step=EIGHTH, default=4 * INCH, group="overbust", source=CUSTOM)
    overbust_dart: float = declared(
        "fixed guides: what the tightening dart takes in all at the overbust mark",
        unit="cm", low=INCH / 2, high=1.5 * INCH, step=EIGHTH, default=INCH, group="overbust",
        only=("method", GUIDES), source=CUSTOM)
    centre_front_depth: float = declared(
        "how far below the neck the cups begin at the centre front",
        unit="cm", low=3 * INCH, high=9 * INCH, step=EIGHTH, default=6 * INCH, group="overbust", source=CUSTOM)
    centre_front_taking_in: float = declared(
        "how much is taken in at the centre front where the cups begin",
        unit="cm", low=INCH / 4, high=0.75 * INCH, step=INCH / 16, default=INCH / 2, group="overbust",
        source=CUSTOM)
    centre_front_dart: float = declared(
        "what the centre-front dart takes in all at the centre front",
        unit="cm", low=0.375 * INCH, high=1.125 * INCH, step=INCH / 16, default=0.75 * INCH, group="overbust",
        source=CUSTOM)
    guide_to_front: float = declared(
        "fixed guides: how far the cup reaches from the bust point towards the centre front",
        unit="cm", low=1.5 * INCH, high=4.5 * INCH, step=EIGHTH, default=3 * INCH, group="overbust",
        only=("method", GUIDES), source=CUSTOM)
    guide_to_side: float = declared(
        "fixed guides: how far the cup reaches from the bust point towards the side",
        unit="cm", low=1.75 * INCH, high=5.25 * INCH, step=EIGHTH, default=3.5 * INCH, group="overbust",
        only=("method", GUIDES), source=CUSTOM)
    least_strip: float = declared(
        "the least strip of lower front kept between the cup and the centre front, and between the cup and the "
        "side",
        unit="cm", low=0.75, high=2.25, step=0.05, default=1.5, group="overbust", source=COURSE)
    underarm_along: float = declared(
        "how far along the armscye from the underarm point the underbust line ends",
        unit="cm", low=0.625 * INCH, high=1.875 * INCH, step=EIGHTH, default=1.25 * INCH, group="overbust",
        source=CUSTOM)
    yoke_shoulder: float = declared(
        "how far from the neck along the shoulder the yoke's neckline begins",
        unit="cm", low=0.625 * INCH, high=1.875 * INCH, step=EIGHTH, default=1.25 * INCH, group="overbust",
        source=CUSTOM)
    front_opening: bool = declared(
        "whether the yoke has a shaped opening above the bust",
        unit="yes or no", default=False, group="overbust", source=CUSTOM)
    front_opening_width: float = declared(
        "how wide the yoke's opening is along the overbust line",
        unit="cm", low=INCH, high=3 * INCH, step=EIGHTH, default=2 * INCH, group="overbust",
        only=("front_opening", True), source=COURSE)
    front_opening_height: float = declared(
        "how high the yoke's opening rises above the overbust line",
        unit="cm", low=INCH, high=3 * INCH, step=EIGHTH, default=2 * INCH, group="overbust",
        only=("front_opening", True), source=COURSE)
    opening_roundness: float = declared(
        "how round the openings are, from pointed to full",
        unit="share", low=0.25, high=0.75, step=0.05, default=0.5, group="overbust", source=COURSE)

    blend_reach: float = declared(
        "how far on each side of a closed dart the underbust line is redrawn",
        unit="cm", low=INCH, high=3 * INCH, step=EIGHTH, default=2 * INCH, group="darts", source=COURSE)

    cup_seam_roundness: float = declared(
        "how much of the cup seam's turning lies farther than 2 cm from the bust point at least: 30 % is pointed, 50 % round",
        unit="share", low=0.3, high=0.5, step=0.01, default=0.4, group="two_part_cup", source=COURSE,
        why_range="below that the cup comes to a point, above it the edges cannot open enough")

    cut_depth: float = declared(
        "how far below the top edge the upper cup is cut off, along the cup seam and along the armscye",
        unit="cm", low=1.125 * INCH, high=3.375 * INCH, step=EIGHTH, default=2.25 * INCH, group="three_part_cup",
        only=("cup_parts", 3), source=CUSTOM)
    cut_at_front: float = declared(
        "how far from the centre-front point along the underbust line the cut begins",
        unit="cm", low=0.875 * INCH, high=2.875 * INCH, step=EIGHTH, default=1.875 * INCH, group="three_part_cup",
        only=("cup_parts", 3), source=CUSTOM)
    centre_panels: int = declared(
        "of how many panels the lower front is cut between centre front and dart",
        unit="count", low=1, high=3, step=1, default=1, group="three_part_cup", source=CUSTOM,
        why_range="there is no half panel")
    side_panels: int = declared(
        "of how many panels the lower front is cut between dart and side seam",
        unit="count", low=1, high=3, step=1, default=1, group="three_part_cup", source=CUSTOM,
        why_range="there is no half panel")

    waist_reduction: float = declared(
        "how much smaller than the body the laced corset is at the waist",
        unit="cm", low=0, high=3 * INCH, step=EIGHTH, default=2 * INCH, group="back", source=CUSTOM)
    reduction_at_front: float = declared(
        "the front's share of the waist reduction; the back gives the rest, all of it by custom",
        unit="share", low=0.0, high=0.5, step=0.05, default=0.0, group="back", source=CUSTOM,
        why_range="none is the custom, so it runs from there")
    reduction_at_side: float = declared(
        "the side seam's share of what each half gives at the waist; its dart takes the rest",
        unit="share", low=0.25, high=0.75, step=0.05, default=0.5, group="back", source=CUSTOM)
    back_dart_place: float = declared(
        "where the back dart stands, as a share of the back's width at the waist, from the centre back",
        unit="share", low=0.3, high=0.62, step=0.01, default=0.45, group="back", source=COURSE,
        why_range="nearer than that the lacing and the dart would share their bones")
    lacing_gap: float = declared(
        "the gap left for lacing at the centre back",
        unit="cm", low=1.5 * INCH, high=4.5 * INCH, step=EIGHTH, default=3 * INCH, group="back", source=CUSTOM)
    back_yoke_depth: float = declared(
        "how far below the back neck point the back yoke ends at the centre back",
        unit="cm", low=3.25 * INCH, high=9.75 * INCH, step=EIGHTH, default=6.5 * INCH, group="back", source=COURSE)
    back_yoke_armscye: float = declared(
        "how far along the armscye from the underarm point the back yoke ends",
        unit="cm", low=1.5 * INCH, high=4.5 * INCH, step=EIGHTH, default=3 * INCH, group="back", source=COURSE)
    back_opening: bool = declared(
        "whether the back yoke has a shaped opening at the centre back",
        unit="yes or no", default=False, group="back", source=CUSTOM)
    back_opening_width: float = declared(
        "how far the back opening reaches from the lacing edge along the yoke",
        unit="cm", low=0.75 * INCH, high=2.25 * INCH, step=EIGHTH, default=1.5 * INCH, group="back",
        only=("back_opening", True), source=COURSE)
    back_opening_height: float = declared(
        "how high the back opening rises along the lacing edge",
        unit="cm", low=INCH, high=3 * INCH, step=EIGHTH, default=2 * INCH, group="back",
        only=("back_opening", True), source=COURSE)
    modesty_overlap: float = declared(
        "how far the modesty panel reaches under each side of the lacing",
        unit="cm", low=INCH, high=3 * INCH, step=EIGHTH, default=2 * INCH, group="back", source=CUSTOM)
    modesty_shorter: float = declared(
        "how much shorter than the back the modesty panel is, above and below alike",
        unit="cm", low=0.5, high=2.5, step=0.1, default=1.0, group="back", source=CUSTOM)
    # fmt: on

    fitting: Fitting = Fitting()
    """What fittings add; `draft` sets it from the corrections it is given."""

    def __post_init__(self) -> None:
        check_all(self)
        if not isinstance(self.fitting, Fitting):
            raise CorsetkitError(f"fitting is {shown(self.fitting)}: allowed is a Fitting; give draft corrections instead")

    @property
    def to_the_wearer(self) -> bool:
        return self.method == WEARER

    def replaced(self, **changes: "Value | Fitting") -> "Style":
        """This style with other values; each is checked like the first."""
        return replace(self, **cast(dict[str, Any], changes))


def values_of(step: str) -> tuple[Quantity, ...]:
    """The declared style values that a step reads, in order."""
    return tuple(quantity for quantity in quantities(Style) if quantity.group == step)
