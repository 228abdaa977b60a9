"""The rules that need no Slack: what must hold within the two files."""

from collections import Counter
from collections.abc import Collection, Iterator
from datetime import date

from bot.team_file.check_years import check_years
from bot.team_file.parse import ParsedFile, RowAt, TeamAt
from bot.team_file.problems import Problem
from core.audience import LOWEST_ACCOUNT_AGE, has_own_account
from core.rulebooks import RuleBookError, read_book
from core.rulebooks.ages import age_on

#: Ages (years) that a pitcher in youth baseball can have; anything else is a slip of the pen.
PLAUSIBLE_AGES = range(5, 23)
ADULT_AGE = 18


def check(parsed: ParsedFile, known_books: Collection[str], today: date) -> list[Problem]:
    """Everything that is wrong within the files, whatever Slack says."""
    return [
        *_check_teams(parsed, known_books),
        *check_years(parsed),
        *_check_duplicate_rows(parsed),
        *(problem for row in parsed.rows for problem in _check_row(parsed, row, today)),
        *(
            parsed.row_problem(row, says)
            for row in parsed.rows
            for says in _book_faults(parsed, row.row.rule_books, known_books)
        ),
    ]


def is_minor(row: RowAt, today: date) -> bool:
    """Whether a row's pitcher is under 18 on the day."""
    return _age(row, today) < ADULT_AGE


def _age(row: RowAt, today: date) -> int:
    """The pitcher's age in years; -1 for a birth date still to come."""
    return age_on(row.row.birth_date, today) if row.row.birth_date <= today else -1


def _check_teams(parsed: ParsedFile, known_books: Collection[str]) -> Iterator[Problem]:
    for key in ("key", "name"):
        seen = Counter(str(getattr(team.table, key)).casefold() for team in parsed.teams)
        for team in parsed.teams:
            if seen[str(getattr(team.table, key)).casefold()] > 1:
                yield parsed.team_problem(team, key, f"{key} is that of another team; change it.")
    for team in parsed.teams:
        for place, books in _books_of(team):
            for says in _book_faults(parsed, books, known_books):
                yield Problem(parsed.file, parsed.line(team, *place), says)


def _books_of(team: TeamAt) -> Iterator[tuple[tuple[str | int, ...], tuple[str, ...]]]:
    """Every list of books of a team, and where it stands."""
    yield ("rule_books",), team.table.rule_books
    for n, season in enumerate(team.table.seasons):
        yield ("seasons", n, "rule_books"), season.rule_books or ()
    for n, event in enumerate(team.table.events):
        yield ("events", n, "rule_books"), event.rule_books


def _book_faults(
    parsed: ParsedFile, books: tuple[str, ...], known_books: Collection[str]
) -> Iterator[str]:
    for book in books:
        own = parsed.folder / book
        if book in known_books:
            continue
        if not own.is_file():
            yield (
                f"the rule book “{book}” is not known and no file beside this one; "
                f"built in are {', '.join(sorted(known_books))}."
            )
            continue
        try:
            read_book(own)
        except RuleBookError as wrong:
            yield f"the rule book “{book}” cannot be used: {wrong}"


def _check_duplicate_rows(parsed: ParsedFile) -> Iterator[Problem]:
    first: dict[tuple[str, date], int] = {}
    for row in parsed.rows:
        same = (row.row.name.casefold(), row.row.birth_date)
        if same in first:
            yield parsed.row_problem(row, f"stands on line {first[same]} already; take one out.")
        first.setdefault(same, row.line)


def _check_row(parsed: ParsedFile, row: RowAt, today: date) -> Iterator[Problem]:
    age = _age(row, today)
    for key in row.row.teams:
        if parsed.team_keys and key not in parsed.team_keys:
            known = ", ".join(sorted(parsed.team_keys))
            yield parsed.row_problem(row, f"no team has the key “{key}”; the keys are {known}.")
    if age not in PLAUSIBLE_AGES:
        yield parsed.row_problem(
            row,
            f"the birth date {row.row.birth_date} makes an age outside "
            f"{PLAUSIBLE_AGES[0]} to {PLAUSIBLE_AGES[-1]} today; correct the year.",
        )
        return
    limit = account_age(_teams_of(parsed, row))
    if row.row.account and not has_own_account(age, limit):
        yield parsed.row_problem(
            row,
            f"is {age} and may not have an account before {limit} (Slack's terms do not allow "
            f"accounts under {LOWEST_ACCOUNT_AGE}); empty the account cell, guardians and staff "
            "log for this pitcher.",
        )
    if age < ADULT_AGE and not row.row.guardians:
        yield parsed.row_problem(row, "is under 18 and has no guardian; name at least one.")
    if row.row.consent_on and not row.row.birth_date < row.row.consent_on <= today:
        yield parsed.row_problem(
            row, f"the consent date {row.row.consent_on} cannot be; write the day of the signature."
        )


def account_age(teams: list[TeamAt]) -> int:
    """The lowest age (years) with an account: the strictest of a pitcher's teams decides."""
    return max((team.table.account_age for team in teams), default=LOWEST_ACCOUNT_AGE)


def _teams_of(parsed: ParsedFile, row: RowAt) -> list[TeamAt]:
    return [team for team in parsed.teams if team.table.key in row.row.teams]
