"""The same final record leaves the same alerts standing, each told once, however it arrived."""

from collections.abc import Sequence

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlmodel import select

from core.ledger import Notice, NoticeKind
from core.model import Alert, AlertState
from core.store import Store
from tests.support.database import sqlite_template, store
from tests.support.ledger_desk import Desk, Event, deleted, desk_on, edited, said

__all__ = ["sqlite_template", "store"]

#: Three games, a bullpen with a tired arm, a correction and a deletion.
ONE, TWO, THREE, FOUR = (f"177776280{n}.000100" for n in range(4))
EVENTS: list[Event] = [
    said("62p 15cb vs Summit 4/20", ONE),
    said("60p 3cb vs Hawks 4/25", TWO),
    said("60p 26cb vs Summit yesterday, arm tired", THREE),
    said("catch 30 throws 24 spins, arm is tired", FOUR),
    edited("60p 13cb vs Hawks 4/25", 60, TWO),
    deleted("62p 15cb vs Summit 4/20", ts=ONE),
]
Standing = list[tuple[str, str, dict[str, object]]]


def standing(desk: Desk) -> Standing:
    rows = desk.session.exec(select(Alert).where(Alert.state == AlertState.STANDING))
    return sorted((row.key, row.episode, dict(row.figures)) for row in rows)


def told_anew(notices: Sequence[Notice]) -> list[str]:
    """The slots of alerts that would begin a message in the staff channel."""
    return [
        one.slot
        for one in notices
        if one.kind is NoticeKind.ALERT and "/team/" in one.slot and not one.only_if_shown
    ]


@pytest.fixture
def in_order(store: Store) -> Standing:
    with desk_on(store) as desk:
        desk.hear(*EVENTS)
        return standing(desk)


def test_the_final_record_stands_as_expected(in_order: Standing) -> None:
    assert [one[0] for one in in_order] == [
        "breaking balls",
        "mix",
        "spin reps",
        "tired reports",
    ]


@given(order=st.permutations(EVENTS), replayed=st.lists(st.sampled_from(EVENTS), max_size=4))
@settings(
    max_examples=12, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
def test_whatever_the_order_and_the_replays_the_same_alerts_stand(
    store: Store, in_order: Standing, order: list[Event], replayed: list[Event]
) -> None:
    with desk_on(store) as desk:
        desk.hear(*order, *replayed)

        keys = [(one[0], one[2]) for one in standing(desk)]
        assert keys == [(one[0], one[2]) for one in in_order]
        assert len(keys) == len({key for key, _ in keys})


@given(replayed=st.lists(st.sampled_from(EVENTS), max_size=6))
@settings(
    max_examples=8, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
def test_replays_tell_nothing_anew(store: Store, replayed: list[Event]) -> None:
    with desk_on(store) as desk:
        desk.hear(*EVENTS)

        assert told_anew(desk.hear(*replayed)) == []
