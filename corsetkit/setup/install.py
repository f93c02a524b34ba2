"""Makes the virtual environment and puts the pinned packages into it."""
import importlib.util
import os
import shutil
import subprocess
import sys

from . import lab, lock, packages, places, problems, stamp

ROOM = 1000 * 1000 * 1000  # bytes: the environment takes 0.5 to 0.7 GB, the downloads some more
LOG = "corsetkit_setup_log.txt"
PIP = ["install", "--no-input", "--disable-pip-version-check", "--retries", "2",
       "--only-binary", ":all:"]


def run(command, held=None):
    """Start a program; give its exit code and all that it said. The one way out of the set-up."""
    more = {"pass_fds": (held,)} if held is not None and os.name != "nt" else {}
    done = subprocess.run(command, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE,
                          stderr=subprocess.STDOUT, env=places.surroundings(places.venv_folder()),
                          **more)
    return done.returncode, done.stdout.decode("utf-8", "replace")


def say(words):
    print(words, flush=True)  # at once, also where the output goes through a pipe


class Work:
    """One set-up: the folder, the way programs are started, and what they said."""

    def __init__(self, root, run=run, say=say):
        self.root, self.run, self.say = root, run, say
        self.venv = places.venv_folder(root)
        self.python = places.venv_python(self.venv)
        self.held = None

    def attempt(self, command, otherwise):
        """Run a program; None, or the problem that it tells of."""
        code, text = self.run(command, self.held)
        self.note(command, code, text)
        return None if code == 0 else problems.of_output(text, self.root, otherwise)

    def note(self, command, code, text):
        """All that the programs said stands in one file; the sentence points to it."""
        try:
            with open(os.path.join(self.venv, LOG), "a", encoding="utf-8") as file:
                file.write("$ {}\n{}\n(ended with {})\n\n".format(" ".join(command), text, code))
        except OSError:
            pass  # on a full disk the sentence alone has to do


def is_there(module):
    return importlib.util.find_spec(module) is not None


def ready(root, pins, run=run, say=say):
    """The environment's Python, after what is missing has been set up."""
    work = Work(root, run, say)
    try:
        want = stamp.wanted(root, pins)
        if stamp.what_to_do(work.venv, want) != stamp.NOTHING:
            os.makedirs(work.venv, exist_ok=True)
            with lock.Lock(work.venv, say=say) as held:
                work.held = held.number
                set_up(work, pins, want)
        finish(work)  # cheap, and a newer clone may bring other settings
    except OSError as error:
        raise problems.of_error(error, root) from error
    return work.python


def again_from_base(root, pins):
    """Started by the environment's own Python: where that is to be made anew, the Python that it
    came from has to do it. The exit code of the whole start, or None where nothing is to be done."""
    want = stamp.wanted(root, pins)
    if stamp.what_to_do(places.venv_folder(root), want) != stamp.AFRESH:
        return None
    if os.name == "nt":
        # Windows keeps the file of a running program, so waiting for the other would not do.
        raise problems.own_python()
    return subprocess.call([sys._base_executable] + sys.argv)


def set_up(work, pins, want):
    todo = stamp.what_to_do(work.venv, want)  # asked again: another set-up may just have ended
    if todo == stamp.NOTHING:
        return
    found, gone = stamp.read(work.venv), ()
    if todo != stamp.AFRESH:
        gone = stamp.lacking(work.venv, found) or ()
    if todo == stamp.MEND:
        # The tests' packages are kept in step, whoever asks.
        want = dict(want, pins=found["pins"])
        pins = places.TESTS if places.TESTS in want["pins"] else places.COURSE
    stamp.remove(work.venv)
    packages.forget(places.site_packages(work.venv), gone)
    if todo == stamp.AFRESH:
        work.say("Setting up the course in the folder .venv: once, about a minute, some 500 MB ...")
        look_for_room(work.root)
        clear(work.venv)
        make_venv(work)
    elif todo == stamp.MEND:
        work.say("Putting back what has gone from the folder .venv{} ...".format(
            ": " + packages.said(gone) if gone else ""))
    else:
        work.say("Adding what the tests need to the folder .venv ...")
    add_packages(work, places.pins_file(pins, work.root))
    look_it_over(work)
    finish(work)
    stamp.write(work.venv, dict(want, packages=packages.names(places.site_packages(work.venv))))
    work.say("The set-up is done.")


