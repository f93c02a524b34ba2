"""Makes the pins anew from pyproject.toml, the one list:

    python tests tests/test_setup.py       once, so that .venv is there
    .venv/bin/python -m corsetkit.setup.pin

(on Windows .venv\\Scripts\\python). It needs the network; nothing else calls it. The pins name
packages and versions for every system and every Python of the course, and no addresses. The
course's pins are a part of the tests' pins: both kinds of start share one environment.
"""
import subprocess
import sys

from . import places

OPTIONS = ["--universal", "--python-version", "3.11", "--no-header", "--no-annotate",
           "--no-emit-index-url", "--only-binary", ":all:", "--quiet", "--upgrade"]


def compile_pins(name, *more):
    command = [sys.executable, "-m", "uv", "pip", "compile", "pyproject.toml",
               "-o", places.pins_file(name)] + OPTIONS + list(more)
    return subprocess.call(command, cwd=places.ROOT)


def main():
    # The tests' pins first; the course's are held to them.
    code = compile_pins(places.TESTS, "--extra", "test")
    return code or compile_pins(places.COURSE, "--constraint", places.pins_file(places.TESTS))


if __name__ == "__main__":
    sys.exit(main())
