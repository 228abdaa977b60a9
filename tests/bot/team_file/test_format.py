"""FORMAT.md and the code name the same keys and columns."""

import re
from pathlib import Path

import pytest
from pydantic import BaseModel

import bot.team_file
from bot.team_file.columns import (
    EventTable,
    RestDayTable,
    RosterRow,
    SeasonTable,
    TeamTable,
    column_names,
)
from core.model import SeasonKind
from tests.support.demo import DEMO

FORMAT = Path(bot.team_file.__file__).with_name("FORMAT.md").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("heading", "model"),
    [
        ("## The TOML file", TeamTable),
        ("## Seasons", SeasonTable),
        ("## Events", EventTable),
        ("## Rest day", RestDayTable),
        ("## The roster", RosterRow),
    ],
)
def test_the_tables_name_every_key_in_order(heading: str, model: type[BaseModel]) -> None:
    section = FORMAT.split(heading)[1].split("\n## ")[0]

    documented = re.findall(r"^\| `([^`]+)` \|", section, flags=re.MULTILINE)

    assert documented == list(column_names(model))


def test_every_kind_of_season_is_documented() -> None:
    section = FORMAT.split("## Seasons")[1].split("\n## ")[0]

    kinds = section.split("| `kind` |")[1].split("\n")[0]

    assert re.findall(r"`([^`]+)`", kinds) == [kind.value for kind in SeasonKind]


def test_the_example_has_every_table_that_a_team_can_have() -> None:
    example = (DEMO / "team.toml").read_text(encoding="utf-8")

    headers = re.findall(r"^\[.*\]$", example, flags=re.MULTILINE)

    assert set(headers) == set(re.findall(r"`(\[+teams[^`]*)`", FORMAT))
