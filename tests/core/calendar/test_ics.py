"""Games and practices out of iCalendar files, by the rules of RFC 5545 (IETF, 2009)."""

from datetime import date, time

import pytest

from core.calendar.ics import CalendarError, Occurrence, kind_of, read_ics
from core.model import EntryKind
from tests.support.ics import calendar, event, game

ZONE = "America/Chicago"
TODAY = date(2026, 5, 4)


def read(content: bytes, zone: str = ZONE) -> list[Occurrence]:
    return sorted(read_ics(content, zone, TODAY).occurrences, key=lambda one: (one.on, one.uid))


def when(content: bytes, zone: str = ZONE) -> list[tuple[date, time | None, time | None]]:
    return [(one.on, one.at, one.until) for one in read(content, zone)]


def test_a_time_in_utc_is_brought_to_the_zone_of_the_team() -> None:
    # RFC 5545, 3.3.5, form 2. Chicago is on daylight time, UTC-5, in May.
    content = calendar(game("a", ":20260509T150000Z"))

    assert when(content) == [(date(2026, 5, 9), time(10), time(12))]


def test_a_time_without_a_zone_is_the_teams_own() -> None:
    # RFC 5545, 3.3.5, form 1: the same wall-clock time in whatever zone it is read.
    content = calendar(game("a", ":20260509T100000"))

    assert when(content, "America/Phoenix") == [(date(2026, 5, 9), time(10), time(12))]


def test_a_time_in_another_zone_may_be_another_day() -> None:
    # RFC 5545, 3.3.5, form 3.
    content = calendar(game("a", ";TZID=America/New_York:20260509T003000"))

    assert when(content) == [(date(2026, 5, 8), time(23, 30), None)]


def test_a_whole_day_ends_before_its_end() -> None:
    # RFC 5545, 3.6.1: DTEND is the exclusive end; two days here.
    two_days = event(
        "UID:a", "DTSTART;VALUE=DATE:20260509", "DTEND;VALUE=DATE:20260511", "SUMMARY:Tournament"
    )

    assert when(calendar(two_days)) == [
        (date(2026, 5, 9), None, None),
        (date(2026, 5, 10), None, None),
    ]


def test_a_whole_day_without_an_end_is_one_day() -> None:
    # RFC 5545, 3.6.1.
    one_day = event("UID:a", "DTSTART;VALUE=DATE:20260509", "SUMMARY:Game vs Ridge")

    assert when(calendar(one_day)) == [(date(2026, 5, 9), None, None)]


def test_a_recurring_practice_with_an_exception_and_one_that_moved() -> None:
    weekly = event(
        "UID:p", "DTSTART;TZID=America/Chicago:20260505T170000",
        "DTEND;TZID=America/Chicago:20260505T190000", "RRULE:FREQ=WEEKLY;COUNT=4",
        "EXDATE;TZID=America/Chicago:20260519T170000", "SUMMARY:Practice",
    )  # fmt: skip
    moved = event(
        "UID:p", "RECURRENCE-ID;TZID=America/Chicago:20260512T170000",
        "DTSTART;TZID=America/Chicago:20260513T180000",
        "DTEND;TZID=America/Chicago:20260513T190000", "SUMMARY:Practice",
    )  # fmt: skip

    found = read(calendar(weekly, moved))

    assert [(one.on, one.at) for one in found] == [
        (date(2026, 5, 5), time(17)),
        (date(2026, 5, 13), time(18)),
        (date(2026, 5, 26), time(17)),
    ]
    # RFC 5545, 3.8.4.4: the occurrence that moved is known by where it was.
    assert found[1].recurrence == "20260512T170000"


def test_the_published_example_of_a_weekly_rule() -> None:
    # RFC 5545, 3.8.5.3: "Weekly for 10 occurrences", DTSTART 2 September 1997, 09:00 New York:
    # 1997 9:00 EDT September 2, 9, 16, 23, 30 and October 7, 14, 21; EST October 28, November 4.
    weekly = event(
        "UID:w", "DTSTART;TZID=America/New_York:19970902T090000", "RRULE:FREQ=WEEKLY;COUNT=10",
        "SUMMARY:Practice",
    )  # fmt: skip
    found = read_ics(calendar(weekly), "America/New_York", date(1997, 9, 2)).occurrences

    months = {9: (2, 9, 16, 23, 30), 10: (7, 14, 21, 28), 11: (4,)}
    expected = [date(1997, month, day) for month, days in months.items() for day in days]
    assert [(one.on, one.at) for one in found] == [(on, time(9)) for on in expected]


