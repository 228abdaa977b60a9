"""Soreness (no pain): it stands, it lapses after 14 days without a word, a coach may end it."""

from datetime import timedelta

import pytest
from sqlmodel import select

from core.model import AuditEntry
from tests.support.club import Club
from tests.support.hours import skip_to, start
from tests.support.phone import fill, form
from tests.support.taps import answer_to, labels, tap

GONE = "Gone, says the family"


def _days(club: Club, number: int) -> None:
    skip_to(club, club.clock.now() + timedelta(days=number))


def _asked(club: Club) -> str:
    club.tell_bot("mateo", "can i throw today")
    return club.heard("mateo")[-1]


def _lapsed(club: Club) -> list[AuditEntry]:
    with club.store.reading() as session:
        rows = session.exec(select(AuditEntry).where(AuditEntry.subject == "painreport")).all()
    return [row for row in rows if row.after.get("ended")]


def test_soreness_stands_for_14_days_and_then_lapses_with_a_line_in_the_audit(club: Club) -> None:
    start(club)
    club.tell_bot("mateo", "shoulder a bit sore")

    _days(club, 14)
    assert _asked(club).startswith("Soreness was reported on Sat 2 May, so no answer here says")
    assert _lapsed(club) == []
    _days(club, 1)

    assert _asked(club).startswith("Rest done")
    (entry,) = _lapsed(club)
    assert entry.after == {"stands": False, "ended": "no further report within 14 days"}
    assert entry.by_slack_id == ""
    assert "That says nothing of how the arm is: please ask." in club.heard("elena")[-1]
    _days(club, 2)
    assert len(_lapsed(club)) == 1


def test_not_yet_puts_off_when_soreness_lapses(club: Club) -> None:
    start(club)
    club.tell_bot("mateo", "shoulder a bit sore")
    _days(club, 7)
    tap(club, "elena", answer_to(club, "elena"), "No, not yet")
    assert "soreness is not gone yet" in club.heard("elena")[-1]

    _days(club, 9)
    assert _asked(club).startswith("Soreness was reported")
    _days(club, 6)
    assert _asked(club).startswith("Rest done")


@pytest.mark.parametrize("text", ["elbow hurts 2/10", "shoulder sore, elbow sore"])
def test_pain_never_lapses(club: Club, text: str) -> None:
    start(club)
    club.tell_bot("mateo", text)

    _days(club, 40)

    assert _asked(club).startswith("Pain was reported on Sat 2 May")
    assert _lapsed(club) == []


def test_a_second_report_within_14_days_is_pain(club: Club) -> None:
    start(club)
    club.tell_bot("mateo", "shoulder a bit sore")
    _days(club, 10)
    club.tell_bot("mateo", "shoulder a bit sore")

    _days(club, 30)

    assert _asked(club).startswith("Pain was reported on")


def test_beside_counts_soreness_is_called_soreness(club: Club) -> None:
    club.tell_bot("mateo", "shoulder a bit sore")
    club.tell_bot("mateo", "62p 11cb vs Summit no pain")

    told = club.heard("mateo")[-1]
    assert "The soreness comes first: no date while it stands." in told
    assert "The soreness of Mateo Cruz stays on record until a parent or guardian" in told
    assert "Rest done" not in told
    assert "Earliest" not in told


def test_a_coach_writes_down_what_the_family_said_and_the_family_reads_it(club: Club) -> None:
    club.tell_bot("mateo", "shoulder a bit sore")
    report = club.ws.bot_messages(club.staff)[-1]
    assert labels(report) == [GONE, "Write to the family"]

    tap(club, "dana", report, GONE)
    assert "Who says so: Elena Cruz" in form(club, "dana")
    fill(club, "dana")

    said = (
        "Dana Mercer recorded that Elena Cruz says Mateo Cruz's soreness is gone. It no longer "
        "stands against throwing. If that is not so, write me what hurts: it counts at once."
    )
    assert said in club.in_staff_channel()
    assert club.heard("elena") == [said]
    assert _asked(club).startswith("Rest done")


def test_of_pain_a_coach_writes_nothing_down(club: Club) -> None:
    club.tell_bot("mateo", "shoulder a bit sore")
    report = club.ws.bot_messages(club.staff)[-1]
    club.tell_bot("mateo", "elbow hurts 2/10")

    tap(club, "dana", report, GONE)

    assert "Nothing was changed: the soreness stands no longer, or it is pain" in form(club, "dana")
    assert GONE not in labels(club.ws.bot_messages(club.staff)[-1])
    assert _asked(club).startswith("Pain was reported")


def test_a_minor_without_a_guardian_cannot_say_it_through_a_coach(club: Club) -> None:
    club.tell_bot("sam_r", "shoulder a bit sore")

    tap(club, "dana", club.ws.bot_messages(club.staff)[-1], GONE)

    assert "No guardian of Sam Ruiz is on file" in form(club, "dana")
