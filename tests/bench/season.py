"""A big club's season in SQLite, for the benchmarks: teams of twelve, each arm a hundred outings.

Invented data, drawn from a fixed seed: games, bullpens and catch play spread over the months
before `TODAY`, a few reports of pain, holds, clearances, questions and unread lines.
"""

import json
import random
import sqlite3
from collections.abc import Iterable, Iterator
from datetime import UTC, date, datetime, time, timedelta
from pathlib import Path
from typing import Any

from core.model import Stored
from core.store import Store, migrate

#: The Monday of the summary, and its 07:00 in Chicago (UTC).
TODAY = date(2026, 9, 14)
DUE = datetime(2026, 9, 14, 12, tzinfo=UTC)
ARMS_OF_A_TEAM = 12
OUTINGS_OF_AN_ARM = 100
SEASON_DAYS = 200
WORKSPACE = "T1"
_KINDS = ("game", "bullpen", "catch", "catch")
_BOOKS = ("pitch-smart", "little-league")

Values = tuple[Any, ...]


def build(path: Path, arms: int) -> None:
    """Write a database of so many pitchers to `path`."""
    store = Store(f"sqlite:///{path}")
    migrate(store)
    store.close()
    connection = sqlite3.connect(path)
    connection.execute("PRAGMA synchronous = OFF")
    with connection:
        connection.execute("INSERT INTO workspace (id, name, bot_user_id) VALUES ('T1', '', 'U0')")
        _fill(connection, random.Random(arms), arms)
    connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    connection.close()


