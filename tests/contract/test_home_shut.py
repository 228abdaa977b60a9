"""Home says so when Slack takes no direct messages for somebody, with what to do."""

import pytest

from bot.local.faults import Refused
from tests.support.club import Club
from tests.support.phone import home, shown

POST = "chat.postMessage"
GAME = "62p 11cb 4.1ip vs Summit"
SHUT = "# I cannot write to you\n"


@pytest.mark.parametrize("error", ["messages_tab_disabled", "cannot_dm_bot", "channel_not_found"])
def test_a_refused_message_is_told_on_a_home_that_is_open(club: Club, error: str) -> None:
    assert SHUT not in home(club, "mateo")
    club.ws.faults.order(POST, Refused(error))

    club.say("mateo", GAME)

    read = shown(club, "mateo")
    assert SHUT in read
    assert "What you log is kept all the same" in read
    assert "Ask whoever runs this workspace to allow direct messages from me" in read
    assert "Game, Sat 2 May: 62 pitches" in read


def test_it_is_told_to_who_opens_home_later_and_to_nobody_else(club: Club) -> None:
    club.ws.faults.order(POST, Refused("messages_tab_disabled"))
    club.say("mateo", GAME)

    assert SHUT in home(club, "mateo")
    assert SHUT not in home(club, "elena")
    assert SHUT not in home(club, "dana")


def test_once_a_message_gets_through_it_is_gone(club: Club) -> None:
    club.ws.faults.order(POST, Refused("messages_tab_disabled"))
    club.say("mateo", GAME)
    assert SHUT in home(club, "mateo")

    club.tell_bot("mateo", "help")

    assert SHUT not in home(club, "mateo")


@pytest.mark.parametrize("error", ["invalid_blocks", "is_archived"])
def test_a_fault_that_is_not_about_him_is_not_told(club: Club, error: str) -> None:
    club.ws.faults.order(POST, Refused(error))
    club.say("mateo", GAME)

    assert SHUT not in home(club, "mateo")


def test_a_hold_still_comes_first(club: Club) -> None:
    club.say("carmen", "Leo elbow pain 3/10")
    club.ws.faults.order(POST, Refused("messages_tab_disabled"))
    club.tell_bot("carmen", "help")

    read = home(club, "carmen")

    assert read.startswith("# Holds and limits")
    assert SHUT in read


def test_over_socket_mode_it_is_told_too(socket_club: Club) -> None:
    socket_club.ws.faults.order(POST, Refused("messages_tab_disabled"))
    socket_club.say("mateo", GAME)

    assert SHUT in home(socket_club, "mateo")
