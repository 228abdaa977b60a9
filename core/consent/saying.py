"""Saying yes or no to a pitcher's record: in Slack by oneself, on paper by the staff."""

from datetime import date

from core.audience import Relation
from core.consent.asking import first_team, local_day
from core.consent.events import add_event
from core.consent.standing import may_consent
from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.ledger.crew import load_crew
from core.ledger.notices import Notice
from core.model import ConsentAct, ConsentEvent, ConsentWay, Pitcher, key


def say(hand: Hand, pitcher_id: int, act: ConsentAct) -> list[Notice]:
    """Agree, decline or withdraw in Slack. Raises `ByHandError` for whoever may not."""
    pitcher = _pitcher(hand, pitcher_id)
    on = local_day(first_team(hand.session, pitcher), hand.now)
    if key(hand.person) not in {key(one) for one in may_consent(hand.session, pitcher, on)}:
        raise ByHandError(Refusal.NOT_ALLOWED)
    event = ConsentEvent(
        workspace_id=pitcher.workspace_id,
        pitcher_id=key(pitcher),
        act=act,
        way=ConsentWay.SLACK,
        on=on,
        at=hand.now,
        person_id=key(hand.person),
        said_by=hand.person.name,
    )
    return add_event(hand.session, pitcher, event, hand.person, hand.now)


def record_on_paper(
    hand: Hand, pitcher_id: int, act: ConsentAct, said_by: str, on: date
) -> list[Notice]:
    """Record what a guardian said on paper; the staff alone may. Raises `ByHandError`."""
    pitcher = _pitcher(hand, pitcher_id)
    today = local_day(first_team(hand.session, pitcher), hand.now)
    if not may_record(hand, pitcher_id):
        raise ByHandError(Refusal.NOT_ALLOWED)
    if not pitcher.birth_date < on <= today:
        raise ByHandError(Refusal.IMPOSSIBLE, "on")
    event = ConsentEvent(
        workspace_id=pitcher.workspace_id,
        pitcher_id=pitcher_id,
        act=act,
        way=ConsentWay.PAPER,
        on=on,
        at=hand.now,
        said_by=said_by,
        recorded_by=key(hand.person),
    )
    return add_event(hand.session, pitcher, event, hand.person, hand.now)


def may_record(hand: Hand, pitcher_id: int) -> bool:
    """Whether somebody is of the pitcher's staff."""
    crew = load_crew(hand.session, hand.person, None)
    return Relation.STAFF in crew.relations.get(pitcher_id, frozenset())


def _pitcher(hand: Hand, pitcher_id: int) -> Pitcher:
    pitcher = hand.session.get(Pitcher, pitcher_id)
    if pitcher is None or pitcher.workspace_id != hand.person.workspace_id:
        raise ByHandError(Refusal.GONE)
    return pitcher
