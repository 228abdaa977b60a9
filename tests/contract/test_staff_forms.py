"""The forms of thresholds and of a clearance: who may, what is refused, what is kept."""

from datetime import timedelta

import pytest
from sqlmodel import select

from core.alerts import THRESHOLDS
from core.model import AuditEntry, Clearance, ThresholdSetting
from tests.contract.test_forms import pitcher_id
from tests.support.club import Club
from tests.support.phone import fill, form, is_open
from tests.support.taps import answer_to, labels, tap


def open_thresholds(club: Club, asked: str = "thresholds", who: str = "dana") -> None:
    club.tell_bot(who, asked)
    tap(club, who, answer_to(club, who), "All thresholds")


def settings(club: Club) -> list[tuple[str, int | None, bool]]:
    with club.store.reading() as session:
        rows = session.exec(select(ThresholdSetting)).all()
    return [(row.key, row.value, row.is_default) for row in rows]


def test_every_threshold_stands_in_the_form_with_value_default_and_meaning(club: Club) -> None:
    open_thresholds(club)

    shown = form(club, "dana")
    assert shown.startswith("Thresholds\n*The whole team (Herons).* A whole number,")
    assert "Mix (%): 20" in shown
    assert "Low mix (%): off" in shown
    blocks = club.ws.top_view(club.people["dana"]).content["blocks"][1:]
    assert len(blocks) == len(THRESHOLDS)
    hints = [block["hint"]["text"] for block in blocks]
    assert all(row.meaning in hint for row, hint in zip(THRESHOLDS, hints, strict=True))
    assert hints[0].startswith("Default: 20 %. 5 to 60, or off. Breaking balls are more than")


def test_what_was_changed_is_saved_and_confirmed_in_one_message(club: Club) -> None:
    open_thresholds(club, "thresholds for Mateo")
    assert "*Mateo Cruz.*" in form(club, "dana")
    before = len(club.heard("dana"))

    assert fill(club, "dana", mix="18", changeup="off", week_pitches="90") == {}

    assert not is_open(club, "dana")
    (answer,) = club.heard("dana")[before:]
    assert [one.split(" (before")[0] for one in answer.split("\n\n")] == [
        "Set for Mateo Cruz: mix 18 %",
        "Set for Mateo Cruz: changeup off",
        "Set for Mateo Cruz: week pitches 90 in 7 days",
    ]
    assert settings(club) == [
        ("mix", 18, False), ("changeup", None, False), ("week pitches", 90, False),
    ]  # fmt: skip
    with club.store.reading() as session:
        rows = session.exec(select(AuditEntry).where(AuditEntry.subject == "thresholdsetting"))
        assert len(rows.all()) == 3
    assert labels(answer_to(club, "dana")) == ["Undo"]


def test_an_emptied_field_is_the_default_again(club: Club) -> None:
    club.tell_bot("dana", "set mix 30%")
    open_thresholds(club)

    fill(club, "dana", mix="")

    assert settings(club)[-1] == ("mix", None, True)
    assert "Set for the team: mix 20 % (before: 30 %;" in club.heard("dana")[-1]


def test_nothing_changed_saves_nothing_and_says_nothing(club: Club) -> None:
    open_thresholds(club)
    before = len(club.heard("dana"))

    assert fill(club, "dana") == {}

    assert settings(club) == []
    assert len(club.heard("dana")) == before


def test_what_another_coach_changed_meanwhile_stays(club: Club) -> None:
    open_thresholds(club)
    club.say("dana", "set changeup 12%", club.staff)

    fill(club, "dana", mix="25")

    assert [row[:2] for row in settings(club)] == [("changeup", 12), ("mix", 25)]


@pytest.mark.parametrize(
    ("field", "typed", "words"),
    [
        ("mix", "0", "A whole number from 5 to 60 (%), “off” or “default”, not “0”."),
        ("mix", "120 %", "not “120 %”."),
        ("mix", "soon", "not “soon”."),
        ("mix", "18.5", "not “18.5”."),
        ("mix", "-20", "not “-20”."),
        ("pain", "off", "A whole number from 1 to 3 (of 10) or “default”, not “off”."),
    ],
)
def test_a_value_that_cannot_be_is_refused_at_its_field_and_nothing_is_saved(
    club: Club, field: str, typed: str, words: str
) -> None:
    open_thresholds(club)

    wrong = fill(club, "dana", **{field: typed, "changeup": "10"})

    assert list(wrong) == [field]
    assert words in wrong[field]
    assert settings(club) == []
    assert is_open(club, "dana")


