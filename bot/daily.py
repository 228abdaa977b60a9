"""What is done once a day: the data of a workspace that took the app away is deleted."""

import logging
from datetime import date, datetime

from core.leaving import delete_all, to_delete
from core.store import Store

log = logging.getLogger(__name__)


class Daily:
    """The daily job; doing it twice, or in two processes at once, changes nothing."""

    def __init__(self, store: Store) -> None:
        """Look after this database."""
        self._store = store
        self._done: date | None = None

    def run(self, now: datetime) -> None:
        """Do what the day (UTC) of `now` asks for, unless it is done."""
        today = now.date()
        if self._done == today:
            return
        with self._store.reading() as session:
            leaving = to_delete(session, today)
        for workspace_id in leaving:
            with self._store.writing() as session:
                # Looked at again: the app may have been installed anew meanwhile.
                if workspace_id in to_delete(session, today):
                    delete_all(session, workspace_id)
                    log.warning("workspace %s: its data was deleted", workspace_id)
        self._done = today
