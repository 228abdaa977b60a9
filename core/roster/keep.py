"""Adding a pitcher and changing one by hand; the same rules as those of the team file."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

from sqlmodel import Session, col, select

from core.audience import has_own_account
from core.consent.asking import ask_for_consent, bring_up_to_date, local_day
from core.consent.events import settle_consent
from core.ledger.audit import put_on_audit
from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.ledger.clearance import ADULT, age_on
from core.ledger.notices import Notice, NoticeKind
from core.ledger.people import guardians_of, teams_of
from core.model import (
    AuditAction,
    GuardianLink,
    Membership,
    Person,
    Pitcher,
    PitcherTeam,
    Role,
    Team,
    key,
)
from core.roster.errors import RosterError, Wrong
from core.roster.newcomers import hear_newcomers
from core.roster.people import is_staff, people_of

#: Ages (years) that a pitcher in youth baseball can have; anything else is a slip of the pen.
PLAUSIBLE_AGES = range(5, 23)


@dataclass(frozen=True, slots=True)
class PitcherEntry:
    """What the staff fill in; a birth date of none keeps the one on file."""

    values: Mapping[str, Any]
    birth_date: date | None
    account: str | None
    guardians: tuple[str, ...]
    #: Names of guardians without a Slack account.
    guardians_on_file: tuple[str, ...]


def add_pitcher(hand: Hand, team_id: int, entry: PitcherEntry) -> list[Notice]:
    """Add a pitcher to a team. Raises `RosterError`, `ByHandError` for who is not its staff."""
    team = _team(hand, team_id)
    if entry.birth_date is None:
        raise RosterError("birth_date", Wrong.NO_BIRTH_DATE)
    if _known(hand, entry):
        raise RosterError("name", Wrong.KNOWN)
    pitcher = Pitcher(
        workspace_id=team.workspace_id, birth_date=entry.birth_date, **dict(entry.values)
    )
    hand.session.add(pitcher)
    hand.session.flush()
    hand.session.add(
        PitcherTeam(workspace_id=team.workspace_id, pitcher_id=key(pitcher), team_id=team_id)
    )
    _audit(hand, pitcher, AuditAction.RECORDED, sorted(entry.values))
    notices = _link(hand, pitcher, [team], entry)
    hear_newcomers(hand.session, team.workspace_id, hand.now)
    return [*notices, _added(hand, pitcher, team)]


def _added(hand: Hand, pitcher: Pitcher, team: Team) -> Notice:
    return Notice(
        slot=f"{NoticeKind.ADDED}/{key(pitcher)}",
        kind=NoticeKind.ADDED,
        destination=hand.slack_id,
        not_before=hand.now,
        team_id=key(team),
        person_id=key(hand.person),
    )


def change_pitcher(hand: Hand, pitcher_id: int, entry: PitcherEntry) -> list[Notice]:
    """Change a pitcher. Raises `RosterError`, `ByHandError` for who is not of the staff."""
    pitcher = staffed_pitcher(hand, pitcher_id)
    wanted = {**entry.values, "birth_date": entry.birth_date or pitcher.birth_date}
    changed = [name for name, value in wanted.items() if getattr(pitcher, name) != value]
    for name in changed:
        setattr(pitcher, name, wanted[name])
    hand.session.add(pitcher)
    hand.session.flush()
    before = _links(hand.session, pitcher)
    notices = _link(hand, pitcher, teams_of(hand.session, {pitcher_id}), entry)
    after = _links(hand.session, pitcher)
    changed += [name for name in after if before[name] != after[name]]
    if changed:
        _audit(hand, pitcher, AuditAction.CORRECTED, changed)
    return notices


def _links(session: Session, pitcher: Pitcher) -> dict[str, Any]:
    """Who is linked to a pitcher, by the names of the form's fields."""
    links = select(GuardianLink.person_id).where(GuardianLink.pitcher_id == key(pitcher))
    return {"account": pitcher.person_id, "guardians": set(session.exec(links))}


def staffed_pitcher(hand: Hand, pitcher_id: int) -> Pitcher:
    """The pitcher, for the staff of one of his teams. Raises `ByHandError` for anybody else."""
    pitcher = hand.session.get(Pitcher, pitcher_id)
    if pitcher is None or pitcher.workspace_id != hand.person.workspace_id:
        raise ByHandError(Refusal.GONE)
    teams = teams_of(hand.session, {pitcher_id})
    if not any(is_staff(hand.session, hand.person, key(team)) for team in teams):
        raise ByHandError(Refusal.NOT_ALLOWED)
    return pitcher


