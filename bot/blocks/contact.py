"""What is answered to a wish about messages, and told to the staff."""

from sqlmodel import Session

from bot.wording import contact as say
from bot.wording.words import safe
from core.audience import Relation
from core.contact.wish import OF_A_CHILD, Contact, contact_here, of_a_child
from core.contact.words import Wish
from core.ledger.crew import Crew, load_crew
from core.model import Line, OptOut, Person, Pitcher, key


def contact_said(session: Session, line: Line) -> str:
    """The answer to whoever wrote the wish; empty where the line is none."""
    author = session.get(Person, line.author_id) if line.author_id is not None else None
    if author is None:
        return ""
    crew = load_crew(session, author, None)
    found = contact_here(session, line, crew)
    if found is None or found.question is not None:
        return ""
    return _of_child(found) if found.wish in OF_A_CHILD else _own(found.wish, crew)


def _of_child(found: Contact) -> str:
    name = found.arm.name if found.arm is not None else ""
    return say.no_contact(name) if found.wish is Wish.NO_CONTACT else say.contact(name)


def _own(wish: Wish, crew: Crew) -> str:
    if wish is Wish.REMINDERS:
        return say.REMINDERS
    children = [arm for arm in crew.related(Relation.GUARDIAN) if arm.slack_id is not None]
    if not children:
        return say.NO_REMINDERS
    return f"{say.NO_REMINDERS} {say.OR_THE_CHILD.format(name=safe(children[0].name))}"


def for_staff(session: Session, line: Line) -> str:
    """What the staff hear of the wishes for a child that a line began or ended."""
    return "\n".join(_told(session, row, line) for row in of_a_child(session, line))


def _told(session: Session, row: OptOut, line: Line) -> str:
    guardian = session.get_one(Person, row.person_id).name
    pitcher = session.get(Pitcher, row.pitcher_id)
    name = pitcher.name if pitcher is not None else ""
    ended = row.ended_by == key(line) or row.ended_at is not None
    return (say.contact_for_staff if ended else say.no_contact_for_staff)(guardian, name)
