"""What follows a message that stands in Slack: the further pages, in its thread."""

from sqlmodel import Session

from core.due.summary import pages
from core.ledger.notices import Notice, NoticeKind
from core.model import OutboxMessage, Team

_PAGE = "/page/"


def following(session: Session, sent: OutboxMessage) -> list[Notice]:
    """The pages that belong under a summary that was just sent; most messages have none."""
    if sent.kind != NoticeKind.MONDAY_SUMMARY or _PAGE in sent.slot or sent.ts is None:
        return []
    team = session.get(Team, sent.team_id)
    last = pages(session, team) if team is not None else 1
    return [
        Notice(
            slot=f"{sent.slot}{_PAGE}{number}",
            kind=NoticeKind.MONDAY_SUMMARY,
            destination=sent.destination,
            not_before=sent.not_before,
            team_id=sent.team_id,
            thread_ts=sent.ts,
        )
        for number in range(2, last + 1)
    ]


def page_number(slot: str) -> int:
    """Which page a slot is: 1 for the summary itself."""
    _head, mark, number = slot.partition(_PAGE)
    return int(number) if mark else 1
