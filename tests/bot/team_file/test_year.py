"""A team's seasons, events and rest-day words: what is written, replaced and reported."""

from datetime import date
from pathlib import Path

import pytest
from sqlmodel import Session, select

import core.rulebooks
from core.model import Season, SeasonKind, Team, TeamEvent
from core.store import Store
from tests.support.team_files import NICO, TEAM, Club, csv_of, toml_of, with_year

SPRING = {"kind": '"in season"', "from": "2026-03-02", "until": "2026-07-31"}
FALL = {"kind": '"fall"', "from": "2026-09-01", "until": "2026-10-31"}
CUP = {
    "name": '"Lake Cup"',
    "from": "2026-05-30",
    "until": "2026-05-31",
    "rule_books": '["little-league"]',
}
REST = {"hit": '"hitting is fine"', "throw": '"no  throwing "'}


@pytest.fixture
def club(tmp_path: Path, any_store: Store) -> Club:
    """The small club, on each database in turn."""
    return Club(tmp_path, any_store)


def year(session: Session) -> list[Season | TeamEvent]:
    """Every season and event, in the order in which they were written."""
    seasons = session.exec(select(Season).order_by("id")).all()
    return [*seasons, *session.exec(select(TeamEvent).order_by("id")).all()]


def test_seasons_events_and_the_coachs_words_are_written(club: Club) -> None:
    fall = FALL | {"rule_books": '["little-league"]'}

    club.load(with_year(seasons=[SPRING, fall], events=[CUP], rest_day=REST))

    with club.store.reading() as session:
        team = session.exec(select(Team)).one()
        spring, autumn = session.exec(select(Season).order_by("id")).all()
        event = session.exec(select(TeamEvent)).one()
    assert team.rest_day == {"hit": "hitting is fine", "throw": "no throwing"}
    assert (spring.kind, spring.starts_on, spring.ends_on, spring.rule_books) == (
        SeasonKind.IN_SEASON,
        date(2026, 3, 2),
        date(2026, 7, 31),
        None,
    )
    assert (autumn.team_id, autumn.rule_books) == (team.id, ["little-league"])
    assert (event.name, event.starts_on, event.ends_on, event.rule_books) == (
        "Lake Cup",
        date(2026, 5, 30),
        date(2026, 5, 31),
        ["little-league"],
    )


def test_what_a_new_team_brings_is_reported_and_a_second_load_changes_nothing(club: Club) -> None:
    text = with_year(seasons=[SPRING], events=[CUP, CUP], rest_day=REST)

    first = club.load(text)
    with club.store.reading() as session:
        before = list(map(repr, year(session)))
    again = club.load(text)

    with club.store.reading() as session:
        assert list(map(repr, year(session))) == before
    assert first.lines()[:3] == [
        "Team added: Herons",
        "  season added: in season, 2026-03-02 to 2026-07-31",
        "  event added: Lake Cup, 2026-05-30 to 2026-05-31 (little-league)",
    ]
    assert again.changes_nothing
    assert again.lines()[0] == "Team, unchanged: 1"


def test_rows_are_added_changed_and_removed_one_by_one(club: Club) -> None:
    club.load(with_year(seasons=[SPRING, FALL], events=[CUP], rest_day=REST))
    with club.store.reading() as session:
        ids = {row.ends_on: row.id for row in session.exec(select(Season))}
    off = {"kind": '"off"', "from": "2026-11-01", "until": "2027-01-31"}
    longer = FALL | {"until": "2026-10-30"}

    report = club.load(with_year(seasons=[longer, off, SPRING], rest_day={"hit": '"ask me first"'}))

    assert report.lines()[:5] == [
        "Team changed: Herons",
        "  rest day: throw: “no throwing”; hit: “hitting is fine” → hit: “ask me first”",
        "  season changed: fall, 2026-09-01 to 2026-10-31 → fall, 2026-09-01 to 2026-10-30",
        "  season added: off, 2026-11-01 to 2027-01-31",
        "  event removed: Lake Cup, 2026-05-30 to 2026-05-31 (little-league)",
    ]
    assert not report.changes_nothing
    with club.store.reading() as session:
        after = {row.ends_on: row.id for row in session.exec(select(Season))}
        assert session.exec(select(TeamEvent)).all() == []
    assert after[date(2026, 7, 31)] == ids[date(2026, 7, 31)]
    assert after[date(2026, 10, 30)] == ids[date(2026, 10, 31)]
    assert len(after) == 3


def test_a_file_without_these_tables_leaves_none(club: Club) -> None:
    club.load(with_year(seasons=[SPRING], events=[CUP], rest_day=REST))

    report = club.load(toml_of(TEAM))

    assert "  rest day: throw: “no throwing”; hit: “hitting is fine” → nothing" in report.lines()
    with club.store.reading() as session:
        assert year(session) == []
        assert session.exec(select(Team)).one().rest_day == {}


def test_another_files_team_keeps_its_year(club: Club) -> None:
    club.load(with_year(seasons=[SPRING], events=[CUP]))
    egrets = TEAM | {"key": '"b"', "name": '"Egrets"', "log_channel": '"log-2"'}

    club.load(toml_of(egrets), csv_of(NICO | {"teams": "b"}))

    with club.store.reading() as session:
        assert len(year(session)) == 2


def test_a_dry_run_leaves_the_year_alone(club: Club) -> None:
    club.load(with_year(seasons=[SPRING]))

    report = club.load(with_year(events=[CUP]), dry_run=True)

    assert "  season removed: in season, 2026-03-02 to 2026-07-31" in report.lines()
    with club.store.reading() as session:
        assert [type(row) for row in year(session)] == [Season]


def test_a_book_of_ones_own_is_kept_by_its_full_path(club: Club) -> None:
    template = Path(core.rulebooks.__file__).with_name("template.toml")
    own = club.folder / "cup.toml"
    own.write_text(template.read_text(encoding="utf-8"), encoding="utf-8")

    club.load(with_year(events=[CUP | {"rule_books": '["cup.toml"]'}]))

    with club.store.reading() as session:
        assert session.exec(select(TeamEvent)).one().rule_books == [str(own.resolve())]
