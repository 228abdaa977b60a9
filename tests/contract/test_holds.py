"""Holds and clinicians' clearances, as the staff, the family and the pitcher read them."""

from datetime import timedelta

import pytest
from sqlmodel import select

from core.model import AuditEntry, Clearance, Hold, Outing
from tests.support.club import Club
from tests.support.taps import answer_to, tap


def staff_answer(club: Club, text: str) -> str:
    said = club.say("dana", text, club.staff)
    return club.ws.replies(club.staff, said)[-1].text


def hurt(club: Club, text: str = "elbow pain 4/10") -> None:
    club.say("mateo", text)
    club.clock.advance(timedelta(days=3))


def holds(club: Club) -> list[Hold]:
    with club.store.reading() as session:
        return list(session.exec(select(Hold)))


CLEARED = "cleared Mateo by Dr. Reyes 5/5, no breaking balls until 6/1"


def test_pain_at_the_threshold_puts_the_arm_on_hold(club: Club) -> None:
    club.say("mateo", "elbow pain 3/10")

    assert [one.reason for one in holds(club)] == ["severity"]
    assert "*On hold* (at or over the team's pain threshold)" in club.in_staff_channel()[0]
    assert "Mateo Cruz is on hold" in club.heard("elena")[0]
    assert "This arm is on hold" in club.heard("mateo")[0]


def test_milder_pain_stops_for_today_and_is_no_hold(club: Club) -> None:
    hurt(club, "elbow pain 2/10")

    assert holds(club) == []
    assert "Mateo Cruz: stopped, pain reported" in staff_answer(club, "who can throw today")


def test_a_second_report_within_two_weeks_is_a_hold(club: Club) -> None:
    hurt(club, "elbow pain 1/10")
    club.say("mateo", "elbow pain 1/10")

    assert [one.reason for one in holds(club)] == ["again within 14 days"]
    assert any("twelve months before: 1 line." in one for one in club.in_staff_channel())


def test_words_that_call_for_a_clinician_come_first(club: Club) -> None:
    club.say("mateo", "elbow pain 1/10, fingers numb")

    (own,) = club.heard("mateo")
    assert own.startswith("*Stop throwing now.* If the arm is numb, swollen, out of shape, or")
    assert own.index("care now") < own.index("clinician look at this promptly")
    assert own.count("care now") == club.heard("elena")[0].count("care now") == 1
    assert club.in_staff_channel()[0].startswith("*Stop throwing now")
    assert holds(club)[0].reason == "stop and be seen"


def test_urgent_words_lead_with_urgent_care(club: Club) -> None:
    club.say("mateo", "shoulder pain 2/10, swollen and my arm is cold")

    assert club.heard("elena")[0].startswith("*Get urgent medical care now; in an emergency")


def test_a_numb_arm_is_urgent_and_nothing_says_soon(club: Club) -> None:
    club.say("mateo", "my arm hurts and went numb")

    for text in (*club.heard("mateo"), *club.heard("elena"), club.in_staff_channel()[0]):
        assert text.startswith("*Get urgent medical care now"), text
        assert "soon" not in text


def test_urgent_words_on_no_record_are_told_to_the_staff(club: Club) -> None:
    club.say("priya", "something locks up in there when he throws")

    assert club.in_staff_channel()[0].startswith("*Pain report without a record.*")


def test_what_a_line_denies_is_not_urgent(club: Club) -> None:
    club.say("mateo", "elbow pain 1/10, no swelling, not numb")

    assert holds(club) == []


def test_a_held_arm_is_in_no_answer_that_says_it_may_throw(club: Club) -> None:
    hurt(club)

    assert "Mateo Cruz: on hold, pain reported on Sat 2 May." in staff_answer(
        club, "who can throw saturday"
    )
    assert "this arm is on hold" in staff_answer(club, "can Mateo throw saturday")
    assert "this arm is on hold" in staff_answer(club, "if Mateo throws 30 sat when is he back")
    plan = staff_answer(club, "plan sat 9am 40")
    assert "Left out, on hold, not cleared or limited by a clinician: Mateo Cruz." in plan


