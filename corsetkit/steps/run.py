"""The steps run one after another, taking over from an earlier run what has not changed."""

from dataclasses import dataclass

from corsetkit.quantity import quantities
from corsetkit.steps import ORDER
from corsetkit.steps.back import back
from corsetkit.steps.block import block
from corsetkit.steps.darts import darts
from corsetkit.steps.overbust import overbust
from corsetkit.steps.three_part_cup import three_part_cup
from corsetkit.steps.two_part_cup import two_part_cup
from corsetkit.steps.underbust import underbust
from corsetkit.style import Fitting, Style

READS = {
    "block": ("block", "method", "back_dart_place", "top_girth", "hip_girth", "side_seam", "back_yoke"),
    "underbust": (
        "underbust",
        "waist_reduction",
        "reduction_at_side",
        "back_dart_place",
        "lacing_gap",
        "underbust_line",
        "underbust_girth",
        "top_girth",
        "hem_at_the_front",
    ),
    "overbust": ("overbust", "tightening_dart", "cup_to_the_side", "cup_to_the_front"),
    "darts": ("darts",),
    "two_part_cup": ("two_part_cup",),
    "three_part_cup": ("three_part_cup", "cup_seam_roundness"),
    "back": ("back", "yoke_shoulder", "opening_roundness", "back_yoke"),
}
"""The group of style values each step reads, single ones of other groups, and amounts of the fitting, besides what the steps
it rests on read."""

RESTS_ON = {
    "underbust": "block",
    "overbust": "underbust",
    "darts": "overbust",
    "two_part_cup": "darts",
    "three_part_cup": "darts",
    "back": "underbust",
}
"""Which step's value each step begins from."""

STEPS = {
    "block": block,
    "underbust": underbust,
    "overbust": overbust,
    "darts": darts,
    "two_part_cup": two_part_cup,
    "three_part_cup": three_part_cup,
    "back": back,
}


@dataclass(frozen=True)
class Steps:
    """The steps' values for one wearer and style, None for a step that was not drawn.

    Of the two cups only the one that the style asks for is drawn.
    """

    measurements: object
    style: object
    block: object
    underbust: object
    overbust: object
    darts: object
    two_part_cup: object
    three_part_cup: object
    back: object

    @property
    def in_order(self):
        """The values that were drawn, in the order of the steps."""
        return tuple(value for value in (getattr(self, name) for name in STEPS) if value is not None)

    @property
    def cup(self):
        """The cup of this style."""
        return self.three_part_cup or self.two_part_cup


def run_steps(measurements, style, earlier=None, until="back"):
    """Run the steps for a wearer and a style.

    `earlier` is a `Steps` from before: each step that rests on nothing changed since is taken over from it. `until`
    names the last step wanted: what comes after it is not drawn, so it cannot be refused either.
    """
    values, fresh = {}, set()
    unwanted = "two_part_cup" if style.cup_parts == 3 else "three_part_cup"
    wanted = ORDER[: ORDER.index(until) + 1]
    for name, step in STEPS.items():
        base = RESTS_ON.get(name)
        if name == unwanted or name not in wanted:
            values[name] = None
            continue
        old = getattr(earlier, name) if earlier else None
        if base is None:
            same = old is not None and earlier.measurements == measurements
        else:
            same = old is not None and base not in fresh
        if same and not _changed(name, earlier.style, style):
            values[name] = old
            continue
        fresh.add(name)
        values[name] = step(measurements if base is None else values[base], style)
    return Steps(measurements, style, **values)


def reads(name):
    """The declared style values that the step `name` reads itself, in order."""
    return tuple(one for one in quantities(Style) if one.group in READS[name] or one.name in READS[name])


def bears_on(name):
    """The declared style values that bear on the step `name`: what it reads, and what the steps it rests on read."""
    chain = [name]
    while chain[-1] in RESTS_ON:
        chain.append(RESTS_ON[chain[-1]])
    known = {one.name for step in chain for one in reads(step)}
    return tuple(one for one in quantities(Style) if one.name in known)


def _changed(name, before, after):
    fitted = [one for one in quantities(Fitting) if one.name in READS[name]]
    return any(getattr(before, one.name) != getattr(after, one.name) for one in reads(name)) or any(
        getattr(before.fitting, one.name) != getattr(after.fitting, one.name) for one in fitted
    )
