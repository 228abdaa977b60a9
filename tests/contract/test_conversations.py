"""Said and answered: lines as people type them, over signed HTTP, through the real app."""

from sqlmodel import select

from bot.local.faults import HttpError
from core.model import Outing
from tests.support.club import Club
from tests.support.taps import answer_to, labels, tap


def test_a_game_line_is_answered_with_what_was_read_the_share_and_the_rest(club: Club) -> None:
    said = club.say("mateo", "62p 11cb 4.1ip vs Summit no pain")

    assert club.reaction(said) == ["baseball"]
    assert club.heard("mateo") == [
        "*Game, Sat 2 May*\n"
        "Read: 62 pitches, 11 breaking balls (11 curveballs), 4.1 innings.\n"
        "Breaking balls: 11 of 62 = 18 %. No other game with pitch types this season.\n"
        "Rest: Sun 3 to Tue 5 May, 3 days for 62 pitches (Pitch Smart, 17–18: 61–80). "
        "Earliest Wed 6 May by rule; the coach decides the count.\n\n"
        "League and local rules govern.\n\n"
        "It's in the log. From now on a :baseball: under your line means that."
    ]
    assert club.in_log_channel() == []
    assert club.in_staff_channel() == []


def test_a_second_practice_line_is_answered_by_a_reaction_alone(club: Club) -> None:
    club.say("mateo", "catch 30 throws 12 spins 50%")

    said = club.say("mateo", "pen 24 pitches 6 changeups")

    assert club.reaction(said) == ["baseball"]
    assert len(club.heard("mateo")) == 1
    assert "From now on a :baseball: under your line" in club.heard("mateo")[0]


def test_talk_is_left_alone(club: Club) -> None:
    said = club.say("mateo", "what time is the bus saturday")

    assert club.reaction(said) == []
    assert club.heard("mateo") == []


def test_an_edit_corrects_the_answer_in_place(club: Club) -> None:
    said = club.say("mateo", "26p 11cb vs Summit")
    club.edit(said, "62p 11cb vs Summit")

    assert len(club.heard("mateo")) == 1
    assert "62 pitches" in club.heard("mateo")[0]
    assert "26" not in club.heard("mateo")[0]


def test_a_deleted_line_is_taken_back(club: Club) -> None:
    said = club.say("mateo", "62p 11cb vs Summit")
    club.delete(said)

    assert club.heard("mateo") == ["Taken back: this line no longer counts."]


def test_a_line_edited_into_talk_loses_its_reaction(club: Club) -> None:
    said = club.say("mateo", "62p 11cb vs Summit")
    club.edit(said, "nice game everybody")

    assert club.reaction(said) == []
    assert club.heard("mateo") == ["Taken back: this line no longer counts."]


def test_a_guardian_logs_for_the_child_without_an_account(club: Club) -> None:
    said = club.say("carmen", "Leo 45 pitches 6 curves vs Summit")

    assert club.reaction(said) == ["baseball"]
    (answer,) = club.heard("carmen")
    assert answer.startswith("*Leo Ortiz* · Game, Sat 2 May")
    assert "2 days for 45 pitches (Pitch Smart, 13–14: 36–50)" in answer


def test_a_guardian_of_one_child_need_not_name_him(club: Club) -> None:
    club.say("elena", "he threw 40 in the game vs Summit, 5 curves, arm is fine")

    assert club.heard("elena")[0].startswith("*Mateo Cruz* · Game, Sat 2 May")


def test_pain_is_told_to_staff_and_guardians_at_once_and_never_in_the_log(club: Club) -> None:
    said = club.say("mateo", "58p 11cb vs Summit, elbow pain 4/10")

    assert club.reaction(said) == ["baseball"]
    assert club.in_log_channel() == []
    (staff,) = club.in_staff_channel()
    assert staff.startswith(
        "*Pain report.* Mateo Cruz: elbow 4/10 (Sat 2 May, reported by Mateo Cruz). No more "
        "throwing until a licensed clinician has checked it."
    )
    (mother,) = club.heard("elena")
    assert "Mateo should stop throwing today." in mother
    assert "licensed clinician" in mother
    (own,) = club.heard("mateo")
    assert own.startswith("Thank you for saying so: elbow 4/10. Stop throwing today.")
    assert "I've told the coaches and Elena Cruz." in own
    assert "By the rule book alone:" in own


def test_a_guardian_without_an_account_is_named_to_the_staff(club: Club) -> None:
    club.say("carmen", "Leo has shoulder pain 3/10 after the game, 40 pitches vs Summit")

    (staff,) = club.in_staff_channel()
    assert "Not in this workspace: Tom Ortiz. Please pass this on, in these words" in staff


