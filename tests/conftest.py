"""The lessons' conftest turns stored drawings on for the notebooks' kernels, in this process too when
all is run at once; the unit tests see the same surroundings alone and together."""
import pytest


@pytest.fixture(autouse=True, scope="module")
def not_a_stored_lesson():
    with pytest.MonkeyPatch.context() as patch:
        patch.delenv("CORSETKIT_STORED", raising=False)
        yield


@pytest.fixture
def work(tmp_path, monkeypatch):
    """A learner's folder of one test's own, and no widget left over from another test."""
    from corsetkit.teaching import course

    monkeypatch.setenv("CORSETKIT_WORK", str(tmp_path))
    monkeypatch.setattr(course, "_live", {})
    monkeypatch.setattr(course, "_desks", {})
    return tmp_path