def look_for_room(folder):
    if shutil.disk_usage(folder).free < ROOM:
        raise problems.no_room()
    most = longest_root()
    if most is not None and len(folder) > most:
        raise problems.path_too_long(folder, most)


def longest_root():
    """How long the clone's path may be: None where the system does not mind."""
    if os.name != "nt":
        return None
    import winreg
    try:
        with winreg.OpenKey(winreg.HKEY_LOCAL_MACHINE,
                            r"SYSTEM\CurrentControlSet\Control\FileSystem") as key:
            if winreg.QueryValueEx(key, "LongPathsEnabled")[0]:
                return None
    except OSError:
        pass
    return 259 - LONGEST_INSIDE


LONGEST_INSIDE = 170  # characters: the longest path of the pinned packages below the root, and some


def clear(venv):
    """Empty the folder, all but the lock that this set-up holds."""
    for name in os.listdir(venv):
        path = os.path.join(venv, name)
        if name == lock.NAME:
            continue
        if os.path.isdir(path) and not os.path.islink(path):
            shutil.rmtree(path)
        else:
            os.remove(path)


def make_venv(work):
    command = [sys.executable, "-m", "venv", work.venv]
    if not is_there("ensurepip"):
        if not pip_can_serve():
            version = "{}.{}".format(*sys.version_info[:2])
            raise problems.no_ensurepip(version, os.path.exists("/etc/debian_version"))
        command.insert(3, "--without-pip")
    problem = work.attempt(command, "Python could not make a virtual environment in {}: what it said "
                           "stands in {}.".format(work.venv, os.path.join(work.venv, LOG)))
    if problem:
        raise problem


def pip_can_serve():
    """Whether this Python's own pip can install into another environment (pip 22.3 and later)."""
    if not is_there("pip"):
        return False
    import importlib.metadata
    numbers = importlib.metadata.version("pip").split(".")
    return (int(numbers[0]), int(numbers[1])) >= (22, 3)


def pip(work):
    if os.path.isdir(os.path.join(places.site_packages(work.venv), "pip")):
        return [work.python, "-m", "pip"]
    return [sys.executable, "-m", "pip", "--python", work.python]


def add_packages(work, pins):
    """uv first, which takes a quarter of pip's time; plain pip where uv will not do."""
    otherwise = ("The pinned packages could not be installed for {} on {}: what was said stands in "
                 "{}.".format(stamp.this_python(), sys.platform, os.path.join(work.venv, LOG)))
    problem = work.attempt(pip(work) + PIP + ["-r", places.pins_file(places.INSTALLER, work.root)],
                           otherwise)
    if problem is None:
        problem = work.attempt([work.python, "-m", "uv", "pip", "install", "--python", work.python,
                                "--no-build", "-r", pins], otherwise)
    if problem is not None and problem.another_way_may_help:
        work.say("Trying a second way; this takes a few minutes ...")
        problem = work.attempt(pip(work) + PIP + ["-r", pins], otherwise)
    if problem is not None:
        raise problem


def look_it_over(work):
    """The packages with compiled parts are loaded once: a library that the system lacks shows now."""
    problem = work.attempt(
        [work.python, "-c", "import jupyterlab, ipywidgets, anywidget, matplotlib, shapely, reportlab"],
        "The packages were installed, but one of them does not load: what it said stands in {}.".format(
            os.path.join(work.venv, LOG)))
    if problem is not None:
        raise problem


def finish(work):
    places.put_on_path(places.site_packages(work.venv), work.root)
    lab.write_settings(work.venv)
    # Jupyter makes its folders itself; IPython wants the one above its own to be there.
    os.makedirs(os.path.dirname(places.jupyter_folders(work.venv)["IPYTHONDIR"]), exist_ok=True)