def _team(hand: Hand, team_id: int) -> Team:
    team = hand.session.get(Team, team_id)
    if team is None or not is_staff(hand.session, hand.person, team_id):
        raise ByHandError(Refusal.NOT_ALLOWED)
    return team


def _known(hand: Hand, entry: PitcherEntry) -> bool:
    same_day = select(Pitcher.name).where(
        Pitcher.workspace_id == hand.person.workspace_id, Pitcher.birth_date == entry.birth_date
    )
    name = str(entry.values["name"]).casefold()
    return any(known.casefold() == name for known in hand.session.exec(same_day))


def _link(hand: Hand, pitcher: Pitcher, teams: list[Team], entry: PitcherEntry) -> list[Notice]:
    """The account and the guardians, checked, and consent as it follows from them."""
    session, today = hand.session, local_day(teams[0], hand.now)
    age = age_on(pitcher.birth_date, today) if pitcher.birth_date <= today else -1
    if age not in PLAUSIBLE_AGES:
        raise RosterError("birth_date", Wrong.AGE)
    _check_account(hand, pitcher, entry, age, max(team.account_age for team in teams))
    if age < ADULT and not (entry.guardians or entry.guardians_on_file):
        raise RosterError("guardians", Wrong.NO_GUARDIAN)
    if entry.account is not None and entry.account in entry.guardians:
        raise RosterError("guardians", Wrong.OWN_GUARDIAN)
    workspace_id = pitcher.workspace_id
    account = people_of(session, workspace_id, [entry.account] if entry.account else [], hand.now)
    pitcher.person_id = key(account[0]) if account else None
    session.add(pitcher)
    people = people_of(session, workspace_id, entry.guardians, hand.now)
    people += _on_file(session, pitcher, entry.guardians_on_file)
    _set_guardians(session, pitcher, {key(person) for person in people})
    session.flush()
    return [
        *settle_consent(session, pitcher, hand.person, hand.now),
        *ask_for_consent(session, pitcher, hand.now),
        *bring_up_to_date(session, pitcher, hand.now),
    ]


def _check_account(
    hand: Hand, pitcher: Pitcher, entry: PitcherEntry, age: int, account_age: int
) -> None:
    if entry.account is None:
        return
    if not has_own_account(age, account_age):
        raise RosterError("account", Wrong.TOO_YOUNG)
    of_account = select(Person.id).where(
        Person.workspace_id == pitcher.workspace_id, Person.slack_id == entry.account
    )
    person_id = hand.session.exec(of_account).first()
    if person_id is None:
        return
    others = select(Pitcher.id).where(Pitcher.person_id == person_id, Pitcher.id != pitcher.id)
    if hand.session.exec(others).first() is not None:
        raise RosterError("account", Wrong.TAKEN)
    if age < ADULT and _has_a_role(hand.session, person_id):
        raise RosterError("account", Wrong.MINOR_WITH_A_ROLE)


def _has_a_role(session: Session, person_id: int) -> bool:
    """Whether an account is that of staff, a scorekeeper or a guardian."""
    adults = [Role.COACH, Role.ASSISTANT, Role.SCOREKEEPER, Role.GUARDIAN]
    roles = select(Membership.id).where(
        Membership.person_id == person_id, col(Membership.role).in_(adults)
    )
    wards = select(GuardianLink.pitcher_id).where(GuardianLink.person_id == person_id)
    return session.exec(roles).first() is not None or session.exec(wards).first() is not None


def _on_file(session: Session, pitcher: Pitcher, names: tuple[str, ...]) -> list[Person]:
    """Guardians without an account: the pitcher's own of that name, or new ones."""
    known = {
        person.name.casefold(): person
        for person in guardians_of(session, {key(pitcher)})
        if person.slack_id is None
    }
    people = []
    for name in names:
        person = known.get(name.casefold())
        if person is None:
            person = Person(workspace_id=pitcher.workspace_id, slack_id=None, name=name)
            session.add(person)
        people.append(person)
    session.flush()
    return people


def _set_guardians(session: Session, pitcher: Pitcher, wanted: set[int]) -> None:
    links = select(GuardianLink).where(GuardianLink.pitcher_id == key(pitcher))
    held = {link.person_id: link for link in session.exec(links)}
    for gone in held.keys() - wanted:
        session.delete(held[gone])
    for person_id in sorted(wanted - held.keys()):
        session.add(
            GuardianLink(
                workspace_id=pitcher.workspace_id, person_id=person_id, pitcher_id=key(pitcher)
            )
        )


def _audit(hand: Hand, pitcher: Pitcher, action: AuditAction, fields: list[str]) -> None:
    # The fields alone: a birth date has no place in a second table.
    put_on_audit(hand.session, pitcher, action, hand.slack_id, hand.now, after={"fields": fields})
