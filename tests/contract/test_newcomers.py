"""A pitcher who is named before the roster holds him: offered to the staff, then counted."""

from collections.abc import Iterator

import pytest
from sqlmodel import select

from bot.local.server import StandIn
from core.model import Outing, Pitcher
from core.store import Store
from tests.support.club import Club, club_at
from tests.support.phone import call, fill, form, home, press_home
from tests.support.taps import action_id, answer_to, labels, tap
from tests.support.workspace import AppHost


@pytest.fixture
def new_team(stand_in: StandIn, app_host: AppHost, store: Store) -> Iterator[Club]:
    """A coach, Ada, who has just set her team up: no pitcher yet; noon on a Monday."""
    with club_at(stand_in, app_host, store, seeded=False) as club:
        club.clock.set(club.clock.now().replace(day=4, hour=17))
        club.people["ada"] = club.ws.add_person("Ada Owner", is_owner=True, tz="America/Denver")
        ada, joan = club.people["ada"], club.people["joan"]
        club.log = club.ws.add_channel("log", [ada, joan])
        club.staff = club.ws.add_channel("coaches", [ada], private=True)
        home(club, "ada")
        press_home(club, "ada", "Set up the team")
        fill(club, "ada", name="Herons 12U", log_channel=club.log.id, staff_channel=club.staff.id)
        yield club


def add_with_joan(club: Club, **more: str) -> None:
    fill(club, "ada", birth_date="2014-07-01", guardians=[club.people["joan"].id], **more)


def counted(club: Club) -> list[int | None]:
    with club.store.reading() as session:
        return list(session.exec(select(Outing.pitches)))


def test_a_line_about_an_unknown_pitcher_counts_once_he_is_added(new_team: Club) -> None:
    said = new_team.say("ada", "Rio 30 pitches 3 cb vs Summit today", new_team.log)
    asked = answer_to(new_team, "ada")
    assert "I know no pitcher called “Rio”. Your line is kept: add the pitcher" in asked.text
    assert labels(asked) == ["Add Rio"]

    tap(new_team, "ada", asked, "Add Rio")
    assert "First and last name: Rio" in form(new_team, "ada")
    add_with_joan(new_team, name="Rio Vale")
    assert "Not counted for Rio Vale: no consent is on file." in new_team.ws.message(asked).text
    request = answer_to(new_team, "joan")
    new_team.ws.press(new_team.people["joan"], request, action_id(request, "I agree"))
    new_team.ws.settle()
    new_team.settle_now()  # her answer does not wait for the lines that are read again
    new_team.settle()

    assert counted(new_team) == [30]
    assert new_team.reaction(said) == ["baseball"]
    assert new_team.ws.message(asked).text.startswith("*Rio Vale* · Game, Mon 4 May")


@pytest.mark.parametrize("typed", ["add Rio", "Add pitcher rio", "new pitcher: Rio"])
def test_a_pitcher_is_added_by_a_word(new_team: Club, typed: str) -> None:
    new_team.tell_bot("ada", typed)
    assert labels(answer_to(new_team, "ada")) == ["Add Rio"]

    new_team.say("ada", f"<@{new_team.ws.bot.id}> {typed}", new_team.log)
    assert len(new_team.heard("ada")) == 4  # the first steps, then one answer to each
    new_team.say("ada", typed, new_team.staff)
    in_thread = new_team.ws.bot_messages(new_team.staff)[-1]
    assert labels(in_thread) == ["Add Rio"]

    tap(new_team, "ada", in_thread, "Add Rio")
    add_with_joan(new_team)
    with new_team.store.reading() as session:
        assert session.exec(select(Pitcher.name)).one() == "Rio"


def test_the_command_opens_the_form_with_the_name(new_team: Club) -> None:
    call(new_team, "ada", "add Rio Vale")

    assert "First and last name: Rio Vale" in form(new_team, "ada")


def test_a_name_that_is_known_is_not_added_blindly(club: Club) -> None:
    club.tell_bot("dana", "add Leo")

    assert club.heard("dana") == ["On the roster already: Leo Ortiz. Another one of that name?"]
    assert labels(answer_to(club, "dana")) == ["Add Leo", "Change Leo Ortiz"]


def test_who_keeps_no_roster_is_offered_nothing(club: Club) -> None:
    club.tell_bot("priya", "Rio 30 pitches 3 cb vs Summit")
    club.tell_bot("elena", "add Rio")

    assert "ask a coach to add the pitcher" in club.heard("priya")[-1]
    assert labels(answer_to(club, "priya")) == []
    assert "Add Rio" not in labels(answer_to(club, "elena"))


