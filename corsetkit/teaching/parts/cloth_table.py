"""How much cloth to buy at each usual width, as rows of a table; what is laid once is not laid again."""

from functools import lru_cache

from corsetkit.errors import CorsetkitError
from corsetkit.lay.cloth import WIDTHS, Cloth
from corsetkit.lay.planning import plain_plan
from corsetkit.lay.cloth_length import say_bought, say_width
from corsetkit.teaching.kept_plans import KeptPlanFile, items_by_layer


def cloth_rows(desk, name, finished):
    """(heads, rows, notes): a row for each cloth, with what to buy of each width, laid in rows on single cloth.

    A plan that the learner has kept is named in a note of its own.
    """
    unit = desk.record.unit
    cloths = [Cloth(width=width) for width in WIDTHS]
    items = items_by_layer(finished)
    rows = tuple((layer, *(_bought(mine, cloth, unit) for cloth in cloths)) for layer, mine in items.items())
    kept = KeptPlanFile(desk).read(name, items).plans
    notes = ["Laid plainly, row by row, on single cloth. In lesson 09 a closer lay is looked for, on the cloth you have."]
    notes += [f"The plan you have kept for the {layer}: {say_width(plan.cloth, unit)} wide, laid {plan.cloth.laid}, buy "
              f"{say_bought(plan.length, unit)}." for layer, plan in kept.items()]
    return ("cloth", *(f"{say_width(cloth, unit)} wide" for cloth in cloths)), rows, tuple(notes)


def _bought(items, cloth, unit):
    length = _length(items, cloth)
    return "too narrow" if length is None else say_bought(length, unit)


@lru_cache(maxsize=24)
def _length(items, cloth):
    """The plain lay's length, cm; None where a piece is wider than the cloth. Most sliders leave outlines as they are."""
    try:
        return plain_plan(tuple(items), cloth).length
    except CorsetkitError:
        return None
