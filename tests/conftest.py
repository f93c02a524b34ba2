"""The lessons' conftest turns stored drawings on for the notebooks' kernels, in this process too when
all is run at once; the unit tests see the same surroundings alone and together."""

import pytest


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config, log):
    """Several workers share the files: a file's tests stay in one of them, which makes its fixtures and drafts once.

    All that opens a browser stays in one, too: two browsers at a time only wait for each other."""
    from xdist.scheduler import LoadScopeScheduling

    class ByFile(LoadScopeScheduling):
        def _split_scope(self, nodeid):
            file = nodeid.partition("::")[0]
            return "browser" if "test_browser" in file else file

    return ByFile(config, log)


@pytest.fixture(autouse=True, scope="module")
def not_a_stored_lesson():
    with pytest.MonkeyPatch.context() as patch:
        patch.delenv("CORSETKIT_STORED", raising=False)
        yield


@pytest.fixture
def work(tmp_path, monkeypatch):
    """A learner's folder of one test's own, and no widget left over from another test."""
    from corsetkit.teaching import cells as course

    monkeypatch.setenv("CORSETKIT_WORK", str(tmp_path))
    monkeypatch.setattr(course, "_live", {})
    monkeypatch.setattr(course, "_desks", {})
    return tmp_path


@pytest.fixture(scope="session")
def finished_maren():
    """Maren's pattern ready to cut."""
    from figures import figure, ready_to_cut

    return ready_to_cut(figure("Maren"))


@pytest.fixture(scope="session")
def laid_shells(finished_maren):
    """Her shell laid both ways: by how the cloth lies, (items, plan)."""
    from corsetkit.lay.cloth import FOLDED, SINGLE, Cloth
    from corsetkit.lay.items import items_of
    from corsetkit.lay.planning import plan

    items = items_of(finished_maren, "shell")
    return {laid: (items, plan(items, Cloth(laid=laid), 1, layer="shell")) for laid in (SINGLE, FOLDED)}
