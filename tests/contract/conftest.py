"""Every press of these tests is watched: it is answered by at most two calls of the Web API."""

from collections.abc import Iterator

import pytest

from tests.support.answered import Watch


@pytest.fixture(autouse=True)
def watch(monkeypatch: pytest.MonkeyPatch) -> Iterator[Watch]:
    """Counts the calls from each press to what whoever pressed sees of it."""
    watching = Watch()
    watching.begin(monkeypatch)
    yield watching
    assert watching.slow() == []
