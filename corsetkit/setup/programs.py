"""Programs started for the user: pytest, JupyterLab, a benchmark. Their exit codes pass through."""
import os
import signal
import subprocess

from . import places


def start(command, root=places.ROOT, more=None):
    surroundings = places.surroundings(places.venv_folder(root))
    surroundings.update(more or {})
    program = subprocess.Popen(command, cwd=root, env=surroundings)
    # Whoever ends this process by its number means the program that it started.
    signal.signal(signal.SIGTERM, lambda *_: program.terminate())
    return program


def wait(program):
    """Wait to the end, also through Ctrl-C: the program hears that itself, and has its last word."""
    while True:
        try:
            code = program.wait()
        except KeyboardInterrupt:
            continue
        # A program that a signal ended has no code of its own; 128 + its number is the custom.
        return code if code >= 0 or os.name == "nt" else 128 - code


def follow(command, root=places.ROOT):
    return wait(start(command, root))
