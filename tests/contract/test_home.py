"""The Home tab as each person reads it, published by the outbox and kept up to date."""

from datetime import timedelta

import pytest
from sqlalchemy import event
from sqlmodel import select

from bot.blocks.home import home_view
from bot.local.faults import RateLimited, Refused
from core import model
from core.model import PitcherTeam, key
from core.rulebooks import load_books
from tests.support.club import Club
from tests.support.phone import fill, form, home, press_home, shown, shown_view


def publishes(club: Club) -> int:
    """How often a Home tab was published."""
    return len(club.ws.calls.of("views.publish"))


def test_a_pitcher_reads_his_own_rest_reps_mix_and_last_outings(club: Club) -> None:
    club.say("mateo", "62p 11cb 4.1ip vs Summit")
    club.clock.advance(timedelta(days=2))
    club.say("mateo", "catch 30 throws 12 spins 50%")

    read = home(club, "mateo")

    assert read.startswith("# Log\n[Log a game] [Log a bullpen] [Log catch play] [Report pain]\n")
    assert (
        "# Your arm\nNot on Mon 4 May; earliest Wed 6 May by rule. 62 pitches on Sat 2 May: 3 days "
        "(Pitch Smart, 17–18)."
    ) in read
    assert "League and local rules govern. The coach decides." in read
    assert "Spin reps this week: 12 of 36 (in 1 session)." in read
    assert "Breaking balls: 18 % (11 of 62), last 28 days" in read
    assert "The coach's line is 20 %." in read
    assert (
        "*Last outings*\n"
        "• Catch play, Mon 4 May: 30 throws, 12 breaking balls, 50 % effort\n"
        "• Game, Sat 2 May: 62 pitches, 11 breaking balls (11 curveballs), 4.1 innings\n"
        "[Fix Mon 4 May] [Fix Sat 2 May]"
    ) in read
    assert "Leo" not in read
    assert "Settings" not in read


def test_an_outing_is_fixed_from_home_and_home_follows(club: Club) -> None:
    club.say("mateo", "26p 11cb vs Summit")
    home(club, "mateo")

    press_home(club, "mateo", "Fix Sat 2 May")
    assert form(club, "mateo").startswith("Put it right")
    fill(club, "mateo", pitches="62")

    assert "• Game, Sat 2 May: 62 pitches" in shown(club, "mateo")


def test_a_form_is_opened_from_home(club: Club) -> None:
    home(club, "carmen")

    press_home(club, "carmen", "Log catch play")
    fill(club, "carmen", throws="30", spins="12")

    assert "# Leo Ortiz" in shown(club, "carmen")
    assert "• Catch play, Sat 2 May: 30 throws, 12 breaking balls" in shown(club, "carmen")


def test_holds_come_first_and_no_count_is_named_beside_them(club: Club) -> None:
    club.say("mateo", "58p 11cb vs Summit, elbow pain 4/10")

    for who in ("mateo", "elena", "dana"):
        read = home(club, who)
        assert read.startswith(
            "# Holds and limits\n• *Mateo Cruz*: Pain was reported on Sat 2 May and this arm is on "
            "hold: no throwing until an adult records a licensed clinician's clearance"
        )
        assert "up to 47" not in read
    assert "Mateo Cruz: on hold, pain reported on Sat 2 May." in home(club, "dana")
    assert "*Sun 3 May*: 3 of 4: Leo Ortiz, Sam Oduya and Sam Ruiz." in home(club, "dana")