def test_without_a_guardian_on_file_the_staff_are_told_to_add_one(club: Club) -> None:
    club.say("sam_r", "elbow hurts 5/10")

    assert "No guardian is on file" in club.in_staff_channel()[0]


def test_a_report_that_is_taken_back_is_said_so_and_ends_nothing(club: Club) -> None:
    said = club.say("mateo", "elbow hurts 5/10")
    club.delete(said)

    notice, after = club.in_staff_channel()
    assert notice.startswith("*Pain report.*")
    assert "taken back by its author" in notice
    assert "That ends nothing by itself" in after


def test_the_coach_is_answered_in_the_thread_of_the_staff_channel(club: Club) -> None:
    said = club.say("dana", "Mateo 55p 9cb 4ip", club.staff)

    (answer,) = club.ws.replies(club.staff, said)
    assert "*Mateo Cruz* · Game, Sat 2 May" in answer.text
    assert club.heard("dana") == []


def test_a_scorekeeper_reads_own_counts_only_and_the_staff_read_the_rest(club: Club) -> None:
    club.say("priya", "vs Summit: Mateo 55 pitches 9 cb, Leo 20 pitches 2 cb")

    (own,) = club.heard("priya")
    assert "*Mateo Cruz* · Game, Sat 2 May" in own
    assert "Rest" not in own
    assert "%" not in own
    (staff,) = club.in_staff_channel()
    assert staff.startswith("*Counts by Priya Venn*")
    assert "9 of 55 = 16 %" in staff
    assert "Rest: none owed for 20 pitches" in staff


def test_a_pitcher_may_not_log_for_another(club: Club) -> None:
    said = club.say("mateo", "logging for Leo his phone died. 44 pitches 7 cb vs Sawmill")

    assert club.reaction(said) == ["question"]
    assert "Not counted for Leo Ortiz" in club.heard("mateo")[0]


def test_a_name_that_fits_two_people_is_asked(club: Club) -> None:
    club.say("dana", "Sam 40p 5cb vs Summit", club.staff)

    assert "“Sam” fits Sam Ruiz or Sam Oduya. Write the full name." in club.in_staff_channel()[0]


def test_an_unknown_name_is_asked_with_the_nearest(club: Club) -> None:
    club.say("dana", "Mateeo 40p 5cb vs Summit", club.staff)

    assert "Did you mean Mateo Cruz?" in club.in_staff_channel()[0]


def test_a_line_from_the_small_hours_belongs_to_the_day_before(club: Club) -> None:
    club.clock.set(club.clock.now().replace(day=3, hour=6))  # 01:00 on Sunday in Chicago

    club.say("mateo", "62p 11cb vs Summit")

    assert "*Game, Sat 2 May*" in club.heard("mateo")[0]
    assert "so I put it on Sat 2 May" in club.heard("mateo")[0]


def test_a_morning_game_without_a_day_is_asked(club: Club) -> None:
    club.clock.set(club.clock.now().replace(day=3, hour=14))  # 09:00 on Sunday in Chicago

    said = club.say("mateo", "62p 11cb vs Summit")
    assert club.reaction(said) == ["question"]
    assert "Was that game today or yesterday?" in club.heard("mateo")[0]

    club.edit(said, "62p 11cb vs Summit yesterday")
    assert club.reaction(said) == ["baseball"]
    assert "*Game, Sat 2 May*" in club.heard("mateo")[0]


def test_a_morning_game_of_this_morning_is_not_asked(club: Club) -> None:
    club.clock.set(club.clock.now().replace(day=3, hour=14))  # 09:00 on Sunday in Chicago

    club.say("mateo", "this morning 62p 11cb 4.1ip vs Summit no pain")

    assert club.heard("mateo")[0].startswith("*Game, Sun 3 May*")


def test_a_line_without_a_kind_is_asked_and_stays_out_of_the_mix(club: Club) -> None:
    said = club.say("mateo", "62p 11cb")

    assert club.reaction(said) == ["question"]
    assert "What was it: game, bullpen, live or catch play?" in club.heard("mateo")[0]
    assert "%" not in club.heard("mateo")[0]


def test_without_consent_nothing_is_counted_and_the_coach_is_told(club: Club) -> None:
    club.say("joan", "Ben 30 pitches 3 cb vs Summit")

    assert "no consent is on file" in club.heard("joan")[0]
    assert "Ben Abara" in club.in_staff_channel()[0]


