"""A weekday, or each day, and a local time as instants: the last, the next, when it lapses."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from apscheduler.triggers.cron import CronTrigger

#: Far enough back to hold the last instant of a week, whatever the clocks did.
_LOOK_BACK = timedelta(days=8)


@dataclass(frozen=True, slots=True)
class Weekly:
    """Once a week: the weekday (0 is Monday; none: each day), the local time, the IANA zone."""

    weekday: int | None
    at: time
    time_zone: str

    @property
    def zone(self) -> ZoneInfo:
        """The zone itself."""
        return ZoneInfo(self.time_zone)

    def last_due(self, now: datetime) -> datetime | None:
        """The newest instant (UTC) that is not after `now` (aware); none in the look-back."""
        found = None
        for due in self._from(now - _LOOK_BACK):
            if due > now:
                break
            found = due
        return found

    def standing(self, now: datetime) -> list[datetime]:
        """The instants (UTC) that are not after `now` (aware) and have not lapsed, oldest first."""
        found = []
        for due in self._from(now - _LOOK_BACK):
            if due > now:
                break
            if now < self.lapses(due):
                found.append(due)
        return found

    def next_due(self, now: datetime) -> datetime:
        """The first instant (UTC) after `now` (aware)."""
        return next(due for due in self._from(now) if due > now)

    def in_week(self, monday: date) -> datetime:
        """Its instant (UTC) in the week that begins on a Monday."""
        start = datetime.combine(monday, time(), self.zone) - timedelta(seconds=1)
        return next(self._from(start))

    def local_day(self, moment: datetime) -> date:
        """The calendar day of a moment in the zone."""
        return moment.astimezone(self.zone).date()

    def lapses(self, due: datetime) -> datetime:
        """From when on it is too late (UTC): the end of the day after, 24:00 local."""
        day = self.local_day(due) + timedelta(days=2)
        return datetime.combine(day, time(), self.zone).astimezone(UTC)

    def week(self, due: datetime) -> date:
        """The period of its natural key: the Monday of its ISO week, or the day itself."""
        day = self.local_day(due)
        if self.weekday is None:
            return day
        return day - timedelta(days=day.weekday())

    def _from(self, moment: datetime) -> Iterator[datetime]:
        """Its instants from a moment on, one for each local day.

        Where the clocks skip the time, it is the moment just after; where they show it twice,
        the first one. The trigger is asked in UTC: sums of local times go wrong at such hours.
        """
        trigger = CronTrigger(
            day_of_week=self.weekday,
            hour=self.at.hour,
            minute=self.at.minute,
            timezone=self.zone,
        )
        seen: date | None = None
        after = moment.astimezone(UTC)
        while (found := trigger.get_next_fire_time(None, after)) is not None:
            due = found.astimezone(UTC)
            after = max(due, after) + timedelta(seconds=1)
            if found.date() != seen:
                seen = found.date()
                yield due
