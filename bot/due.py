"""Owes what the clock calls for; any number of processes may do so at once."""

from collections.abc import Callable
from datetime import datetime, timedelta

from bot.outbox.homes import refresh_homes_of_day
from bot.outbox.owe import owe, owe_once
from core.due.daily import look, next_look, teams_to_look_at
from core.due.day_turn import begin_day, next_day, teams_of_new_day
from core.due.due import Due as DueSchedule
from core.due.plan import begin_schedules, due_now, lacks_schedules, next_due, notices_of
from core.model import Team
from core.store import Store

#: A schedule that somebody changes is noticed within this time.
LOOK_AGAIN = timedelta(minutes=1)
#: Teams that one tick works for, so that a big club's minute keeps no other message waiting.
AT_ONCE = 50


class Due:
    """Looks at the schedules when the next one is due, and at least once a minute."""

    def __init__(self, store: Store, give_way: Callable[[], object] = bool) -> None:
        """Owe into this database; `give_way` is called before each piece of work."""
        self._store, self._give_way = store, give_way
        self._look_at: datetime | None = None

    def owe(self, now: datetime) -> None:
        """Write the messages that are due at `now` (UTC) and that nobody wrote yet."""
        if self._look_at is not None and now < self._look_at:
            return
        # A look takes no write lock: most of them find nothing.
        with self._store.reading() as session:
            lacks, dues = lacks_schedules(session), due_now(session, now)
            teams = teams_to_look_at(session, now)
            turned = teams_of_new_day(session, now)
        if lacks:
            self._begin(now)
        for due in dues[:AT_ONCE]:
            self._give_way()
            self._write(due)
        for team in teams[:AT_ONCE]:
            self._give_way()
            self._look(team, now)
        for team in turned[:AT_ONCE]:
            self._give_way()
            self._turn(team, now)
        if max(len(dues), len(teams), len(turned)) > AT_ONCE:
            return  # the next tick goes on; meanwhile what is owed already is sent
        soon = now + LOOK_AGAIN
        self._look_at = min(self.next_due(now) or soon, soon)

    def next_due(self, now: datetime) -> datetime | None:
        """When something is next due, as schedules stand: a message, a look, a new day."""
        with self._store.reading() as session:
            times = (next_due(session, now), next_look(session, now), next_day(session, now))
        return min((time for time in times if time is not None), default=None)

    def _look(self, team: Team, now: datetime) -> None:
        """One team, one transaction: the lines of others do not wait for all of them."""
        with self._store.writing() as session:
            owe(session, team.workspace_id, look(session, team, now))

    def _turn(self, team: Team, now: datetime) -> None:
        """The Home tabs of one team, in the transaction that claims the day for them."""
        with self._store.writing() as session:
            if begin_day(session, team, now):
                refresh_homes_of_day(session, team, now)

    def _begin(self, now: datetime) -> None:
        with self._store.writing() as session:
            begin_schedules(session, now)

    def _write(self, due: DueSchedule) -> None:
        """One schedule of one team, one transaction, like a look."""
        with self._store.writing() as session:
            owe_once(session, due.team.workspace_id, notices_of(session, due))
