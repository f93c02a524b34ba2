"""Where the set-up puts things, and JupyterLab as a learner meets it."""

import copy
import json
import os
import pathlib
import re
import socket
import subprocess
import sys

import jsonschema
import pytest

from corsetkit.setup import install, lab, places, saving


def test_a_pth_file_makes_any_path_importable(tmp_path):
    root = tmp_path / "Łukasz's kürs"
    (root / "corset_probe").mkdir(parents=True)
    (root / "corset_probe" / "__init__.py").write_text("word = 'found'\n")
    site = tmp_path / "site"
    assert places.put_on_path(str(site), str(root)) is True
    assert places.put_on_path(str(site), str(root)) is False
    program = "import site, sys; site.addsitedir(sys.argv[1]); import corset_probe; print(corset_probe.word)"
    done = subprocess.run([sys.executable, "-I", "-c", program, str(site)], capture_output=True, text=True)
    assert (done.stdout, done.stderr) == ("found\n", "")
    # Plain ASCII, so that no code page of any system reads it otherwise.
    (pth,) = site.iterdir()
    assert pth.suffix == ".pth" and pth.read_bytes().isascii()


def test_a_users_own_settings_do_not_reach_the_course():
    given = {"PATH": "kept", "PYTHONPATH": "x", "JUPYTER_PATH": "x", "JUPYTER_CONFIG_DIR": "x", "PIP_USER": "1"}
    got = places.surroundings("/clone/.venv", given)
    assert got["PATH"] == "kept"
    assert not {"PYTHONPATH", "JUPYTER_PATH", "PIP_USER"} & set(got)
    for name in (
        "JUPYTER_CONFIG_DIR",
        "JUPYTER_DATA_DIR",
        "JUPYTERLAB_SETTINGS_DIR",
        "JUPYTERLAB_WORKSPACES_DIR",
        "IPYTHONDIR",
    ):
        assert got[name].startswith(os.path.join("/clone/.venv", "")), name


def test_the_longest_path_of_the_packages_is_known():
    # Windows without long paths: the set-up tells beforehand how long the clone's path may be.
    venv = places.venv_folder()
    longest = max(
        len(os.path.relpath(os.path.join(folder, name), places.ROOT)) for folder, _, files in os.walk(venv) for name in files
    )
    assert longest < install.LONGEST_INSIDE + 10


@pytest.mark.parametrize("plugin", sorted(lab.SETTINGS))
def test_labs_settings_are_ones_that_this_lab_knows(plugin):
    package, _, name = plugin.partition(":")
    schemas = os.path.join(sys.prefix, "share", "jupyter", "lab", "schemas")
    with open(os.path.join(schemas, *package.split("/"), name + ".json"), encoding="utf-8") as file:
        schema = json.load(file)
    assert set(lab.SETTINGS[plugin]) <= set(schema["properties"])
    jsonschema.validate(lab.SETTINGS[plugin], {**schema, "$id": "urn:schema"})


def test_labs_settings_lie_where_lab_reads_them():
    from jupyterlab.commands import get_app_dir

    path = lab.settings_file(sys.prefix)
    assert os.path.dirname(path) == os.path.join(get_app_dir(), "settings")
    assert json.loads(pathlib.Path(path).read_text(encoding="utf-8")) == lab.SETTINGS


def test_labs_style_lies_where_the_course_lets_lab_look(tmp_path):
    lab.write_settings(str(tmp_path))
    folder = places.surroundings(str(tmp_path), {})["JUPYTER_CONFIG_DIR"]
    assert pathlib.Path(folder, "custom", "custom.css").read_text(encoding="utf-8") == lab.STYLE
    assert "--LabApp.custom_css=True" in lab.command("py", "a", 8890, True, False)


def test_labs_own_part_is_written_whole_and_once(tmp_path):
    assert lab.write_settings(str(tmp_path)) is True
    assert lab.write_settings(str(tmp_path)) is False
    there = tmp_path / "share" / "jupyter" / "labextensions" / lab.EXTENSION_NAME
    written = {str(path.relative_to(there)) for path in there.rglob("*") if path.is_file()}
    kept = {str(path.relative_to(lab.EXTENSION)) for path in pathlib.Path(lab.EXTENSION).rglob("*") if path.is_file()}
    assert written == kept == set(lab.EXTENSION_FILES)
    for name in written:
        assert (there / name).read_bytes() == pathlib.Path(lab.EXTENSION, name).read_bytes()
    # Cut short or of an older clone, one file is written again and nothing is left beside it.
    for name in written:
        (there / name).write_text("cut sho")
        assert lab.write_settings(str(tmp_path)) is True
        assert (there / name).read_bytes() == pathlib.Path(lab.EXTENSION, name).read_bytes()
    assert {str(path.relative_to(there)) for path in there.rglob("*") if path.is_file()} == written


