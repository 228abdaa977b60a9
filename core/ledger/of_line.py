"""What is on file from one line, read once for everything that must be told of it."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass, field
from typing import Any, TypeVar

from sqlalchemy import BindParameter, bindparam
from sqlmodel import Session, col, select

from core.ledger.people import guardians_of, teams_of
from core.model import (
    CalendarEntry,
    CalendarSource,
    CalledOff,
    Clearance,
    ConsentEvent,
    LastDayWish,
    Line,
    OptOut,
    Outing,
    PainReport,
    Person,
    RestDayWord,
    ScheduleSetting,
    SpinPlan,
    Team,
    ThresholdSetting,
    key,
)
from core.store.together import Together

Set = TypeVar(
    "Set",
    CalendarSource, CalendarEntry, CalledOff, ScheduleSetting, SpinPlan, LastDayWish, RestDayWord,
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class OfLine:
    """The rows of a line, withdrawn ones too, as they stand when its reading is applied."""

    session: Session
    outings: Sequence[Outing] = ()
    reports: Sequence[PainReport] = ()
    clearances: Sequence[Clearance] = ()
    settings: Sequence[ThresholdSetting] = ()
    #: Of consent that the line withdrew.
    consents: Sequence[ConsentEvent] = ()
    #: The wishes for a child that it began or ended.
    opt_outs: Sequence[OptOut] = ()
    _teams: dict[frozenset[int], list[Team]] = field(default_factory=dict)
    _guardians: dict[frozenset[int], list[Person]] = field(default_factory=dict)

    @property
    def arms(self) -> set[int]:
        """The pitchers whose outings or reports came from the line."""
        thrown = {row.pitcher_id for row in self.outings}
        return thrown | {row.pitcher_id for row in self.reports}

    def teams_of(self, pitcher_ids: Collection[int]) -> list[Team]:
        """The teams that any of these pitchers throws for."""
        wanted = frozenset(pitcher_ids)
        if wanted not in self._teams:
            self._teams[wanted] = teams_of(self.session, wanted)
        return self._teams[wanted]

    def guardians_of(self, pitcher_ids: Collection[int]) -> list[Person]:
        """The guardians of any of these pitchers, those without a Slack account included."""
        wanted = frozenset(pitcher_ids)
        if wanted not in self._guardians:
            self._guardians[wanted] = guardians_of(self.session, wanted)
        return self._guardians[wanted]


_LINE: BindParameter[Any] = bindparam("line")
_ON_FILE = Together(
    (Outing, col(Outing.line_id) == _LINE),
    (PainReport, col(PainReport.line_id) == _LINE),
    (Clearance, col(Clearance.line_id) == _LINE),
    (ThresholdSetting, col(ThresholdSetting.line_id) == _LINE),
    (ConsentEvent, col(ConsentEvent.line_id) == _LINE),
    (
        OptOut,
        ((col(OptOut.line_id) == _LINE) | (col(OptOut.ended_by) == _LINE))
        & col(OptOut.pitcher_id).is_not(None),
    ),
)


def of_line(session: Session, line: Line) -> OfLine:
    """What is on file from this line now; nothing of it may change while it is used."""
    found = _ON_FILE.rows(session, line=key(line))
    outings, reports, clearances, settings, consents, opt_outs = (
        sorted(rows, key=key) for rows in found
    )
    return OfLine(session, outings, reports, clearances, settings, consents, opt_outs)


def just_stored(session: Session, rows: Sequence[Outing | PainReport]) -> OfLine:
    """What is on file from a line that was new, and gave no order: these rows and no more."""
    return OfLine(
        session,
        [row for row in rows if isinstance(row, Outing)],
        [row for row in rows if isinstance(row, PainReport)],
    )


def standing_of_line(session: Session, line: Line, table: type[Set]) -> list[Set]:
    """What a line set in this table and nobody took back, oldest first."""
    rows = select(table).where(table.line_id == key(line), col(table.withdrawn_at).is_(None))
    return list(session.scalars(rows.order_by(col(table.id))))
