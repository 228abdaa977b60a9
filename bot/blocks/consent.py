"""The messages about consent, from what was said as it stands."""

from datetime import date, datetime

from sqlmodel import Session

from bot.blocks.message import Button, Part
from bot.forms.form import opens
from bot.presses.press import presses
from bot.wording import consent as say
from core.consent.asking import first_team, local_day
from core.consent.standing import Consent, consent_of, may_consent
from core.ledger.people import teams_of
from core.model import (
    ConsentAct,
    ConsentEvent,
    ConsentWay,
    OutboxMessage,
    Person,
    Pitcher,
    key,
)


def consent_parts(session: Session, row: OutboxMessage, now: datetime) -> list[Part]:
    """The request to somebody who may say yes or no, or what became of it."""
    pitcher = session.get(Pitcher, int(row.slot.split("/")[1]))
    person = session.get(Person, row.person_id) if row.person_id is not None else None
    if pitcher is None or person is None:
        return [Part(say.RECORD_GONE)]
    today = local_day(first_team(session, pitcher), now)
    return consent_as_it_stands(session, pitcher, person, today)


def consent_as_it_stands(
    session: Session, pitcher: Pitcher, person: Person, today: date
) -> list[Part]:
    """What is asked of somebody who may say yes or no, or what was said; nothing for others."""
    if key(person) not in {key(one) for one in may_consent(session, pitcher, today)}:
        return []
    consent = consent_of(session, pitcher, today)
    if consent.against:
        return [_refused(pitcher, person, consent)]
    if consent.agreed is not None:
        return [_given(session, pitcher, person, consent.agreed)]
    if first_team(session, pitcher) is None:
        return [Part(say.on_no_team(pitcher.name))]
    return [_request(session, pitcher, person)]


def terms_for(session: Session, pitcher: Pitcher, person: Person | None) -> str:
    """What is agreed to, as it holds for this pitcher."""
    return say.terms(
        pitcher.name,
        [team.name for team in teams_of(session, {key(pitcher)})],
        has_account=pitcher.person_id is not None,
        is_own=person is not None and pitcher.person_id == person.id,
    )


def _request(session: Session, pitcher: Pitcher, person: Person) -> Part:
    text = say.request(
        pitcher.name,
        [team.name for team in teams_of(session, {key(pitcher)})],
        terms_for(session, pitcher, person),
        is_own=pitcher.person_id == person.id,
    )
    agree = _button(say.AGREE, ConsentAct.AGREED, pitcher, main=True)
    return Part(text, (agree, _button(say.DECLINE, ConsentAct.DECLINED, pitcher)))


def _given(session: Session, pitcher: Pitcher, person: Person, agreed: ConsentEvent) -> Part:
    text = say.given(
        pitcher.name,
        agreed.said_by,
        agreed.on,
        [team.name for team in teams_of(session, {key(pitcher)})],
        by_reader=agreed.person_id == person.id,
    )
    return Part(text, (_button(say.WITHDRAW, ConsentAct.WITHDRAWN, pitcher),))


def _refused(pitcher: Pitcher, person: Person, consent: Consent) -> Part:
    mine = consent.said_by(person)
    shown = mine if mine is not None and mine in consent.against else consent.against[0]
    by_reader = shown is mine
    text = say.refused(
        pitcher.name,
        shown.said_by,
        shown.on,
        by_reader=by_reader,
        withdrew=shown.act == ConsentAct.WITHDRAWN,
    )
    return Part(text, after_a_no(pitcher)[0 if by_reader else 1 :])


def without_consent(session: Session, pitcher: Pitcher, person: Person, now: datetime) -> Part:
    """What the Home tab of the family says where no consent stands, and what can be done."""
    today = local_day(first_team(session, pitcher), now)
    if key(person) not in {key(one) for one in may_consent(session, pitcher, today)}:
        return Part(say.nothing_shown(pitcher.name))
    consent = consent_of(session, pitcher, today)
    after_all, delete = after_a_no(pitcher)
    said_no = consent.said_by(person) in consent.against
    return Part(say.nothing_shown(pitcher.name), (after_all, delete) if said_no else (delete,))


def after_a_no(pitcher: Pitcher) -> tuple[Button, Button]:
    """What whoever said no can do: agree after all, or have the record deleted."""
    after_all = _button(say.AGREE_AFTER_ALL, ConsentAct.AGREED, pitcher)
    return after_all, Button(say.DELETE, opens("delete_record"), {"pitcher": key(pitcher)})


def _button(label: str, act: ConsentAct, pitcher: Pitcher, *, main: bool = False) -> Button:
    return Button(label, presses(f"consent_{act}"), {"pitcher": key(pitcher)}, main)


def said_parts(session: Session, row: OutboxMessage, _now: datetime) -> list[Part]:
    """What the staff hear of one event."""
    event = session.get(ConsentEvent, int(row.slot.split("/")[1]))
    if event is None:
        return [Part(say.RECORD_GONE)] if row.ts else []
    pitcher = session.get_one(Pitcher, event.pitcher_id)
    recorded = session.get(Person, event.recorded_by) if event.recorded_by is not None else None
    text = say.said_to_staff(
        pitcher.name,
        ConsentAct(event.act),
        ConsentWay(event.way),
        event.said_by,
        event.on,
        recorded.name if recorded else "",
    )
    return [Part(text)]


def kept_back_parts(session: Session, row: OutboxMessage, now: datetime) -> list[Part]:
    """That a pitcher's lines are kept back, or that they are no longer."""
    pitcher = session.get(Pitcher, int(row.slot.split("/")[1]))
    if pitcher is None:
        return [Part(say.RECORD_GONE)] if row.ts else []
    if pitcher.consent_on is not None:
        said = say.no_longer_kept_back(pitcher.name, pitcher.consent_on)
        return [Part(said)] if row.ts else []
    today = local_day(first_team(session, pitcher), now)
    may = may_consent(session, pitcher, today)
    asked = [person.name for person in may if person.slack_id is not None]
    button = Button(say.ON_PAPER, opens("consent_paper"), {"pitcher": key(pitcher)})
    return [Part(say.kept_back(pitcher.name, asked), (button,))]
