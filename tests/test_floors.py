"""The house's floors: imports run downwards only, and the drafting chain needs nothing but Python."""

import ast
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
PACKAGE = ROOT / "corsetkit"

# From the ground up; a module may import from its own floor and from those below it.
FLOORS = {
    "words": ("errors", "words", "units", "quantity", "files", "lock", "folders", "folder_record"),
    "geometry": ("geometry",),
    "values": ("measurements", "plausible", "wearers", "style", "pattern"),
    "fitting": ("fitting",),
    "steps": ("steps",),
    "pieces": ("pieces", "drafting"),
    "hand": ("hand",),
    "finish": ("finish",),
    "drawing": ("drawing",),
    "printing": ("printing",),
    "lay": ("lay",),
    "sewing": ("sewing",),
    "export": ("export",),
    "output": ("output", "style_file"),
    "teaching": ("teaching",),
    "command": ("command", "stopping", "__main__"),
}
ALONE = "setup"
"""Runs before anything is installed: it imports nothing of the package, and nothing of the package imports it."""
OUTSIDE = {
    "geometry": {"shapely"},
    "values": {"shapely"},
    "finish": {"shapely"},
    "drawing": set(),
    "printing": {"reportlab", "matplotlib"},
    "export": {"ezdxf"},
    "lay": {"shapely", "spyrrow"},
    "command": {"tqdm"},
    "teaching": {"ipywidgets", "anywidget", "traitlets", "IPython", "nbformat", "nbclient", "matplotlib"},
}
"""What a floor may import from outside the standard library; below printing only inside a function."""

HEIGHTS = {name: height for height, names in enumerate(FLOORS.values()) for name in names}
OF = {name: floor for floor, names in FLOORS.items() for name in names}


def modules():
    for path in sorted(PACKAGE.rglob("*.py")):
        parts = path.relative_to(PACKAGE).with_suffix("").parts
        if parts != ("__init__",):
            yield path, parts


def _for_types(node):
    return isinstance(node, ast.If) and isinstance(node.test, ast.Name) and node.test.id == "TYPE_CHECKING" and not node.orelse


