"""What one guardian is told of rest days: the children of a message, as the record stands."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from enum import StrEnum
from zoneinfo import ZoneInfo

from sqlmodel import Session, col, select

from core.ledger.asked.arms import Gathered, gather
from core.ledger.binding import Books
from core.ledger.logged import Logged
from core.ledger.people import teams_of
from core.ledger.rest_day_words import rest_day_words
from core.ledger.rest_days import NO_REST, period_of
from core.model import OutboxMessage, Pitcher, Reminder, key
from core.rest import RestAnswer, RestError, RestOwed, answer
from core.rulebooks import RuleBookError

DAY = timedelta(days=1)
#: For so long after its last rest day a message may still be looked up: it must name no date
#: for an arm that hurts.
STILL_READ = timedelta(days=3)


class Told(StrEnum):
    """What is said of one child."""

    RESTS = "rests"
    NOT_CLEARED = "not cleared"
    #: It was said that he rests, and after a correction no rest is owed.
    TAKEN_BACK = "taken back"


@dataclass(frozen=True, slots=True)
class ChildRest:
    """One child in a message: the rest days from `first` on, or why none are named."""

    pitcher: Pitcher
    told: Told
    rest: RestAnswer | None = None
    first: date | None = None
    not_cleared_since: date | None = None
    #: Whether that is soreness and nothing worse.
    sore: bool = False
    #: What the coach allows on a rest day, by activity, in the coach's own words.
    rest_day: Mapping[str, str] | None = None

    @property
    def last(self) -> date | None:
        """The last rest day by rule; none where no date is known."""
        until = self.rest.next_eligible if self.rest is not None else None
        return until - DAY if until is not None else None


def family_rest(
    session: Session, row: OutboxMessage, now: datetime, books: Books
) -> tuple[ChildRest, ...]:
    """The children of a message, at `now` (UTC); those whose rest days are over left out."""
    rows = session.exec(
        select(Reminder)
        .where(Reminder.slot == row.slot, Reminder.person_id == row.person_id)
        .order_by(col(Reminder.id))
    ).all()
    periods: dict[int, set[str]] = {}
    for one in rows:
        periods.setdefault(one.pitcher_id, set()).add(one.period)
    found = (
        _child(session, session.get_one(Pitcher, pitcher_id), about, row, now, books)
        for pitcher_id, about in periods.items()
    )
    return tuple(child for child in found if child is not None)


def _child(
    session: Session,
    pitcher: Pitcher,
    about: set[str],
    row: OutboxMessage,
    now: datetime,
    books: Books,
) -> ChildRest | None:
    teams = teams_of(session, {key(pitcher)})
    if not teams:
        return None
    today = now.astimezone(ZoneInfo(teams[0].time_zone)).date()
    one = gather(session, pitcher, today, books)
    rest = _rest_from(one, today)
    if rest is None:
        return None  # no book answers: the coach reads that, and a family is told no guess
    owed = _owed(one.outings, about, rest)
    runs = any(_runs(each, today) for each in owed)
    if row.ts is None and not runs:
        return None  # what it was about owes nothing; another outing has its own message
    if one.status.since is not None:
        if owed and not any(_runs(each, today - STILL_READ) for each in owed):
            return None
        return ChildRest(
            pitcher, Told.NOT_CLEARED, not_cleared_since=one.status.since, sore=one.status.sore
        )
    if rest.eligible:
        return None if owed else ChildRest(pitcher, Told.TAKEN_BACK)
    if owed and not runs:
        return None
    starts = [each.on + DAY for each in rest.rest if _runs(each, today)]
    pitched = [o.on + DAY for o in one.outings if o.kind not in NO_REST and o.on <= today]
    first = max([*starts, *pitched], default=today)
    words = rest_day_words(session, teams)
    return ChildRest(pitcher, Told.RESTS, rest, first, rest_day=words)


def _rest_from(one: Gathered, today: date) -> RestAnswer | None:
    """What the books say of the first day that is left: today, or the day after he threw."""
    if one.arm is None:
        return None
    thrown_today = any(outing.on == today for outing in one.arm.outings)
    try:
        return answer(
            one.arm.books, one.arm.thrower, one.arm.outings, today + DAY if thrown_today else today
        )
    except (RestError, RuleBookError):
        return None


def _runs(owed: RestOwed, today: date) -> bool:
    return owed.days > 0 and owed.on + owed.days * DAY >= today


def _owed(outings: tuple[Logged, ...], about: set[str], rest: RestAnswer) -> list[RestOwed]:
    """The rest that the outings of a message owe, or owed; none once they are taken back."""
    days = {outing.on for outing in outings if period_of(outing) in about}
    return [one for one in rest.rest if one.days and one.on in days]
