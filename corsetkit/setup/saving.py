"""What Jupyter's server keeps of a lesson that is saved: the words as the page has them, the drawings as the file has them.

Once a lesson runs it shows sliders, which nobody sees before they run again. Saved in the stored drawings' place, they
would take the drawings from the next reader and change a file that the course's next version changes too. What a learner
chooses is kept elsewhere. The server does this, and not the page, for then every way of saving is served.
"""
import json
import os

# A cell of a lesson begins so; a test holds the builder to it.
OF_A_LESSON = "from corsetkit.teaching import lesson"
NOT_OF_THE_PAGE = ("execution_count", "metadata", "outputs")


def source_of(cell):
    """A cell's words; a file may hold them as a list of lines."""
    source = cell.get("source", "")
    return source if isinstance(source, str) else "".join(source)


def cells_of_a_lesson(notebook):
    """The cells that ask for something of a lesson, by their words."""
    return {source_of(cell): cell for cell in notebook.get("cells", ())
            if cell.get("cell_type") == "code" and source_of(cell).startswith(OF_A_LESSON)}


def with_stored_drawings(notebook, stored):
    """Give the lesson's cells in `notebook` the results that the same cells have in `stored`, the file's notebook.

    Whatever else stands in it, markdown or cells of somebody's own, stays as it is.
    """
    known = cells_of_a_lesson(stored)
    if not known:
        return
    for cell in notebook.get("cells", ()):
        before = known.get(source_of(cell)) if cell.get("cell_type") == "code" else None
        if before:
            # The server takes this mark away again before it writes; without it, it would warn in the terminal.
            trusted = {name: cell["metadata"][name] for name in ("trusted",) if name in cell.get("metadata", ())}
            cell.update({name: before[name] for name in NOT_OF_THE_PAGE if name in before})
            cell["metadata"] = dict(before.get("metadata", {}), **trusted)
    # A kernel tells more of itself than a lesson needs: versions, that is, of one machine.
    notebook["metadata"] = stored.get("metadata", {})


def before_saving(model, path, contents_manager, **_):
    """The server calls this with what it is about to write at `path`."""
    root = getattr(contents_manager, "root_dir", None)
    if model.get("type") != "notebook" or not model.get("content") or root is None:
        return
    try:
        with open(os.path.join(root, *path.strip("/").split("/")), encoding="utf-8") as file:
            stored = json.load(file)
    except (OSError, ValueError):
        return  # a new file, or one that is no notebook: there is nothing to keep
    with_stored_drawings(model["content"], stored)


def _jupyter_server_extension_points():
    return [{"module": __name__}]


def _load_jupyter_server_extension(server):
    server.contents_manager.register_pre_save_hook(before_saving)
