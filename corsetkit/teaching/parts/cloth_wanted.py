"""Which cloth a lay is wanted on: what can be chosen, and how it is said."""

from dataclasses import dataclass, field, replace

from corsetkit.errors import CorsetkitError
from corsetkit.finish.finished import CLOTHS, SHELL
from corsetkit.lay.cloth import FOLDED, SINGLE, WIDTHS, Cloth


@dataclass(frozen=True)
class Wanted:
    """What is laid, and on what."""

    layer: str = SHELL
    cloth: Cloth = field(default_factory=Cloth)


def lies(cloth):
    """How a cloth lies, in a word or two: "single", "folded, nap"."""
    return f"{cloth.laid}, nap" if cloth.one_way else cloth.laid


def chosen(wanted, message):
    """What is wanted once the page has chosen one thing anew."""
    name, value = message.get("name"), message.get("value")
    if name == "layer" and value in CLOTHS:
        return replace(wanted, layer=value)
    if name == "width" and value in {f"{one:g}" for one in WIDTHS}:
        return replace(wanted, cloth=wanted.cloth.replaced(width=float(value)))
    if name == "laid" and value in (SINGLE, FOLDED):
        return replace(wanted, cloth=wanted.cloth.replaced(laid=value))
    if name == "one_way" and value in ("yes", "no"):
        return replace(wanted, cloth=wanted.cloth.replaced(one_way=value == "yes"))
    raise CorsetkitError(f"{name} {value} cannot be chosen")


def choices(unit):
    """The controls, each as its name, its question and its (value, words), widths in the learner's unit first."""
    both = "{1} in ({0:g} cm)" if unit == "in" else "{0:g} cm ({1} in)"
    return [
        {"name": "layer", "label": "Which cloth?", "options": [[one, one] for one in CLOTHS]},
        {"name": "width", "label": "How wide is it?",
         "options": [[f"{cm:g}", both.format(cm, inches)] for cm, inches in WIDTHS.items()]},
        {"name": "laid", "label": "How does it lie?", "options": [[SINGLE, "single"], [FOLDED, "folded"]]},
        {"name": "one_way", "label": "Does it have a nap?", "options": [["no", "no"], ["yes", "yes, all heads one way"]]},
    ]