def _fill(connection: sqlite3.Connection, rng: random.Random, arms: int) -> None:
    teams = -(-arms // ARMS_OF_A_TEAM)
    _insert(connection, "team", _TEAM, (_team(number) for number in range(1, teams + 1)))
    coaches = ((n, WORKSPACE, f"UC{n}", f"Coach {n}") for n in range(1, teams + 1))
    _insert(connection, "person", "id workspace_id slack_id name", coaches)
    roles = ((n, WORKSPACE, n, n, "coach") for n in range(1, teams + 1))
    _insert(connection, "membership", "id workspace_id team_id person_id role", roles)
    _insert(connection, "pitcher", _PITCHER, (_pitcher(rng, n) for n in range(1, arms + 1)))
    links = ((n, _team_of(n), WORKSPACE) for n in range(1, arms + 1))
    _insert(connection, "pitcherteam", "pitcher_id team_id workspace_id", links)
    _insert(connection, "line", _LINE, _lines(arms))
    _insert(connection, "outing", _OUTING, _outings(rng, arms))
    reports = list(_reports(rng, arms))
    _insert(connection, "painreport", _REPORT, (row for row, _ in reports))
    _insert(connection, "hold", _HOLD, (hold for _, hold in reports if hold))


def _insert(
    connection: sqlite3.Connection, table: str, columns: str, rows: Iterable[Values]
) -> None:
    """Insert rows with these columns; the others as the model sets them."""
    set_by_model = _defaults(table, columns.split())
    names = [*columns.split(), *set_by_model]
    marks = ", ".join("?" * len(names))
    quoted = ", ".join(f'"{name}"' for name in names)
    more = tuple(set_by_model.values())
    whole = ((*row, *more) for row in rows)
    connection.executemany(f'INSERT INTO "{table}" ({quoted}) VALUES ({marks})', whole)


def _defaults(table: str, given: list[str]) -> dict[str, Any]:
    """What the model puts into the columns that may not be empty, as SQLite stores it."""
    model = next(one for one in Stored.__subclasses__() if one.__tablename__ == table)
    fields = {
        name: field.get_default(call_default_factory=True)
        for name, field in model.model_fields.items()
        if name not in given and not Stored.metadata.tables[table].c[name].nullable
    }
    return {
        name: json.dumps(value) if isinstance(value, list | dict) else value
        for name, value in fields.items()
    }


def _team_of(arm: int) -> int:
    return (arm - 1) // ARMS_OF_A_TEAM + 1


_TEAM = (
    "id workspace_id name time_zone log_channel staff_channel rule_books account_age rest_day "
    "season_start"
)


def _team(number: int) -> Values:
    books = f'["{_BOOKS[0]}"]' if number % 2 else f'["{_BOOKS[0]}", "{_BOOKS[1]}"]'
    return (
        *(number, WORKSPACE, f"Team {number}", "America/Chicago", f"CL{number}", f"CS{number}"),
        *(books, 16, "{}", "2026-03-01"),
    )


_PITCHER = (
    "id workspace_id name also_called birth_date throws breaking_pitch consent_on pitch_caller "
    "rule_books"
)


def _pitcher(rng: random.Random, number: int) -> Values:
    born = date(2012, 1, 1) + timedelta(days=rng.randrange(700))
    spins = rng.choice(("curveball", "slider", "none"))
    return (
        *(number, WORKSPACE, f"Arm {number}", "[]", born.isoformat(), rng.choice("RRRL"), spins),
        *("2026-02-01", "pitcher", "[]"),
    )


_LINE = (
    "id workspace_id channel ts direct author_slack_id author_id team_id text posted_at "
    "received_at state entries questions answers"
)


def _day(number: int) -> date:
    """The day of an arm's outing, counted from 0: evenly over the season, the last one new."""
    return TODAY - timedelta(days=1 + (OUTINGS_OF_AN_ARM - 1 - number) * SEASON_DAYS // 100)


def _lines(arms: int) -> Iterator[Values]:
    for arm in range(1, arms + 1):
        team = _team_of(arm)
        for number in range(OUTINGS_OF_AN_ARM):
            at = f"{datetime.combine(_day(number), time(23))}.000000"
            row = (arm - 1) * OUTINGS_OF_AN_ARM + number + 1
            state = "not read" if row % 2000 == 0 else "read"
            yield (
                *(row, WORKSPACE, f"CL{team}", f"{row}.000001", 0, f"UC{team}", team, team),
                *("62p 11cb vs Summit", at, at, state, "[]", "[]", "[]"),
            )


_OUTING = (
    "id workspace_id line_id slot pitcher_id team_id on kind pitches breaking curve strikes outs "
    "about waiting kept_back joins joined_as"
)


def _outings(rng: random.Random, arms: int) -> Iterator[Values]:
    for arm in range(1, arms + 1):
        for number in range(OUTINGS_OF_AN_ARM):
            row = (arm - 1) * OUTINGS_OF_AN_ARM + number + 1
            kind = _KINDS[number % len(_KINDS)]
            most = 75 if kind == "game" else 40
            pitches = None if rng.random() < 0.01 else rng.randrange(10, most)
            breaking = rng.randrange((pitches or 20) // 4 + 1)
            parts = kind == "game" and number > 0 and rng.random() < 0.02
            outs = rng.randrange(3, 16) if kind == "game" else None
            yield (
                *(row, WORKSPACE, row, f"{arm}/1", arm, _team_of(arm), _day(number).isoformat()),
                *(kind, pitches, breaking, breaking, (pitches or 0) // 2, outs, 0, "[]", 0),
                *((row - 1, "part") if parts else (None, None)),
            )


_REPORT = "id workspace_id line_id slot pitcher_id on feeling site severity"
_HOLD = "id workspace_id pitcher_id line_id on reason raised_at"


def _reports(rng: random.Random, arms: int) -> Iterator[tuple[Values, Values | None]]:
    """A report with every fifth outing, mostly "no pain"; one arm in twenty is on hold."""
    reports = OUTINGS_OF_AN_ARM // 5
    for number in range(1, reports * arms + 1):
        arm, nth = (number - 1) // reports + 1, (number - 1) % reports * 5
        line = (arm - 1) * OUTINGS_OF_AN_ARM + nth + 1
        on = _day(nth).isoformat()
        hurts = number % (20 * reports) == 0
        feeling = "pain" if hurts else rng.choice(("no pain", "no pain", "tired"))
        site, severity = ("elbow", 4) if hurts else (None, None)
        report = (number, WORKSPACE, line, f"{number}/{feeling}", arm, on, feeling, site, severity)
        raised = f"{on} 23:00:00.000000"
        yield report, (number, WORKSPACE, arm, line, on, "severity", raised) if hurts else None
