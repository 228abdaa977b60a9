"""Clearances on record, and throwing that was logged during a hold."""

from sqlmodel import Session, col, select

from bot.wording import holds as say
from core.ledger.holds import hold_covering, is_thrown_on_hold
from core.model import (
    Clearance,
    GuardianLink,
    Line,
    OutboxMessage,
    Outing,
    Person,
    Pitcher,
    PitcherTeam,
    key,
)
from core.pain.status import ClinicianLimit


def clearances_said(session: Session, line: Line) -> list[str]:
    """The clearances that a line recorded and that stand, as its author reads them."""
    return [_said(session, row) for row in _of_line(session, line) if row.withdrawn_at is None]


def clearance_text(session: Session, line: Line, row: OutboxMessage) -> str:
    """A clearance as the staff of a team or one guardian read it, also once it is taken back."""
    readers = _pitchers_of(session, row)
    rows = [one for one in _of_line(session, line) if one.pitcher_id in readers]
    standing = [_said(session, one) for one in rows if one.withdrawn_at is None]
    names = {session.get_one(Pitcher, one.pitcher_id).name for one in rows}
    gone = [say.clearance_taken_back(name) for name in sorted(names)] if row.ts else []
    return "\n\n".join(standing or gone)


def _of_line(session: Session, line: Line) -> list[Clearance]:
    rows = select(Clearance).where(Clearance.line_id == key(line)).order_by(col(Clearance.id))
    return list(session.exec(rows))


def _said(session: Session, row: Clearance) -> str:
    limits = [ClinicianLimit.from_json(stored) for stored in row.limits]
    by = session.get_one(Person, row.recorded_by).name
    pitcher = session.get_one(Pitcher, row.pitcher_id).name
    return say.clearance(pitcher, row.clinician, row.on, limits, by)


def thrown_text(session: Session, line: Line, row: OutboxMessage, author: str) -> str:
    """Throwing of a line on days of a hold, for the staff of a team or one guardian."""
    readers = _pitchers_of(session, row)
    of_line = select(Outing).where(Outing.line_id == key(line)).order_by(col(Outing.id))
    told = []
    words = say.thrown_on_hold if row.person_id is None else say.thrown_on_hold_for_family
    for outing in session.exec(of_line).all():
        if outing.pitcher_id not in readers or not is_thrown_on_hold(session, outing):
            continue
        hold = hold_covering(session, outing.pitcher_id, outing.on)
        pitcher = session.get_one(Pitcher, outing.pitcher_id).name
        if hold is not None:
            told.append(words(pitcher, outing.on, author, hold.on))
    return "\n\n".join(told)


def _pitchers_of(session: Session, row: OutboxMessage) -> set[int]:
    """Whose arms the reader of a message may read about: a guardian's own, a team's."""
    if row.person_id is not None:
        links = select(GuardianLink.pitcher_id).where(GuardianLink.person_id == row.person_id)
        return set(session.exec(links))
    teams = select(PitcherTeam.pitcher_id).where(PitcherTeam.team_id == row.team_id)
    return set(session.exec(teams))
