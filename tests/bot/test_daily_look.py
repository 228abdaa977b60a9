"""The look of the day: once for each team, at its own eight, whichever process comes first."""

from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, date, datetime, timedelta

import pytest
from sqlmodel import Session, col, select

from bot.due import Due
from core.due.daily import look, teams_to_look_at
from core.model import (
    Alert,
    DailyLook,
    Line,
    OutboxMessage,
    Outing,
    Pitcher,
    PitcherTeam,
    Season,
    Team,
    Workspace,
    key,
)
from core.store import Store

#: 08:00 in Chicago on Wednesday 6 May 2026.
EIGHT = datetime(2026, 5, 6, 13, tzinfo=UTC)


def add_team(store: Store, zone: str = "America/Chicago") -> None:
    """A team in season with one pitcher of whom no line has come since its record began."""
    with store.writing() as session:
        session.merge(Workspace(id="T1"))
        session.flush()
        team = Team(
            workspace_id="T1", name=zone, time_zone=zone, log_channel=f"L{zone}",
            staff_channel=f"S{zone}",
        )  # fmt: skip
        pitcher = Pitcher(
            workspace_id="T1", name="Leo Ortiz", birth_date=date(2012, 6, 1),
            consent_on=date(2026, 2, 1),
        )  # fmt: skip
        session.add_all([team, pitcher])
        session.flush()
        session.add(PitcherTeam(workspace_id="T1", pitcher_id=key(pitcher), team_id=key(team)))
        session.add(first_outing(session, pitcher))
        session.add(
            Season(
                workspace_id="T1", team_id=key(team), kind="in season",
                starts_on=date(2026, 4, 30), ends_on=date(2026, 7, 31),
            )
        )  # fmt: skip


def first_outing(session: Session, pitcher: Pitcher) -> Outing:
    """An outing of a day in April, with which the record begins."""
    line = Line(
        workspace_id="T1", channel="L", ts=f"{key(pitcher)}.1", author_slack_id="U1", text="off",
        posted_at=EIGHT - timedelta(days=6), received_at=EIGHT,
    )  # fmt: skip
    session.add(line)
    session.flush()
    return Outing(
        workspace_id="T1", line_id=key(line), slot="1/1", pitcher_id=key(pitcher),
        on=date(2026, 4, 29), kind="off",
    )  # fmt: skip


def looks(store: Store) -> list[tuple[int, date]]:
    with store.reading() as session:
        rows = select(DailyLook).order_by(col(DailyLook.on), col(DailyLook.team_id))
        return [(row.team_id, row.on) for row in session.exec(rows)]


def alerts_told(store: Store) -> list[int]:
    with store.reading() as session:
        rows = select(OutboxMessage.wanted).where(OutboxMessage.kind == "alert")
        return list(session.exec(rows))


def test_a_team_is_looked_at_at_its_own_eight_and_once_a_day(any_store: Store) -> None:
    add_team(any_store)
    due = Due(any_store)

    for minutes in (-1, 0, 1, 60, 15 * 60):
        due.owe(EIGHT + timedelta(minutes=minutes))

    assert looks(any_store) == [(1, date(2026, 5, 6))]
    assert alerts_told(any_store) == [1]


@pytest.mark.parametrize(
    ("zone", "minutes"), [("America/New_York", -60), ("Pacific/Auckland", -17 * 60)]
)
def test_each_team_goes_by_its_own_zone(store: Store, zone: str, minutes: int) -> None:
    add_team(store, zone)
    due = Due(store)

    due.owe(EIGHT + timedelta(minutes=minutes - 1))
    assert looks(store) == []
    due.owe(EIGHT + timedelta(minutes=minutes))

    assert len(looks(store)) == 1


def test_a_process_that_was_down_at_eight_looks_later_that_day(store: Store) -> None:
    add_team(store)

    Due(store).owe(EIGHT + timedelta(hours=14))

    assert looks(store) == [(1, date(2026, 5, 6))]


def test_of_processes_that_look_at_the_same_moment_one_tells(any_store: Store) -> None:
    add_team(any_store)
    processes = [Due(any_store) for _ in range(4)]

    with ThreadPoolExecutor(4) as threads:
        list(threads.map(lambda due: due.owe(EIGHT), processes))

    assert looks(any_store) == [(1, date(2026, 5, 6))]
    assert alerts_told(any_store) == [1]
    with any_store.reading() as session:
        assert [one.key for one in session.exec(select(Alert))] == ["silent days"]


def test_a_look_that_fails_half_way_is_made_again(store: Store) -> None:
    add_team(store)

    with store.writing() as session:
        (team,) = teams_to_look_at(session, EIGHT)
        assert look(session, team, EIGHT)
        session.rollback()

    assert looks(store) == []
    Due(store).owe(EIGHT)
    assert alerts_told(store) == [1]


def test_the_bot_wakes_for_the_next_look_and_for_midnight(store: Store) -> None:
    add_team(store)
    due = Due(store)

    midnight = EIGHT + timedelta(hours=16)
    assert due.next_due(EIGHT) == midnight
    assert due.next_due(midnight) == EIGHT + timedelta(days=1)
    assert due.next_due(EIGHT - timedelta(seconds=1)) == EIGHT
