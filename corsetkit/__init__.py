"""corsetkit: a cupped corset drafted from a wearer's measurements, every seam proven before cloth is cut.

    from corsetkit import Measurements, Style, draft, read_wearers

Names are loaded when first asked for, so that `python -m corsetkit.setup` runs before anything is installed.
"""

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


def __getattr__(name):
    if name in _WHERE:
        from importlib import import_module

        return getattr(import_module(f".{_WHERE[name]}", __name__), name)
    raise AttributeError(f"corsetkit has no {name}")
