"""A short transaction asks for a row once."""

import gc

from sqlalchemy import event

from core.model import Workspace
from core.store import Store
from core.store.held import hold


def test_a_row_that_is_held_is_asked_for_once(store: Store) -> None:
    with store.writing() as session:
        session.add(Workspace(id="T1"))
    asked: list[str] = []
    event.listen(store.engine, "before_cursor_execute", lambda *args: asked.append(args[2]))

    for held, times in ((True, 1), (False, 2)):
        asked.clear()
        with store.writing() as session:
            if held:
                hold(session)
            for _ in range(2):
                assert session.get(Workspace, "T1") is not None
                gc.collect()
        assert sum("FROM workspace" in one for one in asked) == times
