"""Two teams of one coach: what is told to the staff of one names its own pitchers alone."""

from datetime import date

import pytest
from sqlmodel import Session, select

from bot.local.records import Channel
from core.model import Membership, Person, Pitcher, PitcherTeam, Role, Team, key
from tests.support.club import ZONE, Club


def _one(session: Session, name: str) -> Pitcher:
    return session.exec(select(Pitcher).where(Pitcher.name == name)).one()


@pytest.fixture
def other_staff(club: Club) -> Channel:
    """The staff channel of the Ospreys, the team of Leo and Ben, which Dana coaches too."""
    dana = club.people["dana"]
    log = club.ws.add_channel("ospreys-log", [dana])
    staff = club.ws.add_channel("ospreys-staff", [dana], private=True)
    with club.store.writing() as session:
        of = club.ws.team_id
        team = Team(
            workspace_id=of, name="Ospreys", time_zone=ZONE, log_channel=log.id,
            staff_channel=staff.id, rule_books=["pitch-smart"], season_start=date(2026, 3, 1),
        )  # fmt: skip
        session.add(team)
        session.flush()
        coach = session.exec(select(Person).where(Person.slack_id == dana.id)).one()
        session.add(
            Membership(workspace_id=of, team_id=key(team), person_id=key(coach), role=Role.COACH)
        )
        for name in ("Leo Ortiz", "Ben Abara"):
            pitcher = _one(session, name)
            for link in session.exec(
                select(PitcherTeam).where(PitcherTeam.pitcher_id == key(pitcher))
            ):
                session.delete(link)
            session.flush()
            session.add(PitcherTeam(workspace_id=of, pitcher_id=key(pitcher), team_id=key(team)))
    return staff


def read_by(club: Club, channel: Channel) -> str:
    """What the bot wrote in a channel, its buttons too."""
    said = club.ws.bot_messages(channel)
    return "\n".join(f"{one.text} {one.blocks}" for one in said)


def test_a_broken_rule_is_told_to_the_staff_of_that_pitcher_alone(
    club: Club, other_staff: Channel
) -> None:
    club.tell_bot("dana", "Mateo 120p vs Summit; Leo 110p vs Summit")

    herons, ospreys = read_by(club, club.staff), read_by(club, other_staff)
    assert "Over a rule" in herons
    assert "Mateo Cruz" in herons
    assert "Over a rule" in ospreys
    assert "Leo Ortiz" in ospreys
    assert "Leo" not in herons
    assert "Mateo" not in ospreys


def test_a_roll_call_shows_each_staff_its_own_pitchers(club: Club, other_staff: Channel) -> None:
    club.tell_bot("dana", "everyone threw 125 vs Summit")

    herons, ospreys = read_by(club, club.staff), read_by(club, other_staff)
    assert "Mateo Cruz" in herons
    assert "Sam Ruiz" in herons
    assert "Leo Ortiz" in ospreys
    assert "Leo" not in herons
    assert "Ben" not in herons
    assert "Mateo" not in ospreys
    assert "Sam" not in ospreys


def test_pain_taken_back_is_told_to_the_staff_of_that_pitcher_alone(
    club: Club, other_staff: Channel
) -> None:
    said = club.tell_bot("dana", "Mateo elbow hurts; Leo shoulder hurts")
    club.delete(said)

    herons, ospreys = read_by(club, club.staff), read_by(club, other_staff)
    assert "Mateo Cruz" in herons
    assert "Leo Ortiz" in ospreys
    assert "Leo" not in herons
    assert "Mateo" not in ospreys


def test_two_counts_are_shown_to_the_staff_of_that_pitcher_alone(
    club: Club, other_staff: Channel
) -> None:
    club.say("mateo", "40p vs Summit")
    club.tell_bot("carmen", "Leo 30p vs Summit")
    club.tell_bot("dana", "Mateo 42p vs Summit; Leo 33p vs Summit")
    for _ in range(2):
        asked = club.ws.dm_messages(club.people["dana"])[-1]
        buttons = [one for block in asked.blocks for one in block.get("elements", ())]
        same = [one for one in buttons if "The same outing" in str(one)]
        club.ws.press(club.people["dana"], asked, same[0]["action_id"])
        club.settle()

    herons, ospreys = read_by(club, club.staff), read_by(club, other_staff)
    assert "Mateo Cruz" in herons
    assert "Leo Ortiz" in ospreys
    assert "Leo" not in herons
    assert "Mateo" not in ospreys


def test_a_limit_set_in_the_other_teams_staff_channel_is_answered_to_the_coach(
    club: Club, other_staff: Channel
) -> None:
    said = club.say("dana", "limit Leo 45 until 6/5", club.staff)

    assert club.ws.replies(club.staff, said) == []
    assert "Leo" not in read_by(club, club.staff)
    (answer,) = club.heard("dana")
    assert "Leo Ortiz" in answer
    assert "45" in answer


def test_a_limit_in_ones_own_staff_channel_is_answered_there(
    club: Club, other_staff: Channel
) -> None:
    said = club.say("dana", "limit Leo 45 until 6/5", other_staff)

    (answer,) = club.ws.replies(other_staff, said)
    assert "Leo Ortiz" in answer.text
    assert club.heard("dana") == []


def test_an_edit_to_another_teams_pitcher_takes_the_answer_out_of_the_channel(
    club: Club, other_staff: Channel
) -> None:
    said = club.say("dana", "limit Mateo 45 until 6/5", club.staff)
    club.edit(said, "limit Leo 45 until 6/5")

    (answer,) = club.ws.replies(club.staff, said)
    assert "Leo" not in answer.text
    assert "another team" in answer.text
    assert "Leo Ortiz" in club.heard("dana")[-1]


def test_a_log_in_the_other_teams_staff_channel_is_told_to_his_staff(
    club: Club, other_staff: Channel
) -> None:
    club.say("dana", "Leo 110p vs Summit", club.staff)

    assert "Leo" not in read_by(club, club.staff)
    assert "Leo Ortiz" in read_by(club, other_staff)
    assert "Leo Ortiz" in club.heard("dana")[-1]


def test_a_limit_for_one_pitcher_does_not_speak_of_everyone(
    club: Club, other_staff: Channel
) -> None:
    club.say("dana", "limit Leo 45", other_staff)
    club.tell_bot("carmen", "Leo 60p vs Summit")

    told = read_by(club, other_staff)
    assert "Coach's limits" in told
    assert "everyone" not in told
