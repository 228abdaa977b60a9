"""Loading: what is written, what is changed in place, and what is never touched."""

from datetime import date
from pathlib import Path

import pytest
from sqlmodel import Session, select

from core.model import GuardianLink, Membership, Person, Pitcher, PitcherTeam, Role, Team
from core.store import Store
from tests.support.team_files import LEE, NICO, TEAM, Club, csv_of, toml_of

STAFFED = TEAM | {"assistants": '["Al Assist"]', "scorekeepers": '["USCORE"]'}


@pytest.fixture
def club(tmp_path: Path, any_store: Store) -> Club:
    """The small club, on each database in turn."""
    return Club(tmp_path, any_store)


def everything(session: Session) -> list[str]:
    """Every row of the tables that loading writes, as text."""
    tables = (Team, Person, Membership, Pitcher, PitcherTeam, GuardianLink)
    return sorted(repr(row) for table in tables for row in session.exec(select(table)))


def test_a_team_is_written_with_its_people_and_their_parts(club: Club) -> None:
    club.load(toml_of(STAFFED))

    with club.store.reading() as session:
        team = session.exec(select(Team)).one()
        roles = [
            (held.role, session.get_one(Person, held.person_id).slack_id)
            for held in session.exec(select(Membership).order_by(Membership.role))
        ]
        nico = session.exec(select(Pitcher).where(Pitcher.name == "Nico Vale")).one()
        own = session.get_one(Person, nico.person_id)
    assert (team.log_channel, team.staff_channel) == ("CLOG", "CSTAFF")
    assert (team.account_age, team.rule_books) == (16, ["pitch-smart"])
    assert roles == [
        (Role.ASSISTANT, "UASSIST"),
        (Role.COACH, "UCOACH"),
        (Role.SCOREKEEPER, "USCORE"),
    ]
    assert (nico.birth_date, nico.throws, own.slack_id) == (date(2009, 2, 3), "R", "UNICO")


def test_a_guardian_without_an_account_is_on_file_by_name(club: Club) -> None:
    club.load()

    with club.store.reading() as session:
        found = [
            (
                session.get_one(Person, link.person_id).name,
                session.get_one(Person, link.person_id).slack_id,
                session.get_one(Pitcher, link.pitcher_id).name,
            )
            for link in session.exec(select(GuardianLink))
        ]
    assert sorted(found) == [
        ("Bo Hart", "UBO", "Lee Hart"),
        ("June Vale", "UJUNE", "Nico Vale"),
        ("Old Hart", None, "Lee Hart"),
    ]


def test_loading_twice_changes_nothing(club: Club) -> None:
    club.load(toml_of(STAFFED))
    with club.store.reading() as session:
        before = everything(session)

    again = club.load(toml_of(STAFFED))

    with club.store.reading() as session:
        assert everything(session) == before
    assert again.changes_nothing
    assert again.lines() == ["Team, unchanged: 1", "Pitcher, unchanged: 2", "Person, unchanged: 7"]


def test_a_dry_run_says_what_would_change_and_writes_nothing(club: Club) -> None:
    report = club.load(dry_run=True)

    with club.store.reading() as session:
        assert everything(session) == []
    assert report.lines() == [
        "Dry run: nothing was written.",
        "Team added: Herons",
        "Pitcher added: Nico Vale",
        "Pitcher added: Lee Hart",
        "Person added: Rae Coach",
        "Person added: Nico Vale",
        "Person added: June Vale",
        "Person added: Bo Hart",
        "Person added: Old Hart",
    ]


def test_nothing_is_written_when_anything_is_wrong(club: Club) -> None:
    club.problems(roster=csv_of(NICO, LEE | {"throws": ""}))

    with club.store.reading() as session:
        assert everything(session) == []


def test_a_changed_row_is_changed_in_place_and_reported_by_field(club: Club) -> None:
    club.load(toml_of(STAFFED))
    with club.store.reading() as session:
        ids = {pitcher.id for pitcher in session.exec(select(Pitcher))}

    report = club.load(
        toml_of(TEAM | {"name": '"Egrets"', "assistants": '["@bo"]'}),
        csv_of(NICO | {"name": "Nicolas Vale", "also called": "Nico"}, LEE | {"throws": "L"}),
    )

    assert report.lines()[:12] == [
        "Team changed: Egrets",
        "  name: Herons → Egrets",
        "  assistant: + Bo Hart, - Al Assist",
        "  scorekeeper: - Vi Score",
        "Pitcher changed: Nicolas Vale",
        "  name: Nico Vale → Nicolas Vale",
        "  also called: nothing → Nico",
        "Pitcher changed: Lee Hart",
        "  throws: R → L",
        "Person, unchanged: 5",
    ]
    with club.store.reading() as session:
        after = {pitcher.id for pitcher in session.exec(select(Pitcher))}
        people = session.exec(select(Person.name)).all()
    assert after == ids
    assert "Vi Score" in people


