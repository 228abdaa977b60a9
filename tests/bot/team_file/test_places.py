"""The line of a key, in whatever form of TOML the tables are written."""

import tomllib

import pytest

from bot.team_file.places import line_at

TABLES = """\
roster = "roster.csv"

[[teams]]
key = "a"

[[teams.seasons]]
kind = "fall"
[[ teams . seasons ]]
kind = "off"
[teams.rest_day]
hit = "yes"

[[teams]]
name = "Egrets"
[[teams.events]]
name = "Cup"
[[teams.seasons]]
rule_books = ["x"]
"""
INLINE = """\
[[teams]]
key = "a"
rest_day = { hit = "yes" }
seasons = [
  { kind = "fall" },
  { kind = "off" },
]
"""


@pytest.mark.parametrize(
    ("text", "place", "line"),
    [
        (TABLES, ("roster",), 1),
        (TABLES, ("teams", 0, "key"), 4),
        (TABLES, ("teams", 0, "seasons", 0, "kind"), 7),
        (TABLES, ("teams", 0, "seasons", 1, "kind"), 9),
        (TABLES, ("teams", 0, "rest_day", "hit"), 11),
        (TABLES, ("teams", 1, "name"), 14),
        (TABLES, ("teams", 1, "events", 0, "name"), 16),
        (TABLES, ("teams", 1, "seasons", 0, "rule_books"), 18),
        (INLINE, ("teams", 0, "rest_day", "hit"), 3),
        (INLINE, ("teams", 0, "seasons", 1, "kind"), 6),
    ],
)
def test_a_key_is_found_in_its_own_table(
    text: str, place: tuple[str | int, ...], line: int
) -> None:
    tomllib.loads(text)

    found = line_at(text, place)

    assert found == line


@pytest.mark.parametrize(
    ("place", "line"),
    [
        (("teams", 0, "name"), 3),  # a later team has one, this team does not
        (("teams", 1, "rule_books"), 13),  # its season has one, the team does not
        (("teams", 0, "seasons", 1, "from"), 8),
        (("teams", 1, "rest_day", "hit"), 13),
    ],
)
def test_a_missing_key_is_reported_at_its_tables_header(
    place: tuple[str | int, ...], line: int
) -> None:
    assert line_at(TABLES, place) == line
