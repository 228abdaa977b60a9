"""Who must hear that Slack delivers no direct messages to one of a team's people any more."""

from datetime import datetime

from sqlmodel import Session, col, func, select

from core.ledger.notices import Notice, NoticeKind
from core.ledger.people import teams_of
from core.model import (
    GuardianLink,
    Membership,
    MessageState,
    OutboxMessage,
    Person,
    Pitcher,
    Team,
    key,
)

#: Slack's errors that somebody of the team can do something about (docs.slack.dev, method pages).
GONE = frozenset({"user_disabled", "user_not_found", "user_not_visible", "is_inactive"})
SHUT = frozenset({"messages_tab_disabled", "cannot_dm_bot", "channel_not_found"})


def person_trouble(session: Session, failed: OutboxMessage, now: datetime) -> list[Notice]:
    """What the staff are owed when a message to a person was refused for good.

    A report of pain has its own words (`unreached`). The slot names the last message that got
    through: until one does again, the trouble is the same and is told once.
    """
    person = person_at(session, failed.workspace_id, failed.destination)
    if failed.error not in GONE | SHUT or failed.kind == NoticeKind.PAIN or person is None:
        return []
    last = session.exec(
        select(func.max(OutboxMessage.id)).where(
            OutboxMessage.destination == failed.destination,
            OutboxMessage.state == MessageState.SENT,
        )
    ).one()
    about = f"{failed.destination}/{last or 0}/{failed.error}"
    return [
        Notice(
            slot=f"{NoticeKind.PERSON_TROUBLE}/{about}/{key(team)}",
            kind=NoticeKind.PERSON_TROUBLE,
            destination=team.staff_channel,
            not_before=now,
            team_id=key(team),
        )
        for team in _teams(session, person)
    ]


def person_at(session: Session, workspace_id: str, slack_id: str) -> Person | None:
    """The person whose account this is, or was."""
    account = (col(Person.slack_id) == slack_id) | (col(Person.former_slack_id) == slack_id)
    rows = select(Person).where(Person.workspace_id == workspace_id, account)
    return session.exec(rows.order_by(col(Person.id))).first()


def _teams(session: Session, person: Person) -> list[Team]:
    """The teams in which the person has a part."""
    own = select(Pitcher.id).where(Pitcher.person_id == key(person))
    children = select(GuardianLink.pitcher_id).where(GuardianLink.person_id == key(person))
    arms = {one for one in [*session.exec(own), *session.exec(children)] if one is not None}
    member = select(Membership.team_id).where(Membership.person_id == key(person))
    found = {key(team): team for team in teams_of(session, arms)}
    for team in session.exec(select(Team).where(col(Team.id).in_(member))):
        found.setdefault(key(team), team)
    return [found[one] for one in sorted(found)]