def test_no_pain_from_a_guardian_ends_no_hold(club: Club) -> None:
    hurt(club)
    club.tell_bot("elena", "Mateo no pain today")

    assert "this arm is on hold" in staff_answer(club, "can Mateo throw saturday")


def test_no_edit_deletion_or_undo_ends_a_hold(club: Club) -> None:
    edited = club.say("mateo", "elbow pain 5/10, 40p vs Summit")
    club.edit(edited, "elbow pain 1/10, 40p vs Summit")
    tap(club, "mateo", answer_to(club, "mateo"), "Undo")
    club.delete(edited)
    club.clock.advance(timedelta(days=9))

    assert len(holds(club)) == 1
    assert "this arm is on hold" in staff_answer(club, "can Mateo throw saturday")


def test_an_edit_that_makes_the_pain_worse_raises_a_hold(club: Club) -> None:
    said = club.say("mateo", "elbow pain 1/10")

    club.edit(said, "elbow pain 6/10")

    assert len(holds(club)) == 1
    assert "*On hold*" in club.in_staff_channel()[-1]


def test_a_clearance_ends_the_hold_and_its_limits_stand_in_every_answer(club: Club) -> None:
    hurt(club)

    answer = staff_answer(club, CLEARED)

    assert answer.startswith(
        "*On record for Mateo Cruz:* clearance by Dr. Reyes, Tue 5 May; limits: no breaking balls "
        "until Mon 1 Jun. Recorded by Dana Mercer."
    )
    limits = "Limits set by Dr. Reyes (Tue 5 May): no breaking balls until Mon 1 Jun."
    for question in (
        "who can throw saturday",
        "can Mateo throw saturday",
        "if Mateo throws 30 sat when is he back",
        "how many did Mateo throw this week",
        "how many innings has Mateo this year",
    ):
        assert limits in staff_answer(club, question), question
    club.tell_bot("mateo", "when can I pitch")
    assert limits in club.heard("mateo")[-1]
    club.say("mateo", "20p 0cb vs Summit")
    assert limits in club.heard("mateo")[-1]


def test_the_family_hears_of_a_clearance_in_the_morning(club: Club) -> None:
    hurt(club)
    club.say("dana", CLEARED, club.staff)

    assert any(text.startswith("*On record for Mateo Cruz:*") for text in club.heard("elena"))
    assert not any("On record" in text for text in club.heard("mateo"))


def test_a_guardian_records_a_clearance_in_a_direct_message(club: Club) -> None:
    hurt(club)

    club.tell_bot("elena", "cleared by Dr. Ana Reyes yesterday")

    assert "clearance by Dr. Ana Reyes, Mon 4 May; limits: none." in club.heard("elena")[-1]
    assert "Recorded by Elena Cruz" in club.in_staff_channel()[-1]
    assert "rest done" in staff_answer(club, "can Mateo throw saturday")


def test_no_pitching_until_a_day_keeps_the_arm_off_the_sheet_until_then(club: Club) -> None:
    hurt(club)
    staff_answer(club, "cleared Mateo by Dr. Reyes 5/5, no games until 5/8, 30 throws at 60 ft")

    thursday = staff_answer(club, "who can throw thursday")
    saturday = staff_answer(club, "who can throw saturday")

    assert "Mateo Cruz: Limits set by Dr. Reyes (Tue 5 May): no pitching in games" in thursday
    assert "Mateo Cruz: up to" in saturday
    assert "at most 30 throws a day and at most 60 ft" in saturday


def test_a_clearance_that_is_taken_back_lets_the_hold_stand_again(club: Club) -> None:
    hurt(club)
    said = club.say("dana", CLEARED, club.staff)
    club.delete(said)

    assert "this arm is on hold" in staff_answer(club, "can Mateo throw saturday")
    assert any("The clearance of Mateo Cruz was taken back" in one for one in club.heard("elena"))


