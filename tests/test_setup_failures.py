"""Where venv, pip, disk or network fails, one clear sentence is said."""

import errno
import os
import pathlib
import shutil
import sys

import pytest
from pretended_setup import ALL, Programs, change_a_pin, ready, root, stopped  # noqa: F401

from corsetkit.setup import install, places, problems

# What the programs really said, without their addresses.
PIP_NO_NETWORK = """WARNING: Retrying (Retry(total=0, connect=None, read=None, redirect=None, status=None))
after connection broken by 'NewConnectionError('<HTTPSConnection object>: Failed to establish a new
connection: [Errno -3] Temporary failure in name resolution')': /simple/uv/
ERROR: Could not find a version that satisfies the requirement uv==1.0 (from versions: none)
ERROR: No matching distribution found for uv==1.0"""
UV_NO_NETWORK = """error: Failed to fetch
  cause: error sending request
  cause: client error (Connect)
  cause: dns error
  cause: failed to lookup address information: Temporary failure in name resolution"""
UV_DISK_FULL = """error: Failed to install: babel-2.18.0-py3-none-any.whl (babel==2.18.0)
  cause: failed to copy file from a to b: No space left on device (os error 28)"""
PIP_NO_BUILD = "ERROR: No matching distribution found for shapely==2.2.0"


def test_without_network_one_sentence_and_no_second_try(root):
    started, sentence = stopped(root, pip_uv=PIP_NO_NETWORK)
    assert started == ["venv", "pip uv"] and "network did not answer" in sentence
    started, sentence = stopped(root, uv=UV_NO_NETWORK)
    assert started == ["venv", "pip uv", "uv"] and "network did not answer" in sentence


def test_a_strange_certificate_is_told(root):
    text = "SSLError(SSLCertVerificationError(1, 'certificate verify failed')) Max retries exceeded"
    assert "certificate" in stopped(root, pip_uv=text)[1]


def test_a_full_disk_is_told_before_and_during(root, monkeypatch):
    started, sentence = stopped(root, uv=UV_DISK_FULL)
    assert started == ["venv", "pip uv", "uv"] and "disk is full" in sentence
    started, sentence = stopped(root, venv=OSError(errno.ENOSPC, "No space left on device"))
    assert started == ["venv"] and "disk is full" in sentence
    monkeypatch.setattr(shutil, "disk_usage", lambda folder: shutil._ntuple_diskusage(9, 8, install.ROOM - 1))
    started, sentence = stopped(root)
    assert started == [] and "disk is full" in sentence


def test_where_uv_will_not_do_pip_does(root):
    assert ready(root, pip_uv=PIP_NO_BUILD)[0] == ["venv", "pip uv", "pip", "look"]
    change_a_pin(root, places.COURSE)
    started, said = ready(root, uv="error: the cache: Permission denied (os error 13)")
    assert started == ["venv", "pip uv", "uv", "pip", "look"] and "second way" in " ".join(said)


def test_where_nothing_will_do_the_log_is_named(root):
    started, sentence = stopped(root, uv="error: no wheels", pip=PIP_NO_BUILD)
    assert started == ["venv", "pip uv", "uv", "pip"] and install.LOG in sentence
    log = (pathlib.Path(root) / ".venv" / install.LOG).read_text(encoding="utf-8")
    assert PIP_NO_BUILD in log and "error: no wheels" in log


def test_a_package_that_does_not_load_is_told(root):
    started, sentence = stopped(root, look="ImportError: libgeos: cannot open shared object file")
    assert started == ALL and "does not load" in sentence


def test_a_venv_that_cannot_be_made_is_told(root):
    started, sentence = stopped(root, venv="Error: this build is broken")
    assert started == ["venv"] and "virtual environment" in sentence and install.LOG in sentence


def test_a_folder_that_may_not_be_written_in_is_told(root, monkeypatch):
    def refuse(*_, **__):
        raise PermissionError(errno.EACCES, "Permission denied", root)

    monkeypatch.setattr(os, "makedirs", refuse)
    started, sentence = stopped(root)
    assert started == [] and "Nothing may be written in " + root in sentence


def test_a_file_in_use_on_windows_is_told(root):
    error = PermissionError(errno.EACCES, "being used by another process")
    error.winerror = 32
    assert "close the other windows" in str(problems.of_error(error, root))


def test_a_path_too_long_for_windows_is_told(root, monkeypatch):
    monkeypatch.setattr(install, "longest_root", lambda: len(root) - 1)
    started, sentence = stopped(root)
    assert started == [] and "too long" in sentence and str(len(root) - 1) in sentence
    monkeypatch.setattr(install, "longest_root", lambda: len(root))
    assert ready(root)[0] == ALL


# Debian's Python without ensurepip


def without(monkeypatch, *missing):
    monkeypatch.setattr(install, "is_there", lambda name: name not in missing)


def test_without_ensurepip_and_pip_the_remedy_is_named(root, monkeypatch):
    without(monkeypatch, "ensurepip", "pip")
    monkeypatch.setattr(os.path, "exists", lambda path, real=os.path.exists: path == "/etc/debian_version" or real(path))
    started, sentence = stopped(root)
    assert started == []
    assert "sudo apt install python{}.{}-venv".format(*sys.version_info[:2]) in sentence
    assert "apt" not in str(problems.no_ensurepip("3.12", debian=False))


def test_without_ensurepip_this_pythons_own_pip_serves(root, monkeypatch):
    without(monkeypatch, "ensurepip")
    commands = []
    pretended = Programs(root)
    install.ready(
        root, places.COURSE, run=lambda command, held: commands.append(command) or pretended(command), say=lambda _: None
    )
    assert pretended.started == ALL
    assert "--without-pip" in commands[0]
    assert commands[1][:5] == [sys.executable, "-m", "pip", "--python", places.venv_python(places.venv_folder(root))]


def test_with_ensurepip_the_environments_own_pip_is_used(root):
    commands = []
    pretended = Programs(root)
    install.ready(
        root, places.COURSE, run=lambda command, held: commands.append(command) or pretended(command), say=lambda _: None
    )
    assert "--without-pip" not in commands[0]
    assert commands[1][:3] == [places.venv_python(places.venv_folder(root)), "-m", "pip"]


@pytest.mark.parametrize("version, serves", [("22.2.2", False), ("22.3", True), ("23.0.1", True), ("9.0", False)])
def test_only_a_pip_that_can_install_elsewhere_serves(monkeypatch, version, serves):
    monkeypatch.setattr("importlib.metadata.version", lambda name: version)
    assert install.pip_can_serve() is serves
