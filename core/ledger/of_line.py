"""What is on file from one line, read once for everything that must be told of it."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass, field
from typing import TypeVar

from sqlmodel import Session, col, select

from core.ledger.people import teams_of
from core.model import (
    CalendarEntry,
    CalendarSource,
    CalledOff,
    Clearance,
    LastDayWish,
    Line,
    Outing,
    PainReport,
    RestDayWord,
    ScheduleSetting,
    SpinPlan,
    Team,
    key,
)

Set = TypeVar(
    "Set",
    CalendarSource, CalendarEntry, CalledOff, ScheduleSetting, SpinPlan, LastDayWish, RestDayWord,
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class OfLine:
    """The rows of a line, withdrawn ones too, as they stand when its reading is applied."""

    session: Session
    outings: Sequence[Outing]
    reports: Sequence[PainReport]
    clearances: Sequence[Clearance]
    _teams: dict[frozenset[int], list[Team]] = field(default_factory=dict)

    @property
    def arms(self) -> set[int]:
        """The pitchers whose outings or reports came from the line."""
        thrown = {row.pitcher_id for row in self.outings}
        return thrown | {row.pitcher_id for row in self.reports}

    def teams_of(self, pitcher_ids: Collection[int]) -> list[Team]:
        """The teams that any of these pitchers throws for."""
        wanted = frozenset(pitcher_ids)
        if wanted not in self._teams:
            self._teams[wanted] = teams_of(self.session, set(wanted))
        return self._teams[wanted]


def of_line(session: Session, line: Line) -> OfLine:
    """What is on file from this line now; nothing of it may change while it is used."""
    line_id = key(line)
    return OfLine(
        session,
        session.exec(
            select(Outing).where(Outing.line_id == line_id).order_by(col(Outing.id))
        ).all(),
        session.exec(
            select(PainReport).where(PainReport.line_id == line_id).order_by(col(PainReport.id))
        ).all(),
        session.exec(
            select(Clearance).where(Clearance.line_id == line_id).order_by(col(Clearance.id))
        ).all(),
    )


def standing_of_line(session: Session, line: Line, table: type[Set]) -> list[Set]:
    """What a line set in this table and nobody took back, oldest first."""
    rows = select(table).where(table.line_id == key(line), col(table.withdrawn_at).is_(None))
    return list(session.scalars(rows.order_by(col(table.id))))
