"""What waits for somebody of a team: questions unanswered, lines not read."""

from dataclasses import dataclass
from datetime import date, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from sqlmodel import Session, col, select, union

from core.ledger.question import Question
from core.model import (
    GuardianLink,
    Line,
    LineState,
    Membership,
    Person,
    Pitcher,
    PitcherTeam,
    Team,
    key,
)

#: A question that is older than this is no longer brought up.
OLDEST = timedelta(days=28)


@dataclass(frozen=True, slots=True)
class Waiting:
    """A line that waits: who wrote it, and the local day on which it was posted."""

    author: str
    on: date


def waiting_lines(
    session: Session, team: Team, now: datetime
) -> tuple[tuple[Waiting, ...], tuple[Waiting, ...]]:
    """The lines of a team's people with an open question, and those that could not be read."""
    rows = session.exec(
        select(Line, Person.name)
        .join(Person, col(Line.author_id) == col(Person.id))
        .where(
            (col(Line.team_id) == key(team))
            | (col(Line.team_id).is_(None) & col(Line.author_id).in_(_people(team))),
            col(Line.state).in_([LineState.ASKED, LineState.NOT_READ]),
            col(Line.deleted_at).is_(None),
            col(Line.posted_at) >= now - OLDEST,
            col(Line.posted_at) <= now,
        )
        .order_by(col(Line.posted_at), col(Line.id))
    ).all()
    unread = [_waiting(line, name, team) for line, name in rows if _not_read(line)]
    asked = [_waiting(line, name, team) for line, name in rows if _is_open(line)]
    return tuple(asked), tuple(unread)


def _waiting(line: Line, name: str, team: Team) -> Waiting:
    return Waiting(name, line.posted_at.astimezone(ZoneInfo(team.time_zone)).date())


def _not_read(line: Line) -> bool:
    return line.state == LineState.NOT_READ


def _is_open(line: Line) -> bool:
    return not _not_read(line) and any(Question.from_json(one).waits for one in line.questions)


def _people(team: Team) -> Any:
    """Everybody who has a part in the team: staff, scorekeepers, pitchers, guardians."""
    arms = select(PitcherTeam.pitcher_id).where(PitcherTeam.team_id == key(team))
    return union(
        select(Membership.person_id).where(Membership.team_id == key(team)),
        select(GuardianLink.person_id).where(col(GuardianLink.pitcher_id).in_(arms)),
        select(Pitcher.person_id).where(
            col(Pitcher.id).in_(arms), col(Pitcher.person_id).is_not(None)
        ),
    )
