"""What a finished set-up remembers, so that the next start can see whether it still holds.

The stamp is taken away before anything is changed and written last: where it is missing, the
set-up was killed half way, and is done again from nothing.
"""
import hashlib
import json
import os
import platform
import sys

from . import packages, places

NAME = "corsetkit_stamp.json"

NOTHING, ADD, MEND, AFRESH = "nothing", "add", "mend", "afresh"


def this_python():
    # Not the third number: an update of the system's Python keeps the environment working, and
    # a class without network must not be asked to fetch everything again.
    return "{} {}.{} {}".format(
        platform.python_implementation(), sys.version_info[0], sys.version_info[1],
        platform.machine())


def hash_of(path):
    # Read as text: git on Windows may have turned the line ends.
    with open(path, encoding="utf-8") as file:
        return hashlib.sha256(file.read().encode("utf-8")).hexdigest()


def wanted(root, pins):
    """The stamp of a set-up that is finished for `pins` (places.COURSE or places.TESTS)."""
    names = (places.COURSE, places.TESTS) if pins == places.TESTS else (places.COURSE,)
    return {"python": this_python(), "root": root,
            "pins": {name: hash_of(places.pins_file(name, root)) for name in names}}


def read(venv):
    """The stamp found, or None where there is none that can be read."""
    try:
        with open(os.path.join(venv, NAME), encoding="utf-8") as file:
            found = json.load(file)
    except (OSError, ValueError):
        return None
    return found if isinstance(found, dict) else None


def remove(venv):
    try:
        os.remove(os.path.join(venv, NAME))
    except FileNotFoundError:
        pass


def write(venv, value):
    places.write_if_different(os.path.join(venv, NAME), json.dumps(value, indent=1, sort_keys=True) + "\n")


def python_answers(venv):
    """Whether the environment's Python still has the Python that it was made from."""
    if not os.path.exists(places.venv_python(venv)):
        return False
    try:
        with open(os.path.join(venv, "pyvenv.cfg"), encoding="utf-8") as file:
            lines = dict(line.split("=", 1) for line in file if "=" in line)
    except (OSError, ValueError):
        return False
    home = {name.strip(): value.strip() for name, value in lines.items()}.get("home", "")
    return os.path.isdir(home)


def lacking(venv, found):
    """The packages that the set-up of the stamp `found` put in and that have gone since; None where it did not say which."""
    known = found.get("packages")
    return packages.lacking(places.site_packages(venv), known) if isinstance(known, list) else None


def what_to_do(venv, want):
    """NOTHING, ADD (the course is there, the tests' packages are not), MEND (a package has gone since) or AFRESH."""
    found = read(venv)
    if found is None or not python_answers(venv):
        return AFRESH
    if any(found.get(key) != want[key] for key in ("python", "root")):
        return AFRESH
    pins = found.get("pins")
    if not isinstance(pins, dict):
        return AFRESH
    if all(pins.get(name) == value for name, value in want["pins"].items()):
        return NOTHING if lacking(venv, found) == [] else MEND
    course = want["pins"][places.COURSE]
    return ADD if pins == {places.COURSE: course} else AFRESH
