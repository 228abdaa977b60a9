"""A wish about what the bot writes, as an order that a line gives; kept until it is ended."""

from dataclasses import dataclass
from zoneinfo import ZoneInfo

from sqlmodel import Session, col, select

from core.audience import Relation
from core.contact.words import ContactWish, Wish, contact_wish
from core.ledger.apply import Change, audit
from core.ledger.clearance import ADULT, age_on
from core.ledger.crew import Crew
from core.ledger.question import Question, QuestionCode
from core.ledger.spoken import spoken
from core.ledger.who import Arm, find
from core.model import AuditAction, Line, OptOut, Pitcher, key

OF_A_CHILD = frozenset({Wish.NO_CONTACT, Wish.CONTACT})
FAMILY = frozenset({Relation.SELF, Relation.GUARDIAN})


@dataclass(frozen=True, slots=True)
class Contact:
    """A wish with the child that it is about (none for one's own reminders), or a question."""

    wish: Wish
    arm: Arm | None = None
    question: Question | None = None


def contact_here(session: Session, line: Line, crew: Crew) -> Contact | None:
    """The wish in a direct message of a guardian, or of a pitcher about his own reminders.

    For a child a guardian may ask wherever the bot reads: whoever asks in writing is heeded.
    """
    found = contact_wish(spoken(session, line))
    if found is None:
        return None
    if found.wish in OF_A_CHILD:
        return _for_child(session, line, crew, found)
    family = any(crew.relations[arm.pitcher_id] & FAMILY for arm in crew.arms)
    return Contact(found.wish) if line.direct and family else None


def _for_child(session: Session, line: Line, crew: Crew, found: ContactWish) -> Contact | None:
    mine = [arm for arm in crew.related(Relation.GUARDIAN) if _is_minor(session, line, crew, arm)]
    meant = [arm for arm in find(found.who, crew.arms) if arm in mine] if found.who else mine
    if len(meant) == 1:
        return Contact(found.wish, meant[0])
    if not meant:
        known = bool(found.who) and bool(find(found.who, crew.arms))
        about = Question(QuestionCode.ONLY_GUARDIAN)
        return Contact(found.wish, question=about) if known else None
    names = tuple(arm.name for arm in meant)
    return Contact(found.wish, question=Question(QuestionCode.WHO, choices=names))


def _is_minor(session: Session, line: Line, crew: Crew, arm: Arm) -> bool:
    on = line.posted_at.astimezone(ZoneInfo(crew.time_zone)).date()
    return age_on(session.get_one(Pitcher, arm.pitcher_id).birth_date, on) < ADULT


def obey_contact(change: Change, contact: Contact, by_person: int) -> None:
    """Begin or end what the wish is about, at once; what stands already is not begun again."""
    if contact.question is not None:
        return
    pitcher_id = contact.arm.pitcher_id if contact.arm is not None else None
    standing = _standing(change.session, by_person, pitcher_id)
    if contact.wish in {Wish.NO_CONTACT, Wish.NO_REMINDERS}:
        if not standing:
            _begin(change, by_person, pitcher_id)
        return
    for row in standing:
        row.ended_at, row.ended_by = change.at, key(change.line)
        change.session.add(row)
        audit(change, row, AuditAction.WITHDRAWN, {}, {"ended_at": change.at.isoformat()})


def _begin(change: Change, by_person: int, pitcher_id: int | None) -> None:
    row = OptOut(
        workspace_id=change.line.workspace_id,
        person_id=by_person,
        pitcher_id=pitcher_id,
        line_id=key(change.line),
        since=change.at,
    )
    change.session.add(row)
    change.session.flush()
    audit(change, row, AuditAction.RECORDED, {}, {"person": by_person, "pitcher": pitcher_id})


def _standing(session: Session, person_id: int, pitcher_id: int | None) -> list[OptOut]:
    rows = select(OptOut).where(
        OptOut.person_id == person_id,
        OptOut.pitcher_id == pitcher_id
        if pitcher_id is not None
        else col(OptOut.pitcher_id).is_(None),
        col(OptOut.ended_at).is_(None),
    )
    return list(session.exec(rows.order_by(col(OptOut.id))))


def of_a_child(session: Session, line: Line) -> list[OptOut]:
    """The wishes for a child that a line began or ended."""
    mine = (OptOut.line_id == key(line)) | (OptOut.ended_by == key(line))
    rows = select(OptOut).where(mine, col(OptOut.pitcher_id).is_not(None))
    return list(session.exec(rows.order_by(col(OptOut.id))))