def test_pain_after_a_clearance_is_a_new_hold(club: Club) -> None:
    hurt(club)
    staff_answer(club, CLEARED)
    club.clock.advance(timedelta(days=1))

    club.say("mateo", "elbow pain 5/10")

    assert "this arm is on hold" in staff_answer(club, "can Mateo throw saturday")


def test_bad_clearances_are_answered_in_one_sentence_and_change_nothing(club: Club) -> None:
    hurt(club)

    for typed, words in (
        ("cleared Mateo", "name the licensed clinician"),
        ("cleared Mateo by the doctor 5/5", "name the licensed clinician"),
        ("cleared Mateo by his mom 5/5", "name the licensed clinician"),
        ("cleared Mateo by Dr. Reyes", "the date of the clearance"),
        ("cleared Mateo by Dr. Reyes 5/30", "the date of the clearance"),
        ("cleared Mateo by Dr. Reyes 5/1", "lies before the report"),
        ("cleared Mateo by Dr. Reyes 5/5, take it easy", "not “take it easy”"),
        ("cleared Nobody by Dr. Reyes 5/5", "no pitcher called “Nobody”"),
    ):
        answer = staff_answer(club, typed)
        assert words in answer, typed
        assert len(answer.split("\n\n")[0].splitlines()) == 1, typed
    with club.store.reading() as session:
        assert session.exec(select(Clearance)).all() == []
    assert "this arm is on hold" in staff_answer(club, "can Mateo throw saturday")


def test_neither_a_minor_nor_another_family_records_a_clearance(club: Club) -> None:
    hurt(club)

    for who in ("mateo", "carmen", "priya"):
        club.tell_bot(who, "cleared Mateo by Dr. Reyes 5/5")
        assert club.heard(who)[-1].startswith("Only a coach or a guardian"), who

    with club.store.reading() as session:
        assert session.exec(select(Clearance)).all() == []


def test_throwing_during_a_hold_is_stored_and_told_to_the_adults(club: Club) -> None:
    hurt(club)

    club.say("mateo", "catch 30 throws")

    with club.store.reading() as session:
        assert [one.pitches for one in session.exec(select(Outing))] == [30]
    for told in (club.in_staff_channel()[-1], club.heard("elena")[-1]):
        assert told.startswith("*Throwing during a hold.*")
        assert "on hold since Sat 2 May" in told
    assert "Please talk with the family" in club.in_staff_channel()[-1]
    assert "talk with the coach" in club.heard("elena")[-1]
    assert "talk with the family" not in club.heard("elena")[-1]
    assert club.in_log_channel() == []


def test_the_outing_in_which_it_hurt_is_no_throwing_during_a_hold(club: Club) -> None:
    club.say("mateo", "58p 11cb vs Summit, elbow pain 4/10")

    assert not any("Throwing during a hold" in one for one in club.in_staff_channel())


def test_holds_and_clearances_are_audited(club: Club) -> None:
    hurt(club)
    said = club.say("dana", CLEARED, club.staff)
    club.delete(said)

    with club.store.reading() as session:
        entries = session.exec(select(AuditEntry)).all()
    kept = [(one.subject, one.action) for one in entries if one.subject in {"hold", "clearance"}]
    assert kept == [("hold", "recorded"), ("clearance", "recorded"), ("clearance", "withdrawn")]


def test_a_hold_and_limits_stand_in_the_answer_to_a_line_of_the_arm_alone(club: Club) -> None:
    club.say("mateo", "elbow pain 5/10")
    club.clock.advance(timedelta(days=3))
    club.say("mateo", "arm tired")
    assert "this arm is on hold: no throwing until an adult records" in club.heard("mateo")[-1]

    club.clock.advance(timedelta(days=3))
    club.say("dana", "cleared Mateo by Dr. Reyes yesterday, no breaking balls", club.staff)
    club.say("mateo", "arm tired")

    assert "Limits set by Dr. Reyes" in club.heard("mateo")[-1]
    assert "no breaking balls" in club.heard("mateo")[-1]


