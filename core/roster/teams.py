"""A team as its coach sets it up in Slack, and as it is changed later, with its history."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any
from zoneinfo import available_timezones

from sqlmodel import Session, col, select

from core.audience import LOWEST_ACCOUNT_AGE, has_own_account
from core.ledger.audit import put_on_audit, subject_of
from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.ledger.clearance import age_on
from core.model import (
    AuditAction,
    AuditEntry,
    Errand,
    Membership,
    Person,
    Pitcher,
    PitcherTeam,
    Role,
    Team,
    key,
)
from core.roster.errors import RosterError, Wrong
from core.roster.first_steps import may_found
from core.roster.people import roles_on

#: The errand that looks whether the bot is in a team's channels.
LOOK_AT_CHANNELS = "look at channels"
HIGHEST_ACCOUNT_AGE = 18
#: What a team's form sets; the audit keeps each from what to what.
SET = (
    "name", "age_group", "time_zone", "log_channel", "staff_channel", "rule_books", "account_age",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Changed:
    """One change of a team's settings."""

    on: date
    by: str
    before: Mapping[str, Any]
    after: Mapping[str, Any]


def found_team(hand: Hand, values: Mapping[str, Any]) -> Team:
    """Make a team; whoever does it is its coach.

    Raises `RosterError`, `ByHandError` for who may not.
    """
    if not may_found(hand.session, hand.person, hand.now):
        raise ByHandError(Refusal.NOT_ALLOWED)
    workspace_id = hand.person.workspace_id
    _check(hand.session, workspace_id, values, None)
    team = Team(workspace_id=workspace_id, **dict(values))
    hand.session.add(team)
    hand.session.flush()
    hand.session.add(
        Membership(
            workspace_id=workspace_id,
            team_id=key(team),
            person_id=key(hand.person),
            role=Role.COACH,
        )
    )
    put_on_audit(hand.session, team, AuditAction.RECORDED, hand.slack_id, hand.now, after=values)
    _look(hand, team)
    return team


def change_team(hand: Hand, team_id: int, values: Mapping[str, Any]) -> int:
    """Change a team; gives how many accounts of pitchers are too young for it now.

    Their accounts are taken off the roster: guardians and staff log for them then. Raises
    `RosterError`, `ByHandError` for who is no coach of it.
    """
    team = team_to_change(hand, team_id)
    _check(hand.session, team.workspace_id, values, team)
    changed = put_changes(hand, team, values)
    if changed.keys() & {"log_channel", "staff_channel"}:
        _look(hand, team)
    return _take_accounts(hand, team) if "account_age" in changed else 0


def team_to_change(hand: Hand, team_id: int) -> Team:
    """The team, locked, for its coach; raises `ByHandError` for who is none."""
    team = hand.session.get(Team, team_id, with_for_update=True)
    if team is None or Role.COACH not in roles_on(hand.session, hand.person, team_id):
        raise ByHandError(Refusal.NOT_ALLOWED)
    return team


def put_changes(hand: Hand, team: Team, values: Mapping[str, Any]) -> dict[str, Any]:
    """Set what differs from the team as it is, with its entry in the audit; gives what that was."""
    changed = {name: value for name, value in values.items() if getattr(team, name) != value}
    if not changed:
        return changed
    before = {name: getattr(team, name) for name in changed}
    for name, value in changed.items():
        setattr(team, name, value)
    hand.session.add(team)
    put_on_audit(
        hand.session, team, AuditAction.CORRECTED, hand.slack_id, hand.now,
        before=before, after=changed,
    )  # fmt: skip
    return changed


def history(session: Session, team: Team, most: int) -> list[Changed]:
    """The newest changes of a team's settings, newest first."""
    rows = session.exec(
        select(AuditEntry, Person.name)
        .join(
            Person,
            (col(Person.slack_id) == col(AuditEntry.by_slack_id))
            & (col(Person.workspace_id) == col(AuditEntry.workspace_id)),
        )
        .where(AuditEntry.subject == subject_of(Team), AuditEntry.subject_id == key(team))
        .where(AuditEntry.action == AuditAction.CORRECTED)
        .order_by(col(AuditEntry.id).desc())
        .limit(most)
    ).all()
    return [Changed(row.at.date(), name, row.before, row.after) for row, name in rows]


def _check(
    session: Session, workspace_id: str, values: Mapping[str, Any], team: Team | None
) -> None:
    if not values["name"]:
        raise RosterError("name", Wrong.NO_NAME)
    rows = session.exec(select(Team).where(Team.workspace_id == workspace_id))
    others = [one for one in rows if team is None or one.id != team.id]
    if any(one.name.casefold() == values["name"].casefold() for one in others):
        raise RosterError("name", Wrong.TEAM_NAME)
    if values["time_zone"] not in available_timezones():
        raise RosterError("time_zone", Wrong.ZONE)
    log, staff = values["log_channel"], values["staff_channel"]
    if log == staff or any(log in {one.log_channel, one.staff_channel} for one in others):
        raise RosterError("log_channel", Wrong.CHANNEL)
    if any(staff == one.log_channel for one in others):
        raise RosterError("staff_channel", Wrong.CHANNEL)
    if not values["rule_books"]:
        raise RosterError("rule_books", Wrong.BOOKS)
    if not LOWEST_ACCOUNT_AGE <= values["account_age"] <= HIGHEST_ACCOUNT_AGE:
        raise ByHandError(Refusal.IMPOSSIBLE, "account_age")


def _take_accounts(hand: Hand, team: Team) -> int:
    places = select(PitcherTeam.pitcher_id).where(PitcherTeam.team_id == key(team))
    rows = hand.session.exec(
        select(Pitcher).where(col(Pitcher.id).in_(places), col(Pitcher.person_id).is_not(None))
    )
    today = hand.now.date()
    young = [
        one for one in rows if not has_own_account(age_on(one.birth_date, today), team.account_age)
    ]
    for one in young:
        one.person_id = None
        hand.session.add(one)
    return len(young)


def _look(hand: Hand, team: Team) -> None:
    hand.session.add(
        Errand(
            workspace_id=team.workspace_id,
            kind=LOOK_AT_CHANNELS,
            data={"team": key(team), "by": key(hand.person)},
            not_before=hand.now,
        )
    )
