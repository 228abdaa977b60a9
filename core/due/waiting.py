"""What waits for somebody of a team: questions unanswered, lines not read."""

from collections.abc import Set
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from sqlmodel import Session, col, select, union

from core.ledger.question import Question, QuestionCode
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
class TwoCounts:
    """Two counts of what may be one outing; `place` is that of the question in its line."""

    place: int
    pitcher: str
    count: int | None
    other: int | None
    #: Who logged the other count; empty where it was the same person.
    other_by: str


@dataclass(frozen=True, slots=True)
class Waiting:
    """A line that waits: who wrote it, and the local day on which it was posted."""

    author: str
    on: date
    line_id: int = 0
    two_counts: tuple[TwoCounts, ...] = ()


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
    doubled = any(_two_counts(line) for line, _ in rows)
    arms = set(session.exec(_arms(team))) if doubled else set()
    unread = [_waiting(line, name, team, arms) for line, name in rows if _not_read(line)]
    asked = [_waiting(line, name, team, arms) for line, name in rows if _is_open(line)]
    return tuple(asked), tuple(unread)


def _waiting(line: Line, name: str, team: Team, arms: Set[int]) -> Waiting:
    on = line.posted_at.astimezone(ZoneInfo(team.time_zone)).date()
    doubles = [counts for pitcher, counts in _two_counts(line) if pitcher in arms]
    return Waiting(name, on, key(line), tuple(doubles))


def _two_counts(line: Line) -> list[tuple[int | None, TwoCounts]]:
    """The open questions about two counts of a line, each with its pitcher's id."""
    found = []
    for place, stored in enumerate(line.questions):
        asked = Question.from_json(stored)
        if asked.code is QuestionCode.SAME:
            counts = asked.detail
            value = counts.value if counts is not None else None
            other = counts.limit if counts is not None else None
            found.append(
                (asked.pitcher_id, TwoCounts(place, asked.about, value, other, asked.reason))
            )
    return found


def _not_read(line: Line) -> bool:
    return line.state == LineState.NOT_READ


def _is_open(line: Line) -> bool:
    return not _not_read(line) and any(Question.from_json(one).waits for one in line.questions)


def _arms(team: Team) -> Any:
    return select(PitcherTeam.pitcher_id).where(PitcherTeam.team_id == key(team))


def _people(team: Team) -> Any:
    """Everybody who has a part in the team: staff, scorekeepers, pitchers, guardians."""
    arms = _arms(team)
    return union(
        select(Membership.person_id).where(Membership.team_id == key(team)),
        select(GuardianLink.person_id).where(col(GuardianLink.pitcher_id).in_(arms)),
        select(Pitcher.person_id).where(
            col(Pitcher.id).in_(arms), col(Pitcher.person_id).is_not(None)
        ),
    )
