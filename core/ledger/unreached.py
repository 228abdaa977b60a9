"""Who must hear that a report of pain did not reach its reader."""

from dataclasses import replace
from datetime import datetime

from sqlmodel import Session, col, select

from core.ledger.answer_notices import answers_again
from core.ledger.notices import Notice, NoticeKind
from core.ledger.people import teams_of
from core.model import (
    STAFF_ROLES,
    FamilyMessage,
    Membership,
    MessageState,
    OutboxMessage,
    PainReport,
    Person,
    Team,
    key,
)


def unreached(session: Session, failed: OutboxMessage, now: datetime) -> list[Notice]:
    """What is owed when a message did not go, most often as Slack refused it; most owe nothing.

    A guardian who got no notice is named to the staff, and a notice that the staff channel
    does not take goes to each coach: nobody may believe that somebody was told who was not.
    """
    if failed.kind == NoticeKind.FAMILY:
        return _to_writer(session, failed, now)
    if failed.kind != NoticeKind.PAIN or failed.line_id is None:
        return []
    if failed.state != MessageState.FAILED:
        return []
    if failed.person_id is None:
        return _to_coaches(session, failed, now)
    reports = select(PainReport.pitcher_id).where(PainReport.line_id == failed.line_id)
    teams = teams_of(session, set(session.exec(reports)))
    told = [notice for team in teams for notice in _to_staff(team, failed.line_id, now)]
    return [*told, *answers_again(failed.line_id, now)]


def _to_writer(session: Session, failed: OutboxMessage, now: datetime) -> list[Notice]:
    """Whoever wrote to a family hears that it did not go, with his own words."""
    message = session.get(FamilyMessage, int(failed.slot.split("/")[1]))
    writer = session.get(Person, message.person_id) if message is not None else None
    if message is None or writer is None or writer.slack_id is None or failed.ts is not None:
        return []
    return [
        Notice(
            slot=f"{NoticeKind.FAMILY_UNSENT}/{key(message)}",
            kind=NoticeKind.FAMILY_UNSENT,
            destination=writer.slack_id,
            not_before=now,
            line_id=failed.line_id,
            team_id=failed.team_id,
            person_id=key(writer),
        )
    ]


def _to_staff(team: Team, line_id: int, now: datetime) -> list[Notice]:
    """Their notice, which says who was told, brought up to date; and a message that alerts."""
    told = Notice(
        slot=f"{NoticeKind.PAIN}/{line_id}/team/{key(team)}",
        kind=NoticeKind.PAIN,
        destination=team.staff_channel,
        not_before=now,
        line_id=line_id,
        team_id=key(team),
        only_if_shown=True,
    )
    slot = f"{NoticeKind.UNREACHED}/{line_id}/team/{key(team)}"
    alert = replace(told, slot=slot, kind=NoticeKind.UNREACHED, only_if_shown=False)
    return [told, alert]


def _to_coaches(session: Session, failed: OutboxMessage, now: datetime) -> list[Notice]:
    staff = select(Membership.person_id).where(
        Membership.team_id == failed.team_id, col(Membership.role).in_(STAFF_ROLES)
    )
    coaches = select(Person).where(col(Person.id).in_(staff)).order_by(col(Person.id))
    return [
        Notice(
            slot=f"{NoticeKind.UNREACHED}/{failed.line_id}/{failed.team_id}/person/{key(coach)}",
            kind=NoticeKind.UNREACHED,
            destination=coach.slack_id,
            not_before=now,
            line_id=failed.line_id,
            team_id=failed.team_id,
            person_id=key(coach),
        )
        for coach in session.exec(coaches)
        if coach.slack_id is not None
    ]


def guardians_unreached(session: Session, line_id: int) -> list[Person]:
    """The guardians whose notice about this line Slack refused."""
    refused = select(OutboxMessage.person_id).where(
        OutboxMessage.line_id == line_id,
        OutboxMessage.kind == NoticeKind.PAIN,
        OutboxMessage.state == MessageState.FAILED,
    )
    people = select(Person).where(col(Person.id).in_(refused)).order_by(col(Person.id))
    return list(session.exec(people))
