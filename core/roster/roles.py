"""Roles on a team: given and taken by a coach; the coach's own role by two, where there are two.

Pitchers and guardians hold their roles by the roster. Somebody may hold several.
"""

from datetime import datetime
from typing import Any, Final

from sqlmodel import Session, col, select

from core.ledger.audit import put_on_audit
from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.ledger.clearance import ADULT, age_on
from core.ledger.notices import Notice, NoticeKind
from core.matters import open_matter, settle
from core.model import (
    AuditAction,
    Matter,
    MatterState,
    Membership,
    Person,
    Pitcher,
    Role,
    Team,
    key,
)
from core.roster.errors import RosterError, Wrong
from core.roster.people import people_of, roles_on

#: The matter of a change of roles.
ROLE: Final = "role"
#: The roles that a coach gives and takes.
GIVEN: Final = (Role.COACH, Role.ASSISTANT, Role.SCOREKEEPER)


def change_role(hand: Hand, team_id: int, slack_id: str, role: Role, *, give: bool) -> list[Notice]:
    """Give a role, or take it; a coach's own waits for a second coach where there is one.

    Raises `RosterError`, `ByHandError` for who is no coach of the team.
    """
    _team_of_coach(hand, team_id)
    (person,) = people_of(hand.session, hand.person.workspace_id, [slack_id], hand.now)
    has = role in roles_on(hand.session, person, team_id)
    if has is give:
        raise RosterError("who", Wrong.NOTHING_TO_DO)
    if give and _is_minor(hand.session, person, hand.now):
        raise RosterError("who", Wrong.MINOR)
    if role is Role.COACH and not give and len(coaches_of(hand.session, team_id)) == 1:
        raise RosterError("who", Wrong.NO_COACH)
    second = _second_coaches(hand, team_id, person) if role is Role.COACH else []
    data = {
        "role": role.value,
        "give": give,
        "who": key(person),
        "second": [key(one) for one in second],
    }
    matter = open_matter(hand, ROLE, data, team_id=team_id)
    if not second:
        matter.state, matter.settled_at, matter.settled_by = (
            MatterState.DONE,
            hand.now,
            key(hand.person),
        )
        _apply(hand, matter)
    return role_notices(hand.session, matter, hand.now)


def confirm_role(hand: Hand, matter_id: int) -> list[Notice]:
    """Let a second coach confirm. Raises `ByHandError`."""
    matter = settle(hand, matter_id, ROLE, MatterState.DONE, by_another=True)
    _check_second(hand, matter)
    last = len(coaches_of(hand.session, matter.team_id or 0)) == 1
    if matter.data["role"] == Role.COACH and not matter.data["give"] and last:
        raise ByHandError(Refusal.GONE)
    _apply(hand, matter)
    return role_notices(hand.session, matter, hand.now)


def refuse_role(hand: Hand, matter_id: int) -> list[Notice]:
    """Let a second coach say no. Raises `ByHandError`."""
    matter = settle(hand, matter_id, ROLE, MatterState.CANCELLED, by_another=True)
    _check_second(hand, matter)
    return role_notices(hand.session, matter, hand.now)


def coaches_of(session: Session, team_id: int) -> list[Person]:
    """The coaches of a team, oldest first."""
    held = select(Membership.person_id).where(
        Membership.team_id == team_id, Membership.role == Role.COACH
    )
    return list(session.exec(select(Person).where(col(Person.id).in_(held)).order_by(Person.id)))  # type: ignore[arg-type]


def _team_of_coach(hand: Hand, team_id: int) -> Team:
    # The row is locked: two coaches must not take each other's role at one moment.
    team = hand.session.get(Team, team_id, with_for_update=True)
    if team is None or Role.COACH not in roles_on(hand.session, hand.person, team_id):
        raise ByHandError(Refusal.NOT_ALLOWED)
    return team


def _second_coaches(hand: Hand, team_id: int, person: Person) -> list[Person]:
    """The coaches who may confirm: others than the asker, and than the one it is about."""
    others = [
        one
        for one in coaches_of(hand.session, team_id)
        if one.id != hand.person.id and one.slack_id is not None
    ]
    return [one for one in others if one.id != person.id] or others


def _check_second(hand: Hand, matter: Matter) -> None:
    _team_of_coach(hand, matter.team_id or 0)
    if key(hand.person) not in matter.data["second"]:
        raise ByHandError(Refusal.NOT_ALLOWED)


def _is_minor(session: Session, person: Person, now: datetime) -> bool:
    pitchers = session.exec(select(Pitcher).where(Pitcher.person_id == person.id))
    return any(age_on(one.birth_date, now.date()) < ADULT for one in pitchers)


def _apply(hand: Hand, matter: Matter) -> None:
    session, data = hand.session, matter.data
    held = session.exec(
        select(Membership).where(
            Membership.team_id == matter.team_id,
            Membership.person_id == data["who"],
            Membership.role == data["role"],
        )
    ).first()
    if data["give"] and held is None:
        held = Membership(
            workspace_id=matter.workspace_id,
            team_id=matter.team_id or 0,
            person_id=data["who"],
            role=data["role"],
        )
        session.add(held)
        session.flush()
        _audit(hand, matter, held, {}, _as_json(held))
    elif not data["give"] and held is not None:
        _audit(hand, matter, held, _as_json(held), {})
        session.delete(held)
    session.flush()


def _as_json(held: Membership) -> dict[str, Any]:
    return {"team": held.team_id, "person": held.person_id, "role": held.role}


def _audit(
    hand: Hand, matter: Matter, held: Membership, before: dict[str, Any], after: dict[str, Any]
) -> None:
    asked_by = hand.session.get_one(Person, matter.person_id)
    action = AuditAction.RECORDED if after else AuditAction.WITHDRAWN
    put_on_audit(
        hand.session, held, action, asked_by.slack_id or "", hand.now,
        before=before, after={**after, "confirmed_by": matter.settled_by},
    )  # fmt: skip


def role_notices(session: Session, matter: Matter, now: datetime) -> list[Notice]:
    """The messages about a change: the asker, the coaches who may confirm, whom it is about."""
    people = {matter.person_id, *matter.data["second"]}
    if matter.state == MatterState.DONE:
        people.add(matter.data["who"])
    rows = session.exec(select(Person).where(col(Person.id).in_(people)))
    return [
        Notice(
            slot=f"{NoticeKind.MATTER}/{key(matter)}/person/{key(person)}",
            kind=NoticeKind.MATTER,
            destination=person.slack_id,
            not_before=now,
            team_id=matter.team_id,
            person_id=key(person),
        )
        for person in rows
        if person.slack_id is not None
    ]
