"""Where the words for a pitcher go, and which messages must not leave any more."""

from datetime import date

from sqlalchemy import bindparam
from sqlmodel import Session, col, select

from core.audience import has_own_account
from core.ledger.clearance import ADULT, age_on
from core.ledger.notices import NoticeKind
from core.ledger.people import guardians_of
from core.model import OptOut, OutboxMessage, Person, Pitcher, Team, key

#: What "no more reminders" ends; pain, holds, alerts about health and answers it does not.
REMINDERS = frozenset(
    {
        NoticeKind.REST_DAYS,
        NoticeKind.LAST_REST_DAY,
        NoticeKind.SPIN_REPS,
        NoticeKind.ASKED_AGAIN,
    }
)

#: A reaction in a channel, and the page that somebody opens himself.
NOT_WRITTEN_TO = frozenset({NoticeKind.REACTION, NoticeKind.HOME})


_ASKED = (
    select(OptOut.person_id)
    .where(col(OptOut.pitcher_id) == bindparam("pitcher"), col(OptOut.ended_at).is_(None))
    .order_by(col(OptOut.id))
)
_HIMSELF = select(Pitcher).where(col(Pitcher.person_id) == bindparam("person"))
_FOR_HIM = (
    select(Pitcher, Person)
    .join(OptOut, col(OptOut.pitcher_id) == col(Pitcher.id))
    .join(Person, col(Person.id) == col(OptOut.person_id))
    .where(col(Pitcher.person_id) == bindparam("person"), col(OptOut.ended_at).is_(None))
    .order_by(col(Pitcher.id), col(OptOut.id))
)


def opted_out_for(session: Session, pitcher: Pitcher, on: date) -> Person | None:
    """The guardian who asked that this pitcher is not written to; none for an adult (18)."""
    if age_on(pitcher.birth_date, on) >= ADULT:
        return None
    person_id = session.exec(_ASKED, params={"pitcher": key(pitcher)}).first()
    return session.get(Person, person_id) if person_id is not None else None


def himself(session: Session, pitcher: Pitcher, team: Team, on: date) -> Person | None:
    """The pitcher's own account, where he has reached the account age and may be written to."""
    if pitcher.person_id is None or opted_out_for(session, pitcher, on) is not None:
        return None
    if not has_own_account(age_on(pitcher.birth_date, on), team.account_age):
        return None
    person = session.get(Person, pitcher.person_id)
    return person if person is not None and person.slack_id is not None else None


def pitcher_or_guardians(session: Session, pitcher: Pitcher, team: Team, on: date) -> list[Person]:
    """Who reads what is meant for a pitcher: himself, else his guardians with an account.

    Where a guardian asked that he is not written to, it is that guardian alone.
    """
    guardian = opted_out_for(session, pitcher, on)
    if guardian is not None:
        return [guardian] if guardian.slack_id is not None else []
    own = himself(session, pitcher, team, on)
    if own is not None:
        return [own]
    guardians = guardians_of(session, {key(pitcher)})
    return [person for person in guardians if person.slack_id is not None]


def speaks_instead(session: Session, author_id: int | None, on: date) -> Person | None:
    """The guardian who gets the answers to this author's lines; none for most authors."""
    if author_id is None:
        return None
    for own, guardian in session.exec(_FOR_HIM, params={"person": author_id}):
        if age_on(own.birth_date, on) < ADULT:
            return guardian if guardian.slack_id is not None else None
    return None


def is_silenced(session: Session, row: OutboxMessage, on: date) -> bool:
    """Whether a message must not leave, nor be changed, on a day: its reader is opted out."""
    person_id = _reader(session, row)
    if person_id is None:
        return False
    if row.kind in REMINDERS and wants_no_reminders(session, person_id):
        return True
    own = session.exec(_HIMSELF, params={"person": person_id}).first()
    return own is not None and opted_out_for(session, own, on) is not None


def wants_no_reminders(session: Session, person_id: int) -> bool:
    """Whether somebody asked for no more reminders, and has not taken it back."""
    own = select(OptOut.id).where(
        OptOut.person_id == person_id,
        col(OptOut.pitcher_id).is_(None),
        col(OptOut.ended_at).is_(None),
    )
    return session.exec(own.limit(1)).first() is not None


def _reader(session: Session, row: OutboxMessage) -> int | None:
    """The one person who reads a message, where there is one; a channel has several."""
    if row.kind in NOT_WRITTEN_TO:
        return None
    known = select(Person.id).where(
        Person.workspace_id == row.workspace_id, Person.slack_id == row.destination
    )
    return session.exec(known).first()
