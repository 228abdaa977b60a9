"""What loading a team file did, or would do, as lines of text for whoever ran it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from bot.team_file.plan import Change, PersonPlan, PitcherPlan, Plan, TeamPlan
from bot.team_file.problems import Problem
from bot.team_file.wanted import NO_ACCOUNT, PersonRef

_Rows = Sequence[TeamPlan | PitcherPlan | PersonPlan]
_FIELDS = {
    "birth_date": "birth date",
    "consent_on": "consent date",
    "pitch_caller": "who calls pitches",
    "slack_id": "Slack id",
}


@dataclass(frozen=True, slots=True)
class LoadReport:
    """What was added, changed and left alone, and what is worth knowing."""

    plan: Plan
    notes: tuple[Problem, ...]
    dry_run: bool

    @property
    def changes_nothing(self) -> bool:
        """Whether everything in the file was there already."""
        kinds: tuple[_Rows, ...] = (self.plan.people, self.plan.teams, self.plan.pitchers)
        return all(row.id is not None and not row.changes for rows in kinds for row in rows)

    def lines(self) -> list[str]:
        """The report, for a terminal; it names minors, so it belongs in no log."""
        return [
            *(["Dry run: nothing was written."] if self.dry_run else []),
            *_rows("Team", self.plan.teams),
            *_rows("Pitcher", self.plan.pitchers),
            *_rows("Person", self.plan.people),
            *_missing(self.plan.missing),
            *(f"Note: {note}" for note in self.notes),
        ]


def _rows(kind: str, rows: _Rows) -> Iterator[str]:
    yield from (f"{kind} added: {row.wanted.name}" for row in rows if row.id is None)
    for row in rows:
        if row.changes:
            yield f"{kind} changed: {row.wanted.name}"
            yield from (f"  {_change(change)}" for change in row.changes)
    if same := sum(1 for row in rows if row.id is not None and not row.changes):
        yield f"{kind}, unchanged: {same}"


def _change(change: Change) -> str:
    name = _FIELDS.get(change.field, change.field.replace("_", " "))
    if isinstance(change.after, frozenset):
        gone = sorted(_shown(item) for item in change.before - change.after)
        new = sorted(_shown(item) for item in change.after - change.before)
        parts = [f"+ {item}" for item in new] + [f"- {item}" for item in gone]
        return f"{name}: {', '.join(parts)}"
    return f"{name}: {_shown(change.before)} → {_shown(change.after)}"


def _shown(value: Any) -> str:
    match value:
        case None | []:
            return "nothing"
        case PersonRef():
            return value.name if value.slack_id else f"{value.name} {NO_ACCOUNT}"
        case date():
            return value.isoformat()
        case list():
            return ", ".join(map(str, value))
        case _:
            return str(value)


def _missing(names: tuple[str, ...]) -> Iterator[str]:
    if names:
        yield f"On file, no longer in the roster, kept as they are: {', '.join(names)}"
