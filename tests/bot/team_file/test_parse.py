"""Faults of form: reported by file and line, in words that say what to change."""

import pytest

from tests.support.team_files import LEE, NICO, TEAM, Club, csv_of, toml_of


def test_every_fault_of_both_files_is_reported_at_once(club: Club) -> None:
    toml = toml_of(TEAM | {"time_zone": '"Chicago"', "account_age": "15"})
    roster = csv_of(NICO, LEE | {"birth date": "6/1/2012", "throws": "both"})

    said = club.problems(toml, roster)

    assert said == [
        "roster.csv, line 3: birth date “6/1/2012” is no date that can be read one way only; "
        "write year-month-day, like 2012-06-01.",
        "roster.csv, line 3: throws “both” is not known; write r, l, right or left.",
        "team.toml, line 4: time_zone “Chicago” is no IANA time zone; write one like "
        "America/Chicago (Area/City).",
        "team.toml, line 9: account_age is 15; write 16 to 18. Slack's terms do not allow "
        "accounts under 16; a club may only ask for more.",
    ]


def test_an_unknown_key_is_refused_where_it_stands(club: Club) -> None:
    said = club.problems(toml_of(TEAM | {"coach": '["@rae"]'}))

    assert said == [
        "team.toml, line 9: coach is not known here; take it out or correct its spelling."
    ]


def test_a_team_without_a_coach_is_refused(club: Club) -> None:
    nobody = club.problems(toml_of(TEAM | {"coaches": "[]"}))
    not_said = club.problems(toml_of({key: TEAM[key] for key in TEAM if key != "coaches"}))

    assert nobody == ["team.toml, line 8: coaches is empty; name at least one."]
    assert not_said == ["team.toml, line 1: coaches is missing; add it."]


def test_one_name_in_place_of_a_list_is_refused(club: Club) -> None:
    said = club.problems(toml_of(TEAM | {"coaches": '"@rae"'}))

    assert said == ['team.toml, line 8: coaches must be a list, like ["@rae"].']


@pytest.mark.parametrize("age", ["16", "17", "18"])
def test_a_club_may_ask_for_a_higher_account_age(club: Club, age: str) -> None:
    of_age = csv_of(NICO | {"birth date": "2008-01-01"})

    report = club.load(toml_of(TEAM | {"account_age": age}), of_age)

    assert report.plan.teams[0].wanted.values["account_age"] == int(age)


@pytest.mark.parametrize("age", ["15", "19", "true", '"16"', "16.5"])
def test_no_other_account_age_is_taken(club: Club, age: str) -> None:
    said = club.problems(toml_of(TEAM | {"account_age": age}))

    assert len(said) == 1
    assert "write 16 to 18" in said[0]


def test_unknown_and_missing_columns_are_named(club: Club) -> None:
    said = club.problems(roster="Name,Teams,Birth_Date,throws,jersey\nNico,a,2009-02-03,R,7\n")

    assert said[0] == (
        "roster.csv, line 1: the column “jersey” is not known; take it out or rename it."
    )
    assert said[1] == "roster.csv, line 1: the column “breaking pitch” is missing; add it."
    assert not any("birth date" in line for line in said)


def test_a_row_with_too_many_cells_is_refused(club: Club) -> None:
    said = club.problems(roster=csv_of(NICO).rstrip() + ",,\n")

    assert said == ["roster.csv, line 2: has 12 cells, the header 10; quote a cell with a comma."]


def test_a_spreadsheets_byte_order_mark_and_blank_rows_do_no_harm(club: Club) -> None:
    report = club.load(roster="\ufeff" + csv_of(NICO) + ",,,,,,,,,\n\n")

    assert [row.wanted.name for row in report.plan.pitchers] == ["Nico Vale"]


def test_a_file_that_is_not_there_or_no_toml_is_an_error_with_its_name(club: Club) -> None:
    broken = club.problems("teams = [")
    no_team = club.problems("")
    no_roster = club.problems('roster = "gone.csv"\n' + toml_of(TEAM))

    assert broken[0].startswith("team.toml: is no TOML: ")
    assert no_team == ["team.toml: names no team; add a [[teams]] table."]
    assert no_roster == [
        "gone.csv: cannot be read (FileNotFoundError); check its name, save it as UTF-8."
    ]
