"""The two files back from what is stored: loading them again changes nothing."""

import csv
import io
import json
import re
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

from sqlmodel import Session

from bot.team_file.columns import RosterRow, column_names
from bot.team_file.stored import StoredPitcher, StoredTeam, read_stored
from bot.team_file.wanted import NO_ACCOUNT, TABLE_ROLES, PersonRef
from bot.team_file.year import StoredPart
from core.model import Role

_KEYS = {
    Role.COACH: "coaches",
    Role.ASSISTANT: "assistants",
    Role.SCOREKEEPER: "scorekeepers",
}


@dataclass(frozen=True, slots=True)
class Exported:
    """The texts of the TOML file and of the CSV roster, and the first team's key."""

    toml: str
    roster: str
    keys: tuple[str, ...]


def export(
    session: Session,
    workspace_id: str,
    teams: Collection[int] | None = None,
    roster: str = "roster.csv",
) -> Exported:
    """The files of these teams (ids), of all of a workspace where none are named.

    People and channels stand by their Slack ids, which are sure. `roster` is the name that
    the TOML file gives for the CSV.
    """
    stored = read_stored(session, workspace_id)
    chosen = [one for one in stored.teams if teams is None or one.id in teams]
    keys = _keys(chosen)
    pitchers = [one for one in stored.pitchers if one.teams & keys.keys() or teams is None]
    tables = [_table(team, keys[team.id]) for team in chosen]
    toml = "\n".join([f"roster = {_text(roster)}\n", *tables])
    return Exported(toml, _csv(pitchers, keys), tuple(keys.values()))


def _keys(teams: list[StoredTeam]) -> dict[int, str]:
    """A short key for each team, made of its name: "Herons 12U" is "herons-12u"."""
    keys: dict[int, str] = {}
    for team in teams:
        slug = re.sub(r"[^a-z0-9]+", "-", str(team.values["name"]).casefold()).strip("-") or "team"
        keys[team.id] = slug if slug not in keys.values() else f"{slug}-{team.id}"
    return keys


def _table(team: StoredTeam, key: str) -> str:
    values: dict[str, Any] = {"key": key, **{k: v for k, v in team.values.items() if _is_set(v)}}
    rest_day = values.pop("rest_day", None)
    for role in TABLE_ROLES:
        values[_KEYS[role]] = sorted(_reference(one) for one in team.staff[role])
    lines = ["[[teams]]", *_lines(values)]
    lines += _parts("seasons", "kind", team.seasons) + _parts("events", "name", team.events)
    if rest_day:
        lines += ["", "[teams.rest_day]", *_lines(rest_day)]
    return "\n".join(lines) + "\n"


def _is_set(value: Any) -> bool:
    return value not in (None, {}, "")


def _parts(table: str, name: str, parts: Collection[StoredPart]) -> list[str]:
    lines: list[str] = []
    for stored in sorted(parts, key=lambda one: one.part.starts_on):
        part = stored.part
        values = {name: part.name, "from": part.starts_on, "until": part.ends_on}
        if part.rule_books is not None:
            values["rule_books"] = list(part.rule_books)
        lines += ["", f"[[teams.{table}]]", *_lines(values)]
    return lines


def _lines(values: Mapping[str, Any]) -> Iterator[str]:
    for name, value in values.items():
        yield f"{name} = {_value(value)}"


def _value(value: Any) -> str:
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, list):
        return f"[{', '.join(map(_text, value))}]"
    return _text(value) if isinstance(value, str) else str(value)


def _text(value: Any) -> str:
    """A TOML basic string: JSON's escapes are TOML's, and DEL is escaped as well."""
    return json.dumps(str(value), ensure_ascii=False).replace("\x7f", "\\u007f")


def _reference(person: PersonRef) -> str:
    return person.slack_id or f"{person.name} {NO_ACCOUNT}"


def _csv(pitchers: list[StoredPitcher], keys: Mapping[int, str]) -> str:
    out = io.StringIO()
    writer = csv.DictWriter(out, list(column_names(RosterRow)), lineterminator="\n")
    writer.writeheader()
    for pitcher in sorted(pitchers, key=lambda one: (str(one.values["name"]).casefold(), one.id)):
        writer.writerow(_row(pitcher, keys))
    return out.getvalue()


def _row(pitcher: StoredPitcher, keys: Mapping[int, str]) -> dict[str, str]:
    of = pitcher.values
    return {
        "name": of["name"],
        "teams": ";".join(sorted(keys[team] for team in pitcher.teams if team in keys)),
        "birth date": of["birth_date"].isoformat(),
        "throws": of["throws"],
        "breaking pitch": of["breaking_pitch"],
        "consent date": of["consent_on"].isoformat() if of["consent_on"] else "",
        "account": _reference(pitcher.account) if pitcher.account else "",
        "guardians": ";".join(sorted(_reference(one) for one in pitcher.guardians)),
        "who calls pitches": of["pitch_caller"],
        "also called": ";".join(of["also_called"]),
        "grade": "" if of["grade"] is None else str(of["grade"]),
        "level": of["level"] or "",
        "rule books": ";".join(of["rule_books"]),
    }
