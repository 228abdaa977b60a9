"""Quiet hours at the moment of sending: a message that is late must not wake a family.

A team's own hours, which are the usual ones or longer, hold here, for whatever is sent.
"""

from datetime import datetime, time

from sqlmodel import Session

from core.ledger.notices import NoticeKind, quiet_until
from core.model import Line, OutboxMessage, Team

#: Messages to families that nobody waits for at night; reports of pain are none of them.
WAITS_FOR_MORNING = frozenset(
    {
        NoticeKind.PAIN_WITHDRAWN,
        NoticeKind.ASKED_AGAIN,
        NoticeKind.REST_DAYS,
        NoticeKind.LAST_REST_DAY,
        NoticeKind.SPIN_REPS,
        NoticeKind.POST_GAME,
        NoticeKind.CONSENT,
        NoticeKind.STILL_HURTS,
        NoticeKind.CLEARANCE,
        NoticeKind.FAMILY,
        NoticeKind.ALERT,
    }
)


def held_until(session: Session, row: OutboxMessage, now: datetime) -> datetime | None:
    """The moment (UTC) before which a message must not begin; none when it may go at `now`."""
    to_a_person = row.destination.startswith(("U", "W"))
    waits = row.kind == NoticeKind.SPIN or (row.kind in WAITS_FOR_MORNING and to_a_person)
    if row.ts is not None or not waits:
        return None
    team = _team(session, row)
    if team is None:
        return None
    until = quiet_until(now, team.time_zone, time(team.quiet_from), time(team.quiet_to))
    return until if until > now else None


def _team(session: Session, row: OutboxMessage) -> Team | None:
    if row.team_id is not None:
        return session.get(Team, row.team_id)
    line = session.get(Line, row.line_id) if row.line_id is not None else None
    return session.get(Team, line.team_id) if line is not None and line.team_id else None
