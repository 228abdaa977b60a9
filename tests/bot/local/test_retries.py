"""Slack's retries: at once, after a minute, after five (docs.slack.dev, "The Events API")."""

from datetime import timedelta

import pytest

from bot.clock import SimulatedClock
from bot.local.courier import Done
from bot.local.delivery import Delivery, Outcome
from bot.local.records import Channel, Person
from bot.local.workspace import Workspace


class Answering:
    """A target that gives the ordered answers, then acks."""

    def __init__(self, *answers: Outcome) -> None:
        self.answers = list(answers)
        self.sent: list[Delivery] = []

    def send(self, delivery: Delivery, done: Done) -> None:
        self.sent.append(delivery)
        done(self.answers.pop(0) if self.answers else Outcome(status=200))


FAILED = Outcome("http_error", 500)
REFUSED = Outcome("http_error", 500, headers={"x-slack-no-retry": "1"})
LATE = Outcome("http_timeout", headers={"x-slack-no-retry": "1"})


def attempts(target: Answering) -> list[int]:
    return [delivery.attempt for delivery in target.sent]


def test_three_retries_and_no_more(
    ws: Workspace, rosa: Person, log: Channel, clock: SimulatedClock
) -> None:
    target = Answering(*[FAILED] * 9)
    ws.deliver_by(target)
    ws.retries.begin()

    ws.say(rosa, log, "62p")
    at_once = attempts(target)
    clock.advance(timedelta(minutes=1))
    ws.retries.send_due()
    clock.advance(timedelta(minutes=5))
    ws.retries.send_due()
    clock.advance(timedelta(days=1))
    ws.retries.send_due()

    assert at_once == [0, 1]
    assert attempts(target) == [0, 1, 2, 3]
    assert {d.event_id for d in target.sent} == {target.sent[0].event_id}
    assert target.sent[1].retry_reason == "http_error"


def test_nothing_is_due_early(
    ws: Workspace, rosa: Person, log: Channel, clock: SimulatedClock
) -> None:
    ws.deliver_by(Answering(FAILED, FAILED))
    ws.retries.begin()
    ws.say(rosa, log, "62p")

    clock.advance(timedelta(seconds=59))

    assert ws.retries.send_due() == []


@pytest.mark.parametrize(("answer", "expected"), [(REFUSED, [0]), (LATE, [0, 1])])
def test_an_app_can_refuse_retries_unless_it_was_late(
    ws: Workspace, rosa: Person, log: Channel, answer: Outcome, expected: list[int]
) -> None:
    target = Answering(answer)
    ws.deliver_by(target)
    ws.retries.begin()

    ws.say(rosa, log, "62p")

    assert attempts(target) == expected


def test_a_press_is_never_sent_again(ws: Workspace, rosa: Person, log: Channel) -> None:
    target = Answering(FAILED)
    ws.deliver_by(target)
    ws.retries.begin()

    ws.command(rosa, log, "/spin", "rest")

    assert attempts(target) == [0]


def test_without_begin_nothing_is_retried(ws: Workspace, rosa: Person, log: Channel) -> None:
    target = Answering(FAILED)
    ws.deliver_by(target)

    ws.say(rosa, log, "62p")

    assert attempts(target) == [0]


def test_a_long_queue_to_a_target_that_answers_at_once_is_no_deep_recursion(
    ws: Workspace, rosa: Person, log: Channel
) -> None:
    target = Answering()
    ws.deliver_by(target)
    ws.courier.hold()
    for number in range(1500):
        ws.say(rosa, log, str(number))

    ws.courier.release()

    assert [d.event["text"] for d in target.sent] == [str(n) for n in range(1500)]