def test_a_change_of_this_and_all_future_occurrences_keeps_them_apart() -> None:
    # RFC 5545, 3.2.13 and 3.8.4.4.
    weekly = event(
        "UID:p", "DTSTART:20260505T220000Z", "RRULE:FREQ=WEEKLY;COUNT=4", "SUMMARY:Practice"
    )
    later = event(
        "UID:p", "RECURRENCE-ID;RANGE=THISANDFUTURE:20260512T220000Z", "DTSTART:20260512T230000Z",
        "SUMMARY:Practice",
    )  # fmt: skip

    found = read(calendar(weekly, later))

    assert [one.at for one in found] == [time(17), time(18), time(18), time(18)]
    assert len({(one.uid, one.recurrence) for one in found}) == 4


def test_an_event_that_was_cancelled_says_so() -> None:
    # RFC 5545, 3.8.1.11.
    (found,) = read(calendar(game("a", ":20260509T150000Z", "Game vs Summit", "STATUS:CANCELLED")))

    assert found.cancelled


def test_long_lines_and_escaped_text_are_read_as_one() -> None:
    # RFC 5545, 3.1 (folding) and 3.3.11 (escapes).
    folded = "SUMMARY:Game vs Su\r\n mmit\\, at Pine\r\n  Hill"
    (found,) = read(calendar(event("UID:a", "DTSTART:20260509T150000Z", folded)))

    assert found.title == "Game vs Summit, at Pine Hill"


def test_an_event_that_moves_keeps_its_key() -> None:
    (before,) = read(calendar(game("a", ":20260509T150000Z")))
    (after,) = read(calendar(game("a", ":20260510T150000Z", "Game vs Summit", "SEQUENCE:1")))

    assert (before.uid, before.recurrence) == (after.uid, after.recurrence) == ("a", "")


def test_an_event_without_a_beginning_does_not_cost_the_others() -> None:
    broken = event("UID:b", "SUMMARY:Game vs Ridge")

    assert len(read(calendar(game("a", ":20260509T150000Z"), broken))) == 1


def test_what_is_neither_game_nor_practice_is_counted_and_left_out() -> None:
    found = read_ics(
        calendar(
            game("a", ":20260509T150000Z"),
            event("UID:b", "DTSTART:20260510T150000Z", "SUMMARY:Team picnic"),
        ),
        ZONE,
        TODAY,
    )

    assert (len(found.occurrences), found.left_out) == (1, 1)


@pytest.mark.parametrize(
    ("content", "problem"),
    [
        (b"<html>sign in</html>", "no calendar"),
        (b"", "no calendar"),
        (b"\xff\xfe\x00", "no calendar"),
        (calendar(), "no events"),
        (calendar(event("UID:a", "DTSTART:20260504T000000Z", "RRULE:FREQ=SECONDLY",
                        "SUMMARY:Game")), "too often"),
        (calendar(*(game(f"g{n}", f":202605{1 + n % 28:02}T150000Z") for n in range(2_100))),
         "too many"),
    ],
)  # fmt: skip
def test_what_is_no_usable_calendar_has_a_name(content: bytes, problem: str) -> None:
    with pytest.raises(CalendarError) as wrong:
        read_ics(content, ZONE, TODAY)

    assert wrong.value.problem == problem


@pytest.mark.parametrize(
    ("summary", "kind"),
    [
        ("Herons vs Summit", EntryKind.GAME),
        ("Herons @ Ridge", EntryKind.GAME),
        ("vs. Summit (home)", EntryKind.GAME),
        ("Game 2", EntryKind.GAME),
        ("Spring tournament", EntryKind.GAME),
        ("Doubleheader", EntryKind.GAME),
        ("Practice", EntryKind.PRACTICE),
        ("Bullpen day", EntryKind.PRACTICE),
        ("Practice game", EntryKind.PRACTICE),
        ("Team picnic", None),
        ("Picture day before the game", None),
        ("No practice", None),
        ("Parents' meeting", None),
        ("Dana", None),
    ],
)
def test_what_a_title_means(summary: str, kind: EntryKind | None) -> None:
    # Common practice, no source.
    assert kind_of(summary) is kind
