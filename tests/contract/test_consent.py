"""Consent in Slack: asked, given, refused, withdrawn; what is kept back and what comes back."""

from datetime import date, timedelta

import pytest
from sqlmodel import col, select

from bot.local.records import Message
from core.consent.saying import say
from core.ledger.by_hand import ByHandError, Hand
from core.ledger.crew import find_person
from core.model import (
    AuditAction,
    AuditEntry,
    ConsentAct,
    ConsentEvent,
    ConsentWay,
    Line,
    OutboxMessage,
    Outing,
    PainReport,
    Pitcher,
    key,
)
from tests.support.club import Club
from tests.support.phone import home
from tests.support.taps import labels, tap

BEN = "Ben 30 pitches 3 cb vs Summit"
#: 17:00 on Monday in Chicago: families are written to by day.
AFTERNOON = 22


def by_day(club: Club) -> Club:
    club.clock.set(club.clock.now().replace(day=4, hour=AFTERNOON))
    return club


def request(club: Club, who: str) -> Message:
    """The message about consent that somebody has."""
    mine = club.ws.dm_messages(club.people[who])
    return next(one for one in mine if one.user == club.ws.bot.id and "consent_" in str(one.blocks))


def outings(club: Club, name: str) -> list[Outing]:
    """The outings of a pitcher that stand."""
    with club.store.reading() as session:
        rows = (
            select(Outing)
            .join(Pitcher)
            .where(Pitcher.name == name, col(Outing.withdrawn_at).is_(None))
        )
        return list(session.exec(rows))


def test_a_guardian_is_asked_with_what_is_stored_who_sees_it_how_long_and_how_it_ends(
    club: Club,
) -> None:
    by_day(club).say("dana", BEN, club.staff)

    asked = request(club, "joan")
    for words in ("Ben Abara", "What is stored", "Who sees it", "For how long", "How to end it"):
        assert words in asked.text
    assert labels(asked) == ["I agree", "I do not agree"]
    assert outings(club, "Ben Abara") == []


def test_no_family_is_asked_in_the_evening(club: Club) -> None:
    club.clock.advance(timedelta(hours=3))  # 21:00

    club.say("dana", BEN, club.staff)

    assert club.heard("joan") == []


def test_the_coach_is_told_once_however_many_lines_are_kept_back(club: Club) -> None:
    by_day(club).say("dana", BEN, club.staff)
    club.say("dana", "Ben pen 20 pitches", club.staff)

    told = [text for text in club.in_staff_channel() if text.startswith("Lines about Ben")]
    assert len(told) == 1
    assert "I asked Joan Oduya" in told[0]


def test_with_a_yes_the_kept_lines_are_counted_and_it_is_recorded_who_and_when(
    club: Club,
) -> None:
    said = by_day(club).say("joan", BEN)
    assert club.reaction(said) == ["question"]

    tap(club, "joan", request(club, "joan"), "I agree")

    assert [one.pitches for one in outings(club, "Ben Abara")] == [30]
    assert club.reaction(said) == ["baseball"]
    assert "Breaking balls: 3 of 30" in club.heard("joan")[0]
    assert "You agreed on Mon 4 May" in request(club, "joan").text
    assert any("Joan Oduya agreed, Mon 4 May" in one for one in club.in_staff_channel())
    assert any("lines are counted" in one for one in club.in_staff_channel())
    with club.store.reading() as session:
        event = session.exec(select(ConsentEvent).order_by(col(ConsentEvent.id).desc())).first()
        assert event is not None
        assert (event.act, event.way, event.said_by) == ("agreed", "slack", "Joan Oduya")


def test_over_socket_mode_a_yes_counts_the_kept_lines_too(socket_club: Club) -> None:
    by_day(socket_club).say("joan", BEN)

    tap(socket_club, "joan", request(socket_club, "joan"), "I agree")

    assert [one.pitches for one in outings(socket_club, "Ben Abara")] == [30]


def test_a_yes_pressed_twice_counts_once(club: Club) -> None:
    by_day(club).say("joan", BEN)
    asked = request(club, "joan")
    club.ws.press(club.people["joan"], asked, "press.consent_agreed.0")
    club.ws.press(club.people["joan"], asked, "press.consent_agreed.0")
    club.settle()

    assert len(outings(club, "Ben Abara")) == 1


def test_a_no_keeps_everything_back(club: Club) -> None:
    by_day(club).say("joan", BEN)

    tap(club, "joan", request(club, "joan"), "I do not agree")
    club.say("dana", "Ben 25 pitches vs Summit", club.staff)

    assert outings(club, "Ben Abara") == []
    assert labels(request(club, "joan")) == ["I agree after all", "Delete the record…"]


