"""Quiet hours of a team: longer than the usual ones, never shorter."""

from bot.wording.settings import QUIET
from core.roster.quiet_hours import BEGINS, ENDS
from tests.support.club import Club
from tests.support.hours import chicago, go_to
from tests.support.phone import call, fill, form, home, press_home, shown


def about_rest(club: Club, who: str) -> list[str]:
    return [text for text in club.heard(who) if "about rest from pitching" in text]


def open_form(club: Club) -> None:
    home(club, "dana")
    press_home(club, "dana", f"Change: {QUIET.lower()}")


def test_a_coach_makes_them_longer_and_the_history_tells_it(club: Club) -> None:
    # The evening rest message goes at 19:30 until the staff set another time.
    open_form(club)
    refused = fill(club, "dana", quiet_from="19", quiet_to="9")
    assert "evening rest message goes out later than that" in str(refused)

    assert fill(club, "dana", quiet_from="20", quiet_to="9") == {}

    assert "*Quiet hours*: 20:00 to 09:00. No unasked-for message" in shown(club, "dana")
    call(club, "dana", "settings")
    assert "hour at which quiet hours end" in form(club, "dana")


def test_what_comes_by_the_clock_waits_for_their_end(club: Club) -> None:
    open_form(club)
    assert fill(club, "dana", quiet_from="20", quiet_to="9") == {}
    club.say("mateo", "62p 11cb 4.1ip vs Summit")

    go_to(club, chicago("05-03", "08:30"))
    assert about_rest(club, "elena") == []
    go_to(club, chicago("05-03", "09:05"))
    assert len(about_rest(club, "elena")) == 1


def test_no_time_in_them_is_set_for_families(club: Club) -> None:
    open_form(club)
    assert fill(club, "dana", quiet_from="20", quiet_to="10") == {}

    club.say("dana", "rest day messages at 9am", club.staff)

    assert any("families sleep" in text for text in club.in_staff_channel())


def test_none_is_offered_that_is_shorter() -> None:
    # Common practice in youth-sport communication policies: contact between 08:00 and 20:00.
    assert max(BEGINS) == BEGINS[0] == 20
    assert min(ENDS) == ENDS[0] == 8
