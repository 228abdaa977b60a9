"""Consent in the team file: a date is an event of its own, and what was said stands above it."""

from datetime import UTC, date, datetime

from sqlmodel import select

from core.consent.saying import say
from core.ledger.by_hand import Hand
from core.model import ConsentAct, ConsentEvent, Person, Pitcher, key
from tests.support.team_files import LEE, TEAM, Club, csv_of, toml_of

NOW = datetime(2026, 5, 2, 20, 0, tzinfo=UTC)
DATED = csv_of(LEE | {"consent date": "2026-02-01"})
UNDATED = csv_of(LEE | {"consent date": ""})


def lee(club: Club) -> Pitcher:
    with club.store.reading() as session:
        return session.exec(select(Pitcher).where(Pitcher.name == "Lee Hart")).one()


def guardian_says(club: Club, act: ConsentAct) -> None:
    with club.store.writing() as session:
        bo = session.exec(select(Person).where(Person.name.like("Bo%"))).one()  # type: ignore[attr-defined]
        say(Hand(session, bo, NOW), key(lee(club)), act)


def test_a_date_is_kept_as_an_event_and_taking_it_out_ends_it(club: Club) -> None:
    club.load(toml_of(TEAM), DATED)
    assert lee(club).consent_on == date(2026, 2, 1)

    club.load(toml_of(TEAM), UNDATED)

    assert lee(club).consent_on is None
    with club.store.reading() as session:
        acts = [(one.act, one.way) for one in session.exec(select(ConsentEvent))]
    assert acts == [("agreed", "file"), ("withdrawn", "file")]


def test_a_guardian_with_an_account_is_asked_once_it_is_loaded(club: Club) -> None:
    report = club.load(toml_of(TEAM), UNDATED)

    assert [one.slot.split("/")[0] for one in report.notices] == ["consent"]


def test_a_files_date_does_not_undo_a_withdrawal_in_slack(club: Club) -> None:
    club.load(toml_of(TEAM), DATED)
    guardian_says(club, ConsentAct.WITHDRAWN)

    report = club.load(toml_of(TEAM), DATED)

    assert lee(club).consent_on is None
    assert any("consent was said in Slack" in line for line in report.lines())


def test_an_empty_cell_does_not_end_consent_given_in_slack(club: Club) -> None:
    club.load(toml_of(TEAM), UNDATED)
    guardian_says(club, ConsentAct.AGREED)

    report = club.load(toml_of(TEAM), UNDATED)

    assert lee(club).consent_on == date(2026, 5, 2)
    assert report.changes_nothing
