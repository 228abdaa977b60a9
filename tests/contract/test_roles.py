"""Roles: several for one person, given by a coach, a coach's own by two; the last one stays."""

from typing import Any

from sqlmodel import select

from bot.local.records import Message
from core.model import AuditEntry, Membership, Person, Role, Team, key
from core.store import Store
from tests.support.club import Club
from tests.support.taps import labels, tap


def change(club: Club, by: str, who: str, role: str, give: str = "give") -> dict[str, str]:
    coach = club.people[by]
    club.ws.command(coach, club.log, "/spinkeeper", "roles")
    club.settle()
    values: dict[str, Any] = {"who": club.people[who].id, "role": role, "give": give}
    answer = club.ws.submit(coach, values)
    errors = club.ws.errors_of(answer)
    club.settle()
    return errors


def roles_of(store: Store, name: str) -> set[str]:
    with store.reading() as session:
        rows = select(Membership.role).join(Person).where(Person.name == name)
        return set(session.exec(rows))


def last(club: Club, who: str) -> Message:
    mine = club.ws.dm_messages(club.people[who])
    return [one for one in mine if one.user == club.ws.bot.id][-1]


def second_coach(club: Club, who: str = "elena") -> None:
    with club.store.writing() as session:
        person = session.exec(select(Person).where(Person.slack_id == club.people[who].id)).one()
        team = session.exec(select(Team)).one()
        session.add(
            Membership(
                workspace_id=club.ws.team_id,
                team_id=key(team),
                person_id=key(person),
                role=Role.COACH,
            )
        )


def test_a_scorekeeper_is_made_at_once_and_told_what_to_do(club: Club) -> None:
    assert change(club, "dana", "visitor", "scorekeeper") == {}

    assert roles_of(club.store, "Vic Stray") == {"scorekeeper"}
    assert "You are now scorekeeper of Herons" in last(club, "visitor").text
    club.say("visitor", "Leo 40p 6cb vs Summit")
    assert any("Leo Ortiz" in one for one in club.in_staff_channel())


def test_somebody_may_hold_several_roles(club: Club) -> None:
    change(club, "dana", "priya", "assistant")

    assert roles_of(club.store, "Priya Venn") == {"assistant", "scorekeeper"}


def test_the_only_coach_makes_a_second_one_alone(club: Club) -> None:
    assert change(club, "dana", "elena", "coach") == {}

    assert roles_of(club.store, "Elena Cruz") == {"coach"}


def test_a_third_coach_needs_the_second_ones_word(club: Club) -> None:
    second_coach(club)

    change(club, "dana", "priya", "coach")

    assert roles_of(club.store, "Priya Venn") == {"scorekeeper"}
    assert "It waits for Elena Cruz; nothing is changed yet" in last(club, "dana").text
    question = last(club, "elena")
    assert labels(question) == ["Confirm", "No, leave it"]

    tap(club, "elena", question, "Confirm")

    assert roles_of(club.store, "Priya Venn") == {"coach", "scorekeeper"}
    assert "confirmed by Elena Cruz" in last(club, "dana").text
    with club.store.reading() as session:
        entry = session.exec(select(AuditEntry).where(AuditEntry.subject == "membership")).one()
        assert entry.by_slack_id == club.people["dana"].id
        assert entry.after["role"] == "coach"
        assert entry.after["confirmed_by"] is not None


def test_over_socket_mode_a_second_coach_may_say_no(socket_club: Club) -> None:
    second_coach(socket_club)
    change(socket_club, "dana", "priya", "coach")

    tap(socket_club, "elena", last(socket_club, "elena"), "No, leave it")

    assert roles_of(socket_club.store, "Priya Venn") == {"scorekeeper"}
    assert "Elena Cruz did not agree" in last(socket_club, "dana").text


def test_what_was_refused_is_confirmed_no_more(club: Club) -> None:
    second_coach(club)
    change(club, "dana", "priya", "coach")
    question = last(club, "elena")
    club.ws.press(club.people["elena"], question, "press.role_refuse.1").wait()
    club.ws.press(club.people["elena"], question, "press.role_confirm.0")
    club.settle()

    assert roles_of(club.store, "Priya Venn") == {"scorekeeper"}


def test_the_last_coach_cannot_leave(club: Club) -> None:
    errors = change(club, "dana", "dana", "coach", "take")

    assert "last coach cannot leave" in errors["who"]
    assert roles_of(club.store, "Dana Mercer") == {"coach"}


def test_two_coaches_cannot_take_each_others_role_and_leave_none(club: Club) -> None:
    second_coach(club)
    change(club, "dana", "elena", "coach", "take")
    change(club, "elena", "dana", "coach", "take")
    first, second = last(club, "elena"), last(club, "dana")
    messages = club.ws.dm_messages(club.people["elena"])
    asked_elena = [one for one in messages if "Confirm" in str(one.blocks)][-1]
    messages = club.ws.dm_messages(club.people["dana"])
    asked_dana = [one for one in messages if "Confirm" in str(one.blocks)][-1]
    assert first
    assert second
    tap(club, "elena", asked_elena, "Confirm")
    tap(club, "dana", asked_dana, "Confirm")

    held = roles_of(club.store, "Dana Mercer") | roles_of(club.store, "Elena Cruz")
    assert held == {"coach"}


def test_a_pitcher_under_18_gets_no_role(club: Club) -> None:
    assert "under 18" in change(club, "dana", "mateo", "scorekeeper")["who"]
    assert roles_of(club.store, "Mateo Cruz") == set()


def test_only_a_coach_opens_the_form(club: Club) -> None:
    for who in ("priya", "mateo", "elena"):
        club.ws.command(club.people[who], club.log, "/spinkeeper", "roles")
        club.settle()
        assert club.ws.open_views(club.people[who]) == []
