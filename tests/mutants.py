"""A sample of mutants: small slips planted in the code one by one, and whether the tests notice them.

The slips come from cosmic-ray (8.7), a tool that the course does not need; it lives in an environment of its own, and its
Python runs this file. The tests run with the project's Python, in a copy of the checkout, so nothing here is touched.
Not run with the tests: a mutant takes from four seconds to two minutes.

    python -m venv /elsewhere/mutants
    /elsewhere/mutants/bin/pip install cosmic-ray
    nice /elsewhere/mutants/bin/python tests/mutants.py --python .venv/bin/python --each 25 --seed 1
    nice /elsewhere/mutants/bin/python tests/mutants.py --python .venv/bin/python --each 10 geometry lay/packer

Without names it takes all folders of FOLDERS. From each folder `--each` mutants are drawn by the seed, so that the same seed
on the same code gives the same ones. A mutant is killed when a test fails or takes longer than the limit. The figure is
killed of planted, and it is about the tests, not about the code: a survivor is a line that can be wrong unnoticed. Each is
shown with its change, and calls for a test of what the line is for; where nothing that can be asked of the code tells the
two apart, the line is not needed, or the survivor is named as one that changes nothing.

Left out are slips that any test kills or none can: bit operations and shifts of lengths, a comparison of identity, changes
in annotations, and a decorator taken away.
"""

import argparse
import ast
import os
import random
import re
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).parent.parent
LIMIT = 240
"""Seconds for the tests of one mutant."""

STEPS = "block underbust overbust darts two_part_cup three_part_cup back"
DRAFT = f"seam {STEPS} pattern_values drafting promises step_lines steps_run"
FINISH = "finish_walk finish_notches finish_bill finish_true_seam finish_allowances"
FOLDERS = {
    "geometry": f"geometry canvas {DRAFT} finish_walk finish_notches finish_bill",
    "steps": f"{DRAFT} lesson_overbust",
    "pieces": f"{DRAFT} hand_pieces finish_walk finish_bill",
    "finish": f"{FINISH} sewing style_file listing",
    "lay": "lay_checked lay_kept lay lay_shown cloth_table listing",
}
"""For each folder of corsetkit the test files that touch it and are not slow, the near ones first. A survivor may still be
killed by those of the lessons, the files and the fittings: try them before writing a test."""

ARITHMETIC = re.compile("Add_Sub|Sub_Add|Mul_Div|Div_Mul|Mod_Mul|FloorDiv_Div|Pow_Mul")
COMPARED = re.compile("(Eq|NotEq|Lt|LtE|Gt|GtE)_(Eq|NotEq|Lt|LtE|Gt|GtE)|Is_IsNot|IsNot_Is")
UNARY = re.compile("Delete_.*|USub_UAdd")
OTHERS = {
    "AddNot",
    "NumberReplacer",
    "ZeroIterationForLoop",
    "ReplaceTrueWithFalse",
    "ReplaceFalseWithTrue",
    "ReplaceOrWithAnd",
    "ReplaceAndWithOr",
    "ReplaceContinueWithBreak",
    "ReplaceBreakWithContinue",
    "ExceptionReplacer",
}


def planted(operator):
    """Whether an operator of cosmic-ray makes a slip worth planting."""
    kind = operator.partition("/")[2]
    for start, wanted in (
        ("ReplaceBinaryOperator_", ARITHMETIC),
        ("ReplaceComparisonOperator_", COMPARED),
        ("ReplaceUnaryOperator_", UNARY),
    ):
        if kind.startswith(start):
            return bool(wanted.fullmatch(kind.removeprefix(start)))
    return kind in OTHERS


def annotated(source):
    """(first, last) place of each annotation, a place being (line, column)."""
    found = []
    for node in ast.walk(ast.parse(source)):
        for one in (getattr(node, "annotation", None), getattr(node, "returns", None)):
            if one is not None:
                found.append(((one.lineno, one.col_offset), (one.end_lineno, one.end_col_offset)))
    return found


def mutants(module):
    """(operator's name, which of its places, line) for each slip that can be planted in a module."""
    from cosmic_ray.ast import ast_nodes, get_ast
    from cosmic_ray.commands.init import _operators

    source = module.read_text(encoding="utf-8")
    tree, away = get_ast(source), annotated(source)
    for name, _, operator in _operators({}):
        if planted(name):
            places = (place for node in ast_nodes(tree) for place in operator.mutation_positions(node))
            for number, (start, _) in enumerate(places):
                if not any(first <= tuple(start) < last for first, last in away):
                    yield name, number, start[0]


