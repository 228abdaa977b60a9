"""Nobody is offered what he may not do: every button and word of every role is tried."""

import pytest
from sqlmodel import select

from bot.local.records import Message
from bot.wording.buttons import FORM_ERRORS
from bot.wording.forms import MAY_NOT
from core.model import Membership, Person, Role, Team, key
from tests.support.club import Club
from tests.support.phone import call, home
from tests.support.taps import answer_to

#: Somebody of each role; Aki is added as an assistant.
ROLES = ("dana", "aki", "priya", "mateo", "elena", "carmen", "visitor")


def with_an_assistant(club: Club) -> None:
    club.people["aki"] = club.ws.add_person("Aki Moss")
    with club.store.writing() as session:
        team = session.exec(select(Team)).one()
        aki = Person(
            workspace_id=team.workspace_id, slack_id=club.people["aki"].id, name="Aki Moss"
        )
        session.add(aki)
        session.flush()
        session.add(
            Membership(
                workspace_id=team.workspace_id,
                team_id=key(team),
                person_id=key(aki),
                role=Role.ASSISTANT,
            )
        )


def refused(club: Club, who: str) -> list[str]:
    """The refusals that somebody reads: in a view that only says so, and in direct messages."""
    views = club.ws.open_views(club.people[who])
    said = [str(view.content["blocks"]) for view in views if not view.content.get("submit")]
    said = [one for one in said if any(text in one for text in MAY_NOT.values())]
    return said + [text for text in club.heard(who) if text in FORM_ERRORS.values()]


def press_all_of_home(club: Club, who: str) -> int:
    home(club, who)
    view = club.ws.home(club.people[who])
    assert view is not None
    pressed = [
        one["action_id"]
        for block in view.content["blocks"]
        if block["type"] == "actions"
        for one in block["elements"]
    ]
    for action in pressed:
        club.ws.press_in_view(club.people[who], view, action)
        club.settle()
        assert refused(club, who) == [], action
    return len(pressed)


def press_all_of(club: Club, who: str, message: Message) -> int:
    rows = [block for block in message.blocks if block["type"] == "actions"]
    actions = [one["action_id"] for row in rows for one in row["elements"]]
    for action in actions:
        club.ws.press(club.people[who], message, action)
        club.settle()
        assert refused(club, who) == [], action
    return len(actions)


@pytest.mark.parametrize("who", ROLES)
def test_every_button_of_home_and_welcome_may_be_pressed(club: Club, who: str) -> None:
    with_an_assistant(club)
    club.say("mateo", "62p 11cb 4.1ip vs Summit, elbow pain 4/10")
    club.say("sam_o", "40p 25cb vs Summit")

    pressed = press_all_of_home(club, who)
    if club.heard(who):
        pressed += press_all_of(club, who, answer_to(club, who))

    assert pressed >= (0 if who == "visitor" else 2)


@pytest.mark.parametrize("who", ROLES)
def test_every_word_of_the_help_may_be_used(club: Club, who: str) -> None:
    with_an_assistant(club)

    told = call(club, who, "help all")

    words = [line.split("*")[1] for line in told.splitlines() if line.startswith("•")]
    for word in words:
        answer = call(club, who, word)
        assert "is not for you here" not in answer
        assert not any(text in answer for text in MAY_NOT.values())
        assert refused(club, who) == [], word
    assert words or who == "visitor"


def test_an_assistant_reads_what_the_coach_alone_changes_without_its_button(club: Club) -> None:
    with_an_assistant(club)

    read = home(club, "aki")

    assert "*Roles*: Dana Mercer (coach)" in read
    assert "[Change: roles]" not in read
    assert "[Change: team]" not in read
    assert "[Change: roster]" in read
    assert "[Change: roles]" in home(club, "dana")
    assert "Roles" not in [one["text"]["text"] for one in _buttons(answer_to(club, "aki"))]


def test_the_settings_offer_an_assistant_only_what_he_may_change(club: Club) -> None:
    with_an_assistant(club)

    call(club, "aki", "settings")

    view = club.ws.top_view(club.people["aki"])
    offered = [
        one["accessory"]["action_id"] for one in view.content["blocks"] if one.get("accessory")
    ]
    assert offered
    for action in offered:
        club.ws.press_in_view(club.people["aki"], view, action)
        club.settle()
        assert refused(club, "aki") == [], action


def _buttons(message: Message) -> list[dict[str, dict[str, str]]]:
    return [one for row in message.blocks if row["type"] == "actions" for one in row["elements"]]