def test_the_word_withdraws_at_once_and_the_staff_hear_it(club: Club) -> None:
    by_day(club).say("carmen", "Leo 45 pitches 6 curves vs Summit")
    assert len(outings(club, "Leo Ortiz")) == 1

    club.tell_bot("carmen", "withdraw consent")

    assert outings(club, "Leo Ortiz") == []
    assert any("consent for Leo Ortiz is withdrawn" in one for one in club.heard("carmen"))
    assert any("Carmen Ortiz withdrew consent" in one for one in club.in_staff_channel())


def test_after_a_withdrawal_no_record_is_shown_and_new_lines_are_kept_back(club: Club) -> None:
    by_day(club).say("carmen", "Leo 45 pitches 6 curves vs Summit")
    club.tell_bot("carmen", "withdraw consent for Leo")

    club.tell_bot("dana", "when can Leo pitch")
    club.say("dana", "Leo 20 pitches vs Summit", club.staff)

    assert "I keep no record" in club.heard("dana")[-1]
    assert outings(club, "Leo Ortiz") == []


def test_an_old_answer_shows_nothing_of_him_any_more(club: Club) -> None:
    said = by_day(club).say("carmen", "Leo 45 pitches 6 curves vs Summit, elbow sore")
    club.tell_bot("carmen", "withdraw consent")

    club.edit(said, "Leo 46 pitches 6 curves vs Summit, elbow sore")

    assert "no consent is on file" in club.heard("carmen")[0]
    assert "46" not in club.heard("carmen")[0]


def test_what_was_put_right_by_hand_comes_back_with_consent(club: Club) -> None:
    by_day(club).say("carmen", "Leo 45 pitches 6 curves vs Summit")
    with club.store.writing() as session:
        outing = session.exec(select(Outing)).one()
        outing.pitches = 48
        session.add(outing)
    club.tell_bot("carmen", "withdraw consent")
    club.say("carmen", "Leo pen 20 pitches")
    club.tell_bot("dana", "hello")  # nothing that concerns him

    tap(club, "carmen", request(club, "carmen"), "I agree after all")

    assert sorted(one.pitches or 0 for one in outings(club, "Leo Ortiz")) == [20, 48]


def test_a_line_deleted_meanwhile_does_not_come_back(club: Club) -> None:
    said = by_day(club).say("carmen", "Leo 45 pitches 6 curves vs Summit")
    club.tell_bot("carmen", "withdraw consent")
    club.say("carmen", "Leo pen 20 pitches")
    club.delete(said)

    tap(club, "carmen", request(club, "carmen"), "I agree after all")

    assert [one.pitches for one in outings(club, "Leo Ortiz")] == [20]


def test_nobody_else_may_withdraw_whatever_name_he_types(club: Club) -> None:
    by_day(club)
    for who in ("mateo", "priya", "joan", "dana"):
        club.tell_bot(who, "withdraw consent for Leo")
        assert "Only a guardian of that pitcher" in club.heard(who)[-1]

    with club.store.reading() as session:
        leo = session.exec(select(Pitcher).where(Pitcher.name == "Leo Ortiz")).one()
        assert leo.consent_on is not None


def test_a_button_that_carries_somebody_elses_child_does_nothing(club: Club) -> None:
    with club.store.writing() as session:
        leo = session.exec(select(Pitcher).where(Pitcher.name == "Leo Ortiz")).one()
        joan = find_person(session, club.ws.team_id, club.people["joan"].id)
        assert joan is not None
        with pytest.raises(ByHandError):
            say(Hand(session, joan, club.clock.now()), key(leo), ConsentAct.WITHDRAWN)


def test_pain_is_told_to_the_staff_whether_there_is_consent_or_not(club: Club) -> None:
    by_day(club).say("joan", "Ben 30 pitches, elbow hurts 5/10")

    assert any("pain" in one.lower() for one in club.in_staff_channel())


def test_a_hold_is_not_ended_by_withdrawing_and_agreeing_again(club: Club) -> None:
    by_day(club).say("carmen", "Leo 30 pitches vs Summit, elbow hurts 7/10")
    club.tell_bot("carmen", "withdraw consent")
    club.say("carmen", "Leo pen 20 pitches")

    tap(club, "carmen", request(club, "carmen"), "I agree after all")
    club.tell_bot("dana", "when can Leo pitch")

    assert "on hold" in club.heard("dana")[-1]


def test_the_staff_record_a_signature_on_paper(club: Club) -> None:
    by_day(club).say("dana", BEN, club.staff)
    told = next(m for m in club.ws.bot_messages(club.staff) if m.text.startswith("Lines about"))
    tap(club, "dana", told, "Record consent on paper")

    wrong = club.ws.submit(club.people["dana"], {"who": "Ama Abara", "on": "2027-05-01"})
    assert "on" in club.ws.errors_of(wrong)
    club.ws.submit(club.people["dana"], {"who": "Ama Abara", "on": "2026-05-03"})
    club.settle()

    assert [one.pitches for one in outings(club, "Ben Abara")] == [30]
    assert any(
        "Ama Abara agreed on paper (recorded by Dana Mercer), Sun 3 May" in one
        for one in club.in_staff_channel()
    )


