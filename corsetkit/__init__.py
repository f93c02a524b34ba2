"""corsetkit: a cupped corset drafted from a wearer's measurements, every seam proven before cloth is cut.

    from corsetkit import Measurements, Style, draft, read_wearers

Names are loaded when first asked for, so that `python -m corsetkit.setup` runs before anything is installed.
"""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from corsetkit.drafting import draft as draft
    from corsetkit.errors import CorsetkitError as CorsetkitError
    from corsetkit.measurements import Measurements as Measurements
    from corsetkit.pattern.pattern import Correction as Correction
    from corsetkit.pattern.shown import Shown
    from corsetkit.style import Style as Style
    from corsetkit.wearers import demo_wearers as demo_wearers
    from corsetkit.wearers import read_wearers as read_wearers
    from corsetkit.wearers import write_wearers as write_wearers

__version__ = "0.1.0"

_WHERE = {
    "CorsetkitError": "errors",
    "Measurements": "measurements",
    "Style": "style",
    "Correction": "pattern.pattern",
    "draft": "drafting",
    "read_wearers": "wearers",
    "write_wearers": "wearers",
    "demo_wearers": "wearers",
}

__all__ = [*_WHERE, "__version__"]


def __dir__() -> "list[str]":
    return sorted(__all__)


def __getattr__(name: str) -> object:
    if name in _WHERE:
        from importlib import import_module

        import_module(".pattern.shown", __name__).let_paint(_html_of)
        return getattr(import_module(f".{_WHERE[name]}", __name__), name)
    raise AttributeError(f"corsetkit has no {name}")


def _html_of(value: "Shown") -> str:
    """How a value is drawn: the drawing loads when a value is first looked at."""
    from corsetkit.drawing.shown import html_of

    return html_of(value)
