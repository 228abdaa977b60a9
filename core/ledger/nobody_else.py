"""The answer to the question of the morning after a game: nobody else pitched."""

from datetime import date
from zoneinfo import ZoneInfo

from sqlmodel import col, select

from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.ledger.game_day import OPEN_FOR, shown
from core.ledger.notices import Notice
from core.model import STAFF_ROLES, GameAnswer, Membership, Role, Team, key
from core.store.once import insert_once

MAY_ANSWER = STAFF_ROLES | {Role.SCOREKEEPER}


def nobody_else(hand: Hand, team_id: int, on: date) -> list[Notice]:
    """Keep that nobody else pitched on a team's game day; the first word stands.

    Raises `ByHandError` for whoever neither coaches the team nor keeps its score, and for a
    day that lies too far back.
    """
    team = hand.session.get(Team, team_id)
    if team is None or team.workspace_id != hand.person.workspace_id:
        raise ByHandError(Refusal.GONE)
    roles = select(col(Membership.role)).where(
        Membership.team_id == team_id, Membership.person_id == key(hand.person)
    )
    if not MAY_ANSWER & set(hand.session.scalars(roles)):
        raise ByHandError(Refusal.NOT_ALLOWED)
    today = hand.now.astimezone(ZoneInfo(team.time_zone)).date()
    if not today - OPEN_FOR <= on <= today:
        raise ByHandError(Refusal.GONE)
    values = {
        "workspace_id": team.workspace_id,
        "team_id": team_id,
        "on": on,
        "said_by": key(hand.person),
        "said_at": hand.now,
    }
    insert_once(hand.session, GameAnswer, values)
    return [shown(team, on, hand.now)]
