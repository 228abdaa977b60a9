"""Alerts and thresholds, as the staff, the family and the pitcher read them."""

from datetime import date, timedelta

import pytest
from sqlmodel import select

from core.model import (
    Alert,
    AlertSeen,
    AlertState,
    AuditEntry,
    Outing,
    Pitcher,
    PitcherTeam,
    Season,
    Team,
    ThresholdSetting,
    key,
)
from tests.support.club import Club
from tests.support.taps import labels, tap


def staff_answer(club: Club, text: str) -> str:
    said = club.say("dana", text, club.staff)
    return club.ws.replies(club.staff, said)[-1].text


def alerts(club: Club) -> list[Alert]:
    with club.store.reading() as session:
        return list(session.exec(select(Alert)))


def season_begins(club: Club) -> None:
    with club.store.writing() as session:
        today = club.clock.now().date()
        session.add(
            Season(
                workspace_id=club.ws.team_id, team_id=1, kind="in season",
                starts_on=today, ends_on=today + timedelta(days=90),
            )
        )  # fmt: skip


def told(club: Club) -> list[str]:
    return [one for one in club.in_staff_channel() if one.startswith(("*Mix", "*Many", "Taken"))]


def test_a_mix_over_the_line_is_told_to_the_staff_with_its_figures_and_its_outings(
    club: Club,
) -> None:
    club.say("mateo", "62p 15cb vs Summit")

    assert told(club) == [
        "*Mix over the line.* Mateo Cruz: 15 of 62 pitches of known type in the last game were "
        "breaking balls, 24 %. The line is 20 %.\n• Sat 2 May, game: 62 pitches, 15 breaking balls"
    ]


