"""Who must hear that Slack takes no messages for one of a team's channels any more."""

from datetime import datetime

from sqlmodel import Session, col, func, select

from core.ledger.notices import Notice, NoticeKind, quiet_until
from core.model import STAFF_ROLES, Membership, MessageState, OutboxMessage, Person, Team, key

#: Slack's errors that the staff can put right (docs.slack.dev, method pages).
ARCHIVED = frozenset({"is_archived"})
NOT_THERE = frozenset({"not_in_channel", "channel_not_found"})
NOT_ALLOWED = frozenset({
    "no_permission", "restricted_action", "restricted_action_read_only_channel",
    "restricted_action_thread_only_channel",
})  # fmt: skip
TROUBLE = ARCHIVED | NOT_THERE | NOT_ALLOWED


def channel_trouble(session: Session, failed: OutboxMessage, now: datetime) -> list[Notice]:
    """What the coaches are owed when a message to a team's channel was refused for good.

    The slot names the last message (or reaction) that the channel took: as long as none gets
    through, the trouble is the same and is told once.
    """
    if failed.error not in TROUBLE:
        return []
    place = failed.destination
    teams = session.exec(
        select(Team).where(
            Team.workspace_id == failed.workspace_id,
            (col(Team.log_channel) == place) | (col(Team.staff_channel) == place),
        )
    )
    last = session.exec(
        select(func.max(OutboxMessage.id)).where(
            OutboxMessage.destination == place,
            OutboxMessage.state == MessageState.SENT,
            (col(OutboxMessage.kind) == NoticeKind.REACTION)
            == (failed.kind == NoticeKind.REACTION),
        )
    ).one()
    return [
        Notice(
            slot=f"{NoticeKind.CHANNEL_TROUBLE}/{place}/{last or 0}/{failed.error}/{key(coach)}",
            kind=NoticeKind.CHANNEL_TROUBLE,
            destination=coach.slack_id,
            not_before=quiet_until(now, team.time_zone),
            team_id=key(team),
            person_id=key(coach),
        )
        for team in teams
        for coach in _staff(session, team)
        if coach.slack_id is not None
    ]


def _staff(session: Session, team: Team) -> list[Person]:
    members = select(Membership.person_id).where(
        Membership.team_id == key(team), col(Membership.role).in_(STAFF_ROLES)
    )
    staff = select(Person).where(col(Person.id).in_(members)).order_by(col(Person.id))
    return list(session.exec(staff))
