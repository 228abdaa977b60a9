"""FORMAT.md and the code name the same keys and columns."""

import re
from pathlib import Path

import pytest
from pydantic import BaseModel

import bot.team_file
from bot.team_file.columns import RosterRow, TeamTable, column_names

FORMAT = Path(bot.team_file.__file__).with_name("FORMAT.md").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("heading", "model"), [("## The TOML file", TeamTable), ("## The roster", RosterRow)]
)
def test_the_tables_name_every_key_in_order(heading: str, model: type[BaseModel]) -> None:
    section = FORMAT.split(heading)[1].split("\n## ")[0]

    documented = re.findall(r"^\| `([^`]+)` \|", section, flags=re.MULTILINE)

    assert documented == list(column_names(model))