def test_an_arm_that_must_not_pitch_is_not_told_how_to_pitch_next_time(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit, elbow pain 4/10")
    club.say("dana", "set mix 5%", club.staff)

    assert any(one.startswith("*Mix over the line.*") for one in club.in_staff_channel())
    assert not any("Next time" in one or "Coach's line" in one for one in club.heard("mateo"))


def test_words_on_the_mix_that_wait_for_the_morning_are_not_sent_to_an_arm_held_since(
    club: Club,
) -> None:
    club.clock.advance(timedelta(hours=3))
    club.say("mateo", "62p 18cb vs Summit")
    club.say("mateo", "elbow pain 4/10")
    club.clock.advance(timedelta(hours=12))
    club.settle()

    assert any(one.startswith("*Mix over the line.*") for one in club.in_staff_channel())
    assert not any("Next time" in one or "Coach's line" in one for one in club.heard("mateo"))


def test_the_pitcher_hears_it_kindly_in_his_own_terms_once(club: Club) -> None:
    club.say("mateo", "62p 18cb vs Summit")

    (own,) = [text for text in club.heard("mateo") if "Coach's line" in text]
    assert own == (
        "18 of your last 62 game pitches were breaking balls, 29 %. Coach's line for you is "
        "20 %. Next time more fastball and changeup."
    )
    assert not any("is a lot" in text for text in club.heard("mateo"))
    assert len(told(club)) == 2
    assert not any("breaking" in text for text in club.heard("elena"))


def test_where_the_dugout_calls_the_pitches_the_staff_alone_hear_of_the_mix(club: Club) -> None:
    with club.store.writing() as session:
        for pitcher in session.exec(select(Pitcher)):
            pitcher.pitch_caller = "dugout"

    club.say("mateo", "62p 18cb vs Summit")

    assert "The dugout calls the pitches." in told(club)[0]
    assert not any("line for you" in text for text in club.heard("mateo"))


def test_a_pitcher_without_an_account_gets_no_message_and_neither_does_his_family(
    club: Club,
) -> None:
    club.say("carmen", "Leo 62 pitches 18 curves vs Summit")

    assert len(told(club)) == 2
    assert not any("Coach's line" in text for text in club.heard("carmen"))


def test_a_pitcher_is_let_sleep(club: Club) -> None:
    club.clock.set(club.clock.now().replace(day=3, hour=2))  # 21:00 on Saturday in Chicago
    club.say("mateo", "62p 15cb vs Summit")
    assert not any("Coach's line" in text for text in club.heard("mateo"))

    club.clock.set(club.clock.now().replace(hour=13))
    club.settle_now()

    assert any("Coach's line" in text for text in club.heard("mateo"))


def test_a_second_game_over_the_line_is_no_second_alert(club: Club) -> None:
    club.say("mateo", "62p 15cb vs Summit")
    club.clock.advance(timedelta(days=7))
    club.say("mateo", "60p 14cb vs Hawks")

    assert len(alerts(club)) == 1
    (alert,) = told(club)
    assert "29 of 122 pitches of known type in the last 2 games" in alert


def test_it_is_armed_again_when_the_value_comes_back(club: Club) -> None:
    club.say("mateo", "62p 15cb vs Summit")
    club.clock.advance(timedelta(days=7))
    club.say("mateo", "70p 5cb vs Hawks")
    assert "_Back within the line since._" in told(club)[0]
    club.clock.advance(timedelta(days=7))
    club.say("mateo", "60p 24cb vs Summit")

    states = [one.state for one in alerts(club) if one.key == "mix"]
    assert states == [AlertState.RETURNED, AlertState.STANDING]


def test_a_correction_that_undoes_the_reason_takes_the_alert_back_in_words(club: Club) -> None:
    said = club.say("mateo", "62p 18cb vs Summit")
    club.edit(said, "62p 8cb vs Summit")

    assert told(club) == [
        "Taken back: “many breaking balls in one game” no longer holds for Mateo Cruz.",
        "Taken back: “mix over the line” no longer holds for Mateo Cruz.",
    ]
    assert any(text.startswith("Taken back: your mix is within") for text in club.heard("mateo"))


def test_a_deleted_line_takes_its_alert_back_and_its_return_edits_the_same_message(
    club: Club,
) -> None:
    said = club.say("mateo", "62p 15cb vs Summit")
    club.delete(said)
    assert told(club)[0].startswith("Taken back")

    club.say("mateo", "62p 15cb vs Summit")

    assert len(told(club)) == 1
    assert told(club)[0].startswith("*Mix over the line.*")


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("80p 17cb vs Summit", "17 breaking balls of 80 pitches in one game"),
        ("130p 25cb vs Summit", "The line is 25 in a game."),
        ("120p 40cb vs Summit", "40 in this game alert whatever is set."),
        ("24p 12cb vs Summit", "12 in this game alert whatever is set."),
    ],
)
def test_breaking_balls_in_one_game(club: Club, line: str, words: str) -> None:
    club.say("mateo", line)

    assert any(words in text for text in club.in_staff_channel())


def test_somebody_of_the_staff_has_seen_it(club: Club) -> None:
    club.say("mateo", "62p 15cb vs Summit")
    (message,) = [m for m in club.ws.bot_messages(club.staff) if m.text.startswith("*Mix")]
    assert labels(message) == ["Seen"]

    tap(club, "dana", message, "Seen")

    (message,) = [m for m in club.ws.bot_messages(club.staff) if m.text.startswith("*Mix")]
    assert message.text.endswith("Seen by Dana Mercer.")
    assert labels(message) == []
    with club.store.reading() as session:
        assert len(session.exec(select(AlertSeen)).all()) == 1
    assert (
        "• Sat 2 May: Mateo Cruz, mix over the line: 15 of 62 pitches of known type in the last "
        "game were breaking balls, 24 % (standing; seen by Dana Mercer)"
    ) in staff_answer(club, "alerts")


