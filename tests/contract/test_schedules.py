"""Schedules, cues and spin plans set in Slack by the staff; what comes this week, in advance."""

import pytest
from sqlmodel import select

from core.model import AuditEntry, BreakingPitch, Pitcher, ScheduleKind, Team, TeamSchedule
from tests.support.club import Club
from tests.support.hours import chicago, skip_to, start
from tests.support.taps import action_id, tap

LISTING = """\
*Schedules of Herons* (America/Chicago time)
• Monday summary: *Mondays, 7 am* (default)
• Spin reminder: *30 minutes before the week's first practice, else Wednesdays, 4 pm* (default)
• Post-game question: *8:30 am the morning after a game, if a line is missing* (default)
• Rest days to families: *8 am the morning after an outing that asks for rest* (default)
• Rest days before a game: *7:30 pm the evening before, instead of the morning* (default)
Cues: none of your own, so I say “Half effort, spin first.”
Spin plan: 3 sessions of catch play with 12 spin reps each (default).
On a rest day: nothing of yours yet, so I say: ask the coach.
Set one with “monday summary at 6:30”, “spin reminder thursday 5pm”, “spin reminder 30 minutes \
before practice”, “spin reminders off”, “rest day messages at 9am”, “monday summary default”, \
“add cue: …”, “remove cue 2”, “spin plan 3 x 12 for Leo”, “rest day hitting: tee work only”. \
“what will you send this week” lists what comes."""
COMING = """\
*What I will send for Herons*, Sat 2 to Sat 9 May
• Sun 3 May, 8 am: rest days, to Elena Cruz
• Sun 3 May, 8:30 am: “who else pitched?”, if a line is missing, to Priya Venn
• Mon 4 May, 7 am: Monday summary, to the staff channel
• Tue 5 May, 4:30 pm: spin reminder, to the log channel
• Tue 5 May, 4:30 pm: spin reps so far, if some are missing, to Carmen Ortiz, Mateo Cruz, Sam \
Oduya and Sam Ruiz
Answers, alerts and pain notices come as things happen. Families hear of rest days once an \
outing that asks for rest is logged."""


def row(club: Club, kind: ScheduleKind) -> TeamSchedule:
    with club.store.reading() as session:
        return session.exec(select(TeamSchedule).where(TeamSchedule.kind == kind)).one()


def test_every_schedule_stands_beside_its_default(club: Club) -> None:
    start(club)

    club.say("dana", "schedules", club.staff)

    assert club.in_staff_channel() == [LISTING]


def test_what_comes_this_week_is_told_in_advance_with_whom(club: Club) -> None:
    start(club)
    club.say("dana", "game today 10am vs Summit", club.staff)
    club.say("dana", "practice tue 5pm", club.staff)
    club.say("mateo", "62p 11cb vs Summit")

    club.say("dana", "what will you send this week, to whom?", club.staff)

    assert club.in_staff_channel()[-1] == COMING


def test_a_time_is_set_confirmed_audited_and_kept(club: Club) -> None:
    start(club)

    club.say("dana", "monday summary at 6:30", club.staff)
    skip_to(club, chicago("05-04", "06:31"))

    confirmed, summary = club.in_staff_channel()
    assert confirmed == (
        "Monday summary: Mondays, 6:30 am (before: Mondays, 7 am; default: Mondays, 7 am)."
    )
    assert summary.startswith("*Monday summary, Herons*")
    with club.store.reading() as session:
        rows = select(AuditEntry).where(AuditEntry.subject == "schedulesetting")
        entry = session.exec(rows).one()
    assert (entry.before["at"], entry.after["at"]) == ("07:00", "06:30")


def test_undo_sets_back_what_stood_before(club: Club) -> None:
    start(club)
    club.say("dana", "monday summary at 6:30", club.staff)
    club.say("dana", "monday summary sunday 6pm", club.staff)

    tap(club, "dana", club.ws.bot_messages(club.staff)[-1], "Undo")

    assert (row(club, ScheduleKind.MONDAY_SUMMARY).weekday, row(
        club, ScheduleKind.MONDAY_SUMMARY
    ).at.isoformat("minutes")) == (0, "06:30")  # fmt: skip


