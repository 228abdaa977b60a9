"""What is owed is delivered once, in order, at Slack's pace, however many processes deliver."""

from concurrent.futures import ThreadPoolExecutor
from datetime import timedelta

import pytest

from bot.local.faults import Dropped
from bot.outbox import Reaction
from core.ledger import NoticeKind
from core.model import MessageState
from tests.support.post_room import PostRoom


def test_nothing_is_sent_before_it_is_due(room: PostRoom) -> None:
    morning = room.clock.now() + timedelta(hours=13)
    room.owe("a", "good morning", at=morning)

    room.deliver()
    assert room.seen() == []
    assert room.outbox.next_due() == morning

    room.deliver(after=13 * 3600)
    assert room.seen() == ["good morning"]
    assert room.outbox.next_due() is None


def test_a_channel_gets_one_message_a_second_in_the_order_owed(room: PostRoom) -> None:
    room.ws.rates.enforce()
    for text in ("one", "two", "three"):
        room.owe(text, text)

    room.deliver()
    assert room.seen() == ["one"]
    room.deliver(after=0.5)
    assert room.seen() == ["one"]
    room.deliver(after=0.5)
    room.deliver(after=1)
    assert room.seen() == ["one", "two", "three"]
    assert room.posts() == 3


def test_conversations_do_not_wait_for_each_other(room: PostRoom) -> None:
    room.owe("a", "to the channel")
    room.owe("b", "to the person", to=room.person.id)

    room.deliver()

    assert room.seen() == ["to the channel"]
    assert room.seen(room.ws.dm(room.person)) == ["to the person"]


def test_an_earlier_message_that_is_put_off_goes_first_all_the_same(room: PostRoom) -> None:
    room.ws.faults.order("chat.postMessage", Dropped(processed=False))
    room.owe("a", "pain")
    room.owe("b", "counts")

    for _ in range(8):
        room.deliver(after=1)

    assert room.seen() == ["pain", "counts"]


def test_two_processes_at_once_send_each_message_once(any_room: PostRoom) -> None:
    people = [any_room.ws.add_person(f"Person {n}") for n in range(12)]
    for person in people:
        any_room.owe(f"hello {person.id}", "hello", to=person.id)
    outboxes = [any_room.outbox, any_room.another(), any_room.another()]

    with ThreadPoolExecutor(3) as pool:
        handled = list(pool.map(lambda outbox: outbox.deliver(any_room.clock.now()), outboxes))

    assert sum(handled) == 12
    assert any_room.posts() == 12
    assert all(any_room.seen(any_room.ws.dm(person)) == ["hello"] for person in people)


def test_two_processes_keep_the_order_of_a_conversation(any_room: PostRoom) -> None:
    gate = any_room.ws.faults.gate("chat.postMessage")
    any_room.owe("a", "first")
    any_room.owe("b", "second")

    with ThreadPoolExecutor(1) as pool:
        first = pool.submit(any_room.outbox.deliver, any_room.clock.now())
        assert gate.wait_reached()
        assert any_room.another().deliver(any_room.clock.now()) == 0
        gate.open()
        first.result()
    any_room.deliver(after=1)

    assert any_room.seen() == ["first", "second"]


def test_a_row_changed_while_it_is_being_sent_is_sent_again_as_an_update(
    any_room: PostRoom,
) -> None:
    gate = any_room.ws.faults.gate("chat.postMessage")
    any_room.owe("a", "26 pitches")

    with ThreadPoolExecutor(1) as pool:
        sending = pool.submit(any_room.outbox.deliver, any_room.clock.now())
        assert gate.wait_reached()
        any_room.owe("a", "62 pitches")
        gate.open()
        sending.result()

    assert any_room.seen() == ["62 pitches"]
    assert any_room.posts() == 1
    assert any_room.row("a").delivered == any_room.row("a").wanted == 2


def test_a_process_that_died_while_sending_holds_its_row_for_the_lease_only(
    room: PostRoom,
) -> None:
    room.owe("a", "rest")
    dead = room.another()
    assert dead._claim(room.clock.now(), [room.ws.team_id]) is not None

    room.deliver(after=59)
    assert room.seen() == []
    room.deliver(after=2)
    assert room.seen() == ["rest"]


