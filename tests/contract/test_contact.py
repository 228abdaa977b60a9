"""A guardian's word ends what the bot writes: at once, on file, and over the coach's wish."""

from datetime import timedelta

from sqlmodel import select

from core.model import AuditEntry, OptOut
from tests.support.club import Club
from tests.support.hours import chicago, go_to


def test_what_would_go_to_the_child_goes_to_that_guardian_alone(club: Club) -> None:
    club.tell_bot("elena", "please do not message Mateo")
    assert club.heard("elena")[-1].startswith(
        "Done: from now on I write nothing to Mateo Cruz. What would have gone to Mateo Cruz comes "
        "to you alone"
    )

    club.say("mateo", "62p 18cb vs Summit")
    club.tell_bot("mateo", "when can I pitch")
    club.tell_bot("mateo", "hello there")

    assert club.heard("mateo") == []
    (game,) = [one for one in club.heard("elena") if "Read: 62 pitches, 18 breaking" in one]
    assert game.startswith(
        "Mateo Cruz wrote “62p 18cb vs Summit”. The answer comes to you alone, as you asked:"
    )
    assert len(club.heard("elena")) == 3


def test_it_is_immediate_for_what_waits_already(club: Club) -> None:
    club.clock.set(chicago("05-02", "21:00"))
    club.say("mateo", "62p 18cb vs Summit")
    before = len(club.heard("mateo"))

    club.tell_bot("elena", "don't message my son")
    go_to(club, chicago("05-03", "09:00"))

    assert len(club.heard("mateo")) == before


def test_the_staff_are_told_and_it_is_on_file(club: Club) -> None:
    club.tell_bot("elena", "stop messages to Mateo")

    (told,) = club.in_staff_channel()
    assert told.startswith("Elena Cruz asked that Mateo Cruz is not written to.")
    with club.store.reading() as session:
        assert len(session.exec(select(OptOut)).all()) == 1
        rows = session.exec(select(AuditEntry).where(AuditEntry.subject == "optout")).all()
    assert [row.action for row in rows] == ["recorded"]


def test_pain_of_a_child_who_is_not_written_to_is_told_to_the_adults(club: Club) -> None:
    club.tell_bot("elena", "do not message Mateo")
    club.say("mateo", "elbow pain 4/10")

    assert club.heard("mateo") == []
    assert any(one.startswith("Elena, a line in the pitching log") for one in club.heard("elena"))
    assert any("*Pain report.* Mateo Cruz" in one for one in club.in_staff_channel())


def test_neither_an_edit_nor_a_deletion_ends_it_and_its_own_words_do(club: Club) -> None:
    said = club.tell_bot("elena", "do not message Mateo")
    club.delete(said)
    club.say("mateo", "62p 8cb vs Summit")
    assert club.heard("mateo") == []

    club.tell_bot("elena", "message Mateo again")
    club.clock.advance(timedelta(days=7))
    club.say("mateo", "60p 8cb vs Hawks")

    assert len(club.heard("mateo")) == 1
    assert "Elena Cruz says that Mateo Cruz may be written to again." in club.in_staff_channel()
    with club.store.reading() as session:
        assert [row.ended_at is not None for row in session.exec(select(OptOut))] == [True]


def test_nobody_but_a_guardian_ends_what_a_child_is_told(club: Club) -> None:
    for who in ("dana", "carmen", "joan", "mateo"):
        club.tell_bot(who, "do not message Mateo")
        assert club.heard(who)[-1].startswith("Only a guardian of that pitcher")

    with club.store.reading() as session:
        assert session.exec(select(OptOut)).all() == []


def test_no_more_reminders_ends_rest_days_and_no_report_of_pain(club: Club) -> None:
    club.tell_bot("elena", "no more nudges")
    assert club.heard("elena")[-1].startswith("Done: no more reminders")
    assert "“do not message Mateo Cruz”" in club.heard("elena")[-1]
    before = len(club.heard("elena"))

    club.say("mateo", "62p 8cb vs Summit")
    go_to(club, chicago("05-03", "09:00"))
    assert len(club.heard("elena")) == before
    club.say("mateo", "elbow pain 4/10")
    assert len(club.heard("elena")) == before + 1

    club.tell_bot("elena", "start reminders")
    club.say("mateo", "50p 8cb vs Hawks")
    go_to(club, chicago("05-04", "09:00"))

    assert any("rest" in one.lower() for one in club.heard("elena")[before + 2 :])


def test_stop_means_reminders_and_is_no_log(club: Club) -> None:
    club.tell_bot("carmen", "stop")

    assert club.heard("carmen")[-1].startswith("Done: no more reminders")
    assert "do not message" not in club.heard("carmen")[-1]  # Leo has no account


def test_a_second_word_changes_nothing(club: Club) -> None:
    club.tell_bot("elena", "stop")
    club.tell_bot("elena", "stop")

    with club.store.reading() as session:
        assert len(session.exec(select(OptOut)).all()) == 1


def test_after_stop_no_open_question_comes_again(club: Club) -> None:
    club.tell_bot("carmen", "Leo 40 vs Summit, sore??")
    assert club.heard("carmen") != []
    club.tell_bot("carmen", "stop")

    go_to(club, chicago("05-03", "12:00"))

    assert not any("Still open" in one for one in club.heard("carmen"))


def test_an_open_question_comes_again_to_whoever_stopped_nothing(club: Club) -> None:
    club.tell_bot("carmen", "Leo 40 vs Summit, sore??")

    go_to(club, chicago("05-03", "12:00"))

    assert any("Still open" in one for one in club.heard("carmen"))


def test_asking_for_the_last_rest_day_after_stop_promises_nothing(club: Club) -> None:
    club.tell_bot("carmen", "stop")
    club.tell_bot("carmen", "remind us on the last rest day")
    assert club.heard("carmen")[-1].startswith("Noted, but you asked for no more reminders")

    club.tell_bot("carmen", "start reminders")
    club.tell_bot("carmen", "remind us on the last rest day")

    assert club.heard("carmen")[-1].startswith("I will write to you once more on the last rest day")
