"""A record is deleted outside of the listener: every line of the workspace is looked at."""

from datetime import datetime

from sqlmodel import Session

from bot.errands.errand import Finish, Tools
from core.consent.deleting import delete_record
from core.ledger import Notice
from core.matters import matter_notices
from core.model import Errand, Matter, Person, Pitcher


def do_delete(_tools: Tools, errand: Errand, now: datetime) -> Finish:
    """Delete the record that a matter names, in one transaction with the end of the errand."""

    def finish(session: Session) -> list[Notice]:
        matter = session.get_one(Matter, errand.data["matter"])
        pitcher = session.get(Pitcher, matter.pitcher_id) if matter.pitcher_id else None
        if pitcher is None:
            return []
        by = session.get_one(Person, matter.person_id)
        notices = matter_notices(session, matter, now)
        notices += delete_record(session, pitcher, by.slack_id or "", now)
        session.refresh(matter)
        return notices

    return finish