def test_a_no_in_slack_is_not_undone_by_paper(club: Club) -> None:
    by_day(club).say("joan", BEN)
    tap(club, "joan", request(club, "joan"), "I do not agree")
    told = next(m for m in club.ws.bot_messages(club.staff) if m.text.startswith("Lines about"))
    tap(club, "dana", told, "Record consent on paper")
    club.ws.submit(club.people["dana"], {"who": "Ama Abara", "on": "2026-05-03"})
    club.settle()

    assert outings(club, "Ben Abara") == []


def test_deletion_says_what_it_does_asks_twice_and_leaves_nothing(club: Club) -> None:
    by_day(club).say("carmen", "Leo 45 pitches 6 curves vs Summit, elbow hurts 4/10")
    club.say("dana", "Leo 20p 2cb, Mateo 30p 3cb vs Summit", club.staff)
    club.tell_bot("carmen", "withdraw consent")
    tap(club, "carmen", request(club, "carmen"), "Delete the record…")
    assert "cannot be undone" in str(club.ws.top_view(club.people["carmen"]).content)

    club.ws.submit(club.people["carmen"])
    club.settle()
    question = club.ws.dm_messages(club.people["carmen"])[-1]
    assert "Last question" in question.text
    tap(club, "carmen", question, "Delete for good")

    assert "was deleted" in club.ws.message(question).text
    with club.store.reading() as session:
        names = session.exec(select(Pitcher.name)).all()
        texts = " ".join(session.exec(select(Line.text)).all())
        audit = str([one.model_dump() for one in session.exec(select(AuditEntry))])
        kept = session.exec(select(OutboxMessage.shown)).all()
        assert "Leo Ortiz" not in names
        assert "Leo" not in texts
        assert "Mateo" in texts
        assert "Leo" not in audit
        assert "Leo" not in str(kept)
        assert [one.pitches for one in session.exec(select(Outing))] == [30]
        assert session.exec(select(PainReport)).all() == []
        assert AuditAction.DELETED in session.exec(select(AuditEntry.action)).all()
    assert any("a pitcher's record was deleted" in one for one in club.in_staff_channel())


def test_keep_it_deletes_nothing(club: Club) -> None:
    by_day(club).tell_bot("carmen", "withdraw consent")
    tap(club, "carmen", request(club, "carmen"), "Delete the record…")
    club.ws.submit(club.people["carmen"])
    club.settle()
    tap(club, "carmen", club.ws.dm_messages(club.people["carmen"])[-1], "Keep it")

    assert "Nothing was deleted" in club.heard("carmen")[-1]
    with club.store.reading() as session:
        assert "Leo Ortiz" in session.exec(select(Pitcher.name)).all()


def test_home_after_a_withdrawal_says_what_is_stored_and_what_can_be_done(club: Club) -> None:
    by_day(club).say("carmen", "Leo 45 pitches 6 curves vs Summit")
    club.tell_bot("carmen", "withdraw consent")

    shown = home(club, "carmen")

    assert "nothing is counted and no record is shown. What was written stays stored" in shown
    assert "nothing is kept" not in shown
    assert "45" not in shown
    assert "[I agree after all] [Delete the record…]" in shown


def test_home_where_nobody_said_no_offers_no_yes_after_all(club: Club) -> None:
    by_day(club).say("joan", BEN)

    assert "[Delete the record…]" in home(club, "joan")
    assert "[I agree after all]" not in home(club, "joan")


def test_consent_given_again_counts_from_that_day_not_from_the_teams_file(club: Club) -> None:
    with club.store.writing() as session:
        leo = session.exec(select(Pitcher).where(Pitcher.name == "Leo Ortiz")).one()
        session.add(
            ConsentEvent(
                workspace_id=club.ws.team_id, pitcher_id=key(leo), act=ConsentAct.AGREED,
                way=ConsentWay.FILE, on=date(2026, 2, 20), at=club.clock.now(),
            )
        )  # fmt: skip
    by_day(club).say("carmen", "Leo 45 pitches 6 curves vs Summit")
    club.tell_bot("carmen", "withdraw consent")
    club.say("carmen", "Leo pen 20 pitches")

    tap(club, "carmen", request(club, "carmen"), "I agree after all")

    with club.store.reading() as session:
        leo = session.exec(select(Pitcher).where(Pitcher.name == "Leo Ortiz")).one()
        assert leo.consent_on == date(2026, 5, 4)
    told = [*club.in_staff_channel(), *club.heard("carmen")]
    assert any("on file since Mon 4 May" in one for one in told)
    assert not any("20 Feb" in one for one in told)
