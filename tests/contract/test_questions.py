"""Questions in plain words, asked where they are asked, through the real app."""

import pytest
from sqlmodel import col, select

from core.model import Outing
from tests.support.club import Club
from tests.support.taps import answer_to, tap


def staff_answer(club: Club, text: str) -> str:
    said = club.say("dana", text, club.staff)
    return club.ws.replies(club.staff, said)[0].text


def test_who_can_throw_lists_the_staff_with_the_cost_of_each(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")

    answer = staff_answer(club, "who can throw sunday")

    assert answer.startswith("*Sun 3 May*: 3 of 4 arms have their rest done.")
    assert "• Sam Oduya: up to 105" in answer
    assert "Back after 30 → Mon 4 May" in answer
    assert (
        "• Mateo Cruz: rests, earliest Wed 6 May by rule. 62 pitches on Sat 2 May: 3 days" in answer
    )


def test_an_arm_that_hurt_is_not_offered(club: Club) -> None:
    club.say("mateo", "elbow hurts 2/10")

    answer = staff_answer(club, "who can throw sunday")

    assert "• Mateo Cruz: stopped, pain reported on Sat 2 May." in answer


def test_a_guardian_who_says_it_is_gone_puts_the_arm_back(club: Club) -> None:
    club.say("mateo", "elbow hurts 2/10")
    club.clock.set(club.clock.now().replace(day=4))
    club.say("elena", "Mateo has no pain today")
    assert "stopped" in staff_answer(club, "who can throw tuesday")

    tap(club, "elena", answer_to(club, "elena"), "Yes, it is gone")

    assert any(text.startswith("Elena Cruz says") for text in club.in_staff_channel())
    assert "Mateo Cruz: up to" in staff_answer(club, "who can throw tuesday")


def test_a_pitcher_asks_about_himself(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")

    club.tell_bot("mateo", "when can i pitch")

    assert (
        club.heard("mateo")[-1].startswith("not on Sat 2 May; earliest Wed 6 May by rule.")
        or "earliest Wed 6 May by rule" in club.heard("mateo")[-1]
    )


def test_how_many_were_thrown(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")

    club.tell_bot("mateo", "how many did i throw today")

    assert "*Mateo Cruz*, Sat 2 May: 62 pitches." in club.heard("mateo")[-1]


def test_somebody_elses_child_is_refused_without_a_hint(club: Club) -> None:
    club.say("dana", "Leo 45 pitches 6 curves vs Summit", club.staff)

    club.tell_bot("elena", "can Leo pitch sunday")
    club.tell_bot("elena", "can Bartholomew pitch sunday")

    known, unknown = club.heard("elena")[-2:]
    assert known == unknown == "I can only answer you about Mateo Cruz."


def test_a_guardian_asks_about_the_own_child(club: Club) -> None:
    club.say("dana", "Leo 45 pitches 6 curves vs Summit", club.staff)

    club.tell_bot("carmen", "can he throw tomorrow?")

    assert "Leo Ortiz: not on Sun 3 May; earliest Tue 5 May by rule." in club.heard("carmen")[-1]


def test_what_else_is_allowed_is_in_the_coachs_words_or_the_coachs_to_say(club: Club) -> None:
    club.say("dana", "Leo 45 pitches 6 curves vs Summit", club.staff)

    club.tell_bot("carmen", "can he play catch tomorrow?")

    assert "about catch play, ask the coach" in club.heard("carmen")[-1]


def test_a_parent_reads_innings_and_breaking_balls_of_the_year(club: Club) -> None:
    club.say("carmen", "Leo 45 pitches 6 curves 3 ip vs Summit")

    club.tell_bot("carmen", "how many innings this year")

    assert "3 innings (the book's cap is 100 innings)" in club.heard("carmen")[-1]
    assert "13 % (6 of 45)" in club.heard("carmen")[-1]


def test_a_what_if_says_when_he_is_back(club: Club) -> None:
    answer = staff_answer(club, "if Mateo throws 40 tomorrow when is he back")

    assert "If Mateo Cruz throws 40 pitches on Sun 3 May: 1 day of rest" in answer
    assert "next eligible Tue 5 May by rule" in answer


def test_the_most_that_leaves_him_for_a_later_day(club: Club) -> None:
    answer = staff_answer(club, "how many can Mateo throw sunday and still go tuesday")

    assert "at most 45 pitches on Sun 3 May" in answer
    assert "eligible on Tue 5 May by rule" in answer


def test_a_weekend_is_planned(club: Club) -> None:
    answer = staff_answer(club, "plan sun 9am 80, sun 2pm 70, mon 10am 90")

    assert answer.startswith("*Plan.*")
    assert "• Sun 3 May 09:00, 80 pitches:" in answer
    assert "Left out" not in answer


def test_who_is_left_between_the_games_of_a_day(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")

    answer = staff_answer(club, "who's left")

    assert "may still throw by rule today" in answer
    assert "• Mateo Cruz:" in answer


def test_a_question_in_the_log_channel_is_talk_unless_the_bot_is_mentioned(club: Club) -> None:
    club.say("mateo", "when can i pitch")
    assert club.heard("mateo") == []

    club.say("mateo", f"{club.ws.mention(club.ws.bot)} when can i pitch")
    assert len(club.heard("mateo")) == 1


def test_the_staff_sheet_is_for_the_staff(club: Club) -> None:
    club.tell_bot("mateo", "who can throw sunday")

    assert club.heard("mateo")[-1] == (
        "That is for the coaches to ask. You can ask me about Mateo Cruz."
    )


def test_a_coachs_own_limit_is_set_shown_as_the_coachs_and_taken_back(club: Club) -> None:
    said = club.say("dana", "limit Mateo 45 until 5/10", club.staff)
    (answer,) = club.ws.replies(club.staff, said)
    assert answer.text.startswith(
        "Coach's limit for Mateo Cruz: at most 45 pitches a day, from Sat 2 May to Sun 10 May."
    )
    assert "Mateo Cruz: up to 45 (coach's limit 45)" in staff_answer(club, "who can throw sunday")

    club.delete(said)

    assert "Mateo Cruz: up to 105." in staff_answer(club, "who can throw sunday")


def test_a_limit_never_raises_what_a_book_allows(club: Club) -> None:
    staff_answer(club, "limit Leo 150")

    assert "Leo Ortiz: up to 95. Back" in staff_answer(club, "who can throw sunday")


def test_only_the_staff_set_a_limit(club: Club) -> None:
    club.tell_bot("mateo", "limit Mateo 200")

    assert club.heard("mateo")[-1].startswith("Only the staff can set this.")


def test_a_limit_that_is_not_clear_sets_nothing(club: Club) -> None:
    answer = staff_answer(club, "limit Mateo 45 soon")

    assert "I set no limit: “soon” is not clear." in answer
    assert "coach's limit" not in staff_answer(club, "who can throw sunday")


def test_a_limit_in_the_staffs_own_words_is_set_told_and_taken_back(club: Club) -> None:
    said = club.say("dana", "keep Mateo under 50 sunday", club.staff)
    (answer,) = club.ws.replies(club.staff, said)
    assert answer.text.startswith(
        "Coach's limit for Mateo Cruz: at most 49 pitches a day, on Sun 3 May."
    )
    assert "Mateo Cruz: up to 49 (coach's limit 49)" in staff_answer(club, "who can throw sunday")

    club.delete(said)

    assert "Mateo Cruz: up to 105." in staff_answer(club, "who can throw sunday")


def test_a_limit_in_free_words_is_no_order_where_the_bot_is_not_spoken_to(club: Club) -> None:
    club.say("dana", "Mateo max 45 today")

    assert "coach's limit" not in staff_answer(club, "who can throw sunday")


def test_a_limit_in_free_words_by_a_pitcher_sets_nothing(club: Club) -> None:
    club.tell_bot("mateo", "max 90 for Mateo today")

    assert "coach's limit" not in staff_answer(club, "who can throw today")


def test_a_free_worded_limit_without_a_day_is_asked(club: Club) -> None:
    answer = staff_answer(club, "Mateo is limited to 40 until he is better")

    assert "I set no limit: “until he is better” is not clear." in answer


@pytest.mark.parametrize(
    ("order", "answer"),
    [
        ("limit Mateo 45", "Coach's limit for Mateo Cruz: at most 45 pitches a day"),
        ("set mix 18% for Mateo", "Set for Mateo Cruz: mix 18 %"),
        ("book little-league for Mateo on sun", "Rule book for Mateo Cruz on Sun 3 May"),
        ("cleared Mateo by Dr. Reyes 5/1", "Mateo Cruz"),
    ],
)
def test_an_order_is_taken_with_the_bot_mentioned(club: Club, order: str, answer: str) -> None:
    told = staff_answer(club, f"{club.ws.mention(club.ws.bot)} {order}")

    assert answer in told


def test_who_can_give_so_many_names_those_who_can(club: Club) -> None:
    answer = staff_answer(club, "who can give me 100 sunday")

    assert answer.startswith("*Sun 3 May*: 3 of 4 arms may throw 100 or more by rule.")
    assert "• Leo Ortiz: only up to 95." in answer


def test_an_arm_that_is_left_out_is_not_listed(club: Club) -> None:
    answer = staff_answer(club, "who can throw sunday without Mateo")

    assert "Mateo" not in answer
    assert "Sam Oduya" in answer


def test_a_pitchers_own_no_pain_ends_no_report(club: Club) -> None:
    club.say("mateo", "elbow hurts 2/10")
    club.say("mateo", "catch 20 throws, no pain")

    assert "stays open until a parent or guardian says" in club.heard("mateo")[-1]
    assert "Mateo Cruz: stopped" in staff_answer(club, "who can throw tuesday")


def test_the_staff_read_this_weeks_throws_and_the_unknown_days(club: Club) -> None:
    club.say("dana", "Leo catch 40 throws thursday", club.staff)
    club.say("dana", "Leo 30p bullpen friday", club.staff)

    answer = staff_answer(club, "how many did Leo throw friday")

    assert "Last 7 days: 70 throws logged (5 of 7 days unknown: no count)." in answer
    assert "more than usual" not in answer
    assert "risk" not in answer


def test_a_family_reads_no_load(club: Club) -> None:
    club.say("dana", "Leo 30p bullpen friday", club.staff)

    club.tell_bot("carmen", "how many did Leo throw friday")

    assert "Last 7 days" not in club.heard("carmen")[-1]


def test_one_outing_may_name_its_own_book_beside_the_others(club: Club) -> None:
    answer = staff_answer(club, "book missouri-high-school for Mateo on sunday")
    assert "is not clear" not in answer
    assert answer.startswith("Rule book for Mateo Cruz on Sun 3 May:")

    assert "could not be worked out" in staff_answer(club, "can Mateo throw sunday")
    assert "Up to" in staff_answer(club, "can Mateo throw monday") or "up to" in staff_answer(
        club, "can Mateo throw monday"
    )


def test_a_book_that_nobody_knows_is_refused_with_those_that_are_known(club: Club) -> None:
    answer = staff_answer(club, "book made-up for Mateo on sunday")

    assert "“made-up” is not clear" in answer
    assert "pitch-smart" in answer


def test_deleting_the_line_takes_the_outings_book_back(club: Club) -> None:
    said = club.say("dana", "book pitch-smart-2014 for Mateo on sunday", club.staff)
    club.delete(said)

    assert "could not be" not in staff_answer(club, "can Mateo throw sunday")
    assert club.ws.replies(club.staff, said)[0].text == "Taken back: this line no longer counts."


def test_a_question_about_an_arm_is_never_answered_with_a_yes_or_with_silence(club: Club) -> None:
    for who, text in (
        ("sam_r", "my arm is ok to throw right"),
        ("sam_r", "is my arm ok to throw"),
        ("carmen", "is his arm ok to pitch today?"),
        ("dana", "is Leo's arm ok"),
    ):
        said = club.tell_bot(who, text)

        told = club.heard(who)[-1]
        assert told.startswith("I'm a bot, not a doctor, and cannot say whether an arm is OK."), (
            text
        )
        assert "tell a coach and a parent" in told
        assert "up to" not in told
        assert "baseball" not in club.reaction(said)
    assert "Leo Ortiz: by the counts no rest is owed" in club.heard("dana")[-1]


def test_a_question_about_an_arm_names_the_hold_that_stands(club: Club) -> None:
    club.tell_bot("sam_r", "elbow hurts 6/10")

    club.tell_bot("sam_r", "is my arm ok to throw")

    told = club.heard("sam_r")[-1]
    assert "cannot say whether an arm is OK" in told
    assert "this arm is on hold" in told


def test_a_report_of_pain_is_no_question_about_an_arm(club: Club) -> None:
    club.tell_bot("sam_r", "is my arm ok it hurts when i throw")

    assert not club.heard("sam_r")[-1].startswith("I'm a bot, not a doctor, and cannot")


@pytest.mark.parametrize("text", ["undo", "undo that", "nvm delete that", "fix my last one", "fix"])
def test_undo_and_fix_point_to_the_newest_line_with_its_buttons(club: Club, text: str) -> None:
    club.tell_bot("sam_r", "catch 30 throws 12 spins")
    club.tell_bot("sam_r", "pen 25 6ch")

    club.tell_bot("sam_r", text)

    shown = answer_to(club, "sam_r")
    assert shown.text.startswith("Your newest line in the log: “pen 25 6ch”. Nothing is changed")
    tap(club, "sam_r", shown, "Undo")
    with club.store.reading() as session:
        left = session.exec(select(Outing).where(col(Outing.withdrawn_at).is_(None))).all()
    assert [one.kind for one in left] == ["catch"]


def test_undo_without_a_line_says_so(club: Club) -> None:
    club.tell_bot("sam_r", "undo")

    assert club.heard("sam_r") == ["I find no line of yours in the log that could be put right."]


def test_one_arm_has_its_rest_done(club: Club) -> None:
    for name in ("Mateo", "Sam Ruiz", "Sam Oduya"):
        club.say("dana", f"{name} 62p 11cb vs Summit", club.staff)

    assert "1 of 4 arms has its rest done." in staff_answer(club, "who can throw sunday")


@pytest.mark.parametrize(("who", "text"), [("mateo", "can i throw sunday"),
                                           ("elena", "can he throw sunday")])  # fmt: skip
def test_a_family_reads_in_a_sentence_when_he_is_back(club: Club, who: str, text: str) -> None:
    club.tell_bot(who, text)

    told = club.heard(who)[-1]
    assert "Up to 30 pitches: back Monday; up to 45: back Tuesday" in told
    assert "→" not in told
    assert "Back after" not in told