def test_a_late_outcome_does_not_overwrite_the_process_that_took_over(room: PostRoom) -> None:
    gate = room.ws.faults.gate("chat.postMessage", processed=True)
    room.owe("a", "rest")

    with ThreadPoolExecutor(1) as pool:
        late = pool.submit(room.another().deliver, room.clock.now())
        assert gate.wait_reached()
        room.deliver(after=61)
        taken_over = room.row("a")
        gate.open()
        late.result()

    assert room.seen() == ["rest"]
    assert room.posts() == 1
    assert room.row("a") == taken_over


def test_a_long_run_stops_in_time_so_that_no_lease_is_old_when_it_begins(room: PostRoom) -> None:
    seconds = iter(range(0, 1000, 4))
    slow = room.another()
    slow._seconds = lambda: float(next(seconds))
    for number in range(6):
        room.owe(str(number), "hello", to=room.ws.add_person(f"Person {number}").id)

    assert slow.deliver(room.clock.now()) == 2
    assert room.outbox.deliver(room.clock.now()) == 4


def test_a_message_that_says_the_same_is_not_sent_again(room: PostRoom) -> None:
    room.owe("a", "rest")
    room.deliver()

    room.owe("a", "rest")
    room.deliver(after=5)

    assert room.ws.calls.of("chat.update") == []
    assert room.row("a").state == MessageState.SENT


def test_a_message_with_nothing_to_say_is_never_begun(room: PostRoom) -> None:
    room.owe("a")

    room.deliver()

    assert room.posts() == 0
    assert room.row("a").state == MessageState.DROPPED


def test_words_over_slacks_limit_for_updates_still_arrive(room: PostRoom) -> None:
    room.owe("a", "x" * 100)
    room.deliver()

    room.owe("a", "long " * 900)
    room.deliver(after=5)

    (seen,) = room.seen()
    assert len(seen) <= 4000
    assert ("long " * 900).startswith(seen.removesuffix("…"))
    assert room.row("a").state == MessageState.SENT


def test_a_changed_reaction_replaces_the_old_one(room: PostRoom) -> None:
    said = room.ws.say(room.person, room.channel, "62p")
    for name in ("question", "baseball"):
        room.paper.reactions["r"] = Reaction(said.ts, name)
        room.owe("r", kind=NoticeKind.REACTION)
        room.deliver(after=1)

    assert room.ws.reactions_of_bot(said) == ["baseball"]


@pytest.mark.parametrize("then", ["question", None])
def test_a_reaction_of_unknown_outcome_does_not_stay_beside_the_newer_one(
    room: PostRoom, then: str | None
) -> None:
    said = room.ws.say(room.person, room.channel, "62p")
    room.ws.faults.order("reactions.add", Dropped())
    room.paper.reactions["r"] = Reaction(said.ts, "baseball", ("baseball", "question"))
    room.owe("r", kind=NoticeKind.REACTION)
    room.deliver()

    room.paper.reactions["r"] = Reaction(said.ts, then, ("baseball", "question"))
    room.owe("r", kind=NoticeKind.REACTION)
    room.deliver(after=10)

    assert room.ws.reactions_of_bot(said) == ([then] if then else [])


def test_news_is_posted_anew_where_an_older_message_stands(room: PostRoom) -> None:
    room.owe("a", "elbow 2/10")
    room.deliver()

    room.owe("a", "elbow 8/10", anew=True)
    room.deliver(after=5)

    assert room.seen() == ["elbow 2/10", "elbow 8/10"]


def test_news_of_unknown_outcome_is_not_taken_for_the_older_message(room: PostRoom) -> None:
    room.owe("a", "elbow 2/10")
    room.deliver()
    room.ws.faults.order("chat.postMessage", Dropped(processed=False))

    room.clock.advance(timedelta(seconds=20))
    room.owe("a", "elbow 8/10", anew=True)
    room.deliver()
    room.deliver(after=10)

    assert room.seen() == ["elbow 2/10", "elbow 8/10"]


def test_news_that_stands_already_is_found(room: PostRoom) -> None:
    room.owe("a", "elbow 2/10")
    room.deliver()
    room.ws.faults.order("chat.postMessage", Dropped(processed=True))

    room.clock.advance(timedelta(seconds=20))
    room.owe("a", "elbow 8/10", anew=True)
    room.deliver()
    room.deliver(after=10)

    assert room.seen() == ["elbow 2/10", "elbow 8/10"]
