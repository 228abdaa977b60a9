"""A name that fits two pitchers, and pain that stands on no record: settled by a button."""

import pytest
from sqlmodel import select

from bot.local.records import Message
from core.model import CoachLimit, PainReport, Pitcher
from tests.support.answered import Watch
from tests.support.club import Club
from tests.support.taps import action_id, answer_to, labels, tap


def staff_message(club: Club, beginning: str) -> Message:
    """The newest message of the staff channel that begins so."""
    return [one for one in club.ws.bot_messages(club.staff) if one.text.startswith(beginning)][-1]


UNPLACED = "*Pain report without a record.*"


def in_pain(club: Club) -> list[str]:
    """Whose pain is on record."""
    with club.store.reading() as session:
        rows = select(Pitcher.name).join(PainReport).where(PainReport.pitcher_id == Pitcher.id)
        return list(session.exec(rows))


def test_a_question_about_a_name_of_two_has_a_button_for_each(club: Club) -> None:
    club.say("dana", "can Sam go sunday", club.staff)
    asked = staff_message(club, "Which pitcher is “Sam”")
    assert labels(asked) == ["Sam Ruiz", "Sam Oduya"]

    tap(club, "dana", asked, "Sam Oduya")

    (answer,) = club.in_staff_channel()
    assert answer.startswith("Sam Oduya: rest done, up to 105 pitches on Sun 3 May")


def test_only_who_may_read_the_record_answers_for_a_name(club: Club) -> None:
    club.ws.join(club.people["priya"], club.staff)
    club.say("dana", "can Sam go sunday", club.staff)

    tap(club, "priya", staff_message(club, "Which pitcher"), "Sam Oduya")

    assert club.in_staff_channel()[-1].startswith("Which pitcher")


def test_an_order_for_a_name_of_two_has_a_button_for_each(club: Club) -> None:
    club.tell_bot("dana", "limit Sam 40")
    tap(club, "dana", answer_to(club, "dana"), "Sam Ruiz")

    assert club.heard("dana")[-1].startswith("Coach's limit for Sam Ruiz: at most 40 pitches")
    with club.store.reading() as session:
        assert session.exec(select(CoachLimit.pitches)).one() == 40


def test_a_coach_who_asks_about_somebody_new_is_offered_to_add_him(club: Club) -> None:
    club.tell_bot("dana", "can Rio go sunday")

    assert labels(answer_to(club, "dana")) == ["Add Rio"]


def test_pain_of_a_name_of_two_is_placed_by_the_staff_and_told_to_the_family(club: Club) -> None:
    club.say("priya", "Sam said his shoulder hurts 5/10")
    notice = staff_message(club, UNPLACED)
    assert labels(notice) == ["It is Sam Oduya", "It is Sam Ruiz"]
    assert in_pain(club) == []

    tap(club, "dana", notice, "It is Sam Oduya")

    assert in_pain(club) == ["Sam Oduya"]
    assert "Sam Oduya has pain: shoulder 5/10" in club.heard("joan")[-1]
    assert "*On hold*" in staff_message(club, "*Pain report.* Sam Oduya").text
    placed = staff_message(club, UNPLACED)
    assert "*Dana Mercer put it on Sam Oduya's record*" in placed.text
    assert labels(placed) == []


@pytest.mark.parametrize("text", ["Leo says his elbow hurts", "Leo's elbow hurts, he told me so"])
def test_a_teammates_word_of_pain_is_confirmed_by_the_staff(club: Club, text: str) -> None:
    club.say("mateo", text)
    assert in_pain(club) == []
    assert any("speaks of pain of Leo Ortiz" in one for one in club.heard("carmen"))
    assert club.heard("elena") == []

    tap(club, "dana", staff_message(club, UNPLACED), "It is Leo Ortiz")

    assert in_pain(club) == ["Leo Ortiz"]
    assert any("Leo Ortiz has pain: elbow" in one for one in club.heard("carmen"))
    assert club.in_log_channel() == []


def test_pain_of_nobody_named_may_be_anybodys_of_the_team(club: Club) -> None:
    club.say("mateo", "somebody's arm hurts bad, his elbow popped")

    assert in_pain(club) == []
    assert labels(staff_message(club, UNPLACED)) == [
        "It is Leo Ortiz", "It is Mateo Cruz", "It is Sam Oduya", "It is Sam Ruiz",
    ]  # fmt: skip


def test_pain_is_placed_once_and_by_the_staff_alone(club: Club) -> None:
    club.say("priya", "Sam said his shoulder hurts 5/10")
    notice = staff_message(club, UNPLACED)

    club.ws.join(club.people["priya"], club.staff)
    tap(club, "priya", notice, "It is Sam Ruiz")
    assert in_pain(club) == []

    tap(club, "dana", notice, "It is Sam Ruiz")
    assert in_pain(club) == ["Sam Ruiz"]
    assert labels(club.ws.message(notice)) == []


def test_a_pitcher_without_consent_is_told_of_and_has_no_button(club: Club) -> None:
    club.say("mateo", "Ben says his elbow hurts")

    assert labels(staff_message(club, UNPLACED)) == []
    assert any("speaks of pain of Ben Abara" in one for one in club.heard("joan"))


@pytest.mark.parametrize("text", ["Sam said his shoulder hurts 5/10", "Sam 40p, elbow hurts 5/10"])
def test_the_staffs_press_answers_for_the_scorekeeper_too(
    club: Club, watch: Watch, text: str
) -> None:
    club.say("priya", text)
    question, notice = answer_to(club, "priya"), staff_message(club, UNPLACED)

    club.ws.press(club.people["dana"], notice, action_id(notice, "It is Sam Oduya"))
    club.ws.press(club.people["priya"], question, action_id(question, "Sam Ruiz"))
    club.settle()
    watch.presses.clear()  # two presses of one moment share the calls that follow

    assert in_pain(club) == ["Sam Oduya"]
    assert "*Dana Mercer put it on Sam Oduya's record*" in club.heard("priya")[-1]
    assert "*Dana Mercer put it on Sam Oduya's record*" in club.ws.message(notice).text
    assert len([one for one in club.heard("joan") if "has pain" in one]) == 1
    assert not any("Taken back" in one for one in club.heard("priya") + club.in_staff_channel())


def test_the_scorekeepers_choice_settles_it_for_the_staff_too(club: Club, watch: Watch) -> None:
    club.say("priya", "Sam said his shoulder hurts 5/10")
    question, notice = answer_to(club, "priya"), staff_message(club, UNPLACED)

    club.ws.press(club.people["priya"], question, action_id(question, "Sam Oduya"))
    club.ws.press(club.people["dana"], notice, action_id(notice, "It is Sam Ruiz"))
    club.settle()
    watch.presses.clear()  # two presses of one moment share the calls that follow

    assert in_pain(club) == ["Sam Oduya"]
    for told in (club.ws.message(notice), club.ws.message(question)):
        assert "*Priya Venn put it on Sam Oduya's record*" in told.text
        assert not any("Sam" in one for one in labels(told))
    assert club.heard("dana") == []
