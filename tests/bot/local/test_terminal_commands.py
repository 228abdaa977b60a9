"""What a line typed at the prompt means."""

from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.local.commands import BY_NAME, COMMANDS, Typed, UsageError, complete, parse
from bot.local.moments import FARTHEST, MomentError, day_and_time, parse_moment

#: A Saturday.
NOW = datetime(2026, 5, 30, 18, tzinfo=ZoneInfo("America/Chicago"))


@pytest.mark.parametrize(
    ("line", "command", "argument"),
    [
        ("as Mateo Rivas", "as", "Mateo Rivas"),
        ("in #17u-staff", "in", "#17u-staff"),
        ("go to Monday 07:00", "go", "Monday 07:00"),
        ("go +2h", "go", "+2h"),
        ("edit 63p 11cb", "edit", "63p 11cb"),
        ("say help is on the way", "say", "help is on the way"),
        ("  QUIT ", "quit", ""),
        ("62p 11cb 4.1ip", "say", "62p 11cb 4.1ip"),
        ("people say he is fine", "say", "people say he is fine"),
        ("delete that", "say", "delete that"),
        ("go team", "say", "go team"),
        ("home", "home", ""),
        ("home run in the third", "say", "home run in the third"),
        ("fill Pitches = 62", "fill", "Pitches = 62"),
        ("fill in for Leo", "say", "fill in for Leo"),
        ("In the 4th my arm hurt", "say", "In the 4th my arm hurt"),
    ],
)
def test_a_command_needs_its_whole_form_and_everything_else_is_said(
    line: str, command: str, argument: str
) -> None:
    assert parse(line) == Typed(command, argument)


@pytest.mark.parametrize("line", ["as", "in", "go", "go to", "edit", "press", "say"])
def test_a_command_that_lacks_its_end_says_what_belongs_there(line: str) -> None:
    command = BY_NAME[line.split()[0]]

    with pytest.raises(UsageError) as wrong:
        parse(line)

    assert str(wrong.value) == f"{command.usage}: {command.says}."


@given(st.text(max_size=30))
@settings(max_examples=50)
def test_whatever_is_typed_is_nothing_a_known_command_or_a_sentence(line: str) -> None:
    try:
        typed = parse(line)
    except UsageError:
        assert line.split()[0].casefold() in BY_NAME
        return

    assert (typed is None) == (not line.strip())
    assert typed is None or typed.command in BY_NAME


def test_tab_completes_commands_people_and_channels() -> None:
    people, channels = ["mateo", "Mateo Rivas", "owen"], ["log17", "staff17"]

    assert complete("", people, channels) == [command.name for command in COMMANDS]
    assert complete("de", people, channels) == ["delete"]
    assert complete("as mat", people, channels) == ["mateo", "Mateo Rivas"]
    assert complete("in ", people, channels) == ["log17", "staff17", "dm"]
    assert complete("hello mat", people, channels) == []


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("Monday 07:00", "Mon 1 Jun 07:00"),
        ("mon 7:00", "Mon 1 Jun 07:00"),
        ("Saturday 19:00", "Sat 30 May 19:00"),
        ("Saturday 07:00", "Sat 6 Jun 07:00"),
        ("tomorrow 08:30", "Sun 31 May 08:30"),
        ("today 20:00", "Sat 30 May 20:00"),
        ("21:30", "Sat 30 May 21:30"),
        ("17:30", "Sun 31 May 17:30"),
        ("2026-06-01 07:00", "Mon 1 Jun 07:00"),
        ("2026-06-01T07:00", "Mon 1 Jun 07:00"),
        ("+2h", "Sat 30 May 20:00"),
        ("+ 90 min", "Sat 30 May 19:30"),
        ("+3d", "Tue 2 Jun 18:00"),
        ("+1w", "Sat 6 Jun 18:00"),
    ],
)
def test_a_moment_is_the_next_one_of_its_name(words: str, expected: str) -> None:
    assert day_and_time(parse_moment(words, NOW)) == expected


@pytest.mark.parametrize(
    ("words", "reason"),
    [
        ("soon", "is no time I know"),
        ("Monday", "is no time I know"),
        ("Mo 07:00", "is no time I know"),
        ("25:00", "is no time I know"),
        ("2026-02-30 07:00", "is no time I know"),
        ("+0h", "is past: it is Sat 30 May 18:00"),
        ("today 17:00", "is past"),
        ("2026-05-01 07:00", "is past"),
        ("+9w", "is too far"),
    ],
)
def test_what_is_no_moment_to_come_is_one_sentence(words: str, reason: str) -> None:
    with pytest.raises(MomentError, match=reason):
        parse_moment(words, NOW)


def test_two_hours_stay_two_hours_where_the_clocks_change() -> None:
    # Clocks in Chicago go forward on 8 March 2026 at 02:00 (IANA time zone database).
    eve = datetime(2026, 3, 8, 1, tzinfo=ZoneInfo("America/Chicago"))

    assert day_and_time(parse_moment("+2h", eve)) == "Sun 8 Mar 04:00"


@given(st.integers(1, 9_999), st.sampled_from(["m", "min", "h", "d", "w"]))
@settings(max_examples=50)
def test_a_span_goes_forward_and_never_too_far(number: int, unit: str) -> None:
    minutes = number * {"m": 1, "min": 1, "h": 60, "d": 1_440, "w": 10_080}[unit]

    if timedelta(minutes=minutes) > FARTHEST:
        with pytest.raises(MomentError, match="is too far"):
            parse_moment(f"+{number}{unit}", NOW)
    else:
        assert parse_moment(f"+{number}{unit}", NOW) - NOW == timedelta(minutes=minutes)
