"""A small club on paper: a directory, a team file and a roster that tests change and load."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, time
from pathlib import Path

import pytest
from sqlmodel import Session

from bot.team_file import (
    ListedDirectory,
    LoadReport,
    SlackChannel,
    SlackPerson,
    TeamFileError,
    load_team_file,
)
from core.store import Store

TODAY = date(2026, 5, 4)
BOOKS = ("pitch-smart", "little-league")
WORKSPACE = "T1"

PEOPLE = (
    SlackPerson("UCOACH", "Rae Coach", "rae"),
    SlackPerson("UASSIST", "Al Assist", "al"),
    SlackPerson("USCORE", "Vi Score", "vi"),
    SlackPerson("UNICO", "Nico Vale", "nico"),
    SlackPerson("UJUNE", "June Vale", "june"),
    SlackPerson("UBO", "Bo Hart", "bo"),
    SlackPerson("USAM1", "Sam Twice", "sam1"),
    SlackPerson("USAM2", "Sam Twice", "sam2"),
)
CHANNELS = (
    SlackChannel("CLOG", "log", private=False, joined=True),
    SlackChannel("CLOG2", "log-2", private=False, joined=False),
    SlackChannel("CSTAFF", "staff", private=True, joined=True),
    SlackChannel("COPEN", "open-staff", private=False, joined=True),
)
TEAM = {
    "key": '"a"',
    "name": '"Herons"',
    "time_zone": '"America/Chicago"',
    "log_channel": '"#log"',
    "staff_channel": '"staff"',
    "rule_books": '["pitch-smart"]',
    "coaches": '["@rae"]',
}
NICO = {
    "name": "Nico Vale",
    "teams": "a",
    "birth date": "2009-02-03",
    "throws": "R",
    "breaking pitch": "curveball",
    "consent date": "2026-02-01",
    "account": "@nico",
    "guardians": "June Vale",
    "who calls pitches": "pitcher",
    "also called": "",
}
LEE = NICO | {
    "name": "Lee Hart",
    "birth date": "2012-06-01",
    "account": "",
    "guardians": "@bo;Old Hart (no account)",
}


def toml_of(*teams: Mapping[str, str]) -> str:
    """A team file with these tables."""
    return "".join(
        "[[teams]]\n" + "".join(f"{key} = {value}\n" for key, value in team.items())
        for team in teams
    )


def with_year(
    team: Mapping[str, str] = TEAM,
    *,
    seasons: Sequence[Mapping[str, str]] = (),
    events: Sequence[Mapping[str, str]] = (),
    rest_day: Mapping[str, str] | None = None,
) -> str:
    """A team file with one team and the tables below it, in this order."""
    tables = [("[[teams.seasons]]", one) for one in seasons]
    tables += [("[[teams.events]]", one) for one in events]
    tables += [("[teams.rest_day]", rest_day)] if rest_day is not None else []
    parts = [
        f"{header}\n" + "".join(f"{key} = {value}\n" for key, value in table.items())
        for header, table in tables
    ]
    return toml_of(team) + "".join(parts)


def csv_of(*rows: Mapping[str, str]) -> str:
    """A roster with these rows; the first one's keys are the header."""
    header = ",".join(rows[0])
    return "\n".join([header, *(",".join(row.values()) for row in rows)]) + "\n"


@dataclass
class Club:
    """A folder with the two files, a database, and what loading them says."""

    folder: Path
    store: Store
    directory: ListedDirectory = field(default_factory=lambda: ListedDirectory(PEOPLE, CHANNELS))

    def write(self, toml: str | None = None, roster: str | None = None) -> Path:
        """Write both files; what is not given is the small club as it is."""
        text = toml_of(TEAM) if toml is None else toml
        (self.folder / "team.toml").write_text(text, encoding="utf-8")
        rows = csv_of(NICO, LEE) if roster is None else roster
        (self.folder / "roster.csv").write_text(rows, encoding="utf-8")
        return self.folder / "team.toml"

    def load(
        self, toml: str | None = None, roster: str | None = None, *, dry_run: bool = False
    ) -> LoadReport:
        """Write the files and load them, in one transaction of its own."""
        path = self.write(toml, roster)
        with self.store.writing() as session:
            return self.load_in(session, path, dry_run=dry_run)

    def load_in(self, session: Session, path: Path, *, dry_run: bool = False) -> LoadReport:
        """Load a file in a session that is open."""
        return load_team_file(
            path,
            self.directory,
            session,
            WORKSPACE,
            known_books=BOOKS,
            now=datetime.combine(TODAY, time(12), UTC),
            dry_run=dry_run,
        )

    def problems(self, toml: str | None = None, roster: str | None = None) -> list[str]:
        """What is wrong with the files; fails when nothing is."""
        with pytest.raises(TeamFileError) as caught:
            self.load(toml, roster)
        return [str(problem) for problem in caught.value.problems]


@pytest.fixture
def club(tmp_path: Path, store: Store) -> Club:
    """The small club, on an empty SQLite database."""
    return Club(tmp_path, store)