def test_a_corrected_birth_date_stays_the_same_pitcher(club: Club) -> None:
    club.load()

    report = club.load(roster=csv_of(NICO, LEE | {"birth date": "2012-06-10"}))

    assert "  birth date: 2012-06-01 → 2012-06-10" in report.lines()
    with club.store.reading() as session:
        assert len(session.exec(select(Pitcher)).all()) == 2


def test_a_namesake_of_another_family_is_another_pitcher(club: Club) -> None:
    club.load()

    namesake = LEE | {"birth date": "2012-07-07", "guardians": "@june"}
    club.load(roster=csv_of(NICO, LEE, namesake))

    with club.store.reading() as session:
        lees = session.exec(select(Pitcher).where(Pitcher.name == "Lee Hart")).all()
    assert sorted(lee.birth_date for lee in lees) == [date(2012, 6, 1), date(2012, 7, 7)]


def test_whoever_is_no_longer_in_the_file_is_reported_and_kept(club: Club) -> None:
    club.load()

    report = club.load(roster=csv_of(NICO))

    assert "On file, no longer in the roster, kept as they are: Lee Hart" in report.lines()
    with club.store.reading() as session:
        assert len(session.exec(select(PitcherTeam)).all()) == 2


def test_an_empty_teams_cell_takes_a_pitcher_off_and_keeps_the_record(club: Club) -> None:
    club.load()

    report = club.load(roster=csv_of(NICO, LEE | {"teams": ""}))

    assert "  teams: - Herons" in report.lines()
    with club.store.reading() as session:
        assert len(session.exec(select(PitcherTeam)).all()) == 1
        assert len(session.exec(select(Pitcher)).all()) == 2


def test_a_guardian_who_gets_an_account_is_the_same_person(club: Club) -> None:
    club.load(roster=csv_of(NICO | {"guardians": "June Vale (no account)"}))

    report = club.load(roster=csv_of(NICO))

    assert report.lines()[-3:] == [
        "Person changed: June Vale",
        "  Slack id: nothing → UJUNE",
        "Person, unchanged: 2",
    ]
    with club.store.reading() as session:
        assert len(session.exec(select(Person)).all()) == 3
        assert len(session.exec(select(GuardianLink)).all()) == 1


def test_a_namesake_with_an_account_gets_nothing_of_the_guardian_without_one(club: Club) -> None:
    club.load(roster=csv_of(NICO, LEE | {"guardians": "June Vale (no account)"}))

    with club.store.reading() as session:
        junes = session.exec(select(Person).where(Person.name == "June Vale")).all()
        links = session.exec(select(GuardianLink)).all()
    assert sorted(june.slack_id or "" for june in junes) == ["", "UJUNE"]
    assert len({link.person_id for link in links}) == 2


def test_an_account_does_not_take_over_a_namesake_of_another_child(club: Club) -> None:
    club.load(roster=csv_of(LEE | {"guardians": "June Vale (no account)"}))

    club.load(roster=csv_of(NICO))

    with club.store.reading() as session:
        june = session.exec(select(Person).where(Person.slack_id == "UJUNE")).one()
        links = session.exec(select(GuardianLink).where(GuardianLink.person_id == june.id)).all()
        names = [session.get_one(Pitcher, link.pitcher_id).name for link in links]
    assert names == ["Nico Vale"]


def test_a_second_file_leaves_the_first_files_team_alone(club: Club) -> None:
    club.load()
    egrets = TEAM | {"key": '"b"', "name": '"Egrets"', "log_channel": '"log-2"'}

    report = club.load(toml_of(egrets), csv_of(NICO | {"teams": "b"}))

    with club.store.reading() as session:
        nico = session.exec(select(Pitcher).where(Pitcher.name == "Nico Vale")).one()
        held = session.exec(select(PitcherTeam).where(PitcherTeam.pitcher_id == nico.id)).all()
        places = [session.get_one(Team, place.team_id).name for place in held]
    assert sorted(places) == ["Egrets", "Herons"]
    assert report.plan.missing == ()


def test_an_account_of_one_pitcher_with_the_name_of_another_is_refused(club: Club) -> None:
    club.load()

    said = club.problems(roster=csv_of(LEE | {"account": "@nico", "birth date": "2012-06-01"}))
    older = LEE | {"birth date": "2009-06-01"}
    club.load(roster=csv_of(NICO, older))
    mixed = club.problems(roster=csv_of(older | {"account": "@nico"}))

    assert "is 13 and may not have an account" in said[0]
    assert mixed == [
        "team.toml: Lee Hart: the account belongs to one pitcher on file, the name and birth "
        "date to another; correct the row."
    ]
