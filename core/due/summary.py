"""The Monday summary: where every arm of a team stands, and what waits for the staff."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

from sqlmodel import Session, col, select

from core.due.spin import team_plans
from core.due.waiting import Waiting, waiting_lines
from core.due.week import ArmWeek, arm_weeks
from core.ledger.binding import Books
from core.model import Pitcher, PitcherTeam, Team, key

#: Pitchers of one page; more go on in the thread.
PAGE = 20
#: Without a line for so long, a pitcher is mentioned.
SILENT = timedelta(days=10)


@dataclass(frozen=True, slots=True)
class Summary:
    """One team's week up to the day before `today`; `weeks` are the arms in order of names."""

    team: Team
    today: date
    weeks: tuple[ArmWeek, ...]
    asked: tuple[Waiting, ...] = ()
    unread: tuple[Waiting, ...] = ()
    no_consent: tuple[Pitcher, ...] = ()

    @property
    def first(self) -> date:
        """The first day of the week that it tells of."""
        return self.today - timedelta(days=7)

    @property
    def last(self) -> date:
        """The last day of that week."""
        return self.today - timedelta(days=1)

    @property
    def silent(self) -> list[ArmWeek]:
        """The pitchers of whom no line spoke for ten days or more."""
        since = self.today - SILENT
        return [one for one in self.weeks if one.last_line is None or one.last_line <= since]

    def page(self, number: int) -> Sequence[ArmWeek]:
        """The arms of a page, counted from 1."""
        return self.weeks[(number - 1) * PAGE : number * PAGE]


def summary(session: Session, team: Team, due: datetime, books: Books) -> Summary:
    """The summary that was due at an instant (UTC), from the record as it stands."""
    today = due.astimezone(ZoneInfo(team.time_zone)).date()
    pitchers = arms_of(session, team)
    counted = [one for one in pitchers if one.consent_on is not None]
    asked, unread = waiting_lines(session, team, due)
    return Summary(
        team,
        today,
        arm_weeks(session, counted, today, books, team_plans(session, key(team))),
        asked,
        unread,
        tuple(one for one in pitchers if one.consent_on is None),
    )


def pages(session: Session, team: Team) -> int:
    """How many pages a team's arms fill, at least one."""
    counted = [one for one in arms_of(session, team) if one.consent_on is not None]
    return max(1, -(-len(counted) // PAGE))


def arms_of(session: Session, team: Team) -> list[Pitcher]:
    """The pitchers of a team, in order of their names."""
    links = select(PitcherTeam.pitcher_id).where(PitcherTeam.team_id == key(team))
    rows = select(Pitcher).where(col(Pitcher.id).in_(links))
    return by_name(session.exec(rows))


def by_name(pitchers: Iterable[Pitcher]) -> list[Pitcher]:
    """Pitchers in order of their names."""
    return sorted(pitchers, key=lambda one: (one.name.casefold(), key(one)))