def test_all_wrong_fields_are_named_at_once(club: Club) -> None:
    open_thresholds(club)

    assert set(fill(club, "dana", mix="soon", months="13", changeup="10")) == {"mix", "months"}


def test_only_the_staff_get_the_list_and_its_button(club: Club) -> None:
    for who in ("mateo", "elena", "priya"):
        club.tell_bot(who, "thresholds")
        assert labels(answer_to(club, who)) == []


def hold(club: Club) -> None:
    """Mateo's arm is put on hold on Saturday; it is Monday."""
    club.say("mateo", "elbow pain 5/10")
    club.clock.advance(timedelta(days=2))


def open_clearance(club: Club, who: str = "elena") -> None:
    tap(club, who, answer_to(club, who), "Record a clearance")


def test_a_guardian_records_a_clearance_by_the_button_under_the_notice(club: Club) -> None:
    hold(club)
    open_clearance(club)
    assert "Who: Mateo Cruz" in form(club, "elena")
    assert "This ends a hold." in form(club, "elena")

    wrong = fill(
        club, "elena", clinician="Dr. Reyes", limits="no breaking balls until 6/1\n30 throws"
    )

    assert wrong == {}
    assert club.heard("elena")[-1].startswith(
        "*On record for Mateo Cruz:* clearance by Dr. Reyes, Mon 4 May; limits: no breaking balls "
        "until Mon 1 Jun and at most 30 throws a day."
    )
    assert any("*On record for Mateo Cruz:*" in one for one in club.in_staff_channel())


def test_the_staff_find_the_button_under_the_report_in_their_channel(club: Club) -> None:
    hold(club)
    (report,) = club.ws.bot_messages(club.staff)

    tap(club, "dana", report, "Record a clearance")
    fill(club, "dana", clinician="Dr. Reyes")

    with club.store.reading() as session:
        assert [row.clinician for row in session.exec(select(Clearance))] == ["Dr. Reyes"]


@pytest.mark.parametrize(
    ("filled", "field", "words"),
    [
        ({"clinician": "Dr."}, "clinician", "the clinician's own name"),
        ({"clinician": "his mom"}, "clinician", "the clinician's own name"),
        ({"clinician": "Dr. Reyes, no limits"}, "clinician", "the clinician's own name"),
        ({"cleared_on": "2026-05-05"}, "cleared_on", "today or earlier"),
        ({"cleared_on": "2026-05-01"}, "cleared_on", "must come after it"),
        ({"limits": "take it easy"}, "limits", "I cannot keep this as a limit"),
        ({"limits": "no games until the moon is full"}, "limits", "I cannot keep this"),
    ],
)
def test_what_cannot_be_is_refused_at_its_field_and_the_hold_stands(
    club: Club, filled: dict[str, str], field: str, words: str
) -> None:
    hold(club)
    open_clearance(club)

    wrong = fill(club, "elena", **{"clinician": "Dr. Reyes", **filled})

    assert list(wrong) == [field]
    assert words in wrong[field]
    with club.store.reading() as session:
        assert session.exec(select(Clearance)).all() == []


def test_a_form_that_a_minor_forges_is_refused(club: Club) -> None:
    hold(club)
    (report,) = club.ws.bot_messages(club.staff)
    club.ws.join(club.people["mateo"], club.staff)

    tap(club, "mateo", report, "Record a clearance")

    assert "Only a coach or a guardian of that pitcher" in form(club, "mateo")
    with club.store.reading() as session:
        assert session.exec(select(Clearance)).all() == []


def test_another_family_cannot_choose_him(club: Club) -> None:
    hold(club)
    open_clearance(club)
    with pytest.raises(LookupError):
        pitcher_id(club, "Leo Ortiz")
