"""The answer to a question, from the record as it stands."""

from sqlmodel import Session

from bot.wording import asked as say
from core.ledger.asked import (
    HelpAnswer,
    MostAnswer,
    NoRecord,
    NotUnderstood,
    PlanAnswer,
    Refused,
    Reply,
    SeasonAnswer,
    SheetAnswer,
    ThrownAnswer,
    WhatIfAnswer,
    WhenAnswer,
    replies,
)
from core.ledger.binding import Books
from core.model import Line


def asked_text(session: Session, line: Line, books: Books) -> str:
    """The answers to a line's questions, one after the other."""
    return "\n\n".join(_text(found) for found in replies(session, line, books))


def _text(found: Reply) -> str:
    match found:
        case SheetAnswer():
            return say.sheet(found)
        case WhenAnswer():
            return say.when(found)
        case ThrownAnswer():
            return say.thrown(found)
        case SeasonAnswer():
            return say.season(found)
        case WhatIfAnswer():
            return say.what_if(found)
        case MostAnswer():
            return say.most(found)
        case PlanAnswer():
            return say.plan(found)
        case NoRecord():
            return say.no_record(found)
        case HelpAnswer():
            return say.help_text(found.is_staff)
        case Refused():
            return say.refused(found)
        case NotUnderstood():
            return say.not_understood(found)
