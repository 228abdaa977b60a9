"""Which local day a line is about."""

from datetime import date, datetime, time, timedelta

#: A line posted before this hour with no day named belongs to the day before.
DAY_TURNS = time(4)
#: A game logged before this hour with no day named may be yesterday's.
NOON = time(12)


def outing_day(posted: datetime, named: date | None) -> date:
    """The local day of an outing: the named one, else the posted one.

    `posted` is local wall-clock time. Before 04:00 with no day named it is the day before.
    """
    if named is not None:
        return named
    if before_the_day_turns(posted):
        return posted.date() - timedelta(days=1)
    return posted.date()


def before_the_day_turns(posted: datetime) -> bool:
    """Whether a line posted at this local time still belongs to the day before."""
    return posted.time() < DAY_TURNS


def day_is_unclear(posted: datetime, day_named: bool, kind: str | None) -> bool:
    """Whether to ask "today or yesterday?": a game, in the morning, with no day named."""
    return kind == "game" and not day_named and DAY_TURNS <= posted.time() < NOON
