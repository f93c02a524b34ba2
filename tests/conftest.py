"""The lessons' conftest turns stored drawings on for the notebooks' kernels, in this process too when
all is run at once; the unit tests see the same surroundings alone and together."""
import pytest


@pytest.fixture(autouse=True, scope="module")
def not_a_stored_lesson():
    with pytest.MonkeyPatch.context() as patch:
        patch.delenv("CORSETKIT_STORED", raising=False)
        yield
