"""What loading a team file did, or would do, as lines of text for whoever ran it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from bot.team_file.plan import Change, PersonPlan, PitcherPlan, Plan, TeamPlan
from bot.team_file.problems import Problem
from bot.team_file.wanted import NO_ACCOUNT, PersonRef
from bot.team_file.year import PartOfYear, PartPlan
from core.ledger import Notice

_Rows = Sequence[TeamPlan | PitcherPlan | PersonPlan]
_FIELDS = {
    "birth_date": "birth date",
    "consent_on": "consent date",
    "pitch_caller": "who calls pitches",
    "slack_id": "Slack id",
}

_CONSENT_STANDS = "consent was said in Slack or on paper; the file's date changes nothing."


@dataclass(frozen=True, slots=True)
class LoadReport:
    """What was added, changed and left alone, and what is worth knowing."""

    plan: Plan
    notes: tuple[Problem, ...]
    dry_run: bool
    #: What the load owes to people, such as requests for consent.
    notices: tuple[Notice, ...] = ()

    @property
    def changes_nothing(self) -> bool:
        """Whether everything in the file was there already."""
        kinds: tuple[_Rows, ...] = (self.plan.people, self.plan.teams, self.plan.pitchers)
        return all(_is_unchanged(row) for rows in kinds for row in rows)

    def lines(self) -> list[str]:
        """The report, for a terminal; it names minors, so it belongs in no log."""
        return [
            *(["Dry run: nothing was written."] if self.dry_run else []),
            *_rows("Team", self.plan.teams),
            *_rows("Pitcher", self.plan.pitchers),
            *_rows("Person", self.plan.people),
            *_missing(self.plan.missing),
            *(f"Note: {name}: {_CONSENT_STANDS}" for name in self.plan.kept_consent),
            *(f"Note: {note}" for note in self.notes),
        ]


def _rows(kind: str, rows: _Rows) -> Iterator[str]:
    for row in sorted(rows, key=lambda row: row.id is not None):
        if not _is_unchanged(row):
            yield f"{kind} {'added' if row.id is None else 'changed'}: {row.wanted.name}"
            yield from (f"  {detail}" for detail in _details(row))
    if same := sum(map(_is_unchanged, rows)):
        yield f"{kind}, unchanged: {same}"


def _is_unchanged(row: TeamPlan | PitcherPlan | PersonPlan) -> bool:
    return row.id is not None and not any(_details(row))


def _details(row: TeamPlan | PitcherPlan | PersonPlan) -> Iterator[str]:
    yield from map(_change, row.changes)
    if isinstance(row, TeamPlan):
        yield from (_part("season", part) for part in row.seasons if part.differs)
        yield from (_part("event", part) for part in row.events if part.differs)


def _part(kind: str, plan: PartPlan) -> str:
    if plan.before is None or plan.after is None:
        return f"{kind} {'added' if plan.after else 'removed'}: {_shown(plan.after or plan.before)}"
    return f"{kind} changed: {_shown(plan.before)} → {_shown(plan.after)}"


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
        case PartOfYear():
            books = f" ({', '.join(value.rule_books)})" if value.rule_books else ""
            return f"{value.name}, {value.starts_on} to {value.ends_on}{books}"
        case dict():
            return "; ".join(f"{name}: “{said}”" for name, said in value.items()) or "nothing"
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
