"""Lines that were kept are read again: with consent, or once the roster holds who they name."""

from datetime import datetime

from sqlmodel import Session

from bot.errands.errand import Finish, Tools
from core.consent.asking import bring_up_to_date
from core.consent.events import HEAR_KEPT, kept_lines
from core.ledger import Notice
from core.ledger.lines import hear_again
from core.model import Errand, Person, Pitcher, key
from core.roster.newcomers import hear_newcomers, lines_that_named

#: Lines of one transaction: a writer must not keep a listener waiting.
AT_ONCE = 10


def hear_kept(_tools: Tools, errand: Errand, now: datetime) -> Finish:
    """Hear a pitcher's kept-back lines, oldest first; what is left comes next."""

    def finish(session: Session) -> list[Notice]:
        pitcher = session.get(Pitcher, errand.data["pitcher"])
        if pitcher is None or pitcher.consent_on is None:
            return []
        waiting = kept_lines(session, pitcher)
        notices: list[Notice] = []
        for line in waiting[:AT_ONCE]:
            by = session.get(Person, errand.data["by"] or line.author_id)
            if by is not None:
                notices += hear_again(session, line, by, now)
        if len(waiting) > AT_ONCE:
            session.add(
                Errand(
                    workspace_id=errand.workspace_id,
                    kind=HEAR_KEPT,
                    data=errand.data,
                    not_before=now,
                )
            )
        return [*notices, *bring_up_to_date(session, pitcher, now)]

    return finish


def hear_of_newcomers(_tools: Tools, errand: Errand, now: datetime) -> Finish:
    """Hear the lines that named a pitcher before he was on the roster; what is left comes next."""

    def finish(session: Session) -> list[Notice]:
        after = int(errand.data["after"])
        waiting = lines_that_named(session, errand.workspace_id, now, after)[:AT_ONCE]
        notices: list[Notice] = []
        for line in waiting:
            by = session.get(Person, line.author_id)
            if by is not None:
                notices += hear_again(session, line, by, now)
        if waiting:
            hear_newcomers(session, errand.workspace_id, now, key(waiting[-1]))
        return notices

    return finish
