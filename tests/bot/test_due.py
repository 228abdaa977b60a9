"""Owing by the clock: once, whoever comes first, and no look that is not needed."""

from datetime import UTC, date, datetime, time, timedelta

from sqlmodel import col, select

from bot.due import AT_ONCE, Due
from bot.outbox.owe import owe_once
from core.due.plan import due_now, notices_of
from core.model import OutboxMessage, ScheduleKind, Team, TeamSchedule, Workspace
from core.store import Store

SUNDAY = datetime(2026, 5, 3, 17, tzinfo=UTC)
#: 07:00 in Chicago.
MONDAY = datetime(2026, 5, 4, 12, tzinfo=UTC)


def add_team(store: Store, zone: str = "America/Chicago") -> None:
    with store.writing() as session:
        session.merge(Workspace(id="T1"))
        session.flush()
        session.add(
            Team(
                workspace_id="T1", name=zone, time_zone=zone, log_channel=f"L{zone}",
                staff_channel=f"S{zone}", season_start=date(2026, 3, 1),
            )
        )  # fmt: skip


def slots(store: Store) -> list[str]:
    with store.reading() as session:
        rows = select(OutboxMessage.slot).where(OutboxMessage.kind == ScheduleKind.MONDAY_SUMMARY)
        return list(session.exec(rows.order_by(col(OutboxMessage.id))))


def test_the_slot_names_the_team_and_the_week(any_store: Store) -> None:
    add_team(any_store)
    due = Due(any_store)
    due.owe(SUNDAY)

    due.owe(MONDAY)

    assert slots(any_store) == ["monday summary/team/1/2026-05-04"]


def test_of_two_processes_that_saw_the_same_minute_one_writes(any_store: Store) -> None:
    add_team(any_store)
    Due(any_store).owe(SUNDAY)
    with any_store.reading() as session:
        (seen,) = due_now(session, MONDAY)
        notices = notices_of(session, seen)

    for _process in range(2):
        with any_store.writing() as session:
            owe_once(session, "T1", notices)

    assert len(slots(any_store)) == 1
    with any_store.reading() as session:
        assert session.exec(select(OutboxMessage.wanted)).all() == [1]


def test_two_teams_in_two_zones_are_due_each_at_their_own_seven(store: Store) -> None:
    add_team(store)
    add_team(store, "America/Phoenix")
    due = Due(store)
    due.owe(SUNDAY)

    due.owe(MONDAY)
    first = slots(store)
    due.owe(MONDAY + timedelta(hours=2))

    assert [len(first), len(slots(store))] == [1, 2]


def test_a_team_that_is_new_on_tuesday_gets_no_summary_of_monday(store: Store) -> None:
    add_team(store)

    Due(store).owe(MONDAY + timedelta(days=1))

    assert slots(store) == []


def test_a_schedule_that_is_off_owes_nothing(store: Store) -> None:
    add_team(store)
    due = Due(store)
    due.owe(SUNDAY)
    with store.writing() as session:
        for schedule in session.exec(select(TeamSchedule)):
            schedule.is_on = False

    due.owe(MONDAY)

    assert slots(store) == []


def test_a_time_that_was_moved_earlier_and_is_past_is_made_up_for_once(store: Store) -> None:
    add_team(store)
    due = Due(store)
    due.owe(SUNDAY)
    half_past_six = MONDAY - timedelta(minutes=30)
    due.owe(half_past_six)
    with store.writing() as session:
        for schedule in session.exec(select(TeamSchedule)):
            schedule.at = time(6)

    due.owe(half_past_six + timedelta(minutes=1))
    due.owe(MONDAY + timedelta(minutes=1))

    assert slots(store) == ["monday summary/team/1/2026-05-04"]


def move(store: Store, zone: str) -> None:
    with store.writing() as session:
        session.exec(select(Team)).one().time_zone = zone


def test_a_team_that_moves_west_before_it_is_due_is_due_at_its_new_seven(store: Store) -> None:
    add_team(store)
    due = Due(store)
    due.owe(SUNDAY)
    move(store, "America/Los_Angeles")

    due.owe(MONDAY)
    at_seven_in_chicago = slots(store)
    due.owe(MONDAY + timedelta(hours=2))

    assert at_seven_in_chicago == []
    assert slots(store) == ["monday summary/team/1/2026-05-04"]


def test_a_team_that_moves_east_past_its_seven_gets_its_summary_once(store: Store) -> None:
    add_team(store)
    due = Due(store)
    due.owe(SUNDAY)
    half_past_six = MONDAY - timedelta(minutes=30)
    due.owe(half_past_six)
    move(store, "America/New_York")

    for minutes in (1, 31, 61, 24 * 60):
        due.owe(half_past_six + timedelta(minutes=minutes))

    assert slots(store) == ["monday summary/team/1/2026-05-04"]


def test_a_big_clubs_minute_is_worked_off_in_portions(store: Store) -> None:
    with store.writing() as session:
        session.add(Workspace(id="T1"))
        session.flush()
        for number in range(AT_ONCE + 5):
            session.add(
                Team(
                    workspace_id="T1", name=str(number), time_zone="America/Chicago",
                    log_channel=f"L{number}", staff_channel=f"S{number}",
                )
            )  # fmt: skip
    due = Due(store)
    due.owe(SUNDAY)

    due.owe(MONDAY)
    first = len(slots(store))
    due.owe(MONDAY + timedelta(seconds=1))

    assert (first, len(slots(store))) == (AT_ONCE, AT_ONCE + 5)
