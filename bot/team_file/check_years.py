"""The rules of a team's seasons and events: days in their order, one season a day."""

from collections.abc import Iterator
from datetime import timedelta

from bot.team_file.columns import EventTable, SeasonTable
from bot.team_file.parse import ParsedFile, TeamAt
from bot.team_file.problems import Problem

#: A part of a year is no longer than one; more is a slip of the pen in `until`.
LONGEST = timedelta(days=366)


def check_years(parsed: ParsedFile) -> Iterator[Problem]:
    """Every fault of the seasons and events of all teams."""
    for team in parsed.teams:
        parts: dict[str, tuple[SeasonTable | EventTable, ...]] = {
            "seasons": team.table.seasons,
            "events": team.table.events,
        }
        for name, tables in parts.items():
            for n, table in enumerate(tables):
                if says := _wrong_days(table):
                    yield Problem(parsed.file, parsed.line(team, name, n, "until"), says)
        yield from _overlaps(parsed, team)


def _wrong_days(table: SeasonTable | EventTable) -> str | None:
    if table.ends_on < table.starts_on:
        return f"until {table.ends_on} is before from {table.starts_on}; correct one of them."
    if table.ends_on - table.starts_on >= LONGEST:
        return f"until {table.ends_on} is more than a year after from; correct the year."
    return None


def _overlaps(parsed: ParsedFile, team: TeamAt) -> Iterator[Problem]:
    """Each season that shares a day with one above it."""
    seasons = team.table.seasons
    for n, later in enumerate(seasons):
        for m, earlier in enumerate(seasons[:n]):
            if later.starts_on <= earlier.ends_on and earlier.starts_on <= later.ends_on:
                above = parsed.line(team, "seasons", m)
                says = (
                    f"the season shares days with the one on line {above} ({earlier.kind}, "
                    f"{earlier.starts_on} to {earlier.ends_on}); let each day be in one."
                )
                yield Problem(parsed.file, parsed.line(team, "seasons", n, "from"), says)
                break
