"""Plans kept as a small text: where each template lies. Outlines are made anew from the items, so that they are one fact."""

import json
import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields
from os import PathLike
from pathlib import Path
from typing import Any

from corsetkit.errors import CorsetkitError
from corsetkit.files import write_whole
from corsetkit.lay.checking import faults
from corsetkit.lay.cloth import Cloth
from corsetkit.lay.items import Item, fingerprint
from corsetkit.lay.plans import Placed, Plan
from corsetkit.lay.templates import template
from corsetkit.units import shown
from corsetkit.words import words_of

WORDS = words_of("lay")

_TOLD = "cutting plans"


@dataclass(frozen=True)
class KeptPlans:
    """The plans by the name of their layer; `obsolete` says in a sentence each which ones are not to be used any more."""

    plans: Mapping[str, Plan]
    obsolete: tuple[str, ...] = ()


def as_data(plan: Plan) -> dict[str, Any]:
    """The plan as plain data: its cloth's values, the fingerprint of the outlines, and how each template lies."""
    return {
        "layer": plan.layer,
        "outlines": plan.fingerprint,
        "plain": plan.plain,
        "cloth": {one.name: getattr(plan.cloth, one.name) for one in fields(Cloth)},
        "placed": [
            {
                "number": one.number,
                "copy": one.copy,
                "turned": one.turned,
                "mirrored": one.mirrored,
                "across": one.at.real,
                "along": one.at.imag,
            }
            for one in plan.placed
        ],
    }


def from_data(data: Mapping[str, Any], items: Iterable[Item]) -> Plan | None:
    """The plan that the data says, equal to the one that was kept; None where the items' outlines have changed since.

    Raises:
        CorsetkitError: one sentence, where the data is no plan, or is one that cannot be cut.
    """
    items = tuple(items)
    try:
        if data["outlines"] != fingerprint(items):
            return None
        cloth, known = Cloth(**data["cloth"]), {item.number: item for item in items}
        placed = tuple(_placed(one, known[one["number"]], cloth) for one in data["placed"])
        plan = Plan(cloth, str(data["layer"]), placed, _finite(data["plain"]), data["outlines"])
        wrong = faults(plan, items)
    except CorsetkitError:
        raise
    except (KeyError, TypeError, ValueError, AttributeError, OverflowError):
        raise CorsetkitError(f"this is no kept cutting plan: {shown(data)}") from None
    if wrong:
        raise CorsetkitError(f"the kept plan cannot be cut: {wrong[0]}")
    return plan


def _placed(one: Mapping[str, Any], item: Item, cloth: Cloth) -> Placed:
    turned, at = _finite(one["turned"]), complex(_finite(one["across"]), _finite(one["along"]))
    mirrored = bool(one["mirrored"])
    at_fold = cloth.folded and item.on_fold
    return Placed(
        item.number,
        item.name,
        int(one["copy"]),
        turned,
        mirrored,
        at_fold,
        at,
        template(item, mirrored, at_fold).laid(turned, at),
    )


def _finite(number: Any) -> float:
    """The number as a float; ValueError where it is none that a place can have."""
    if isinstance(number, (bool, str)) or not math.isfinite(number):
        raise ValueError(f"{number!r} is no place")
    return float(number)


def written(plans: Iterable[Plan]) -> str:
    """The text of plans, one of each layer."""
    return json.dumps({_TOLD: [as_data(plan) for plan in plans]}, indent=1, ensure_ascii=False) + "\n"


def read(text: str, items_by_layer: Mapping[str, tuple[Item, ...]]) -> KeptPlans:
    """What a text says, as `KeptPlans`, for the items of each layer.

    Raises:
        CorsetkitError: one sentence, where the text holds no plans, or one that cannot be cut.
    """
    try:
        told = json.loads(text)[_TOLD]
        layers = [str(data["layer"]) for data in told]
    except (ValueError, KeyError, TypeError, RecursionError):
        raise CorsetkitError(f"these are no kept cutting plans: {shown(str(text)[:60])}") from None
    found: dict[str, Plan] = {}
    obsolete: list[str] = []
    for layer, data in zip(layers, told):
        plan = from_data(data, items_by_layer[layer]) if layer in items_by_layer else None
        if plan:
            found[layer] = plan
        else:
            obsolete.append(WORDS("obsolete", layer=layer))
    return KeptPlans(found, tuple(obsolete))


def write_file(path: str | PathLike[str], plans: Iterable[Plan]) -> None:
    """Write the plans whole, or not at all; CorsetkitError where the disk is in the way."""
    write_whole(path, written(plans).encode("utf-8"))


def read_file(path: str | PathLike[str], items_by_layer: Mapping[str, tuple[Item, ...]]) -> KeptPlans:
    """The file's plans, a byte order mark in front or not; none where there is no file yet.

    CorsetkitError where it cannot be read.
    """
    path = Path(path)
    try:
        text = path.read_bytes().decode("utf-8-sig")
    except FileNotFoundError:
        return KeptPlans({})
    except UnicodeDecodeError:
        raise CorsetkitError(f"{path} was not read: it is no text") from None
    except OSError as error:
        raise CorsetkitError(f"{path} was not read: {error.strerror or 'the disk refused it'}") from None
    try:
        return read(text, items_by_layer)
    except CorsetkitError as refusal:
        raise CorsetkitError(f"{path} was not read: {refusal}") from None
