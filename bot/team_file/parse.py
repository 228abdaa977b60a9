"""From the two files to validated rows, each with the line it stands on."""

import csv
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError

from bot.team_file.columns import RosterRow, TeamTable, column_names, in_words
from bot.team_file.places import Place, line_at
from bot.team_file.problems import Problem, TeamFileError

Model = TypeVar("Model", bound=BaseModel)


@dataclass(frozen=True, slots=True)
class TeamAt:
    """A team's table, and which table of the file it is (from 0)."""

    table: TeamTable
    index: int


@dataclass(frozen=True, slots=True)
class RowAt:
    """A row of the roster and its line."""

    row: RosterRow
    line: int


@dataclass(frozen=True, slots=True)
class ParsedFile:
    """What could be read of the two files, and what could not."""

    folder: Path
    file: str
    text: str
    roster: str
    teams: tuple[TeamAt, ...]
    rows: tuple[RowAt, ...]
    #: Keys of all tables, faulty ones too, so that one mistake is not reported on every row.
    team_keys: frozenset[str]
    problems: tuple[Problem, ...]

    def team_problem(self, team: TeamAt, key: str, says: str) -> Problem:
        """A problem at one key of a team's table."""
        return Problem(self.file, self.line(team, key), says)

    def line(self, team: TeamAt, *place: str | int) -> int:
        """The line of a place under a team's table, like "seasons", 1, "from"."""
        return line_at(self.text, ("teams", team.index, *place))

    def row_problem(self, row: RowAt, says: str) -> Problem:
        """A problem of one row, named by the pitcher it is about."""
        return Problem(self.roster, row.line, f"{row.row.name}: {says}")


def parse(path: Path) -> ParsedFile:
    """Read a team file and its roster; the faults of both are in `problems`.

    Raises `TeamFileError` when a file cannot be opened or is no TOML or CSV at all.
    """
    text = _read(path)
    roster = path.parent / str(_club(text, path.name).get("roster", "roster.csv"))
    return parse_texts(text, _read(roster), path.parent, path.name, roster.name)


def parse_texts(toml: str, roster: str, folder: Path, file: str, roster_file: str) -> ParsedFile:
    """The same from the texts of the two files; rule-book files lie in `folder`."""
    club = _club(toml, file)
    problems: list[Problem] = []
    tables = _tables(club, file, problems)
    return ParsedFile(
        folder=folder,
        file=file,
        text=toml,
        roster=roster_file,
        teams=_teams(tables, toml, file, problems),
        rows=_rows(roster, roster_file, problems),
        team_keys=frozenset(str(table.get("key", "")).strip() for table in tables),
        problems=tuple(problems),
    )


def _club(text: str, file: str) -> dict[str, Any]:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as wrong:
        raise TeamFileError([Problem(file, None, f"is no TOML: {wrong}.")]) from wrong


def _read(path: Path) -> str:
    try:
        return path.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError) as wrong:
        says = f"cannot be read ({type(wrong).__name__}); check its name, save it as UTF-8."
        raise TeamFileError([Problem(path.name, None, says)]) from wrong


def _tables(club: dict[str, Any], file: str, problems: list[Problem]) -> list[dict[str, Any]]:
    for name in sorted(club.keys() - {"teams", "roster"}):
        says = f"{name} is not known here; only roster and [[teams]] are."
        problems.append(Problem(file, None, says))
    tables = club.get("teams")
    if not isinstance(tables, list) or not all(isinstance(table, dict) for table in tables):
        problems.append(Problem(file, None, "names no team; add a [[teams]] table."))
        return []
    return tables


def _teams(
    tables: list[dict[str, Any]], text: str, file: str, problems: list[Problem]
) -> tuple[TeamAt, ...]:
    teams = []
    for index, table in enumerate(tables):
        read, faults = _validate(TeamTable, table)
        for place, says in faults:
            problems.append(Problem(file, line_at(text, ("teams", index, *place)), says))
        if read is not None:
            teams.append(TeamAt(read, index))
    return tuple(teams)


def _rows(text: str, file: str, problems: list[Problem]) -> tuple[RowAt, ...]:
    reader = csv.reader(text.splitlines(keepends=True), strict=True)
    try:
        records = [(reader.line_num, record) for record in reader if any(map(str.strip, record))]
    except csv.Error as wrong:
        says = f"is no CSV: {wrong}. Save it again as “CSV, comma separated”."
        raise TeamFileError([Problem(file, reader.line_num, says)]) from wrong
    header = [_column(name) for name in records[0][1]] if records else []
    faults = _header_faults(header)
    problems += [Problem(file, 1, says) for says in faults]
    if faults:
        return ()
    rows = []
    for line, record in records[1:]:
        if len(record) != len(header):
            says = f"has {len(record)} cells, the header {len(header)}; quote a cell with a comma."
            problems.append(Problem(file, line, says))
            continue
        row, wrong_cells = _validate(RosterRow, dict(zip(header, record, strict=True)))
        problems += [Problem(file, line, says) for _, says in wrong_cells]
        if row is not None:
            rows.append(RowAt(row, line))
    return tuple(rows)


def _column(name: str) -> str:
    return " ".join(name.replace("_", " ").split()).casefold()


def _header_faults(header: list[str]) -> list[str]:
    known = column_names(RosterRow)
    unknown = [name for name in header if name not in known]
    missing = [name for name, required in known.items() if required and name not in header]
    twice = sorted({name for name in header if header.count(name) > 1})
    return (
        [f"the column “{name}” is not known; take it out or rename it." for name in unknown]
        + [f"the column “{name}” is missing; add it." for name in missing]
        + [f"the column “{name}” stands twice; take one out." for name in twice]
    )


def _validate(
    model: type[Model], values: Mapping[str, Any]
) -> tuple[Model | None, list[tuple[Place, str]]]:
    """The validated row, or the faults as pairs of (place, what to change)."""
    try:
        return model.model_validate(values), []
    except ValidationError as wrong:
        errors = wrong.errors(include_url=False)
        return None, [(error["loc"], in_words(dict(error))) for error in errors]
