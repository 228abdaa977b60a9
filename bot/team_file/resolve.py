"""From names to Slack's ids, and the rules that can be checked only then."""

from collections import Counter
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path
from typing import Any

from bot.team_file.check import is_minor
from bot.team_file.columns import EventTable, SeasonTable
from bot.team_file.directory import AmbiguousNameError, Directory, SlackChannel
from bot.team_file.parse import ParsedFile, RowAt, TeamAt
from bot.team_file.problems import Problem
from bot.team_file.wanted import (
    NO_ACCOUNT,
    TABLE_ROLES,
    PersonRef,
    Wanted,
    WantedPitcher,
    WantedTeam,
)
from bot.team_file.year import PartOfYear
from core.model import Role

_STAFF_KEYS = {
    Role.COACH: "coaches",
    Role.ASSISTANT: "assistants",
    Role.SCOREKEEPER: "scorekeepers",
}


@dataclass(slots=True)
class Resolved:
    """What the file asks for, what is wrong with it, and what is worth knowing."""

    wanted: Wanted
    problems: list[Problem] = field(default_factory=list)
    notes: list[Problem] = field(default_factory=list)


@dataclass(slots=True)
class _Looking:
    """The files, the directory, and what has been found out so far."""

    parsed: ParsedFile
    directory: Directory
    problems: list[Problem] = field(default_factory=list)
    notes: list[Problem] = field(default_factory=list)

    def person(self, reference: str) -> PersonRef | str:
        """The person, or what is wrong with the reference."""
        if reference.endswith(NO_ACCOUNT):
            return f"“{reference}”: only a guardian can be on file without an account."
        try:
            found = self.directory.person(reference)
        except AmbiguousNameError as several:
            return str(several)
        if found is None:
            return f"nobody in Slack is called “{reference}”; correct it or write the member id."
        return PersonRef.of(found.id, found.name)


def resolve(parsed: ParsedFile, directory: Directory, today: date) -> Resolved:
    """Look every channel and person up."""
    looking = _Looking(parsed, directory)
    teams = tuple(_team(looking, team) for team in parsed.teams)
    pitchers = tuple(_pitcher(looking, row) for row in parsed.rows)
    looking.problems += _shared_channels(parsed, teams)
    looking.problems += _wrong_accounts(parsed, pitchers, teams, today)
    return Resolved(Wanted(teams, pitchers), looking.problems, looking.notes)


def _team(looking: _Looking, team: TeamAt) -> WantedTeam:
    table = team.table
    values: dict[str, Any] = {
        "name": table.name,
        "age_group": table.age_group or "",
        "time_zone": table.time_zone,
        "log_channel": _channel(looking, team, "log_channel", must_be_private=False),
        "staff_channel": _channel(looking, team, "staff_channel", must_be_private=True),
        "rule_books": _books(looking.parsed.folder, table.rule_books),
        "account_age": table.account_age,
        "quiet_from": table.quiet_from,
        "quiet_to": table.quiet_to,
        "season_start": table.season_start,
        "rest_day": table.rest_day.model_dump(exclude_none=True),
    }
    folder = looking.parsed.folder
    return WantedTeam(
        values,
        {role: _staff(looking, team, role) for role in TABLE_ROLES},
        seasons=tuple(_part(folder, season.kind, season) for season in table.seasons),
        events=tuple(_part(folder, event.name, event) for event in table.events),
    )


def _part(folder: Path, name: str, table: SeasonTable | EventTable) -> PartOfYear:
    books = None if table.rule_books is None else tuple(_books(folder, table.rule_books))
    return PartOfYear(name, table.starts_on, table.ends_on, books)


def _channel(looking: _Looking, team: TeamAt, key: str, *, must_be_private: bool) -> str:
    reference = str(getattr(team.table, key))
    found = looking.directory.channel(reference)
    if found is None:
        says = (
            f"no channel “{reference}” is in sight; correct the name, and invite the app "
            "to it first if it is private."
        )
        looking.problems.append(looking.parsed.team_problem(team, key, says))
        return ""
    if must_be_private and found.private is False:
        says = f"#{found.name} is open to everybody; staff answers hold pain: make it private."
        looking.problems.append(looking.parsed.team_problem(team, key, says))
    if found.joined is False:
        looking.notes.append(looking.parsed.team_problem(team, key, _invite(found)))
    return found.id


def _invite(channel: SlackChannel) -> str:
    return f"the app is not in #{channel.name} yet; invite it there (/invite)."