def copied(into):
    """A copy of what git keeps of the checkout, as it stands now."""
    for name in subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True).stdout.splitlines():
        if (ROOT / name).is_file():
            (into / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(ROOT / name, into / name)
    return into


def ordered(folder, module):
    """The folder's test files, those that name the module first."""
    files = [f"tests/test_{name}.py" for name in dict.fromkeys(FOLDERS[folder].split())]
    near = re.compile(rf"corsetkit\.{folder}\.{module.stem}\b|corsetkit\.{folder} import .*\b{module.stem}\b")
    return sorted(files, key=lambda name: not near.search((ROOT / name).read_text(encoding="utf-8")))


def survives(python, copy, files):
    """Whether no test of the files fails within the limit; the nearest two are asked first, for most mutants fail there."""
    env = {**os.environ, "PYTHONDONTWRITEBYTECODE": "1", "PYTHONPATH": str(copy)}
    end = time.monotonic() + LIMIT
    for some in filter(None, (files[:2], files[2:])):
        words = [python, "-m", "pytest", "-x", "-q", "-p", "no:cacheprovider", *some]
        silent = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL}
        tests = subprocess.Popen(words, cwd=copy, env=env, start_new_session=True, **silent)
        try:
            if tests.wait(end - time.monotonic()):
                return False
        except subprocess.TimeoutExpired:
            os.killpg(tests.pid, signal.SIGKILL)
            tests.wait()
            return False
    return True


def main(words):
    from cosmic_ray.mutating import mutate_code
    from cosmic_ray.plugins import get_operator

    parser = argparse.ArgumentParser(prog="tests/mutants.py", description=__doc__.splitlines()[0])
    parser.add_argument("--python", required=True, help="the Python that runs the tests")
    parser.add_argument("--each", type=int, default=25, help="how many mutants of each name")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--plan", action="store_true", help="only say what would be planted")
    parser.add_argument("names", nargs="*", default=list(FOLDERS), help="folders, or folder/module")
    chosen = parser.parse_args(words)
    python = os.path.abspath(chosen.python)
    with tempfile.TemporaryDirectory() as place:
        copy, killed, planted_all = copied(Path(place)), 0, 0
        # Compiled once and known by their bytes: a mutant may have time and size from the one before.
        by_bytes = [python, "-m", "compileall", "-q", "--invalidation-mode", "checked-hash", "corsetkit"]
        subprocess.run(by_bytes, cwd=copy, check=True)
        for name in chosen.names:
            folder, _, one = name.partition("/")
            modules = sorted((copy / "corsetkit" / folder).glob(f"{one or '*'}.py"))
            all_of_them = [(module, *mutant) for module in modules for mutant in mutants(module)]
            drawn = random.Random(chosen.seed).sample(all_of_them, min(chosen.each, len(all_of_them)))
            dead = 0
            for module, operator, number, line in drawn:
                source = module.read_text(encoding="utf-8")
                changed = mutate_code(source, get_operator(operator)(), number)
                where = f"{folder}/{module.name}:{line}"
                said = [
                    f"      {mark} {text.strip()}"
                    for before, after in zip(source.splitlines(), changed.splitlines())
                    if before != after
                    for mark, text in (("-", before), ("+", after))
                ]
                began, alive = time.monotonic(), None
                if not chosen.plan:
                    module.write_text(changed, encoding="utf-8")
                    alive = survives(python, copy, ordered(folder, module))
                    module.write_text(source, encoding="utf-8")
                    dead += not alive
                took = time.monotonic() - began
                print(
                    {True: "SURVIVED", False: "killed", None: "planned"}[alive], where, operator, f"{took:.0f} s", flush=True
                )
                if alive is not False:
                    print("\n".join(said), flush=True)
            killed, planted_all = killed + dead, planted_all + len(drawn)
            print(f"{name}: {dead} killed of {len(drawn)} planted, drawn from {len(all_of_them)}", flush=True)
        print(f"{killed} killed of {planted_all} planted, seed {chosen.seed}")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