def imports(path, parts):
    """(line, whole dotted name, whether at the module's top) of each import, relative ones made absolute."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    top = set(map(id, tree.body))
    # What is imported for a type checker alone never runs.
    unrun = {id(node) for one in tree.body if _for_types(one) for node in ast.walk(one)}
    package = ["corsetkit", *parts[:-1]]
    for node in ast.walk(tree):
        if id(node) in unrun:
            continue
        if isinstance(node, ast.Import):
            for alias in node.names:
                yield node.lineno, alias.name, id(node) in top
        elif isinstance(node, ast.ImportFrom):
            base = package[: len(package) - node.level + 1] if node.level else []
            name = ".".join([*base, *([node.module] if node.module else [])])
            # `from .. import geometry` names the module in its second half.
            for full in {f"{name}.{alias.name}" for alias in node.names} if name == "corsetkit" else {name}:
                yield node.lineno, full, id(node) in top


def broken(path, parts):
    """A sentence for each import of a module that breaks its floor."""
    place = parts[0]
    for line, name, at_top in imports(path, parts):
        first, _, rest = name.partition(".")
        where = f"{path.relative_to(ROOT)}, line {line}: imports {name}"
        if first == "corsetkit" and rest:
            target = rest.split(".")[0]
            if ALONE in (place, target) and place != target:
                yield f"{where}, but setup stands alone"
            elif place != ALONE and target in HEIGHTS and HEIGHTS[target] > HEIGHTS[place]:
                yield f"{where}, which stands on the floor {OF[target]}, above {OF[place]}"
        elif first not in sys.stdlib_module_names and first != "corsetkit":
            if first not in OUTSIDE.get(OF.get(place), ()):
                yield f"{where}, which the floor {OF.get(place, ALONE)} does without"
            elif at_top and HEIGHTS[place] < HEIGHTS["printing"]:
                yield f"{where} at its top: it must load only when it is first asked for"


def test_every_module_stands_on_a_floor():
    """Each module of the package belongs to exactly one floor, and each floor has its modules."""
    found = {parts[0] for _, parts in modules()}
    assert found == {*HEIGHTS, ALONE}
    assert sum(map(len, FLOORS.values())) == len(HEIGHTS)


def test_imports_run_downwards():
    """No module imports from a floor above its own, nor from outside what its floor may use."""
    wrong = [sentence for path, parts in modules() for sentence in broken(path, parts)]
    assert not wrong, "\n".join(wrong)


@pytest.mark.parametrize(
    "module, line, said",
    [
        ("geometry/curve.py", "from ..style import Style", "above geometry"),
        ("pattern/edge.py", "from corsetkit.steps import block", "above values"),
        ("fitting/correct.py", "from ..steps import run", "above fitting"),
        ("steps/block.py", "from .. import drafting", "above steps"),
        ("pieces/yokes.py", "from ..hand import yoke", "above pieces"),
        ("hand/panels.py", "from ..drawing import views", "above hand"),
        ("finish/bill.py", "from ..drawing import views", "above finish"),
        ("sewing/work.py", "from .. import output", "above sewing"),
        ("lay/packer.py", "from ..sewing import work", "above lay"),
        ("export/dxf.py", "from .. import output", "above export"),
        ("output.py", "from .teaching import desk", "above output"),
        ("teaching/desk.py", "from corsetkit import command", "above teaching"),
        ("finish/cutting_line.py", "import shapely", "at its top"),
        ("drawing/canvas.py", "from ..printing import paper", "above drawing"),
        ("drawing/views.py", "import reportlab", "does without"),
        ("printing/page_rows.py", "from ..export import spread", "above printing"),
        ("printing/finished_print.py", "import ezdxf", "does without"),
        ("lay/packer.py", "import numpy", "does without"),
        ("units.py", "import numpy", "does without"),
        ("steps/darts.py", "import shapely", "does without"),
        ("pattern/piece.py", "import shapely", "at its top"),
        ("setup/pin.py", "from ..errors import CorsetkitError", "stands alone"),
        ("drawing/views.py", "import corsetkit.setup.start", "stands alone"),
    ],
)
def test_a_wrong_import_is_named(tmp_path, module, line, said, monkeypatch):
    """An import that breaks a floor is told with file, line and the floor it breaks."""
    path = tmp_path / "corsetkit" / module
    path.parent.mkdir(parents=True)
    path.write_text('"""A module."""\n' + line + "\n", encoding="utf-8")
    monkeypatch.setattr(sys.modules[__name__], "ROOT", tmp_path)
    sentences = list(broken(path, Path(module).with_suffix("").parts))
    assert len(sentences) == 1 and said in sentences[0] and "line 2" in sentences[0]


def test_an_import_for_types_alone_breaks_no_floor(tmp_path, monkeypatch):
    """Under `if TYPE_CHECKING:` a module may name a type of a floor above it; with an `else`, or beside it, it may not."""
    monkeypatch.setattr(sys.modules[__name__], "ROOT", tmp_path)
    path = tmp_path / "corsetkit/pattern/edge.py"
    path.parent.mkdir(parents=True)
    for tail, found in (("", 0), ("else:\n    from corsetkit import drafting\n", 2), ("from corsetkit import drafting\n", 1)):
        lines = "from typing import TYPE_CHECKING\nif TYPE_CHECKING:\n    from corsetkit.steps.run import Steps\n"
        path.write_text(lines + tail, encoding="utf-8")
        assert len(list(broken(path, ("pattern", "edge")))) == found


ALONE_WITH_PYTHON = """
import sys

class Blocked:
    def find_spec(self, name, path=None, target=None):
        if name.partition(".")[0] not in sys.stdlib_module_names | {"corsetkit"}:
            raise ImportError(f"{name} is blocked")

sys.path = [place for place in sys.path if "site-packages" not in place]
sys.path.insert(0, sys.argv[1])
sys.meta_path.insert(0, Blocked())
from corsetkit import Style, demo_wearers, draft
from corsetkit.drawing.pattern_sheet import pattern_sheet
from corsetkit.drawing.svg import svg_text
for name, body in demo_wearers():
    for style in (Style(), Style(cup_parts=2, yoke=False)):
        picture = svg_text(pattern_sheet(draft(body, style), "in", name))
        assert picture.lstrip().startswith("<svg") and picture.count("<path") > 30, name
try:
    import shapely
except ImportError:
    print("drawn with Python alone")
"""


def test_drafting_and_drawing_need_nothing_but_python():
    """With everything but the standard library blocked, every demo wearer is drafted and drawn as SVG."""
    done = subprocess.run([sys.executable, "-c", ALONE_WITH_PYTHON, str(ROOT)], capture_output=True, text=True, check=False)
    assert done.stdout.strip() == "drawn with Python alone", done.stderr


def test_drafting_and_drawing_ask_for_no_outline():
    """A draft and its drawing never ask for a shapely outline, even where shapely is there."""
    code = (
        "import sys; sys.path.insert(0, sys.argv[1]); from corsetkit import *\n"
        "from corsetkit.drawing.pattern_sheet import pattern_sheet\nfrom corsetkit.drawing.svg import svg_text\n"
        "svg_text(pattern_sheet(draft(demo_wearers()[0][1]))); print('shapely' in sys.modules, 'numpy' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code, str(ROOT)], capture_output=True, text=True, check=False)
    assert done.stdout.split() == ["False", "False"], done.stderr
