"""One workspace to a database, and states that are used once, also by many at once."""

from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime, timedelta

import pytest
from sqlmodel import select

from core.installing import OtherWorkspaceError, begin, install, use_up, workspace_here
from core.installing import holds as could_be_used
from core.leaving import delete_all, take_away
from core.model import BotToken, InstallState, Workspace
from core.store import Store

NOON = datetime(2026, 5, 2, 17, tzinfo=UTC)
AT_ONCE = 4


def put(store: Store, workspace_id: str, token: str = "xoxb-1", now: datetime = NOON) -> bool:
    """Install in a workspace; whether it was taken."""
    kept = BotToken(
        workspace_id=workspace_id, token=token, bot_id="B1", bot_user_id="U1", app_id="A1",
        scopes="chat:write", installed_by="U2", installed_at=now,
    )  # fmt: skip
    try:
        with store.writing() as session:
            install(session, Workspace(id=workspace_id, name="Herons"), kept, now)
    except OtherWorkspaceError:
        return False
    return True


def tokens(store: Store) -> list[tuple[str, str]]:
    with store.reading() as session:
        return [(one.workspace_id, one.token) for one in session.exec(select(BotToken))]


def test_the_newest_token_of_a_workspace_is_kept_alone(any_store: Store) -> None:
    put(any_store, "T1", "xoxb-1")
    put(any_store, "T1", "xoxb-2")

    assert tokens(any_store) == [("T1", "xoxb-2")]


def test_of_workspaces_that_install_at_once_one_has_the_database(any_store: Store) -> None:
    with ThreadPoolExecutor(AT_ONCE) as pool:
        taken = [*pool.map(lambda number: put(any_store, f"T{number}"), range(AT_ONCE))]

    assert sum(taken) == 1
    assert tokens(any_store) == [(f"T{taken.index(True)}", "xoxb-1")]


def test_a_workspace_that_left_keeps_its_place_until_its_data_is_deleted(any_store: Store) -> None:
    put(any_store, "T1")
    with any_store.writing() as session:
        take_away(session, "T1", NOON, NOON)
    assert not put(any_store, "T2")
    with any_store.reading() as session:
        assert workspace_here(session) == "T1"

    with any_store.writing() as session:
        delete_all(session, "T1")

    assert put(any_store, "T2")


def test_a_state_is_used_by_whoever_asks_first(any_store: Store) -> None:
    with any_store.writing() as session:
        state = begin(session, NOON)

    def use(_: int) -> bool:
        with any_store.writing() as session:
            return use_up(session, state, NOON)

    with ThreadPoolExecutor(AT_ONCE) as pool:
        assert sum(pool.map(use, range(AT_ONCE))) == 1


@pytest.mark.parametrize(("minutes", "holds"), [(9.99, True), (10, False)])
def test_a_state_holds_for_ten_minutes(store: Store, minutes: float, *, holds: bool) -> None:
    with store.writing() as session:
        state = begin(session, NOON)

    then = NOON + timedelta(minutes=minutes)
    with store.writing() as session:
        assert could_be_used(session, state, then) is holds
        assert use_up(session, state, then) is holds
        assert not could_be_used(session, state, then)


def test_a_state_is_not_in_the_database(store: Store) -> None:
    with store.writing() as session:
        state = begin(session, NOON)

    with store.reading() as session:
        kept = session.exec(select(InstallState)).one()
    assert state not in kept.digest