def test_reports_of_a_tired_arm_are_told_to_staff_and_guardians(club: Club) -> None:
    club.say("mateo", "40p 3cb vs Summit, arm tired")
    club.clock.advance(timedelta(days=4))
    club.say("mateo", "catch 30 throws, arm is tired")

    assert any(one.startswith("*Reports of a tired arm.*") for one in club.in_staff_channel())
    (mother,) = [one for one in club.heard("elena") if "tired arm" in one]
    assert "2 days with a tired arm within 14 days" in mother
    assert "a licensed clinician decides" in mother


@pytest.mark.parametrize(("who", "text"), [("mateo", "elbow hurts 5/10"), ("mateo", "elbow hurts"),
                                           ("elena", "Mateo's elbow hurts 5/10")])  # fmt: skip
def test_a_guardian_hears_of_pain_once_and_by_the_stronger_message(
    club: Club, who: str, text: str
) -> None:
    club.say("mateo", "elbow hurts 1/10")
    club.clock.advance(timedelta(days=4))
    before = len(club.heard("elena"))

    club.say(who, text)
    club.clock.advance(timedelta(days=1))
    club.settle()

    new = [one for one in club.heard("elena")[before:] if "Still open" not in one]
    assert len([one for one in new if "should stop throwing today" in one]) == 1
    assert not any(one.startswith("*Reports of pain.*") for one in new)
    assert any(one.startswith("*Reports of pain.*") for one in club.in_staff_channel())


def test_of_soreness_on_two_days_a_guardian_hears_by_the_alert(club: Club) -> None:
    club.say("mateo", "shoulder sore")
    club.clock.advance(timedelta(days=4))
    club.say("mateo", "shoulder feels sore")

    told = [one for one in club.heard("elena") if "Reports of pain" in one or "has pain" in one]
    assert len(told) == 1


def test_reports_that_lie_back_in_time_are_not_called_an_improvement(club: Club) -> None:
    club.say("mateo", "shoulder sore")
    club.clock.advance(timedelta(days=4))
    club.say("mateo", "shoulder sore")
    club.clock.advance(timedelta(days=12))
    club.bot.tick(club.clock.now())
    club.settle()

    (told,) = [one for one in club.in_staff_channel() if one.startswith("*Reports of pain.*")]
    assert "_Fewer reports within the last 14 days since; that ends nothing._" in told
    assert "Back within the line" not in told


def test_days_without_a_line_are_noticed_by_the_calendar_once(club: Club) -> None:
    with club.store.writing() as session:
        for pitcher in session.exec(select(Pitcher)).all():
            pitcher.consent_on = pitcher.consent_on if pitcher.name == "Mateo Cruz" else None
    season_begins(club)
    club.say("mateo", "40p 3cb vs Summit")
    for _ in range(9):
        club.clock.advance(timedelta(days=1))
        club.bot.tick(club.clock.now())
        club.settle()

    silent = [one for one in club.in_staff_channel() if one.startswith("*No line.*")]
    assert len(silent) == 1
    assert "it may not be rest" in silent[0]

    club.say("mateo", "catch 30 throws")
    assert [one.state for one in alerts(club)] == [AlertState.RETURNED]


def test_arms_without_a_line_are_told_in_one_message(club: Club) -> None:
    season_begins(club)
    club.say("mateo", "40p 3cb vs Summit")
    for _ in range(9):
        club.clock.advance(timedelta(days=1))
        club.bot.tick(club.clock.now())
        club.settle()

    first, second = (one for one in club.in_staff_channel() if one.startswith("*No line.*"))
    assert "• Leo Ortiz: " in first
    assert "• Sam Ruiz: " in first
    assert "*No line.* Mateo Cruz: " in second

    club.say("dana", "Leo catch 30 throws", club.staff)
    told = next(one for one in club.in_staff_channel() if "• Leo Ortiz: " in one)
    assert told.count("_Back within the line since._") == 1
    (message,) = (one for one in club.ws.bot_messages(club.staff) if "• Leo Ortiz: " in one.text)
    tap(club, "dana", message, "Seen")
    told = next(one for one in club.in_staff_channel() if "• Leo Ortiz: " in one)
    assert told.endswith("Seen by Dana Mercer.")
    with club.store.reading() as session:
        assert len(session.exec(select(AlertSeen)).all()) >= 3