def test_an_outing_on_a_rest_day_is_kept_and_told_to_the_staff(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")
    club.clock.set(club.clock.now().replace(day=3))

    club.say("mateo", "20p 3cb vs Ironwood")

    assert (
        "Over the rule on Sun 3 May: 62 pitches on Sat 2 May owed 3 days of rest"
        in club.heard("mateo")[1]
    )
    (staff,) = club.in_staff_channel()
    assert staff.startswith("*Over a rule* (logged by Mateo Cruz)")
    assert "The outing is kept as logged." in staff


def test_a_correction_takes_the_broken_rule_back(club: Club) -> None:
    said = club.say("mateo", "112p 11cb vs Summit")
    assert "*Over a rule*" in club.in_staff_channel()[0]

    club.edit(said, "62p 11cb vs Summit")

    assert club.in_staff_channel() == ["Taken back: after a correction no rule is gone over here."]


def test_a_roll_call_names_who_was_logged_and_an_absence_is_a_tap(club: Club) -> None:
    said = club.say("dana", "catch play: everyone 30 w 12 spins except Leo", club.staff)

    (answer,) = club.ws.replies(club.staff, said)
    assert answer.text.startswith(
        "*Catch play, Sat 2 May*, 30 throws, 12 breaking balls each: Mateo Cruz, Sam Ruiz and "
        "Sam Oduya."
    )
    tap(club, "dana", answer, "Not Sam Ruiz")

    (answer,) = club.ws.replies(club.staff, said)
    assert "Sam Ruiz" not in answer.text
    assert "Mateo Cruz" in answer.text


def test_the_kind_of_a_roll_call_is_asked_once_and_answered_for_everybody(club: Club) -> None:
    said = club.say("dana", "everyone threw 110 in practice", club.staff)

    (answer,) = club.ws.replies(club.staff, said)
    assert answer.text.count("What was it, for all of them") == 1
    assert answer.text.count("110 pitches") == 1
    assert labels(answer).count("Bullpen") == 1
    assert not any("*Over a rule*" in one for one in club.in_staff_channel())
    tap(club, "dana", answer, "Bullpen")

    with club.store.reading() as session:
        outings = session.exec(select(Outing)).all()
    assert len(outings) == 4
    assert {(one.kind, tuple(one.waiting)) for one in outings} == {("bullpen", ())}
    (answer,) = club.ws.replies(club.staff, said)
    assert "What was it" not in answer.text


def test_no_breach_of_a_roll_call_is_told_before_its_kind_is_known(club: Club) -> None:
    club.tell_bot("dana", "everyone threw 110 in practice")

    assert not any("*Over a rule*" in one for one in club.in_staff_channel())
    tap(club, "dana", answer_to(club, "dana"), "Game")

    assert any("*Over a rule*" in one for one in club.in_staff_channel())


def test_pain_that_should_stay_secret_is_answered_with_the_truth(club: Club) -> None:
    club.say("mateo", "elbow hurts 4/10 but dont tell coach")

    (own,) = club.heard("mateo")
    assert "I'd rather tell you the truth" in own
    assert "Stop throwing today." in own
    assert "*Pain report.*" in club.in_staff_channel()[0]


def test_words_of_danger_are_answered_and_the_staff_are_asked_to_look(club: Club) -> None:
    club.tell_bot("mateo", "i dont want to be here anymore, want to die")

    (own,) = club.heard("mateo")
    assert "call your emergency number" in own
    (staff,) = club.in_staff_channel()
    assert staff.startswith("*Please look at a line by Mateo Cruz yourself, today.*")
    assert "die" not in staff


def test_words_of_danger_that_name_a_coach_go_to_the_family_instead(club: Club) -> None:
    club.tell_bot("mateo", "coach hits me")

    assert club.in_staff_channel() == []
    assert club.heard("elena")[0].startswith("*Please look at a line by Mateo Cruz yourself")


def test_answers_in_one_conversation_keep_their_order_wherever_the_lines_were_typed(
    club: Club,
) -> None:
    club.ws.faults.order("chat.postMessage", HttpError(500))
    club.ws.say(club.people["mateo"], club.ws.dm(club.people["mateo"]), "62p 11cb vs Summit")
    club.ws.settle()
    club.settle_now()

    club.say("mateo", "18p 2cb vs Harbor last Saturday")

    first, second = club.heard("mateo")
    assert first.startswith("*Game, Sat 2 May*")
    assert second.startswith("*Game, Sat 25 Apr*")


def test_pain_without_a_number_is_thanked_for_in_words(club: Club) -> None:
    club.say("mateo", "my arm hurts")

    assert club.heard("mateo")[0].startswith("Thank you for saying so: arm pain. Stop throwing")
    assert any("Mateo Cruz: arm (Sat 2 May" in one for one in club.in_staff_channel())