def test_lab_finds_its_own_part_and_what_it_loads_from_it(tmp_path):
    from jupyter_core.paths import jupyter_path
    from jupyterlab_server.config import get_federated_extensions

    assert lab.extensions_folder(sys.prefix) in jupyter_path("labextensions")
    lab.write_extension(str(tmp_path))
    found = get_federated_extensions([lab.extensions_folder(str(tmp_path))])
    assert list(found) == [lab.EXTENSION_NAME]
    build = found[lab.EXTENSION_NAME]["jupyterlab"]["_build"]
    assert os.path.join(*build["load"].split("/")) in lab.EXTENSION_FILES
    assert build["extension"] == "./extension"


def test_the_environment_has_labs_own_part_as_it_is_now():
    for name in lab.EXTENSION_FILES:
        there = pathlib.Path(lab.extensions_folder(sys.prefix), lab.EXTENSION_NAME, name)
        assert there.read_bytes() == pathlib.Path(lab.EXTENSION, name).read_bytes()
    assert json.loads(pathlib.Path(lab.server_file(sys.prefix)).read_text(encoding="utf-8")) == lab.SERVER


def test_labs_own_part_bears_the_names_that_the_settings_use_and_no_address():
    script = pathlib.Path(lab.EXTENSION, lab.EXTENSION_FILES[0]).read_text(encoding="utf-8")
    for text in (lab.RUN_COMMAND, lab.RUN_LABEL, lab.EXTENSION_NAME):
        assert f'"{text}"' in script
    assert lab.RUN_COMMAND in lab.STYLE
    assert not re.search("http|//[a-z]+[.]|fetch|import[ (]", script.replace("from corsetkit.teaching import", ""))
    assert script.isascii()


def test_labs_own_part_knows_a_lesson_by_the_line_that_the_builder_writes():
    script = pathlib.Path(lab.EXTENSION, lab.EXTENSION_FILES[0]).read_text(encoding="utf-8")
    (line,) = re.findall('OF_A_LESSON = "(.+)";', script)
    lessons = sorted(pathlib.Path(places.ROOT, "lessons").glob("*.ipynb"))
    assert lessons
    for path in lessons:
        code = [cell for cell in json.loads(path.read_text(encoding="utf-8"))["cells"] if cell["cell_type"] == "code"]
        assert code and all("".join(cell["source"]).startswith(line) for cell in code), path.name


def test_labs_own_part_and_the_server_know_a_lesson_by_the_same_line():
    """What the page takes for a lesson the server takes for one too."""
    script = pathlib.Path(lab.EXTENSION, lab.EXTENSION_FILES[0]).read_text(encoding="utf-8")
    assert re.findall('OF_A_LESSON = "(.+)";', script) == [saving.OF_A_LESSON]


def saver(folder):
    """Saves as the server does, with the course's part of it, and gives the file's new bytes."""
    from jupyter_server.services.contents.largefilemanager import LargeFileManager

    manager = LargeFileManager(root_dir=str(folder))
    saving._load_jupyter_server_extension(type("Server", (), {"contents_manager": manager}))

    def save(name, content):
        manager.save({"type": "notebook", "format": "json", "content": copy.deepcopy(content)}, name)
        return (folder / name).read_bytes()

    return save


def as_run(notebook):
    """The notebook as the page has it once it has run: sliders, and what a kernel tells of itself."""
    live = {
        "output_type": "display_data",
        "metadata": {},
        "data": {"application/vnd.jupyter.widget-view+json": {"model_id": "1"}},
    }
    for cell in notebook["cells"]:
        cell["source"] = "".join(cell["source"])
        if cell["cell_type"] == "code":
            cell |= {
                "outputs": [live],
                "execution_count": 7,
                "metadata": {"trusted": True, "execution": {"iopub.status.busy": "x"}},
            }
    notebook["metadata"]["language_info"] = {"name": "python", "version": "3.11.9"}
    return notebook


def test_a_lesson_saved_after_it_ran_is_the_file_it_was(tmp_path):
    """Saving a lesson that has run leaves its file as it was, to the byte."""
    save = saver(tmp_path)
    for path in sorted(pathlib.Path(places.ROOT, "lessons").glob("*.ipynb")):
        (tmp_path / path.name).write_bytes(path.read_bytes())
        assert save(path.name, as_run(json.loads(path.read_bytes()))) == path.read_bytes(), path.name


