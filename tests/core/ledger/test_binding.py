"""Which books bind on a day: team, season, event, the pitcher's own, the coach's limit."""

from collections.abc import Iterator
from datetime import UTC, date, datetime

import pytest
from sqlmodel import Session

from core.ledger.binding import books_for
from core.model import (
    CoachLimit,
    Line,
    Person,
    Pitcher,
    PitcherTeam,
    Season,
    SeasonKind,
    Team,
    TeamEvent,
    Workspace,
    key,
)
from core.rulebooks import load_books
from core.store import Store

DAY = date(2026, 5, 2)
NOON = datetime(2026, 5, 1, 12, tzinfo=UTC)


@pytest.fixture
def session(any_store: Store) -> Iterator[Session]:
    with any_store.writing() as session:
        session.add(Workspace(id="T1"))
        session.flush()
        yield session


def arm(session: Session, own: list[str]) -> tuple[Team, Pitcher]:
    team = Team(
        workspace_id="T1", name="Herons", time_zone="UTC", log_channel="C1",
        staff_channel="C2", rule_books=["pitch-smart"],
    )  # fmt: skip
    pitcher = Pitcher(
        workspace_id="T1", name="Mateo Cruz", birth_date=date(2009, 1, 10), grade=11,
        rule_books=own,
    )  # fmt: skip
    session.add_all([team, pitcher])
    session.flush()
    session.add(PitcherTeam(workspace_id="T1", pitcher_id=key(pitcher), team_id=key(team)))
    return team, pitcher


def ids(session: Session, pitcher: Pitcher) -> list[str]:
    return [book.id for book in books_for(session, pitcher, DAY, load_books)]


def part(team: Team, kind: str, books: list[str] | None = None) -> Season:
    return Season(
        workspace_id="T1", team_id=key(team), kind=kind, starts_on=date(2026, 3, 1),
        ends_on=date(2026, 5, 31), rule_books=books,
    )  # fmt: skip


def test_team_and_school_both_bind(session: Session) -> None:
    _, pitcher = arm(session, ["missouri-high-school"])

    assert ids(session, pitcher) == ["pitch-smart", "missouri-high-school"]


def test_in_the_school_season_the_schools_book_decides(session: Session) -> None:
    team, pitcher = arm(session, ["missouri-high-school"])
    session.add(part(team, SeasonKind.SCHOOL_ONLY))

    assert ids(session, pitcher) == ["missouri-high-school"]


def test_without_a_school_book_the_teams_stays_in_the_school_season(session: Session) -> None:
    team, pitcher = arm(session, [])
    session.add(part(team, SeasonKind.SCHOOL_ONLY))

    assert ids(session, pitcher) == ["pitch-smart"]


def test_a_season_may_bring_its_own_books(session: Session) -> None:
    team, pitcher = arm(session, [])
    session.add(part(team, SeasonKind.FALL, ["little-league"]))

    assert ids(session, pitcher) == ["little-league"]


@pytest.mark.parametrize(("first", "binds"), [(DAY, True), (date(2026, 5, 3), False)])
def test_an_events_books_bind_on_its_days_beside_the_others(
    session: Session, first: date, binds: bool
) -> None:
    team, pitcher = arm(session, [])
    session.add(
        TeamEvent(
            workspace_id="T1",
            team_id=key(team),
            name="Spring weekend",
            starts_on=first,
            ends_on=first,
            rule_books=["pitch-smart-2014"],
        )
    )

    assert ("pitch-smart-2014" in ids(session, pitcher)) is binds


@pytest.mark.parametrize(("last", "binds"), [(DAY, True), (date(2026, 5, 1), False), (None, True)])
def test_the_coachs_limit_is_a_book_while_it_holds(
    session: Session, last: date | None, binds: bool
) -> None:
    _, pitcher = arm(session, [])
    coach = Person(workspace_id="T1", slack_id="U1", name="Dana")
    session.add(coach)
    session.flush()
    line = Line(
        workspace_id="T1", channel="C2", ts="1.0", author_slack_id="U1", text="limit Mateo 45",
        posted_at=NOON, received_at=NOON,
    )  # fmt: skip
    session.add(line)
    session.flush()
    session.add(
        CoachLimit(
            workspace_id="T1",
            pitcher_id=key(pitcher),
            pitches=45,
            starts_on=date(2026, 4, 30),
            ends_on=last,
            line_id=key(line),
            set_by=key(coach),
        )
    )

    assert ("coach" in ids(session, pitcher)) is binds
