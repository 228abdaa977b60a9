"""Write a plan into the caller's open transaction."""

from collections.abc import Mapping
from datetime import date, datetime
from typing import Any

from sqlmodel import Session, SQLModel, col, select

from bot.team_file.plan import PersonPlan, PitcherPlan, Plan, TeamPlan
from bot.team_file.wanted import TABLE_ROLES, PersonRef
from bot.team_file.year import PartPlan
from core.consent.asking import ask_for_consent
from core.consent.events import add_event
from core.ledger import Notice
from core.model import (
    ConsentAct,
    ConsentEvent,
    ConsentWay,
    GuardianLink,
    Membership,
    Person,
    Pitcher,
    PitcherTeam,
    Season,
    Team,
    TeamEvent,
    Workspace,
    key,
)
from core.roster.newcomers import hear_newcomers


def apply_plan(session: Session, workspace_id: str, plan: Plan, now: datetime) -> list[Notice]:
    """Add and change rows; nothing but a role, a link or a part of the year is taken away.

    Gives what must be told: requests for consent, and what follows where it changed.
    """
    if session.get(Workspace, workspace_id) is None:
        session.add(Workspace(id=workspace_id))
        session.flush()
    people = {one.wanted: _save_person(session, workspace_id, one) for one in plan.people}
    team_ids = {one.wanted.name: _save_team(session, workspace_id, one) for one in plan.teams}
    for team in plan.teams:
        team_id = team_ids[team.wanted.name]
        _set_staff(session, workspace_id, team, team_id, people)
        place = {"workspace_id": workspace_id, "team_id": team_id}
        _set_year(session, Season, "kind", team.seasons, place)
        _set_year(session, TeamEvent, "name", team.events, place)
    notices: list[Notice] = []
    for pitcher in plan.pitchers:
        row = _save_pitcher(session, workspace_id, pitcher, team_ids, people)
        session.flush()
        notices += _set_consent(session, row, pitcher.wanted.values["consent_on"], now)
    if plan.pitchers:
        hear_newcomers(session, workspace_id, now)
    return notices


def _set_consent(
    session: Session, pitcher: Pitcher, on: date | None, now: datetime
) -> list[Notice]:
    """Bring consent to what the file says, as an event; ask for it where there is none."""
    notices: list[Notice] = []
    if pitcher.consent_on != on:
        event = ConsentEvent(
            workspace_id=pitcher.workspace_id,
            pitcher_id=key(pitcher),
            act=ConsentAct.AGREED if on is not None else ConsentAct.WITHDRAWN,
            way=ConsentWay.FILE,
            on=on or now.date(),
            at=now,
        )
        notices += add_event(session, pitcher, event, None, now)
    return [*notices, *ask_for_consent(session, pitcher, now)]


def _save_person(session: Session, workspace_id: str, plan: PersonPlan) -> int:
    values = {"slack_id": plan.wanted.slack_id, "name": plan.wanted.name}
    return _save(session, Person, plan.id, {**values, "workspace_id": workspace_id})


def _save_team(session: Session, workspace_id: str, plan: TeamPlan) -> int:
    return _save(session, Team, plan.id, {**plan.wanted.values, "workspace_id": workspace_id})


def _save(
    session: Session, model: type[SQLModel], row_id: int | None, values: Mapping[str, Any]
) -> int:
    """Add the row, or set the fields that differ; its id."""
    row = model(**values) if row_id is None else session.get_one(model, row_id)
    for name, value in values.items():
        if getattr(row, name) != value:
            setattr(row, name, value)
    session.add(row)
    session.flush()
    return key(row)


def _set_staff(
    session: Session,
    workspace_id: str,
    plan: TeamPlan,
    team_id: int,
    people: Mapping[PersonRef, int],
) -> None:
    wanted = {(people[ref], role) for role in TABLE_ROLES for ref in plan.wanted.staff[role]}
    listed = select(Membership).where(
        Membership.team_id == team_id, col(Membership.role).in_(TABLE_ROLES)
    )
    held = {(row.person_id, row.role): row for row in session.exec(listed)}
    for gone in held.keys() - wanted:
        session.delete(held[gone])
    for person_id, role in sorted(wanted - held.keys()):
        session.add(
            Membership(workspace_id=workspace_id, team_id=team_id, person_id=person_id, role=role)
        )


def _set_year(
    session: Session,
    model: type[Season] | type[TeamEvent],
    name: str,
    plans: tuple[PartPlan, ...],
    place: Mapping[str, Any],
) -> None:
    """Bring a team's rows of one table to the plan; `name` is the column of a part's name."""
    for plan in plans:
        if plan.after is None:
            session.delete(session.get_one(model, plan.id))
        elif plan.differs:
            books = plan.after.rule_books
            values = {
                name: plan.after.name,
                "starts_on": plan.after.starts_on,
                "ends_on": plan.after.ends_on,
                "rule_books": None if books is None else list(books),
            }
            _save(session, model, plan.id, {**place, **values})


def _save_pitcher(
    session: Session,
    workspace_id: str,
    plan: PitcherPlan,
    team_ids: Mapping[str, int],
    people: Mapping[PersonRef, int],
) -> Pitcher:
    account = people[plan.wanted.account] if plan.wanted.account else None
    values = {name: said for name, said in plan.wanted.values.items() if name != "consent_on"}
    pitcher_id = _save(
        session,
        Pitcher,
        plan.id,
        {**values, "workspace_id": workspace_id, "person_id": account},
    )
    _set_guardians(
        session, workspace_id, pitcher_id, {people[ref] for ref in plan.wanted.guardians}
    )
    listed = set(team_ids.values())
    wanted = {team_ids[name] for name in plan.wanted.teams}
    _set_teams(session, workspace_id, pitcher_id, wanted, listed)
    return session.get_one(Pitcher, pitcher_id)


def _set_guardians(session: Session, workspace_id: str, pitcher_id: int, wanted: set[int]) -> None:
    links = select(GuardianLink).where(GuardianLink.pitcher_id == pitcher_id)
    held = {link.person_id: link for link in session.exec(links)}
    for gone in held.keys() - wanted:
        session.delete(held[gone])
    for person_id in sorted(wanted - held.keys()):
        session.add(
            GuardianLink(workspace_id=workspace_id, person_id=person_id, pitcher_id=pitcher_id)
        )


def _set_teams(
    session: Session, workspace_id: str, pitcher_id: int, wanted: set[int], listed: set[int]
) -> None:
    places = select(PitcherTeam).where(PitcherTeam.pitcher_id == pitcher_id)
    held = {place.team_id: place for place in session.exec(places)}
    for gone in held.keys() & listed - wanted:
        session.delete(held[gone])
    for team_id in sorted(wanted - held.keys()):
        session.add(PitcherTeam(workspace_id=workspace_id, pitcher_id=pitcher_id, team_id=team_id))
