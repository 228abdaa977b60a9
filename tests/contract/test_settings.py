"""The settings: what each is now, the form that changes it, and who changed what."""

import pytest

from bot.forms import FORMS
from tests.support.club import Club
from tests.support.phone import call, fill, form, home, is_open, press_home, shown


def press_in_form(club: Club, who: str, action: str) -> None:
    """Press the button of an action in the form in front of somebody."""
    person = club.people[who]
    view = club.ws.top_view(person)
    club.ws.press_in_view(person, view, f"{action}.1")
    club.settle()


def test_the_menu_tells_each_setting_and_opens_its_form_on_top(club: Club) -> None:
    call(club, "dana", "settings")

    read = form(club, "dana")
    assert read.startswith("Settings\n")
    assert "*Thresholds*: all at their defaults." in read
    assert "*Rule books*: pitch-smart. Where two apply, the stricter one wins." in read
    assert "*Quiet hours*: 20:00 to 08:00 (the default). No unasked-for message" in read
    assert "Nothing has been changed yet." in read

    press_in_form(club, "dana", "open.thresholds")
    assert form(club, "dana").startswith("Thresholds")
    assert len(club.ws.open_views(club.people["dana"])) == 2


def test_a_threshold_that_is_changed_stands_in_the_settings_and_their_history(club: Club) -> None:
    home(club, "dana")
    press_home(club, "dana", "Change: thresholds")
    assert fill(club, "dana", mix="18") == {}

    assert "*Thresholds*: 1 not at the default." in shown(club, "dana")
    assert "• Sat 2 May, Dana Mercer: mix 20 → 18" in shown(club, "dana")
    call(club, "dana", "settings")
    assert "• Sat 2 May, Dana Mercer: mix 20 → 18" in form(club, "dana")


@pytest.mark.parametrize("name", [one.name for one in FORMS.values() if one.setting is not None])
def test_every_setting_opens_from_the_menu(club: Club, name: str) -> None:
    call(club, "dana", "settings")

    press_in_form(club, "dana", f"open.{name}")

    assert len(club.ws.open_views(club.people["dana"])) == 2
    assert "nothing here that you may change" not in form(club, "dana")


def test_the_settings_are_for_the_coaches(club: Club) -> None:
    for who in ("mateo", "elena", "priya"):
        assert "The team's settings are for the coaches." in call(club, who, "settings")
        assert not is_open(club, who)
        assert "# Settings" not in home(club, who)


def test_a_change_of_the_team_stands_in_the_history(club: Club) -> None:
    call(club, "dana", "team")
    complaints = fill(club, "dana", account_age="17")
    assert complaints == {}

    call(club, "dana", "settings")

    assert "Sat 2 May, Dana Mercer: age for an own account: 16 → 17" in form(club, "dana")


def test_thresholds_of_single_pitchers_are_counted_too(club: Club) -> None:
    club.say("dana", "set mix 18% for Mateo", club.staff)
    assert "*Thresholds*: team: defaults; 1 of its own for Mateo Cruz." in home(club, "dana")

    club.say("dana", "set mix 18% for Leo", club.staff)
    club.say("dana", "set silent days 5 for Leo\nset silent days 9", club.staff)
    assert (
        "*Thresholds*: team: 1 not at the default; 2 of its own for Leo Ortiz and 1 for "
        "Mateo Cruz." in home(club, "dana")
    )

    club.say("dana", "set mix default for Leo", club.staff)
    club.say("dana", "set silent days default for Leo", club.staff)
    assert "not at the default; 1 of its own for Mateo Cruz." in home(club, "dana")
