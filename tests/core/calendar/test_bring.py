"""A source read again: nothing twice, moves and cancellations followed, the past kept."""

from datetime import UTC, date, datetime

import pytest
from sqlmodel import Session, select

from core.calendar.bring import Changes, bring_up, source_for
from core.calendar.days import entries, is_game_day
from core.calendar.ics import read_ics
from core.model import (
    CalendarEntry,
    CalledOff,
    Line,
    Team,
    Workspace,
    key,
)
from core.store import Store
from tests.support.ics import calendar, game

NOW = datetime(2026, 5, 4, 12, tzinfo=UTC)
TODAY = date(2026, 5, 4)
SUMMIT, RIDGE = game("s", ":20260509T150000Z"), game("r", ":20260510T150000Z", "Game vs Ridge")


@pytest.fixture
def team(any_store: Store) -> Team:
    with any_store.writing() as session:
        session.add(Workspace(id="T1"))
        session.flush()
        team = Team(
            workspace_id="T1", name="Herons", time_zone="America/Chicago", log_channel="L",
            staff_channel="S",
        )  # fmt: skip
        session.add(team)
        session.flush()
        return team


def bring(store: Store, team: Team, content: bytes, today: date = TODAY) -> Changes:
    with store.writing() as session:
        source = source_for(session, session.get_one(Team, key(team)), "file:season.ics")
        return bring_up(session, source, read_ics(content, team.time_zone, today), today, NOW)


def standing(session: Session, team: Team) -> list[str]:
    rows = entries(session, [key(team)], date(2026, 1, 1), date(2027, 1, 1))
    return [f"{one.on:%m-%d} {one.title}" for one in rows]


def test_the_same_calendar_twice_changes_nothing(any_store: Store, team: Team) -> None:
    content = calendar(SUMMIT, RIDGE)

    first, second = bring(any_store, team, content), bring(any_store, team, content)

    assert (first.new, first.games) == (2, 2)
    assert (second.new, second.changed, second.gone) == (0, 0, 0)
    with any_store.reading() as session:
        assert [row.sequence for row in session.exec(select(CalendarEntry))] == [0, 0]


def test_a_game_that_moves_is_changed_and_its_sequence_counts_it(
    any_store: Store, team: Team
) -> None:
    bring(any_store, team, calendar(SUMMIT))

    changes = bring(any_store, team, calendar(game("s", ":20260511T150000Z")))

    with any_store.reading() as session:
        assert standing(session, team) == ["05-11 Game vs Summit"]
        assert session.exec(select(CalendarEntry.sequence)).all() == [1]
    assert (changes.new, changes.changed, changes.gone) == (0, 1, 0)


@pytest.mark.parametrize(
    "after",
    [
        calendar(RIDGE),
        calendar(RIDGE, game("s", ":20260509T150000Z", "Game vs Summit", "STATUS:CANCELLED")),
    ],
    ids=["gone", "cancelled"],
)
def test_what_is_gone_or_cancelled_is_called_off_and_comes_back(
    any_store: Store, team: Team, after: bytes
) -> None:
    bring(any_store, team, calendar(SUMMIT, RIDGE))

    bring(any_store, team, after)
    with any_store.reading() as session:
        called_off = standing(session, team)
    bring(any_store, team, calendar(SUMMIT, RIDGE))

    assert called_off == ["05-10 Game vs Ridge"]
    with any_store.reading() as session:
        assert len(standing(session, team)) == 2


def test_a_past_game_that_a_calendar_forgets_stays(any_store: Store, team: Team) -> None:
    bring(any_store, team, calendar(SUMMIT, RIDGE))

    bring(any_store, team, calendar(RIDGE), today=date(2026, 5, 10))

    with any_store.reading() as session:
        assert is_game_day(session, [key(team)], date(2026, 5, 9))


def test_what_the_staff_called_off_stays_off_until_it_moves(any_store: Store, team: Team) -> None:
    bring(any_store, team, calendar(SUMMIT))
    with any_store.writing() as session:
        entry = session.exec(select(CalendarEntry)).one()
        line = Line(
            workspace_id="T1", channel="S", ts="1.0", author_slack_id="U1", text="no game sat",
            posted_at=NOW, received_at=NOW,
        )  # fmt: skip
        session.add(line)
        session.flush()
        session.add(
            CalledOff(workspace_id="T1", entry_id=key(entry), on=entry.on, line_id=key(line))
        )

    bring(any_store, team, calendar(SUMMIT))
    with any_store.reading() as session:
        still_off = standing(session, team)
    bring(any_store, team, calendar(game("s", ":20260511T150000Z")))

    assert still_off == []
    with any_store.reading() as session:
        assert standing(session, team) == ["05-11 Game vs Summit"]