def test_what_is_off_sends_nothing_and_makes_up_for_nothing_when_it_is_on_again(
    club: Club,
) -> None:
    start(club)
    club.say("dana", "monday summary off", club.staff)
    skip_to(club, chicago("05-04", "08:00"))

    club.say("dana", "monday summary on", club.staff)
    skip_to(club, chicago("05-04", "12:00"))

    assert not any(text.startswith("*Monday summary") for text in club.in_staff_channel())


def test_a_message_that_left_is_not_sent_again_when_its_time_is_moved(club: Club) -> None:
    start(club)
    skip_to(club, chicago("05-04", "08:00"))

    club.say("dana", "monday summary at 9am", club.staff)
    skip_to(club, chicago("05-04", "12:00"))

    sent = [text for text in club.in_staff_channel() if text.startswith("*Monday summary")]
    assert len(sent) == 1


def test_a_team_that_changes_its_zone_hears_each_thing_once(club: Club) -> None:
    start(club)
    skip_to(club, chicago("05-04", "08:00"))
    with club.store.writing() as session:
        session.exec(select(Team)).one().time_zone = "Pacific/Honolulu"

    skip_to(club, chicago("05-04", "20:00"))

    sent = [text for text in club.in_staff_channel() if text.startswith("*Monday summary")]
    assert len(sent) == 1


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("rest day messages at 6am", "I set nothing: at 06:00 families sleep."),
        ("spin reminder wednesday 9pm", "I set nothing: at 21:00 families sleep."),
        ("post-game question tuesday 9am", "I set nothing: that one follows each game"),
        ("spin reminder thursday 5pm or so", "I set nothing: “thursday 5pm or so” is not clear."),
        ("remove cue 3", "I changed no cue: “3” is not on the list"),
        ("spin plan 9 x 12", "I set no plan: “9 x 12” is not clear."),
        ("spin plan 3 x 12 for Zed", "I know no pitcher called “Zed”."),
    ],
)
def test_what_cannot_be_is_refused_in_words(club: Club, text: str, said: str) -> None:
    start(club)

    club.say("dana", text, club.staff)

    assert club.in_staff_channel()[-1].startswith(said)


@pytest.mark.parametrize("who", ["elena", "mateo", "priya"])
def test_nobody_but_the_staff_sets_or_reads_them(club: Club, who: str) -> None:
    start(club)

    club.tell_bot(who, "spin reminders off")
    club.tell_bot(who, "what will you send this week")

    assert all(text.startswith("Only the staff can set this.") for text in club.heard(who))
    assert row(club, ScheduleKind.SPIN).is_on


def test_in_the_log_channel_the_same_words_are_talk(club: Club) -> None:
    start(club)

    club.say("dana", "spin reminders off")

    assert row(club, ScheduleKind.SPIN).is_on


def test_cues_are_the_coachs_list_and_come_in_turn(club: Club) -> None:
    start(club)
    club.say("dana", "add cue: long and loose, then spin", club.staff)
    club.say("dana", "add cue: throw it through the window", club.staff)
    assert club.in_staff_channel()[-1] == (
        "Cues, one each week in turn:\n1. long and loose, then spin\n2. throw it through the window"
    )

    club.say("dana", "remove cue 2", club.staff)
    skip_to(club, chicago("05-06", "16:00"))

    assert row(club, ScheduleKind.SPIN).cues == ["long and loose, then spin"]
    posts = [message.text for message in club.in_log_channel()]
    assert posts[-1].startswith("*Spin this week.* long and loose, then spin\n")