def test_the_staff_set_a_threshold_for_one_pitcher_and_read_it_back(club: Club) -> None:
    answer = staff_answer(club, "set mix 25% for Mateo")

    assert answer.startswith("Set for Mateo Cruz: mix 25 % (before: 20 %; default: 20 %).")
    club.say("mateo", "62p 15cb vs Summit")
    assert told(club) == []
    listed = staff_answer(club, "thresholds for Mateo")
    assert "• mix: *25 %* (default: 20 %, team: 20 %)." in listed
    assert "Dana Mercer set mix: 25 % for Mateo Cruz" in listed
    assert "• mix: *20 %* (the default)." in staff_answer(club, "all thresholds")


def test_a_lower_line_is_crossed_at_once_and_its_deletion_takes_that_back(club: Club) -> None:
    club.say("mateo", "62p 11cb vs Summit")

    said = club.say("dana", "set mix 15% for Mateo", club.staff)
    assert any(one.startswith("*Mix over the line.*") for one in told(club))
    club.delete(said)

    assert all(one.startswith("Taken back") for one in told(club))
    with club.store.reading() as session:
        assert [one.withdrawn_at is None for one in session.exec(select(ThresholdSetting))] == [
            False
        ]


def test_off_on_and_default(club: Club) -> None:
    staff_answer(club, "set mix 30%")
    assert "mix off" in staff_answer(club, "mix off for Leo")
    assert "mix 30 %" in staff_answer(club, "mix default for Leo")
    assert "mix 20 %" in staff_answer(club, "set mix default")
    assert "low mix 8 %" in staff_answer(club, "low mix on for Mateo")


def test_several_lines_set_several_and_are_confirmed_in_one_message(club: Club) -> None:
    answer = staff_answer(club, "set mix 25% for Mateo\nset changeup 10% for Mateo\nset week 90")

    assert [one.split(" (")[0] for one in answer.split("\n\n")] == [
        "Set for Mateo Cruz: mix 25 %",
        "Set for Mateo Cruz: changeup 10 %",
        "Set for the team: week pitches 90 in 7 days",
    ]


def test_where_one_of_several_cannot_be_none_of_them_is_set(club: Club) -> None:
    answer = staff_answer(club, "set mix 25% for Mateo\nset changeup 120%")

    assert "not “120%”" in answer
    with club.store.reading() as session:
        assert session.exec(select(ThresholdSetting)).all() == []


def test_the_pain_threshold_is_the_staffs_to_tighten(club: Club) -> None:
    staff_answer(club, "set pain 1 for Mateo")

    club.say("mateo", "elbow pain 1/10")

    assert any("*On hold*" in one for one in club.in_staff_channel())


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ("set mix 0", "from 5 to 60 (%), “off” or “default”, not “0”"),
        ("set mix 120 %", "not “120 %”"),
        ("set mix soon", "not “soon”"),
        ("set mix 18.5%", "not “18.5%”"),
        ("set pain 5", "from 1 to 3 (of 10) or “default”, not “5”"),
        ("set pain off", "not “off”"),
        ("set mix 18% for Zed", "I know no pitcher called “Zed”"),
        ("set mix 18% for Sam", "“Sam” fits"),
    ],
)
def test_a_setting_that_cannot_be_is_refused_in_one_sentence(
    club: Club, typed: str, words: str
) -> None:
    answer = staff_answer(club, typed)

    assert words in answer
    assert len(answer.split("\n\n")[0].splitlines()) == 1
    with club.store.reading() as session:
        assert session.exec(select(ThresholdSetting)).all() == []


