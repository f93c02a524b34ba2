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
RUN_COMMAND = "corsetkit:run-lesson"  # the course's own, see lab_extension/


def hidden(*names):
    """Buttons that Lab brings along and a learner has no use for."""
    return [{"name": name, "disabled": True} for name in names]


# Defaults, not commands: what a learner sets in Lab's own settings still counts.
SETTINGS = {
    # No question about news, no look for updates: both go outside, and both stand in the way.
    "@jupyterlab/apputils-extension:notification": {"fetchNews": "false", "checkForUpdates": False},
    "@jupyterlab/apputils-extension:sessionDialogs": {"skipKernelRestartDialog": True},
    # Sliders and cells are answered by the kernel's one thread, in turn: nothing is drawn from half a change.
    "@jupyterlab/apputils-extension:kernels-settings": {"commsOverSubshells": "disabled"},
    # What a learner chooses is kept elsewhere, as it changes; who edits a lesson's words saves them herself.
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
    # One button above the lesson. What edits or runs single cells is in the menus, and needs no room here.
    "@jupyterlab/notebook-extension:panel": {
        "toolbar": [{
            "name": "run-lesson", "command": RUN_COMMAND, "label": RUN_LABEL,
            "icon": "ui-components:run", "rank": 0,
        }] + hidden("save", "insert", "cut", "copy", "paste", "run", "interrupt", "restart",
                    "restart-and-run", "cellType", "kernelName"),
    },
    "@jupyterlab/cell-toolbar-extension:plugin": {
        "toolbar": hidden("duplicate-cell", "move-cell-up", "move-cell-down", "insert-cell-above",
                          "insert-cell-below", "delete-cell"),
    },
    "@jupyterlab/statusbar-extension:plugin": {"visible": False},
    # The list of files is there to go to another lesson, with one press.
    "@jupyterlab/filebrowser-extension:browser": {
        "singleClickNavigation": True, "showLastModifiedColumn": False,
    },
    "@jupyterlab/filebrowser-extension:widget": {
        "toolbar": hidden("new-launcher", "new-directory", "uploader", "refresh", "toggle-file-filter"),
    },
}


# What Lab has no setting for: hidden code leaves no bar, nothing counts the cells or offers one more, at the
# left edge stand two signs only (the list of files, the list of headings), and the button looks like one.
STYLE = """\
.jp-Notebook .jp-Cell-inputWrapper:has(> .jp-InputPlaceholder) { display: none; }
.jp-Notebook .jp-OutputPrompt { visibility: hidden; }
.jp-Notebook-footer, .jp-DebuggerBugButton { display: none; }
.jp-Notebook .jp-Cell.jp-mod-active { box-shadow: none !important; }
.jp-Notebook .jp-MarkdownOutput { border: 0 !important; }
.jp-Notebook .jp-Collapser, .jp-Notebook .jp-collapseHeadingButton { visibility: hidden; }
.jp-SideBar.jp-mod-left .lm-TabBar-tab:not([data-id="filebrowser"], [data-id="table-of-contents"]) { display: none; }
.jp-ToolbarButtonComponent[data-command="corsetkit:run-lesson"] { border: 1px solid var(--jp-ui-font-color2); }
"""

# The files of Lab's extension of our own; the one that names the other stands last.
EXTENSION = os.path.join(places.HERE, "lab_extension")
EXTENSION_NAME = "corsetkit-lessons"
EXTENSION_FILES = (os.path.join("static", "remoteEntry.lessons.js"), "package.json")

# What the server loads beside Lab; see saving.py. Loaded so, where it cannot be had the server says so and starts all
# the same.
SERVER = {"ServerApp": {"jpserver_extensions": {"corsetkit.setup.saving": True}}}


def style_file(prefix):
    return os.path.join(places.jupyter_folders(prefix)["JUPYTER_CONFIG_DIR"], "custom", "custom.css")


def settings_file(prefix):
    return os.path.join(prefix, "share", "jupyter", "lab", "settings", "overrides.json")


def extensions_folder(prefix):
    return os.path.join(prefix, "share", "jupyter", "labextensions")


def server_folder(prefix):
    """Where the environment's Python looks for settings of Jupyter's server."""
    return os.path.join(prefix, "etc", "jupyter")


def server_file(prefix):
    return os.path.join(server_folder(prefix), "jupyter_server_config.d", EXTENSION_NAME + ".json")


def write_extension(prefix):
    """Put the course's own part of Lab where Lab finds it; whether anything changed."""
    changed = False
    for name in EXTENSION_FILES:
        with open(os.path.join(EXTENSION, name), encoding="utf-8") as file:
            text = file.read()
        there = os.path.join(extensions_folder(prefix), EXTENSION_NAME, name)
        changed = places.write_if_different(there, text) or changed
    return changed


def write_settings(prefix):
    """All that makes Lab friendly, into the environment; whether anything changed."""
    # The button's command before the button.
    changed = write_extension(prefix)
    changed = places.write_if_different(server_file(prefix), json.dumps(SERVER, indent=2) + "\n") or changed
    changed = places.write_if_different(style_file(prefix), STYLE) or changed
    return places.write_if_different(settings_file(prefix), json.dumps(SETTINGS, indent=2) + "\n") or changed


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
