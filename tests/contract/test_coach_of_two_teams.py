"""A coach of two teams, who types to the bot alone: what is refused can be acted on."""

from datetime import timedelta

from sqlmodel import select

from core.model import Membership, ScheduleSetting, Team, key
from tests.support.club import Club
from tests.support.taps import answer_to, labels


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


def test_a_setting_that_no_edit_can_mend_is_not_asked_again(club: Club) -> None:
    coach_of_two(club)

    club.tell_bot("dana", "set mix 18%")

    (told,) = club.heard("dana")
    assert "Write it anew in that team's staff channel." in told
    assert "Edit your line" not in told
    club.clock.advance(timedelta(hours=15))
    club.settle()
    assert not any("Still open" in one for one in club.heard("dana"))