@pytest.mark.parametrize("who", ["mateo", "elena", "priya"])
def test_only_the_staff_set_thresholds(club: Club, who: str) -> None:
    club.tell_bot(who, "set mix 60% for Mateo")

    assert club.heard(who)[-1].startswith("Only the staff can set this.")
    with club.store.reading() as session:
        assert session.exec(select(ThresholdSetting)).all() == []


def test_a_pitcher_of_another_team_is_nobody_that_a_coach_can_set(club: Club) -> None:
    with club.store.writing() as session:
        other = Team(
            workspace_id=club.ws.team_id, name="Ospreys", time_zone="America/Chicago",
            log_channel="C0OTHERLOG", staff_channel="C0OTHERSTAFF",
        )  # fmt: skip
        kit = Pitcher(
            workspace_id=club.ws.team_id, name="Kit Vale", birth_date=date(2010, 1, 1),
            consent_on=date(2026, 1, 1),
        )  # fmt: skip
        session.add_all([other, kit])
        session.flush()
        session.add(PitcherTeam(workspace_id=club.ws.team_id, pitcher_id=key(kit),
                                team_id=key(other)))  # fmt: skip

    answer = staff_answer(club, "set mix 18% for Kit")

    assert answer.startswith("I know no pitcher called “Kit”.")
    with club.store.reading() as session:
        assert session.exec(select(ThresholdSetting)).all() == []


def test_words_that_look_like_a_setting_are_still_a_log(club: Club) -> None:
    club.tell_bot("elena", "tired no, pain no, 40p vs Summit")

    assert "40 pitches" in club.heard("elena")[-1]


def test_settings_are_audited_with_what_was_before(club: Club) -> None:
    staff_answer(club, "set mix 25% for Mateo")
    staff_answer(club, "set mix 22% for Mateo")

    with club.store.reading() as session:
        rows = session.exec(
            select(AuditEntry).where(AuditEntry.subject == "thresholdsetting")
        ).all()
    assert [(one.before, one.after) for one in rows] == [
        ({"value": 20}, {"value": 25}),
        ({"value": 25}, {"value": 22}),
    ]


def test_innings_near_the_cap_are_told_to_staff_and_family_with_the_book(club: Club) -> None:
    club.say("mateo", "40p vs Summit yesterday, 1 ip")
    with club.store.writing() as session:
        (yesterday,) = session.exec(select(Outing)).all()
        for week in range(20):  # eighty innings since August
            session.add(
                Outing(
                    workspace_id=club.ws.team_id, line_id=yesterday.line_id, slot=f"old/{week}",
                    pitcher_id=yesterday.pitcher_id, team_id=1, kind="game", pitches=60, outs=12,
                    on=date(2025, 8, 1) + timedelta(days=7 * week),
                )
            )  # fmt: skip
    club.say("mateo", "20p vs Hawks, 1 ip")

    words = (
        "*Innings near the year's cap.* Mateo Cruz: 82 innings in twelve months, 82 % of the 100 "
        "that Pitch Smart"
    )
    assert any(one.startswith(words) for one in club.in_staff_channel())
    assert any(one.startswith(words) for one in club.heard("elena"))


def test_a_third_day_in_a_row_is_told_to_the_family_too(club: Club) -> None:
    club.say("mateo", "20p vs Summit 4/30")
    club.say("mateo", "bullpen 20p yesterday")
    club.say("mateo", "20p vs Hawks")

    (mother,) = [one for one in club.heard("elena") if one.startswith("*Days in a row.*")]
    assert "pitches on 3 days in a row, up to Sat 2 May" in mother
    assert "League and local rules govern." in mother


def test_a_game_that_is_a_month_old_keeps_its_alert_as_it_was(club: Club) -> None:
    club.say("mateo", "80p 25cb vs Summit")
    before = [one for one in told(club) if one.startswith("*Many")]

    club.clock.advance(timedelta(days=40))
    club.bot.tick(club.clock.now())
    club.settle()

    assert [one for one in told(club) if one.startswith("*Many")] == before
    assert len(before) == 1
