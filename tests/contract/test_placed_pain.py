"""Pain in words that stand on no record: adults are told, and no answer names the arm as free."""

import pytest
from sqlmodel import select

from core.model import Pitcher
from tests.support.club import Club


def staff_answer(club: Club, text: str) -> str:
    said = club.say("dana", text, club.staff)
    return club.ws.replies(club.staff, said)[-1].text


@pytest.mark.parametrize(
    "text", ["Mateo's arm went numb", "Mateo's elbow is killing him", "Mateo elbow hurts"]
)
def test_pain_that_the_scorekeeper_hears_of_stops_the_arm_and_is_told_to_the_family(
    club: Club, text: str
) -> None:
    club.say("priya", text)

    assert "Mateo Cruz should stop throwing today" in staff_or_family(club, "elena")
    assert any(one.count("Mateo Cruz") for one in club.in_staff_channel())
    answer = staff_answer(club, "can Mateo pitch tomorrow")
    assert "Pain was reported on Sat 2 May" in answer
    assert "rest done" not in answer
    assert "Mateo Cruz: up to" not in staff_answer(club, "who's left")


def staff_or_family(club: Club, who: str) -> str:
    """All that somebody heard, with the full name in place of the first."""
    return "\n".join(club.heard(who)).replace("Mateo should", "Mateo Cruz should")


def test_a_pitchers_own_words_of_urgency_are_his_own_report(club: Club) -> None:
    club.say("sam_o", "cant straighten my arm")

    (own,) = club.heard("sam_o")
    assert "I'm not sure" not in own
    assert "I am not sure" not in own
    assert not any("Please ask who it is" in one for one in club.in_staff_channel())
    assert any("Sam Oduya" in one for one in club.heard("joan"))
    assert "this arm is on hold" in staff_answer(club, "can Sam Oduya pitch tomorrow")


def test_pain_of_somebody_else_is_not_laid_to_the_pitcher_who_tells_of_it(club: Club) -> None:
    club.say("sam_o", "my buddy heard something pop in his elbow")

    assert "on hold" not in staff_answer(club, "can Sam Oduya pitch tomorrow")
    assert club.heard("joan") == []


def test_the_family_hears_of_pain_of_a_pitcher_without_consent(club: Club) -> None:
    with club.store.writing() as session:
        mateo = session.exec(select(Pitcher).where(Pitcher.name == "Mateo Cruz")).one()
        mateo.consent_on = None
        session.add(mateo)
    club.say("mateo", "my elbow hurts")

    assert any("speaks of pain of Mateo Cruz" in one for one in club.heard("elena"))
    assert any("care now" in one for one in club.heard("elena"))