def test_a_plan_of_a_team_and_one_of_a_pitcher(club: Club) -> None:
    start(club)
    club.say("dana", "spin plan 2 x 10", club.staff)
    club.say("dana", "spin plan 4 x 15 for Mateo", club.staff)
    assert club.in_staff_channel()[-1] == (
        "Spin plan for Mateo Cruz: 4 sessions of catch play with 15 spin reps each, 60 a week "
        "(default: 3 x 12). Half effort; none on an arm that hurts."
    )

    skip_to(club, chicago("05-06", "16:00"))

    (post,) = [message.text for message in club.in_log_channel()]
    assert (
        "The plan: 2 sessions of catch play with 10 spin reps each. Some have a plan of their own."
    ) in post
    assert any("0 of 60 so far" in text for text in club.heard("mateo"))
    assert any("Leo Ortiz 0 of 20" in text for text in club.heard("carmen"))


def test_the_spin_reminder_comes_before_the_first_practice_that_is_on_no_game_day(
    club: Club,
) -> None:
    start(club)
    for line in ("practice tue 5pm", "game tue 7pm vs Summit", "practice thu 5:30pm"):
        club.say("dana", line, club.staff)

    skip_to(club, chicago("05-07", "16:59"))
    before = list(club.in_log_channel())
    skip_to(club, chicago("05-07", "17:00"))

    assert before == []
    assert len(club.in_log_channel()) == 1


def test_it_comes_at_its_own_time_where_no_practice_is_known_or_the_staff_say_so(
    club: Club,
) -> None:
    start(club)
    club.say("dana", "practice thu 5pm", club.staff)
    club.say("dana", "spin reminder not before practice", club.staff)

    skip_to(club, chicago("05-06", "16:00"))

    assert len(club.in_log_channel()) == 1


def test_on_a_game_day_there_is_none_and_the_forecast_says_so(club: Club) -> None:
    start(club)
    club.say("dana", "game wed 6pm vs Summit", club.staff)

    club.say("dana", "what will you send this week", club.staff)
    skip_to(club, chicago("05-08", "12:00"))

    forecast = next(text for text in club.in_staff_channel() if text.startswith("*What I will"))
    assert "• Wed 6 May, 4 pm: no spin reminder: a game day, months off" in forecast
    assert club.in_log_channel() == []


def test_rest_day_messages_keep_the_time_that_the_staff_set(club: Club) -> None:
    start(club)
    club.say("dana", "rest day messages at 9:15am", club.staff)
    club.say("mateo", "62p 11cb vs Summit")

    skip_to(club, chicago("05-03", "09:10"))
    before = [text for text in club.heard("elena") if "about rest" in text]
    skip_to(club, chicago("05-03", "09:15"))

    assert before == []
    assert len([text for text in club.heard("elena") if "about rest" in text]) == 1


def test_what_the_coach_allows_on_a_rest_day_is_set_in_slack_and_read_by_families(
    club: Club,
) -> None:
    start(club)
    said = club.say("dana", "rest day hitting: tee work only", club.staff)
    assert club.in_staff_channel()[-1] == (
        "On a rest day, hitting: “tee work only”. Families read it as your own words. It is never "
        "said of an arm that hurts."
    )
    club.say("dana", "rest day catching: not behind the plate", club.staff)
    club.say("mateo", "62p 11cb vs Summit")
    club.delete(said)

    skip_to(club, chicago("05-03", "08:00"))

    (text,) = [text for text in club.heard("elena") if "about rest" in text]
    assert "the coach says, catching: “not behind the plate”. For the rest, ask" in text
    assert "tee work" not in text


def test_the_forecast_names_nobody_who_throws_no_breaking_ball(club: Club) -> None:
    start(club)
    with club.store.writing() as session:
        for pitcher in session.exec(select(Pitcher)):
            pitcher.breaking_pitch = BreakingPitch.NONE_YET

    club.say("dana", "what will you send this week", club.staff)

    assert "spin reps so far" not in club.in_staff_channel()[-1]


