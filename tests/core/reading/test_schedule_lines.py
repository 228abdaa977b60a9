"""What the staff set of messages by the clock, and everything that is not that."""

from datetime import time

import pytest

from core.model import ScheduleKind
from core.reading.asking import Activity
from core.reading.schedule_lines import (
    Order,
    PlanOrder,
    RestDayOrder,
    ScheduleList,
    ScheduleOrder,
    schedule_list,
    schedule_orders,
)

MONDAY, SPIN = ScheduleKind.MONDAY_SUMMARY, ScheduleKind.SPIN
REST, EVENING = ScheduleKind.REST_DAYS, ScheduleKind.REST_EVENING
POST_GAME = ScheduleKind.POST_GAME


@pytest.mark.parametrize(
    ("text", "order"),
    [
        ("monday summary at 6:30", ScheduleOrder(MONDAY, at=time(6, 30))),
        ("Monday summary 6:30 am", ScheduleOrder(MONDAY, at=time(6, 30))),
        ("summary sunday 6pm", ScheduleOrder(MONDAY, 6, time(18))),
        ("spin reminders off", ScheduleOrder(SPIN, is_on=False)),
        ("turn on the spin reminders", ScheduleOrder(SPIN, is_on=True)),
        ("spin reminder thursday 5pm", ScheduleOrder(SPIN, 3, time(17))),
        ("spin reminder on thursdays at 5", ScheduleOrder(SPIN, 3, time(17))),
        ("spin reminder 45 minutes before practice", ScheduleOrder(SPIN, before_practice=45)),
        ("spin reminder before practice", ScheduleOrder(SPIN, before_practice=30)),
        ("spin reminder not before practice", ScheduleOrder(SPIN, before_practice=0)),
        ("spin reminder default", ScheduleOrder(SPIN, is_default=True)),
        ("spin reminder friday 4pm for Herons 14U",
         ScheduleOrder(SPIN, 4, time(16), team="Herons 14U")),
        ("rest day messages at 9am", ScheduleOrder(REST, at=time(9))),
        ("evening rest messages at 7pm", ScheduleOrder(EVENING, at=time(19))),
        ("rest messages before a game off", ScheduleOrder(EVENING, is_on=False)),
        ("post-game question at 9am", ScheduleOrder(POST_GAME, at=time(9))),
        ("add cue: half effort, spin first", ScheduleOrder(SPIN, cue="half effort, spin first")),
        ("add cue for 14U: long and loose", ScheduleOrder(SPIN, cue="long and loose", team="14U")),
        ("remove cue 2", ScheduleOrder(SPIN, cue="2", drops_cue=True)),
        ("rest day hitting: cages are fine", RestDayOrder(Activity.HIT, "cages are fine")),
        ("rest day catch play: light toss only.", RestDayOrder(Activity.CATCH, "light toss only.")),
        ("rest day catching for 14U: no", RestDayOrder(Activity.CATCHER, "no", "14U")),
        ("rest day throwing: default", RestDayOrder(Activity.THROW)),
        ("spin plan 3 x 12 for Leo", PlanOrder(3, 12, "Leo")),
        ("spin plan 4x10", PlanOrder(4, 10)),
        ("spin plan default for Leo", PlanOrder(who="Leo")),
    ],
)  # fmt: skip
def test_what_is_set(text: str, order: Order) -> None:
    assert schedule_orders(text) == (order,)


def test_several_lines_are_several_orders_and_all_of_them_must_be_orders() -> None:
    assert len(schedule_orders("monday summary at 6:30\nspin reminders off")) == 2
    assert schedule_orders("monday summary at 6:30\nsee you there") == ()


@pytest.mark.parametrize(
    ("text", "unclear"),
    [
        ("spin reminder thursday 5pm or so", "thursday 5pm or so"),
        ("summary 25:00", "25:00"),
        ("spin reminder monday tuesday 5pm", "monday tuesday 5pm"),
        ("spin plan 9 x 12", "9 x 12"),
        ("spin plan 12 a week", "12 a week"),
        ("spin reminder 300 minutes before practice", "300 minutes before practice"),
    ],
)
def test_what_cannot_be_read_is_quoted(text: str, unclear: str) -> None:
    (order,) = schedule_orders(text)

    assert order.unclear == unclear


@pytest.mark.parametrize(
    "text",
    [
        "monday summary was good",
        "spin reminders are great",
        "spin",
        "12 spins",
        "catch 40 throws 12 spins",
        "set spin week 36",
        "the monday summary",
        "62p 11cb vs Summit",
        "stop reminders",
        "Rest days reminder: 1-20 none, 21-35 one day, 36-50 two days, 51-65 three days",
    ],
)
def test_what_sets_nothing(text: str) -> None:
    assert schedule_orders(text) == ()


@pytest.mark.parametrize(
    ("text", "forecast"),
    [
        ("schedules", False),
        ("show the reminders", False),
        ("cues", False),
        ("what will you send this week, to whom?", True),
        ("what will you send this week", True),
        ("what's coming up?", True),
    ],
)
def test_the_lists(text: str, forecast: bool) -> None:
    assert schedule_list(text) == ScheduleList(forecast)


@pytest.mark.parametrize("text", ["what will happen", "what did you send", "who will you send"])
def test_other_questions_ask_for_no_list(text: str) -> None:
    assert schedule_list(text) is None