def test_a_guardian_reads_each_child_and_what_was_sent_to_him(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")

    read = home(club, "elena")

    assert "# Mateo Cruz\nMateo Cruz: not on Sat 2 May; earliest Wed 6 May by rule." in read
    assert "Sent to the child alone in the last 7 days: 1 answer to an own line." in read
    assert "nothing that an adult writes is passed on to one child alone" in read
    assert "Sent to the child" not in home(club, "carmen")
    assert "No consent is on file for Ben Abara" in home(club, "joan")


def test_a_coach_reads_the_staff_the_week_and_what_waits(club: Club) -> None:
    club.say("mateo", "62p 11cb")
    club.say("sam_o", "40p 25cb vs Summit")
    club.tell_bot("dana", "set mix 18% for Leo")

    read = home(club, "dana")

    assert "# Herons: who can throw today\n*Sat 2 May*: 2 of 4 arms have their rest done." in read
    assert "# Herons: next steps\nNo consent on file yet: Ben Abara." in read
    assert "# The next six days, if nobody throws before\n• *Sun 3 May*: 2 of 4:" in read
    assert "*Fri 8 May*: all 4." in read
    assert "Sat 2 May, *Sam Oduya*. Many breaking balls in one game. 25 breaking balls" in read
    assert "# Questions that wait for an answer\n• Mateo Cruz, Sat 2 May" in read
    assert "# Settings" in read
    assert "*Quiet hours*: 20:00 to 08:00 (the default). No unasked-for message" in read
    assert "• Sat 2 May, Dana Mercer: mix 20 → 18 for Leo Ortiz" in read


def test_an_alert_that_was_seen_leaves_home(club: Club) -> None:
    club.say("sam_o", "40p 25cb vs Summit")
    home(club, "dana")

    press_home(club, "dana", "Seen")

    assert "# Alerts to see" not in shown(club, "dana")


def test_a_scorekeeper_and_a_stranger_find_a_useful_page(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit, elbow pain 4/10")

    scorer, stranger = home(club, "priya"), home(club, "visitor")

    assert "[Log a game] [Counts of one game]" in scorer
    assert "I don't know you as part of a team yet" in stranger
    assert "Ask a coach to add you to the roster, then open this tab again." in stranger
    for read in (scorer, stranger):
        assert "Mateo" not in read
        assert "Pain is told to adults only, never in a channel." in read


def test_home_follows_the_log_for_those_who_have_opened_it_and_for_nobody_else(
    club: Club,
) -> None:
    home(club, "mateo")
    home(club, "dana")
    assert publishes(club) == 2

    said = club.say("mateo", "62p 11cb vs Summit")
    assert "• Game, Sat 2 May: 62 pitches" in shown(club, "mateo")
    assert "Mateo Cruz: rests, earliest Wed 6 May" in shown(club, "dana")
    assert shown(club, "elena") == ""

    club.edit(said, "30p 5cb vs Summit")
    assert "• Game, Sat 2 May: 30 pitches" in shown(club, "mateo")
    club.delete(said)
    assert "No outing is on record." in shown(club, "mateo")


def test_talk_and_another_pitchers_line_publish_nothing(club: Club) -> None:
    home(club, "mateo")

    club.say("mateo", "great game everybody")
    club.say("sam_r", "40p 5cb vs Summit")
    home(club, "mateo")

    assert publishes(club) == 1


def test_a_burst_of_lines_is_one_new_home(club: Club) -> None:
    home(club, "dana")
    for text in ("62p 11cb vs Summit", "elbow is fine", "catch 30 throws"):
        club.ws.say(club.people["mateo"], club.log, text)
    club.settle()

    assert publishes(club) == 2


def test_home_that_slack_slows_down_is_published_later_and_keeps_nothing_back(club: Club) -> None:
    club.ws.faults.order("views.publish", RateLimited(7))
    club.ws.open_home(club.people["mateo"])
    club.say("mateo", "62p 11cb vs Summit")

    assert len(club.heard("mateo")) == 1
    assert "• Game, Sat 2 May: 62 pitches" in shown(club, "mateo")


def test_home_that_slack_refuses_is_tried_again_when_it_is_opened(club: Club) -> None:
    club.ws.faults.order("views.publish", Refused("invalid_arguments"))
    assert home(club, "mateo") == ""

    assert home(club, "mateo").startswith("# Log")
    assert club.heard("mateo") == []


def test_after_a_new_installation_home_is_put_there_again(club: Club) -> None:
    home(club, "mateo")
    del club.ws.state.homes[club.people["mateo"].id]

    assert home(club, "mateo").startswith("# Log")


def add_pitchers(club: Club, number: int) -> None:
    """So many more pitchers of 15 with consent, each with an outing."""
    with club.store.writing() as session:
        team = session.get_one(model.Team, 1)
        for place in range(number):
            pitcher = model.Pitcher(
                workspace_id=club.ws.team_id,
                name=f"Arm {place:02}",
                birth_date=club.clock.now().date() - timedelta(days=15 * 366),
                consent_on=club.clock.now().date(),
            )
            session.add(pitcher)
            session.flush()
            link = PitcherTeam(
                workspace_id=club.ws.team_id, pitcher_id=key(pitcher), team_id=key(team)
            )
            session.add(link)


def test_more_arms_than_fit_are_on_further_pages(club: Club) -> None:
    add_pitchers(club, 26)

    first = home(club, "dana")
    assert "Page 1 of 2\n[Next: Herons]" in first
    assert "Arm 19" in first
    assert "Arm 22" not in first

    press_home(club, "dana", "Next: Herons")

    assert "Page 2 of 2\n[Back: Herons]" in shown(club, "dana")
    assert "Arm 22" in shown(club, "dana")
    assert "Arm 19" not in shown(club, "dana")


def test_a_hold_of_another_team_is_on_every_page(club: Club) -> None:
    with club.store.writing() as session:
        team = model.Team(
            workspace_id=club.ws.team_id, name="Herons 14U", time_zone="America/Chicago",
            log_channel="C14", staff_channel="C14S", rule_books=["pitch-smart"],
        )  # fmt: skip
        dana = session.exec(
            select(model.Person).where(model.Person.slack_id == club.people["dana"].id)
        ).one()
        session.add(team)
        session.flush()
        role = model.Membership(
            workspace_id=club.ws.team_id, team_id=key(team), person_id=key(dana), role="coach"
        )
        session.add(role)
    club.say("mateo", "elbow pain 4/10")
    home(club, "dana")

    press_home(club, "dana", "Next: Herons 14U")

    read = shown(club, "dana")
    assert read.startswith("# Holds and limits\n• *Mateo Cruz*: Pain was reported on Sat 2 May")
    assert "# Herons 14U: next steps\nHerons 14U has no pitcher yet." in read


def statements_and_sections(club: Club, who: str) -> tuple[int, int]:
    """How often a Home tab asks the database, and how many sections it has.

    Each setting is a section of its own. The beginning of a transaction asks nothing.
    """
    asked: list[str] = []

    def note(*args: object) -> None:
        if not str(args[2]).startswith("BEGIN"):
            asked.append(str(args[2]))

    row = model.OutboxMessage(
        workspace_id=club.ws.team_id, slot="", kind="home", destination=club.people[who].id,
        not_before=club.clock.now(),
    )  # fmt: skip
    event.listen(club.store.engine, "before_cursor_execute", note)
    try:
        with club.store.reading() as session:
            view = home_view(session, row, club.clock.now(), load_books).view
    finally:
        event.remove(club.store.engine, "before_cursor_execute", note)
    headers = sum(block["type"] == "header" for block in view["blocks"])
    read = shown_view(view).partition("# Settings")[2].partition("# About")[0]
    settings = sum(line.startswith("*") for line in read.splitlines())
    return len(asked), headers + settings


@pytest.mark.parametrize("who", ["dana", "elena", "mateo"])
def test_the_database_is_asked_as_often_for_many_arms_as_for_few(club: Club, who: str) -> None:
    club.say("mateo", "62p 11cb vs Summit")
    few, _ = statements_and_sections(club, who)
    add_pitchers(club, 15)

    assert statements_and_sections(club, who)[0] == few


def test_a_coachs_home_asks_the_database_at_most_once_a_section(club: Club) -> None:
    add_pitchers(club, 15)
    club.say("sam_o", "40p 25cb vs Summit")

    asked, sections = statements_and_sections(club, "dana")

    assert asked <= sections


def test_home_never_holds_more_blocks_than_slack_takes(club: Club) -> None:
    add_pitchers(club, 40)
    with club.store.writing() as session:
        elena = session.exec(
            select(model.Person).where(model.Person.slack_id == club.people["elena"].id)
        ).one()
        for pitcher in session.exec(select(model.Pitcher)).all():
            if pitcher.name.startswith("Arm"):
                link = model.GuardianLink(
                    workspace_id=club.ws.team_id, pitcher_id=key(pitcher), person_id=key(elena)
                )
                session.add(link)

    read = home(club, "elena")
    view = club.ws.home(club.people["elena"])

    assert view is not None
    assert len(view.content["blocks"]) == 100
    assert read.endswith("Ask me in Messages: “alerts”, “who”, “rest” with a name.")


def test_home_works_over_socket_mode(socket_club: Club) -> None:
    socket_club.say("mateo", "62p 11cb vs Summit")

    assert "• Game, Sat 2 May: 62 pitches" in home(socket_club, "mateo")
