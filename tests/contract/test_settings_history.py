"""The history of a team's settings: roles, roster, schedules and consent in it, in plain words."""

from datetime import timedelta

import pytest

from bot.forms.settings import MOST_CHANGES
from tests.support.club import Club
from tests.support.phone import call, fill, form, home
from tests.support.taps import tap


def told(club: Club) -> list[str]:
    """The changes on the coach's Home tab, newest first, without their bullets."""
    read = home(club, "dana").split("*Changes, newest first*\n")[1].splitlines()
    return [line.removeprefix("• ") for line in read if line.startswith("• ")][:MOST_CHANGES]


def to_noon(club: Club) -> None:
    """Noon of the next day in Chicago: families are written to."""
    club.clock.advance(timedelta(hours=18))


def test_roles_stand_in_the_history_given_and_taken(club: Club) -> None:
    for give in ("give", "take"):
        call(club, "dana", "roles")
        values = {"who": club.people["visitor"].id, "role": "scorekeeper", "give": give}
        assert fill(club, "dana", **values) == {}

    assert told(club) == [
        "Sat 2 May, Dana Mercer: Vic Stray is no longer scorekeeper",
        "Sat 2 May, Dana Mercer: Vic Stray becomes scorekeeper",
    ]


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("monday summary at 6:30", "Monday summary: Mondays, 7 am → Mondays, 6:30 am"),
        ("add cue: spin it early", "Spin reminder, cue added: “spin it early”"),
        (
            "spin plan 3 x 10 for Leo",
            "spin plan: 3 sessions of catch play with 10 spin reps each for Leo Ortiz",
        ),
        ("spin plan default", "spin plan: back to the default"),
        ("rest day hitting: tee work only", "on a rest day, hitting: “tee work only”"),
        ("set mix 18% for Leo", "mix 20 → 18 for Leo Ortiz"),
        ("set silent days off", "silent days 7 → off"),
        ("limit Leo to 40 tomorrow", "pitch limit 40 for Leo Ortiz"),
    ],
)
def test_what_a_line_sets_stands_in_the_history_and_that_it_was_taken_back(
    club: Club, line: str, said: str
) -> None:
    set_by = club.say("dana", line, club.staff)
    assert told(club) == [f"Sat 2 May, Dana Mercer: {said}"]

    club.delete(set_by)

    newest, before = told(club)
    assert newest.endswith("taken back")
    assert before == f"Sat 2 May, Dana Mercer: {said}"


def test_the_roster_stands_in_the_history_without_a_birth_date(club: Club) -> None:
    to_noon(club)
    call(club, "dana", "roster")
    leo = _option(club, "Leo Ortiz")
    fill(club, "dana", what="change", who=leo)
    values = {"also_called": "Lefty", "birth_date": "2012-07-04"}
    visitor = club.people["visitor"].id
    assert fill(club, "dana", **values, guardians=[club.people["carmen"].id, visitor]) == {}

    (line,) = told(club)
    assert line == (
        "Sun 3 May, Dana Mercer: roster, Leo Ortiz: other names, date of birth and guardians "
        "changed"
    )
    assert "2012" not in home(club, "dana")


def test_who_leaves_the_team_stands_in_its_history(club: Club) -> None:
    to_noon(club)
    call(club, "dana", "roster")
    fill(club, "dana", what="move", who=_option(club, "Leo Ortiz"))
    assert fill(club, "dana", move="leaves") == {}

    assert told(club) == ["Sun 3 May, Dana Mercer: Leo Ortiz leaves the team"]


def test_consent_stands_in_the_history_with_who_said_it(club: Club) -> None:
    to_noon(club)
    club.say("joan", "Ben 30 pitches vs Summit")
    request = next(
        one for one in club.ws.dm_messages(club.people["joan"]) if "*May I keep" in one.text
    )
    tap(club, "joan", request, "I agree")
    club.clock.advance(timedelta(minutes=5))
    club.tell_bot("joan", "withdraw consent for Ben")

    assert told(club) == [
        "Sun 3 May, Joan Oduya: withdrew consent to the record of Ben Abara",
        "Sun 3 May, Joan Oduya: agreed to the record of Ben Abara",
    ]


def test_pain_is_no_change_of_a_setting(club: Club) -> None:
    club.say("mateo", "58p 11cb vs Summit, elbow pain 4/10")

    assert "Nothing has been changed yet." in home(club, "dana")


def test_the_newest_changes_are_told_and_no_more(club: Club) -> None:
    for number in range(10, 10 + MOST_CHANGES + 3):
        club.say("dana", f"set mix {number}%", club.staff)

    lines = told(club)
    assert len(lines) == MOST_CHANGES
    assert lines[0].endswith(f"→ {10 + MOST_CHANGES + 2}")
    call(club, "dana", "settings")
    assert lines[-1] in form(club, "dana")


def _option(club: Club, name: str) -> str:
    """The value of an option of the form in front of the coach."""
    view = club.ws.top_view(club.people["dana"])
    options = [
        one
        for block in view.content["blocks"]
        for one in block.get("element", {}).get("options", [])
    ]
    return next(str(one["value"]) for one in options if one["text"]["text"] == name)