def _staff(looking: _Looking, team: TeamAt, role: Role) -> frozenset[PersonRef]:
    key = _STAFF_KEYS[role]
    people = set()
    for reference in getattr(team.table, key):
        found = looking.person(reference)
        if isinstance(found, str):
            looking.problems.append(looking.parsed.team_problem(team, key, found))
        else:
            people.add(found)
    return frozenset(people)


def _pitcher(looking: _Looking, row: RowAt) -> WantedPitcher:
    cells = row.row
    account = looking.person(cells.account) if cells.account else None
    if isinstance(account, str):
        looking.problems.append(looking.parsed.row_problem(row, f"account: {account}"))
        account = None
    names = {team.table.key: team.table.name for team in looking.parsed.teams}
    guardians = _guardians(looking, row)
    _note(looking, row, guardians)
    return WantedPitcher(
        values={
            "name": cells.name,
            "also_called": list(cells.also_called),
            "birth_date": cells.birth_date,
            "throws": cells.throws,
            "breaking_pitch": cells.breaking_pitch,
            "consent_on": cells.consent_on,
            "pitch_caller": cells.pitch_caller,
            "grade": cells.grade,
            "level": cells.level,
            "rule_books": _books(looking.parsed.folder, cells.rule_books),
        },
        account=account,
        guardians=guardians,
        teams=frozenset(names[key] for key in cells.teams if key in names),
    )


def _guardians(looking: _Looking, row: RowAt) -> frozenset[PersonRef]:
    people = set()
    for reference in row.row.guardians:
        name = reference.removesuffix(NO_ACCOUNT).strip()
        found = PersonRef.of(None, name) if name != reference else looking.person(reference)
        if isinstance(found, str):
            looking.problems.append(looking.parsed.row_problem(row, f"guardian: {found}"))
        else:
            people.add(found)
    return frozenset(people)


def _note(looking: _Looking, row: RowAt, guardians: frozenset[PersonRef]) -> None:
    if row.row.consent_on is None:
        says = (
            "has no consent date: nothing is counted until a guardian agrees, in Slack or on paper."
        )
        looking.notes.append(looking.parsed.row_problem(row, says))
    if guardians and not any(guardian.slack_id for guardian in guardians):
        says = "no guardian has an account: notices for the family reach the staff alone."
        looking.notes.append(looking.parsed.row_problem(row, says))
    if not row.row.teams:
        says = "is on no team: the record is kept, nobody logs for this pitcher."
        looking.notes.append(looking.parsed.row_problem(row, says))


def _books(folder: Path, books: tuple[str, ...]) -> list[str]:
    """Ids stay as they are; a file beside the team file gets its full path."""
    return [str(path.resolve()) if (path := folder / book).is_file() else book for book in books]


def _shared_channels(parsed: ParsedFile, teams: tuple[WantedTeam, ...]) -> list[Problem]:
    logs = Counter(team.log_channel for team in teams)
    staff_only = {str(team.values["staff_channel"]) for team in teams} - {""}
    problems = []
    for at, team in zip(parsed.teams, teams, strict=True):
        if team.log_channel in staff_only:
            says = "is a staff channel; players write here, so it must be another channel."
            problems.append(parsed.team_problem(at, "log_channel", says))
        elif team.log_channel and logs[team.log_channel] > 1:
            says = "is the log channel of another team too; give each team its own."
            problems.append(parsed.team_problem(at, "log_channel", says))
    return problems


def _wrong_accounts(
    parsed: ParsedFile,
    pitchers: tuple[WantedPitcher, ...],
    teams: tuple[WantedTeam, ...],
    today: date,
) -> list[Problem]:
    """Accounts used twice, and minors who would read what only adults may."""
    staff = {person for team in teams for people in team.staff.values() for person in people}
    guardians = {guardian for pitcher in pitchers for guardian in pitcher.guardians}
    used = Counter(pitcher.account for pitcher in pitchers if pitcher.account)
    problems = []
    for at, pitcher in zip(parsed.rows, pitchers, strict=True):
        if pitcher.account is None:
            continue
        if used[pitcher.account] > 1:
            says = "the account is that of another pitcher too; give each their own."
            problems.append(parsed.row_problem(at, says))
        if is_minor(at, today) and pitcher.account in staff | guardians:
            says = "is under 18 and cannot be staff, scorekeeper or guardian; name an adult."
            problems.append(parsed.row_problem(at, says))
    return problems
