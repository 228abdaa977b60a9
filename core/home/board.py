"""A team as its coach's Home tab tells of it: holds, who can throw, what waits to be seen."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

from sqlmodel import Session, col, select

from core.due.summary import PAGE
from core.due.waiting import Waiting, waiting_lines
from core.due.week import allows, looks_ahead
from core.home.steps import Steps, open_steps
from core.ledger.asked.answers import ArmDay
from core.ledger.asked.arms import Staff, staff_of, two_counts_on
from core.ledger.binding import Books
from core.ledger.clearance import ArmRecord
from core.model import Alert, AlertSeen, AlertState, Pitcher, Team, key
from core.pain.status import ArmStatus
from core.rest import Outlook, RestAnswer, RestError
from core.rulebooks import RuleBookError

#: The days after today.
AHEAD = 6
#: So many alerts are listed, the newest ones.
MOST_ALERTS = 10
#: An arm that must not throw or pitch, or that a clinician limits, and what stands.
Held = tuple[Pitcher, ArmStatus]


@dataclass(frozen=True, slots=True)
class Board:
    """One team, or a page of its arms; holds and what waits are those of the whole team."""

    team: Team
    today: date
    page: int
    pages: int
    held: tuple[Held, ...]
    arms: tuple[ArmDay, ...]
    #: The following days: the arms of this page with nothing on record against them.
    ahead: tuple[tuple[date, tuple[Pitcher, ...]], ...]
    alerts: tuple[tuple[Alert, Pitcher], ...]
    asked: tuple[Waiting, ...]
    unread: tuple[Waiting, ...]
    no_consent: tuple[Pitcher, ...]
    #: What of the set-up is still open.
    steps: Steps

    @property
    def is_empty(self) -> bool:
        """Whether no pitcher with consent throws for the team: there is nothing to show."""
        return not self.arms


def pages_of(arms: int) -> int:
    """How many pages so many arms fill, at least one."""
    return max(1, -(-arms // PAGE))


def board(
    session: Session,
    team: Team,
    everybody: Sequence[Pitcher],
    page: int,
    now: datetime,
    books: Books,
) -> Board:
    """One page of a team's board at `now` (UTC); a page that there is not is the nearest one.

    `everybody` are the team's pitchers, in order of their names.
    """
    today = now.astimezone(ZoneInfo(team.time_zone)).date()
    counted = [one for one in everybody if one.consent_on is not None]
    last = pages_of(len(counted))
    shown = min(max(page, 1), last)
    staff = staff_of(session, counted, today, today + timedelta(days=AHEAD))
    chosen = counted[(shown - 1) * PAGE : shown * PAGE]
    weeks = [_week(staff, one, today, books) for one in chosen]
    asked, unread = waiting_lines(session, team, now)
    return Board(
        team,
        today,
        shown,
        last,
        held(staff.pain, counted, today),
        tuple(week.today for week in sorted(weeks, key=_order)),
        _ahead(weeks, today),
        _alerts(session, team, {key(one): one for one in everybody}),
        asked,
        unread,
        tuple(one for one in everybody if one.consent_on is None),
        open_steps(session, team, everybody),
    )


def held(
    records: Mapping[int, ArmRecord], pitchers: Sequence[Pitcher], today: date
) -> tuple[Held, ...]:
    """The arms that must not throw or pitch, and those that a clinician limits."""
    found = [(one, records[key(one)].status(today)) for one in pitchers]
    return tuple(pair for pair in found if pair[1].since is not None or pair[1].limits)


@dataclass(frozen=True, slots=True)
class _Week:
    """One arm today, and the following days on which nothing on record speaks against it."""

    today: ArmDay
    free: frozenset[date]


def _week(staff: Staff, pitcher: Pitcher, today: date, books: Books) -> _Week:
    status = staff.pain[key(pitcher)].status(today)
    looks = dict(looks_ahead(staff, pitcher, today, books))
    rest, problem = _brief(looks[today], today)
    arm = ArmDay(
        pitcher,
        today,
        rest,
        problem,
        status=status,
        limit=staff.bindings.limit(pitcher, today),
        has_record=bool(staff.outings[key(pitcher)]),
        two_counts_on=two_counts_on(staff.outings[key(pitcher)], today),
    )
    free = (day for day, outlook in looks.items() if day > today and allows(outlook, day))
    return _Week(arm, frozenset() if status.bars_pitching else frozenset(free))


def _brief(outlook: Outlook | str, today: date) -> tuple[RestAnswer | None, str]:
    """What the books say of today, or why none answers."""
    if isinstance(outlook, str):
        return None, outlook
    try:
        return outlook.brief(today), ""
    except (RestError, RuleBookError) as wrong:
        return None, str(wrong)


def _order(week: _Week) -> tuple[bool, int]:
    """Those who may throw first, most pitches first."""
    rest = week.today.rest
    return not week.today.may_throw, -(rest.pitches_allowed if rest is not None else 0)


def _ahead(weeks: Sequence[_Week], today: date) -> tuple[tuple[date, tuple[Pitcher, ...]], ...]:
    days = [today + timedelta(days=number) for number in range(1, AHEAD + 1)]
    return tuple(
        (day, tuple(week.today.pitcher for week in weeks if day in week.free)) for day in days
    )


def _alerts(
    session: Session, team: Team, pitchers: dict[int, Pitcher]
) -> tuple[tuple[Alert, Pitcher], ...]:
    """The alerts that stand and that nobody of the staff has seen, newest first."""
    seen = select(AlertSeen.alert_id)
    rows = (
        select(Alert)
        .where(
            Alert.team_id == key(team),
            Alert.state == AlertState.STANDING,
            col(Alert.id).not_in(seen),
        )
        .order_by(col(Alert.id).desc())
        .limit(MOST_ALERTS)
    )
    return tuple(
        (one, pitchers[one.pitcher_id]) for one in session.exec(rows) if one.pitcher_id in pitchers
    )
