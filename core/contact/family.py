"""What the staff write to a family: always one conversation with a guardian in it, or nothing.

Nothing that an adult writes goes to one minor alone: that another adult is a visible party from
the first message on is what communication policies for minor athletes ask for (US Center for
SafeSport, Minor Athlete Abuse Prevention Policies: open and transparent).
"""

from dataclasses import dataclass
from zoneinfo import ZoneInfo

from sqlmodel import Session, select

from core.audience import Occasion, Relation, Told, who_is_told
from core.contact.reach import himself
from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.ledger.clearance import ADULT, age_on
from core.ledger.crew import load_crew
from core.ledger.notices import Notice, NoticeKind, quiet_until
from core.ledger.people import guardians_of
from core.model import FamilyMessage, Line, PainReport, Person, Pitcher, Team, key

#: Slack opens a conversation with at most eight others (docs.slack.dev, conversations.open).
MOST_PEOPLE = 8


@dataclass(frozen=True, slots=True)
class Family:
    """Who reads what this person of the staff writes about a pitcher; none: it must not go."""

    pitcher: Pitcher
    team: Team
    readers: tuple[Person, ...]

    @property
    def is_open(self) -> bool:
        """Whether there is an adult of the family in it."""
        return bool(self.readers)


def family_of(hand: Hand, line_id: int, pitcher_id: int) -> Family | None:
    """The family behind a report of pain, for somebody of the pitcher's staff; else none."""
    session = hand.session
    line, pitcher = session.get(Line, line_id), session.get(Pitcher, pitcher_id)
    if line is None or pitcher is None or line.workspace_id != hand.person.workspace_id:
        return None
    reported = select(PainReport.id).where(
        PainReport.line_id == line_id, PainReport.pitcher_id == pitcher_id
    )
    crew = load_crew(session, hand.person, None)
    relations = crew.relations.get(pitcher_id, frozenset())
    if session.exec(reported).first() is None or Relation.STAFF not in relations:
        return None
    team = session.get_one(Team, crew.teams_of[pitcher_id][0])
    today = hand.now.astimezone(ZoneInfo(crew.time_zone)).date()
    own = himself(session, pitcher, team, today)
    adults = [own] if age_on(pitcher.birth_date, today) >= ADULT else _guardians(session, pitcher)
    readers = [one for one in adults if one is not None and key(one) != key(hand.person)]
    if readers and own is not None and own not in readers:
        readers.append(own)
    return Family(pitcher, team, tuple(readers[: MOST_PEOPLE - 1]))


def _guardians(session: Session, pitcher: Pitcher) -> list[Person | None]:
    people = guardians_of(session, {key(pitcher)})
    return [person for person in people if person.slack_id is not None]


def write_to_family(
    hand: Hand, line_id: int, pitcher_id: int, text: str, origin: str
) -> list[Notice]:
    """Keep what was written and owe it to the family's conversation; once for each `origin`.

    Raises `ByHandError` for whoever is not of the staff, and where no adult of the family is
    in the workspace: then nothing is kept and nothing goes.
    """
    family = family_of(hand, line_id, pitcher_id)
    if family is None:
        raise ByHandError(Refusal.NOT_ALLOWED)
    if not family.is_open or Told.FAMILY_GROUP not in who_is_told(Occasion.STAFF_WRITES).told:
        raise ByHandError(Refusal.NO_GUARDIAN)
    known = select(FamilyMessage.id).where(
        FamilyMessage.workspace_id == hand.person.workspace_id, FamilyMessage.origin == origin
    )
    if hand.session.exec(known).first() is not None:
        return []
    row = FamilyMessage(
        workspace_id=hand.person.workspace_id,
        origin=origin,
        line_id=line_id,
        pitcher_id=pitcher_id,
        person_id=key(hand.person),
        text=text,
        written_at=hand.now,
    )
    hand.session.add(row)
    hand.session.flush()
    people = sorted({one.slack_id or "" for one in (*family.readers, hand.person)})
    return [
        Notice(
            slot=f"{NoticeKind.FAMILY}/{key(row)}",
            kind=NoticeKind.FAMILY,
            destination=",".join(people),
            not_before=quiet_until(hand.now, family.team.time_zone),
            line_id=line_id,
            team_id=key(family.team),
        )
    ]


def may_still_go(session: Session, message: FamilyMessage, destination: str) -> bool:
    """Whether the conversation of a message that waited is what it must be as things stand now."""
    writer = session.get_one(Person, message.person_id)
    hand = Hand(session, writer, message.written_at)
    family = family_of(hand, message.line_id, message.pitcher_id)
    if family is None or not family.is_open:
        return False
    now = {one.slack_id for one in (*family.readers, writer)}
    return set(destination.split(",")) <= now