def test_the_form_shows_what_stands_and_writes_the_lines_for_what_changed(club: Club) -> None:
    start(club)
    club.say("dana", "schedules", club.staff)
    shown = club.ws.bot_messages(club.staff)[-1]

    club.ws.press(club.people["dana"], shown, action_id(shown, "Change schedules"))
    club.settle()
    club.ws.submit(
        club.people["dana"],
        {"monday_summary_at": "06:30", "spin_is": "off", "cues": "long and loose"},
    )
    club.settle()

    assert row(club, ScheduleKind.MONDAY_SUMMARY).at.isoformat("minutes") == "06:30"
    assert not row(club, ScheduleKind.SPIN).is_on
    assert row(club, ScheduleKind.SPIN).cues == ["long and loose"]
    assert "Monday summary: Mondays, 6:30 am" in club.heard("dana")[-1]


def test_the_form_refuses_a_time_at_night_beside_the_input(club: Club) -> None:
    start(club)
    club.say("dana", "schedules", club.staff)
    shown = club.ws.bot_messages(club.staff)[-1]
    club.ws.press(club.people["dana"], shown, action_id(shown, "Change schedules"))
    club.settle()

    sent = club.ws.submit(club.people["dana"], {"rest_days_at": "06:00"})
    club.settle()

    assert "Families sleep then." in club.ws.errors_of(sent)["rest_days_at"]


@pytest.mark.parametrize(
    "cue",
    [
        "throw through the pain",
        "a sore elbow is only weakness leaving",
        "it only hurts at first",
        "spin it although it aches",
    ],
)
def test_a_cue_that_speaks_of_pain_is_refused_and_never_said(club: Club, cue: str) -> None:
    start(club)
    club.say("dana", f"add cue: {cue}", club.staff)
    assert club.in_staff_channel()[-1].startswith("I set nothing: these words go to young pitchers")

    skip_to(club, chicago("05-06", "16:00"))

    assert row(club, ScheduleKind.SPIN).cues == []
    posts = [message.text for message in club.in_log_channel()]
    assert posts[-1].startswith("*Spin this week.* Half effort, spin first.")


def test_a_cue_from_before_such_words_were_refused_is_not_said(club: Club) -> None:
    start(club)
    club.say("dana", "add cue: long and loose", club.staff)
    with club.store.writing() as session:
        stands = session.exec(
            select(TeamSchedule).where(TeamSchedule.kind == ScheduleKind.SPIN)
        ).one()
        stands.cues = ["throw through the pain"]
        session.add(stands)

    skip_to(club, chicago("05-06", "16:00"))

    assert "pain" not in club.in_log_channel()[-1].text


@pytest.mark.parametrize(
    "line", ["add cue: spin it like Leo", "rest day hitting: tee work, but not Sam Oduya"]
)
def test_words_that_everybody_reads_name_no_pitcher(club: Club, line: str) -> None:
    start(club)

    club.say("dana", line, club.staff)

    assert club.in_staff_channel()[-1].startswith("I set nothing: these words go to everybody")
    assert row(club, ScheduleKind.SPIN).cues == []


def test_words_on_a_rest_day_speak_of_no_pain(club: Club) -> None:
    start(club)

    club.say("dana", "rest day hitting: swing until it hurts", club.staff)

    assert club.in_staff_channel()[-1].startswith("I set nothing: these words go to young pitchers")


def test_the_form_refuses_a_cue_that_speaks_of_pain(club: Club) -> None:
    start(club)
    club.say("dana", "schedules", club.staff)
    shown = club.ws.bot_messages(club.staff)[-1]
    club.ws.press(club.people["dana"], shown, action_id(shown, "Change schedules"))
    club.settle()

    sent = club.ws.submit(club.people["dana"], {"cues": "throw through the pain"})
    club.settle()

    assert "nothing of pain" in club.ws.errors_of(sent)["cues"]
    assert row(club, ScheduleKind.SPIN).cues == []
