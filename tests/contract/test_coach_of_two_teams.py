"""A coach of two teams, who types to the bot alone: what is refused can be acted on."""

from datetime import date

import pytest
from sqlmodel import select

from bot.local.records import Channel
from core.model import (
    CalendarEntry,
    Membership,
    Pitcher,
    PitcherTeam,
    ScheduleSetting,
    Team,
    ThresholdSetting,
    key,
)
from tests.support.club import Club
from tests.support.taps import answer_to, labels, tap


def coach_of_two(club: Club) -> None:
    with club.store.writing() as session:
        team = session.exec(select(Team)).one()
        staff = session.exec(select(Membership).where(Membership.role == "coach")).one()
        other = Team(
            workspace_id=team.workspace_id, name="Terns 14U", time_zone=team.time_zone,
            log_channel="C8", staff_channel="C9",
        )  # fmt: skip
        session.add(other)
        session.flush()
        session.add(
            Membership(
                workspace_id=team.workspace_id, team_id=key(other), person_id=staff.person_id,
                role="coach",
            )
        )  # fmt: skip


def test_a_schedule_that_is_refused_is_set_by_the_words_of_the_refusal(club: Club) -> None:
    coach_of_two(club)

    said = club.tell_bot("dana", "monday summary at 6:30")
    assert "“monday summary at 6:30 for 14U”" in club.heard("dana")[-1]
    club.edit(said, "monday summary at 6:30 for 14U")

    assert "I set nothing" not in club.heard("dana")[-1]
    with club.store.reading() as session:
        (row,) = session.exec(select(ScheduleSetting)).all()
        assert session.get_one(Team, row.team_id).name == "Terns 14U"


def test_the_button_under_each_list_of_schedules_names_its_team(club: Club) -> None:
    coach_of_two(club)

    club.tell_bot("dana", "schedules")

    assert labels(answer_to(club, "dana")) == [
        "Change schedules: Herons",
        "Change schedules: Terns 14U",
    ]


def test_a_setting_is_asked_for_its_team_and_set_by_a_button(club: Club) -> None:
    coach_of_two(club)

    club.tell_bot("dana", "set mix 18%")
    assert "you coach more than one team. For which one is it?" in club.heard("dana")[-1]
    assert labels(answer_to(club, "dana")) == ["Herons", "Terns 14U"]
    tap(club, "dana", answer_to(club, "dana"), "Terns 14U")

    assert club.heard("dana")[-1].startswith("Set for the team: mix 18 % (before: 20 %")
    with club.store.reading() as session:
        (row,) = session.exec(select(ThresholdSetting)).all()
        assert session.get_one(Team, row.team_id).name == "Terns 14U"


@pytest.mark.parametrize("typed", ["game sat 10am vs Summit", "monday summary at 6:30"])
def test_every_order_that_needs_a_team_offers_them(club: Club, typed: str) -> None:
    coach_of_two(club)

    club.tell_bot("dana", typed)
    tap(club, "dana", answer_to(club, "dana"), "Terns 14U")

    assert "Terns 14U" in club.heard("dana")[-1] or "6:30" in club.heard("dana")[-1]
    with club.store.reading() as session:
        set_for = [one.team_id for one in session.exec(select(ScheduleSetting))]
        set_for += [one.team_id for one in session.exec(select(CalendarEntry))]
        assert [session.get_one(Team, one).name for one in set_for] == ["Terns 14U"]


def test_thresholds_and_alerts_are_told_of_each_team(club: Club) -> None:
    coach_of_two(club)

    club.tell_bot("dana", "thresholds")
    listed = club.heard("dana")[-1]
    assert "*Thresholds for Herons*: all at their defaults." in listed
    assert "*Thresholds for Terns 14U*: all at their defaults." in listed
    assert labels(answer_to(club, "dana")) == [
        "All thresholds: Herons",
        "All thresholds: Terns 14U",
    ]
    club.tell_bot("dana", "alerts")
    assert club.heard("dana")[-1].count("No alert has been raised for") == 2


def test_thresholds_fit_a_phone_and_tell_what_differs(club: Club) -> None:
    club.tell_bot("dana", "set mix 18%")
    club.tell_bot("dana", "thresholds")

    told = club.heard("dana")[-1]
    assert "1 of 21 differ" in told
    assert "• mix: *18 %* (default: 20 %)." in told
    assert len(told.splitlines()) <= 10
    club.tell_bot("dana", "all thresholds")
    assert "So many days in season without any line: unknown, not rest." in club.heard("dana")[-1]


def in_terns_channel(club: Club) -> Channel:
    """The private staff channel of the second team, whose only arm is Kai."""
    coach_of_two(club)
    staff = club.ws.add_channel("14u-staff", [club.people["dana"]], private=True)
    with club.store.writing() as session:
        team = session.exec(select(Team).where(Team.name == "Terns 14U")).one()
        team.staff_channel = staff.id
        team.rule_books = ["pitch-smart"]
        kai = Pitcher(
            workspace_id=team.workspace_id, name="Kai Lund", birth_date=date(2012, 3, 3),
            consent_on=date(2026, 2, 1),
        )  # fmt: skip
        session.add(kai)
        session.flush()
        session.add(
            PitcherTeam(workspace_id=team.workspace_id, pitcher_id=key(kai), team_id=key(team))
        )
    return staff


@pytest.mark.parametrize(
    "asked",
    [
        "can Mateo go sunday",
        "how many did Mateo throw sat",
        "if Mateo throws 40 sun when is he back",
        "can Kai and Mateo go sunday",
        "thresholds for Mateo",
    ],
)
def test_what_is_asked_about_the_other_team_is_answered_to_the_asker_alone(
    club: Club, asked: str
) -> None:
    terns = in_terns_channel(club)

    club.say("dana", asked, terns)

    assert "Mateo Cruz" in club.heard("dana")[-1]
    shown = [one.text for one in club.ws.bot_messages(terns)]
    assert not any("Mateo" in one for one in shown)
    if not asked.startswith("thresholds"):
        assert shown == [
            "That is about another team's pitcher: the answer is in a direct message to whoever "
            "asked."
        ]


def test_what_is_asked_about_the_own_team_is_answered_in_its_channel(club: Club) -> None:
    terns = in_terns_channel(club)

    club.say("dana", "can Kai go sunday", terns)

    assert club.ws.bot_messages(terns)[-1].text.startswith("Kai Lund: rest done")
    assert club.heard("dana") == []


def test_a_name_of_the_other_team_is_offered_in_no_channel(club: Club) -> None:
    terns = in_terns_channel(club)

    club.say("dana", "can Mateu go sunday", terns)

    assert "Mateo" not in club.ws.bot_messages(terns)[-1].text
