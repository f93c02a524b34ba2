"""Makes the pins anew from pyproject.toml, the one list:

    python tests tests/test_setup.py       once, so that .venv is there
    .venv/bin/python -m corsetkit.setup.pin

(on Windows .venv\\Scripts\\python). It needs the network; nothing else calls it. The pins name
packages and versions for every system and every Python of the course, the hash of each file that
may be fetched for them, and no addresses. The course's pins are a part of the tests' pins: both
kinds of start share one environment.
"""
import subprocess
import sys

from . import places

OPTIONS = ["--universal", "--python-version", "3.11", "--no-header", "--no-annotate",
           "--no-emit-index-url", "--generate-hashes", "--only-binary", ":all:", "--quiet", "--upgrade"]


def compile_pins(name, wanted, *more, given=None):
    command = [sys.executable, "-m", "uv", "pip", "compile", wanted,
               "-o", places.pins_file(name)] + OPTIONS + list(more)
    return subprocess.run(command, cwd=places.ROOT, input=given).returncode


def main():
    # The tests' pins first; the course's are held to them.
    return (compile_pins(places.TESTS, "pyproject.toml", "--extra", "test")
            or compile_pins(places.COURSE, "pyproject.toml",
                            "--constraint", places.pins_file(places.TESTS))
            or compile_pins(places.INSTALLER, "-", given=b"uv"))


if __name__ == "__main__":
    sys.exit(main())
