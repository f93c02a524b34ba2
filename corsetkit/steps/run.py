"""The steps run one after another, taking over from an earlier run what has not changed."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Literal, TypeAlias, overload

from corsetkit.measurements import Measurements
from corsetkit.quantity import Quantity, quantities
from corsetkit.steps import ORDER
from corsetkit.steps.back import Back, back
from corsetkit.steps.block import Block, block
from corsetkit.steps.darts import Darts, darts
from corsetkit.steps.overbust import Overbust, overbust
from corsetkit.steps.three_part_cup import ThreePartCup, three_part_cup
from corsetkit.steps.two_part_cup import TwoPartCup, two_part_cup
from corsetkit.steps.underbust import Underbust, underbust
from corsetkit.style import Fitting, Style

StepValue: TypeAlias = Block | Underbust | Overbust | Darts | TwoPartCup | ThreePartCup | Back

READS = {
    "block": (
        "block",
        "method",
        "underbust_reduction",
        "waist_reduction",
        "reduction_at_front",
        "reduction_at_side",
        "back_dart_place",
        "underbust_line",
        "top_girth",
        "hip_girth",
        "side_seam",
        "back_yoke",
    ),
    "underbust": ("underbust", "lacing_gap", "underbust_girth", "hem_at_the_front"),
    "overbust": ("overbust", "tightening_dart", "cup_to_the_side", "cup_to_the_front"),
    "darts": ("darts",),
    "two_part_cup": ("two_part_cup",),
    "three_part_cup": ("three_part_cup", "cup_seam_roundness"),
    "back": ("back", "yoke_shoulder", "opening_roundness", "back_yoke"),
}
"""The group of style values each step reads, single ones of other groups, and amounts of the fitting, besides what the steps
it rests on read. A test watches every step as it reads, and holds this against it."""

RESTS_ON = {
    "underbust": "block",
    "overbust": "underbust",
    "darts": "overbust",
    "two_part_cup": "darts",
    "three_part_cup": "darts",
    "back": "underbust",
}
"""Which step's value each step begins from."""

STEPS: dict[str, Callable[[Any, Style], StepValue]] = {
    "block": block,
    "underbust": underbust,
    "overbust": overbust,
    "darts": darts,
    "two_part_cup": two_part_cup,
    "three_part_cup": three_part_cup,
    "back": back,
}


@dataclass(frozen=True, kw_only=True)
class SomeSteps:
    """The steps' values for one wearer and style, as far as they were wanted; None for a step that was not drawn.

    Of the two cups only the one that the style asks for is drawn.
    """

    measurements: Measurements
    style: Style
    block: Block
    underbust: Underbust | None
    overbust: Overbust | None
    darts: Darts | None
    two_part_cup: TwoPartCup | None
    three_part_cup: ThreePartCup | None
    back: Back | None

    def __repr__(self) -> str:
        drawn = [name for name in STEPS if getattr(self, name) is not None]
        return f"<Steps: {', '.join(drawn)}>"

    @property
    def in_order(self) -> tuple[StepValue, ...]:
        """The values that were drawn, in the order of the steps."""
        return tuple(value for value in (getattr(self, name) for name in STEPS) if value is not None)

    @property
    def cup(self) -> TwoPartCup | ThreePartCup | None:
        """The cup of this style."""
        return self.three_part_cup or self.two_part_cup


@dataclass(frozen=True, kw_only=True, repr=False)
class Steps(SomeSteps):
    """All steps' values for one wearer and style, which is what pieces are cut from."""

    underbust: Underbust
    overbust: Overbust
    darts: Darts
    back: Back

    @property
    def cup(self) -> TwoPartCup | ThreePartCup:
        """The cup of this style."""
        cup = super().cup
        assert cup is not None, "one of the two cups is drawn for every style"
        return cup


@overload
def run_steps(measurements: Measurements, style: Style, earlier: SomeSteps | None = None) -> Steps: ...


@overload
def run_steps(
    measurements: Measurements, style: Style, earlier: SomeSteps | None = None, until: Literal["back"] = "back"
) -> Steps: ...


@overload
def run_steps(
    measurements: Measurements, style: Style, earlier: SomeSteps | None = None, until: str = "back"
) -> SomeSteps: ...


def run_steps(measurements: Measurements, style: Style, earlier: SomeSteps | None = None, until: str = "back") -> SomeSteps:
    """Run the steps for a wearer and a style.

    `earlier` are the steps from before: each step that rests on nothing changed since is taken over from them. `until`
    names the last step wanted: what comes after it is not drawn, so it cannot be refused either.
    """
    values: dict[str, Any] = {}
    fresh: set[str] = set()
    unwanted = "two_part_cup" if style.cup_parts == 3 else "three_part_cup"
    wanted = ORDER[: ORDER.index(until) + 1]
    for name, step in STEPS.items():
        base = RESTS_ON.get(name)
        if name == unwanted or name not in wanted:
            values[name] = None
            continue
        old = getattr(earlier, name) if earlier else None
        if earlier is not None and old is not None:
            same = earlier.measurements == measurements if base is None else base not in fresh
            if same and not _changed(name, earlier.style, style):
                values[name] = old
                continue
        fresh.add(name)
        values[name] = step(measurements if base is None else values[base], style)
    made = Steps if wanted == ORDER else SomeSteps
    return made(measurements=measurements, style=style, **values)


def reads(name: str) -> tuple[Quantity, ...]:
    """The declared style values that the step `name` reads itself, in order."""
    return tuple(one for one in quantities(Style) if one.group in READS[name] or one.name in READS[name])


def bears_on(name: str) -> tuple[Quantity, ...]:
    """The declared style values that bear on the step `name`: what it reads, and what the steps it rests on read."""
    chain = [name]
    while chain[-1] in RESTS_ON:
        chain.append(RESTS_ON[chain[-1]])
    known = {one.name for step in chain for one in reads(step)}
    return tuple(one for one in quantities(Style) if one.name in known)


def _changed(name: str, before: Style, after: Style) -> bool:
    fitted = [one for one in quantities(Fitting) if one.name in READS[name]]
    return any(getattr(before, one.name) != getattr(after, one.name) for one in reads(name)) or any(
        getattr(before.fitting, one.name) != getattr(after.fitting, one.name) for one in fitted
    )