def test_words_edited_in_a_lesson_are_saved_and_nothing_else(tmp_path):
    """Of a lesson that is saved, what somebody wrote into it is kept: a changed text, a cell of her own."""
    save = saver(tmp_path)
    path = pathlib.Path(places.ROOT, "lessons", "01_block.ipynb")
    (tmp_path / "one.ipynb").write_bytes(path.read_bytes())
    before, edited = json.loads(path.read_bytes()), as_run(json.loads(path.read_bytes()))
    edited["cells"][0]["source"] = "# My own title"
    own = {"cell_type": "code", "id": "own", "metadata": {}, "execution_count": 3, "source": "6 * 7",
           "outputs": [{"output_type": "stream", "name": "stdout", "text": "42"}]}  # fmt: skip
    edited["cells"].append(own)
    after = json.loads(save("one.ipynb", edited))
    assert after["metadata"] == before["metadata"]
    assert after["cells"][0] == before["cells"][0] | {"source": ["# My own title"]}
    assert after["cells"][1:-1] == before["cells"][1:]
    assert "".join(after["cells"][-1]["outputs"][0]["text"]) == "42"
    # A line of a lesson that she has changed is hers: what it gave is saved.
    place = next(i for i, cell in enumerate(before["cells"]) if cell["cell_type"] == "code")
    edited["cells"][place]["source"] += "  # mine"
    assert "widget-view" in str(json.loads(save("one.ipynb", edited))["cells"][place]["outputs"])


def test_any_other_file_is_saved_as_it_is(tmp_path):
    """A notebook that asks for no lesson, and one that is new, are saved as the page has them."""
    save = saver(tmp_path)
    said = {"output_type": "stream", "name": "stdout", "text": ["kept"]}
    own = {"cells": [{"cell_type": "code", "id": "own", "metadata": {}, "execution_count": 1, "outputs": [said],
                      "source": ["print(6 * 7)"]}],
           "metadata": {"language_info": {"name": "python"}}, "nbformat": 4, "nbformat_minor": 5}  # fmt: skip
    assert json.loads(save("own.ipynb", own)) == own
    own["cells"][0]["outputs"] = []
    assert json.loads(save("own.ipynb", own)) == own
    (tmp_path / "own.ipynb").write_text("no notebook at all")
    assert json.loads(save("own.ipynb", own)) == own


def test_the_server_loads_the_courses_part_of_it(tmp_path):
    """The server finds the part that keeps the stored drawings where the set-up has put it, and can load it."""
    from jupyter_core.paths import jupyter_config_path
    from jupyter_server.extension.manager import ExtensionManager

    lab.write_settings(str(tmp_path))
    told = json.loads(pathlib.Path(lab.server_file(str(tmp_path))).read_text(encoding="utf-8"))
    assert lab.server_folder(sys.prefix) in jupyter_config_path()
    manager = ExtensionManager()
    for name, wanted in told["ServerApp"]["jpserver_extensions"].items():
        assert manager.add_extension(name, enabled=wanted) is True
    assert saving.__name__ in manager.extensions


def test_lab_is_started_with_what_was_asked():
    command = lab.command("py", "a b.ipynb", 8890, browser=False, root_user=True)
    assert command[:4] == ["py", "-m", "jupyterlab", "a b.ipynb"]
    assert {"--no-browser", "--allow-root", "--port=8890", "--ip=127.0.0.1"} <= set(command)
    assert not {"--no-browser", "--allow-root"} & set(lab.command("py", "a", 8890, True, False))


def test_a_port_in_use_is_seen():
    with socket.socket() as door:
        door.bind((lab.HOST, 0))
        door.listen()
        taken = door.getsockname()[1]
        assert lab.free_port(taken) is None
        assert lab.answers(taken)
        assert lab.free_port(first=taken, tries=20) not in (None, taken)
    assert not lab.answers(taken)
    assert lab.free_port(taken) == taken


def test_old_tabs_are_forgotten(tmp_path):
    old = pathlib.Path(places.jupyter_folders(str(tmp_path))["JUPYTERLAB_WORKSPACES_DIR"])
    lab.forget_old_tabs(str(tmp_path))  # nothing there yet
    old.mkdir(parents=True)
    (old / "default.json").touch()
    lab.forget_old_tabs(str(tmp_path))
    assert not old.exists()
