"""Where things lie, and the variables that the programs started from here get."""
import os
import sysconfig

HERE = os.path.dirname(os.path.abspath(__file__))
ROOT = os.path.dirname(os.path.dirname(HERE))

# The name of each set of pins, from the smaller to the larger: whoever has the larger has both.
COURSE = "pins.txt"
TESTS = "pins_tests.txt"
INSTALLER = "pins_installer.txt"

# A user's own settings must not change a lesson or a test; these are not handed on.
_NOT_HANDED_ON = (
    "PYTHONPATH", "PYTHONHOME", "PYTHONSTARTUP", "JUPYTER_PATH", "JUPYTER_CONFIG_PATH",
    "JUPYTERLAB_DIR", "JUPYTER_RUNTIME_DIR", "VIRTUAL_ENV", "CONDA_PREFIX",
    "PIP_TARGET", "PIP_PREFIX", "PIP_USER", "PIP_REQUIRE_VIRTUALENV", "PIP_NO_BINARY")


def pins_file(name, root=ROOT):
    return os.path.join(root, "corsetkit", "setup", name)


def venv_folder(root=ROOT):
    return os.path.join(root, ".venv")


def venv_python(venv):
    """The environment's Python, called by its path: nobody has to activate anything."""
    if os.name == "nt":
        return os.path.join(venv, "Scripts", "python.exe")
    return os.path.join(venv, "bin", "python")


def site_packages(venv):
    return sysconfig.get_path("purelib", "venv", vars={"base": venv, "platbase": venv})


def jupyter_folders(venv):
    """Jupyter's and IPython's own folders, all inside the environment."""
    inside = os.path.join(venv, "jupyter")
    return {
        "JUPYTER_CONFIG_DIR": os.path.join(inside, "config"),
        "JUPYTER_DATA_DIR": os.path.join(inside, "data"),
        "JUPYTERLAB_SETTINGS_DIR": os.path.join(inside, "settings"),
        "JUPYTERLAB_WORKSPACES_DIR": os.path.join(inside, "workspaces"),
        "IPYTHONDIR": os.path.join(inside, "ipython"),
    }


def surroundings(venv, given=None):
    """The environment variables for every program that runs in the environment."""
    given = os.environ if given is None else given
    kept = {name: value for name, value in given.items() if name not in _NOT_HANDED_ON}
    kept.update(jupyter_folders(venv))
    # Text that goes through a pipe on Windows would otherwise come in an old code page.
    kept["PYTHONUTF8"] = "1"
    return kept


def write_if_different(path, text):
    """Write a small file whole or not at all, and only where it would change."""
    try:
        with open(path, encoding="utf-8") as file:
            if file.read() == text:
                return False
    except (OSError, ValueError):
        pass
    folder = os.path.dirname(path)
    if not os.path.isdir(folder):
        os.makedirs(folder)
    part = path + ".part"
    with open(part, "w", encoding="utf-8", newline="\n") as file:
        file.write(text)
    os.replace(part, path)
    return True


def put_on_path(folder, root=ROOT):
    """Make the package importable: a .pth file in `folder`, the site-packages, holds the root.

    No build tool has to be fetched for that. The line is a statement in plain ASCII, because until
    Python 3.13 a bare path in a .pth file is read in the machine's own code page, and a home folder
    may be called Łukasz.
    """
    line = "import sys; sys.path.append({})\n".format(ascii(root))
    return write_if_different(os.path.join(folder, "corsetkit_course.pth"), line)
