"""Whether consent stands, from the events: a "no" of anybody who may say it is stronger."""

from dataclasses import dataclass
from datetime import UTC, date, datetime, time

from sqlmodel import Session, col, select

from core.ledger.clearance import ADULT, age_on
from core.ledger.people import guardians_of
from core.model import ConsentAct, ConsentEvent, ConsentWay, Person, Pitcher, key


@dataclass(frozen=True, slots=True)
class Consent:
    """What was said last by each: the agreement that counts, and every "no" that stands."""

    agreed: ConsentEvent | None
    against: tuple[ConsentEvent, ...]
    #: The last event by voice: a person's id, "paper" or "file".
    last: dict[str, ConsentEvent]

    @property
    def since(self) -> date | None:
        """The day from which it stands; none while it does not."""
        return self.agreed.on if self.agreed is not None and not self.against else None

    @property
    def is_only_of_file(self) -> bool:
        """Whether nothing but a team file's date speaks, so that the file may change it."""
        return not self.against and all(one.way == ConsentWay.FILE for one in self.last.values())

    def said_by(self, person: Person) -> ConsentEvent | None:
        """What this person said last."""
        return self.last.get(str(person.id))


def consent_of(session: Session, pitcher: Pitcher, on: date) -> Consent:
    """The consent to a pitcher's record as it stands on a day.

    Any guardian's agreement is enough, and any guardian's "no" stops it until the same person
    agrees again. What somebody said who may no longer speak for the pitcher stops nothing.
    """
    rows = list(
        session.exec(
            select(ConsentEvent)
            .where(ConsentEvent.pitcher_id == key(pitcher))
            .order_by(col(ConsentEvent.id))
        )
    )
    if not rows and pitcher.consent_on is not None:
        rows = [_of_before(pitcher, pitcher.consent_on)]
    last = {_voice(row): row for row in rows}
    speak = {str(person.id) for person in may_consent(session, pitcher, on)}
    noes = [row for row in last.values() if row.act != ConsentAct.AGREED]
    against = tuple(row for row in noes if row.person_id is None or str(row.person_id) in speak)
    agreed = [row for row in last.values() if row.act == ConsentAct.AGREED]
    # A file that no longer has a date says nothing; it is no "no".
    against = tuple(row for row in against if row.way != ConsentWay.FILE)
    # After a "no" it stands from the day on which whoever said it agreed again.
    refused = {_voice(row) for row in rows if row.act != ConsentAct.AGREED}
    lifted = [row for row in agreed if _voice(row) in refused and row.way != ConsentWay.FILE]
    if lifted:
        return Consent(max(lifted, key=lambda row: row.id or 0), against, last)
    return Consent(min(agreed, key=lambda row: row.on, default=None), against, last)


def _of_before(pitcher: Pitcher, on: date) -> ConsentEvent:
    """A date that was on file before there were events."""
    return ConsentEvent(
        workspace_id=pitcher.workspace_id,
        pitcher_id=key(pitcher),
        act=ConsentAct.AGREED,
        way=ConsentWay.FILE,
        on=on,
        at=datetime.combine(on, time(), UTC),
    )


def _voice(row: ConsentEvent) -> str:
    return str(row.person_id) if row.person_id is not None else row.way


def may_consent(session: Session, pitcher: Pitcher, on: date) -> list[Person]:
    """Who may say yes or no: the guardians of a minor, an adult pitcher himself."""
    if age_on(pitcher.birth_date, on) < ADULT:
        return guardians_of(session, {key(pitcher)})
    own = session.get(Person, pitcher.person_id) if pitcher.person_id is not None else None
    return [own] if own is not None else []