@pytest.mark.parametrize(
    "asked", ["who can throw today", "plan sat 9am 80", "rest", "can Rio go sunday", "who's left"]
)
def test_no_question_of_a_coach_without_pitchers_is_sent_to_the_coaches(
    new_team: Club, asked: str
) -> None:
    new_team.say("ada", asked, new_team.staff)

    answer = new_team.ws.bot_messages(new_team.staff)[-1]
    assert answer.text.startswith("Your roster holds no pitcher yet.")
    assert labels(answer) == ["Add a pitcher"]


def test_a_line_without_a_name_leads_to_the_first_pitcher(new_team: Club) -> None:
    new_team.tell_bot("ada", "30 pitches 3 cb vs Summit today")

    assert "The roster holds no pitcher yet" in answer_to(new_team, "ada").text
    assert labels(answer_to(new_team, "ada")) == ["Add a pitcher"]


def test_home_of_a_new_team_shows_what_comes_next_and_nothing_empty(new_team: Club) -> None:
    read = home(new_team, "ada")

    assert read.startswith("# Herons 12U: next steps\nHerons 12U has no pitcher yet.")
    assert "[Add a pitcher] [Many from a CSV]" in read
    for empty in ("nobody", "# Log\n", "# Alerts", "# Holds", "# The next six days", "None that"):
        assert empty not in read

    press_home(new_team, "ada", "Add a pitcher")
    add_with_joan(new_team, name="Rio Vale")
    read = home(new_team, "ada")
    assert "# Herons 12U: next steps\nNo consent on file yet: Rio Vale." in read
    assert "[Consent on paper: Rio Vale]" in read

    tap(new_team, "joan", answer_to(new_team, "joan"), "I agree")
    read = home(new_team, "ada")
    assert "next steps" not in read
    assert "# Herons 12U: who can throw today\n*Mon 4 May*: 1 of 1 arm has its rest done." in read


def test_home_names_the_channel_that_the_bot_is_missing_from(new_team: Club) -> None:
    other = new_team.ws.add_channel("season-log", [new_team.people["ada"]], bot=False)
    call(new_team, "ada", "team")
    fill(new_team, "ada", log_channel=other.id)

    assert f"# Herons 12U: next steps\n• I am not in <#{other.id}> yet" in home(new_team, "ada")
    new_team.ws.invite_app(other, new_team.people["ada"])
    press_home(new_team, "ada", "Look again")

    assert "I am not in" not in home(new_team, "ada")


def test_before_the_set_up_an_admin_finds_its_button_wherever_he_writes(
    stand_in: StandIn, app_host: AppHost, store: Store
) -> None:
    with club_at(stand_in, app_host, store, seeded=False) as club:
        club.people["ada"] = club.ws.add_person("Ada Owner", is_owner=True)
        for text in ("hi", "help", "who can throw today"):
            club.tell_bot("ada", text)
            assert labels(answer_to(club, "ada")) == ["Set up the team"]
            club.tell_bot("joan", text)
            assert "Ask an owner or admin" in answer_to(club, "joan").text
        assert "opens my Home tab and presses “Set up the team”" in call(club, "joan", "help")
        assert "opens my Home tab and presses “Set up the team”" in call(club, "ada", "help")


@pytest.mark.parametrize(
    ("asked", "label"),
    [
        ("how do I add players", "Open the form"),
        ("make Dana assistant coach", "Open the form"),
        ("change the time zone", "Open the form"),
        ("how do I start", "Add a pitcher"),
        ("add Rio and Kai", "Add a pitcher"),
        ("hi", "Add a pitcher"),
    ],
)
def test_a_new_coach_is_led_to_the_form(new_team: Club, asked: str, label: str) -> None:
    new_team.tell_bot("ada", asked)

    assert labels(answer_to(new_team, "ada")) == [label]


def test_nobody_else_is_led_to_what_he_may_not_do(club: Club) -> None:
    for who in ("mateo", "elena", "priya"):
        club.tell_bot(who, "how do I add players")
        assert labels(answer_to(club, who)) == []


def test_who_adds_a_pitcher_hears_of_it_and_what_is_missing(new_team: Club) -> None:
    call(new_team, "ada", "add Rio Vale")
    add_with_joan(new_team)
    told = answer_to(new_team, "ada")
    assert told.text == (
        "*Rio Vale is on the roster of Herons 12U.* I ask Joan Oduya for consent; lines count from "
        "the yes on."
    )
    assert labels(told) == ["Add another pitcher", "Consent on paper: Rio Vale"]

    new_team.tell_bot("ada", "who can throw today")
    assert answer_to(new_team, "ada").text.startswith("No consent on file yet: Rio Vale.")
    assert labels(answer_to(new_team, "ada")) == ["Consent on paper: Rio Vale"]

    new_team.say("ada", "Rio 30 pitches vs Summit today", new_team.log)
    assert labels(answer_to(new_team, "ada")) == ["Consent on paper: Rio Vale"]
