"""Slack never has to say no: what the pace allows stays within Slack's limits."""

from datetime import timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.local.rates import PER_MINUTE, POSTS_PER_MINUTE
from bot.outbox import Reaction
from bot.outbox.pace import BUDGETS, POST, Pace
from bot.outbox.shared import MOST
from core.ledger import NoticeKind
from tests.support.post_room import NOON, PostRoom

MINUTE = timedelta(minutes=1)


@settings(max_examples=60, deadline=None)
@given(
    st.sampled_from(sorted(BUDGETS)),
    st.lists(st.floats(0, 2), min_size=400, max_size=400),
)
def test_no_minute_holds_more_calls_than_slack_takes(method: str, waits: list[float]) -> None:
    pace, now, calls = Pace(), NOON, []
    for number, wait in enumerate(waits):
        now = max(now + timedelta(seconds=wait), pace.free_at("T1", method, str(number)))
        pace.took("T1", method, str(number), now)
        calls.append(now)

    most = POSTS_PER_MINUTE if method == POST else PER_MINUTE[method]
    assert all(later - first >= MINUTE for first, later in zip(calls, calls[most:], strict=False))


@pytest.mark.parametrize("method", sorted(BUDGETS))
def test_a_budget_is_nine_tenths_used_where_it_matters(method: str) -> None:
    budget = BUDGETS[method]

    steady = MINUTE / budget.step
    assert steady <= budget.per_minute
    assert method != POST or steady >= 0.9 * POSTS_PER_MINUTE


def test_a_workspace_does_not_wait_for_another() -> None:
    pace = Pace()
    pace.block("T1", POST, NOON + MINUTE)

    assert pace.free_at("T1", POST, "C1") == NOON + MINUTE
    assert pace.free_at("T2", POST, "C1") < NOON
    assert pace.closed(NOON) == [("T1", POST)]


def test_a_crowd_is_told_in_turn_and_slack_never_says_no(room: PostRoom) -> None:
    room.ws.rates.enforce()
    people = [room.ws.add_person(f"Person {number}") for number in range(40)]
    for person in people:
        room.owe(person.id, "rest", to=person.id, kind=NoticeKind.REST_DAYS)

    told = [room.deliver(after=second and 1) for second in range(8)]

    assert told[0] == BUDGETS[POST].burst
    assert sum(told) == room.posts() == 40
    assert all(call.status == 200 for call in room.ws.calls.of(POST))


def test_reactions_are_not_kept_back_by_posts_that_wait(room: PostRoom) -> None:
    people = [room.ws.add_person(f"Person {number}") for number in range(30)]
    for person in people:
        room.owe(person.id, "rest", to=person.id)
    said = room.ws.say(room.person, room.channel, "62p 11cb")
    room.paper.reactions["reaction"] = Reaction(said.ts, "baseball")
    room.owe("reaction", kind=NoticeKind.REACTION)

    room.deliver()

    assert room.ws.reactions_of_bot(said) == ["baseball"]


def test_the_next_message_is_due_when_the_pace_allows_it(room: PostRoom) -> None:
    people = [room.ws.add_person(f"Person {number}") for number in range(16)]
    for person in people:
        room.owe(person.id, "rest", to=person.id)

    room.deliver()

    assert room.outbox.next_due() == room.clock.now() + BUDGETS[POST].step


def test_three_processes_together_stay_within_a_workspaces_minute(room: PostRoom) -> None:
    room.ws.rates.enforce()
    outboxes = [room.outbox, room.another(), room.another()]
    for number in range(320):
        room.owe(str(number), "rest", to=room.ws.add_person(f"Person {number}").id)

    for _second in range(40):
        for outbox in outboxes:
            outbox.deliver(room.clock.now())
        room.clock.advance(timedelta(seconds=1))
    in_the_first_minute = room.posts()
    next_due = room.outbox.next_due()
    room.deliver(after=30)

    assert in_the_first_minute == MOST
    assert next_due is not None
    assert next_due > room.clock.now() - timedelta(seconds=30)
    assert room.posts() > MOST
    assert all(call.status == 200 for call in room.ws.calls.of(POST))
