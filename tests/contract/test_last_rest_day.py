"""A second message on the last rest day, for the families who asked for it, and no others."""

from sqlmodel import select

from core.model import GuardianLink, Person, Pitcher, key
from tests.support.club import Club
from tests.support.hours import chicago, skip_to, start
from tests.support.taps import answer_to, tap

GOLDEN = (
    "Elena Cruz, as you asked: today is the last rest day of *Mateo Cruz* by rule. The coach "
    "decides. League and local rules govern. “stop last-day reminders” ends these."
)


def last_days(club: Club, who: str = "elena") -> list[str]:
    return [text for text in club.heard(who) if "as you asked" in text]


def ask(club: Club, who: str = "elena") -> None:
    start(club)
    club.tell_bot(who, "remind us on the last rest day")


def test_a_family_that_asked_hears_once_more_on_the_last_rest_day(club: Club) -> None:
    # Pitch Smart (MLB and USA Baseball), 17-18: 62 pitches on Sat 2 May, 3 days of rest.
    ask(club)
    club.say("mateo", "62p 11cb vs Summit")

    skip_to(club, chicago("05-05", "07:55"))
    before = last_days(club)
    skip_to(club, chicago("05-05", "12:00"))

    assert before == []
    assert last_days(club) == [GOLDEN]


def test_the_wish_is_confirmed_and_ends_by_its_own_words(club: Club) -> None:
    ask(club)
    assert club.heard("elena")[-1] == (
        "I will write to you once more on the last rest day, in the morning. “stop last-day "
        "reminders” ends these."
    )

    club.tell_bot("elena", "stop last-day reminders")
    club.say("mateo", "62p 11cb vs Summit")
    skip_to(club, chicago("05-05", "12:00"))

    assert "No more messages on the last rest day." in club.heard("elena")[-2]
    assert last_days(club) == []


def test_undo_takes_the_wish_back(club: Club) -> None:
    ask(club)

    tap(club, "elena", answer_to(club, "elena"), "Undo")
    club.say("mateo", "62p 11cb vs Summit")
    skip_to(club, chicago("05-05", "12:00"))

    assert last_days(club) == []


def test_nobody_else_hears_of_it(club: Club) -> None:
    ask(club)
    club.say("mateo", "62p 11cb vs Summit")
    club.say("priya", "Leo 60 pitches 6 cb vs Summit")

    skip_to(club, chicago("05-06", "12:00"))

    assert last_days(club, "carmen") == []
    assert len(last_days(club)) == 1


def test_one_rest_day_is_told_of_once(club: Club) -> None:
    # Pitch Smart, 17-18: 35 pitches, 1 day of rest: the first message comes that very day.
    ask(club)
    club.say("mateo", "35p 4cb vs Summit")

    skip_to(club, chicago("05-03", "12:00"))

    assert last_days(club) == []
    assert len([text for text in club.heard("elena") if "about rest" in text]) == 1


def test_two_children_with_the_same_last_day_come_in_one_message(club: Club) -> None:
    ask(club)
    with club.store.writing() as session:
        elena = session.exec(select(Person).where(Person.name == "Elena Cruz")).one()
        leo = session.exec(select(Pitcher).where(Pitcher.name == "Leo Ortiz")).one()
        session.add(
            GuardianLink(workspace_id=leo.workspace_id, person_id=key(elena), pitcher_id=key(leo))
        )
    club.say("mateo", "62p 11cb vs Summit")
    club.say("priya", "Leo 60 pitches 6 cb vs Summit")  # 13-14: 51-65, 3 days

    skip_to(club, chicago("05-05", "12:00"))

    (text,) = last_days(club)
    assert "of *Mateo Cruz* by rule" in text
    assert "of *Leo Ortiz* by rule" in text


def test_another_outing_in_between_moves_the_last_day(club: Club) -> None:
    ask(club)
    club.say("mateo", "62p 11cb vs Summit")
    skip_to(club, chicago("05-04", "18:00"))

    club.say("mateo", "62p 11cb vs Ridge")
    skip_to(club, chicago("05-05", "12:00"))
    on_the_old_day = last_days(club)
    skip_to(club, chicago("05-07", "12:00"))

    assert on_the_old_day == []
    assert last_days(club) == [GOLDEN]


def test_an_outing_after_it_left_changes_it_in_words(club: Club) -> None:
    ask(club)
    club.say("mateo", "62p 11cb vs Summit")
    skip_to(club, chicago("05-05", "12:00"))

    club.say("mateo", "20p 2cb today vs Ridge")

    (text,) = last_days(club)
    assert "the log of *Mateo Cruz* was changed since I first wrote this" in text


def test_an_arm_that_hurts_is_named_no_last_day(club: Club) -> None:
    ask(club)
    club.say("mateo", "62p 11cb vs Summit")
    skip_to(club, chicago("05-04", "18:00"))
    club.say("mateo", "elbow hurts 4/10")

    skip_to(club, chicago("05-06", "12:00"))

    assert last_days(club) == []


def test_no_more_reminders_ends_these_too(club: Club) -> None:
    ask(club)
    club.tell_bot("elena", "no more reminders")
    club.say("mateo", "62p 11cb vs Summit")

    skip_to(club, chicago("05-05", "12:00"))

    assert last_days(club) == []


def test_after_a_day_of_downtime_it_is_dropped(club: Club) -> None:
    ask(club)
    club.say("mateo", "62p 11cb vs Summit")
    skip_to(club, chicago("05-04", "12:00"))

    club.clock.set(chicago("05-06", "09:00"))
    skip_to(club, chicago("05-06", "12:00"))

    assert last_days(club) == []


def test_the_words_of_somebody_without_a_child_on_the_team_are_talk(club: Club) -> None:
    start(club)

    club.tell_bot("priya", "remind us on the last rest day")

    assert "once more on the last rest day" not in club.heard("priya")[-1]
