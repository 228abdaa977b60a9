"""Somebody of the staff has seen an alert."""

from collections.abc import Iterable

from sqlmodel import Session, select

from core.ledger.alert_notices import staff_notice
from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.ledger.notices import Notice
from core.model import STAFF_ROLES, Alert, AlertSeen, Membership, Team, key


def mark_seen(hand: Hand, alert_ids: Iterable[int]) -> list[Notice]:
    """Keep that this person saw these alerts, once; only the staff of their team may say so.

    Raises `ByHandError`.
    """
    return [notice for alert_id in alert_ids for notice in _mark(hand, alert_id)]


def _mark(hand: Hand, alert_id: int) -> list[Notice]:
    alert = hand.session.get(Alert, alert_id)
    if alert is None or alert.workspace_id != hand.person.workspace_id:
        raise ByHandError(Refusal.GONE)
    if not _coaches(hand.session, key(hand.person), alert.team_id):
        raise ByHandError(Refusal.NOT_ALLOWED)
    if hand.session.get(AlertSeen, (alert_id, key(hand.person))) is None:
        seen = AlertSeen(alert_id=alert_id, person_id=key(hand.person), at=hand.now)
        hand.session.add(seen)
        hand.session.flush()
    return [staff_notice(alert, hand.session.get_one(Team, alert.team_id), hand.now)]


def _coaches(session: Session, person_id: int, team_id: int) -> bool:
    roles = select(Membership.role).where(
        Membership.person_id == person_id, Membership.team_id == team_id
    )
    return any(role in STAFF_ROLES for role in session.exec(roles))
