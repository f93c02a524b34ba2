"""JupyterLab made friendly: its settings in the environment, and how it is started."""
import json
import os
import secrets
import shutil
import socket
import time
import urllib.parse

from . import places, programs

HOST = "127.0.0.1"  # this machine alone; a name might mean another address

RUN_LABEL = "Run this lesson"

# Defaults, not commands: what a learner sets in Lab's own settings still counts.
SETTINGS = {
    # No question about news, no look for updates: both go outside, and both stand in the way.
    "@jupyterlab/apputils-extension:notification": {"fetchNews": "false", "checkForUpdates": False},
    "@jupyterlab/apputils-extension:sessionDialogs": {"skipKernelRestartDialog": True},
    # Sliders and cells are answered by the kernel's one thread, in turn: nothing is drawn from half a change.
    "@jupyterlab/apputils-extension:kernels-settings": {"commsOverSubshells": "disabled"},
    # What the lesson shows once it runs is not the lesson: saved by itself it would take the stored drawings' place
    # and change a tracked file. What a learner chooses is kept elsewhere, as it changes.
    "@jupyterlab/docmanager-extension:plugin": {"autosave": False},
    # One document fills the window; no tabs to get lost in.
    "@jupyterlab/application-extension:shell": {"startMode": "single"},
    "@jupyterlab/notebook-extension:tracker": {
        # Every cell is really on the page, also below the window's edge.
        "windowingMode": "none",
        # A cell that asks something shows no hint about keys for earlier answers.
        "showInputPlaceholder": False,
        "autoStartDefaultKernel": True,
    },
    "@jupyterlab/notebook-extension:panel": {
        "toolbar": [{
            "name": "run-lesson", "command": "notebook:run-all-cells", "label": RUN_LABEL,
            "icon": "ui-components:run", "rank": 0,
        }],
    },
}


# What Lab has no setting for: hidden code leaves no bar, and nothing counts the cells.
STYLE = """\
.jp-Notebook .jp-Cell-inputWrapper:has(> .jp-InputPlaceholder) { display: none; }
.jp-Notebook .jp-OutputPrompt { visibility: hidden; }
"""


def style_file(prefix):
    return os.path.join(places.jupyter_folders(prefix)["JUPYTER_CONFIG_DIR"], "custom", "custom.css")


def settings_file(prefix):
    return os.path.join(prefix, "share", "jupyter", "lab", "settings", "overrides.json")


def write_settings(prefix):
    places.write_if_different(style_file(prefix), STYLE)
    return places.write_if_different(settings_file(prefix), json.dumps(SETTINGS, indent=2) + "\n")


def free_port(wanted=None, first=8888, tries=100):
    """The port asked for, or the first free one; None where it is taken."""
    for port in [wanted] if wanted is not None else range(first, first + tries):
        with socket.socket(socket.AF_INET, socket.SOCK_STREAM) as door:
            if os.name != "nt":
                # As the server itself does: a port just left counts as free. On Windows the same
                # option would let two servers share a port.
                door.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
            try:
                door.bind((HOST, port))
                return port
            except OSError:
                continue
    return None


def address(notebook, port, token):
    """Where the course is met: the lesson's folder is the server's root."""
    return "http://{}:{}/lab/tree/{}?token={}".format(
        HOST, port, urllib.parse.quote(os.path.basename(notebook)), token)


def command(python, notebook, port, browser, root_user):
    words = [python, "-m", "jupyterlab", notebook, "--ip=" + HOST, "--port={}".format(port),
             "--ServerApp.port_retries=0",
             # Ctrl-C ends it without a question; the terminal stays quiet unless something is wrong.
             "-y", "--log-level=WARN", "--LabApp.log_level=WARN",
             # The packages are pinned: Lab offers no others.
             "--LabApp.extension_manager=readonly",
             "--LabApp.custom_css=True"]
    # The list of files beside the lesson shows the lessons alone.
    words += ["--ContentsManager.hide_globs=" + glob for glob in ("*.py", "__pycache__")]
    if not browser:
        words.append("--no-browser")
    if root_user:
        words.append("--allow-root")
    return words


def is_root_user():
    return hasattr(os, "geteuid") and os.geteuid() == 0


def forget_old_tabs(venv):
    """Each start opens the lesson alone, not what was open last time."""
    shutil.rmtree(places.jupyter_folders(venv)["JUPYTERLAB_WORKSPACES_DIR"], ignore_errors=True)


def answers(port):
    try:
        socket.create_connection((HOST, port), timeout=1).close()
        return True
    except OSError:
        return False


def open_lesson(python, notebook, port, browser=True):
    """Start JupyterLab at a lesson, print its address as soon as it answers, wait to its end."""
    venv = places.venv_folder()
    forget_old_tabs(venv)
    token = secrets.token_hex(24)
    # The token goes by the environment: other users of the machine can read a command line.
    program = programs.start(command(python, notebook, port, browser, is_root_user()),
                             more={"JUPYTER_TOKEN": token})
    try:
        while program.poll() is None and not answers(port):
            time.sleep(0.1)
        if program.poll() is None:
            print("The course is open at {}\n(Ctrl-C here ends it.)".format(
                address(notebook, port, token)), flush=True)
    except KeyboardInterrupt:
        pass  # the server hears it as well
    return programs.wait(program)