def test_pain_that_is_not_gone_stands_in_the_answer_to_a_tired_arm(club: Club) -> None:
    club.say("mateo", "elbow pain 1/10")
    club.clock.advance(timedelta(days=3))
    club.say("mateo", "arm tired")

    assert "no answer here says that this arm may throw" in club.heard("mateo")[-1]


def test_one_report_of_soreness_alarms_no_family(club: Club) -> None:
    club.say("mateo", "shoulder sore")

    assert not any("Stop throwing today" in one for one in club.heard("mateo"))
    assert not any("has pain" in one for one in club.heard("elena"))


def test_no_answer_says_that_a_sore_arm_may_throw_until_a_guardian_says_it_is_gone(
    club: Club,
) -> None:
    club.say("mateo", "shoulder sore")

    sheet = staff_answer(club, "who's left")
    assert "Mateo Cruz: stopped, soreness reported on Sat 2 May." in sheet
    assert "Mateo Cruz: up to" not in sheet
    for question in ("can Mateo pitch today", "can Mateo catch today", "can Mateo throw monday"):
        answer = staff_answer(club, question)
        assert "Soreness was reported on Sat 2 May, so no answer here says" in answer, question

    club.clock.advance(timedelta(days=1))
    club.tell_bot("elena", "Mateo no pain today")
    tap(club, "elena", answer_to(club, "elena"), "Yes, it is gone")

    assert "Mateo Cruz: up to" in staff_answer(club, "who can throw today")


def test_soreness_reported_again_within_two_weeks_is_a_hold(club: Club) -> None:
    club.say("mateo", "arm sore")
    club.clock.advance(timedelta(days=4))
    club.say("mateo", "arm still sore")

    assert [one.reason for one in holds(club)] == ["again within 14 days"]
    assert "this arm is on hold" in staff_answer(club, "can Mateo pitch today")
    assert any("Mateo Cruz is on hold" in one for one in club.heard("elena"))


@pytest.mark.parametrize(
    ("first", "second", "words"),
    [
        ("shoulder sore", "shoulder still sore", "sore shoulder, still there on the second day"),
        ("arm tired", "arm is tired", "tired arm, still there on the second day"),
    ],
)
def test_what_is_still_there_on_the_second_day_stops_throwing_and_is_told_to_the_family(
    club: Club, first: str, second: str, words: str
) -> None:
    club.say("mateo", first)
    club.clock.advance(timedelta(days=1))
    club.say("mateo", second)

    assert f"{words}. Stop throwing today." in club.heard("mateo")[-1]
    assert any(f"has pain: {words}" in one for one in club.heard("elena"))
    assert any(one.startswith(f"*Pain report.* Mateo Cruz: {words}")
               for one in club.in_staff_channel())  # fmt: skip
    club.tell_bot("dana", "can Mateo throw monday")
    assert "no answer here says that this arm may throw" in club.heard("dana")[-1]
    assert not any("*On hold*" in one for one in club.in_staff_channel())


def test_soreness_as_bad_as_the_threshold_is_a_hold(club: Club) -> None:
    club.say("mateo", "shoulder soreness 4/10")

    assert any("*On hold*" in one for one in club.in_staff_channel())


def test_soreness_at_the_elbow_is_told_to_the_family(club: Club) -> None:
    club.say("mateo", "elbow sore")

    assert any("has pain: sore elbow" in one for one in club.heard("elena"))


def test_a_sore_leg_stays_a_sore_leg(club: Club) -> None:
    club.say("mateo", "leg sore")
    club.clock.advance(timedelta(days=1))
    club.say("mateo", "leg sore")

    assert not any("Stop throwing today" in one for one in club.heard("mateo"))
