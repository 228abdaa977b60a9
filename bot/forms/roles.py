"""The form with which a coach gives and takes roles."""

from typing import Any

from slack_sdk.models.blocks import Block
from sqlmodel import Session, col, select

from bot.forms import inputs, picks
from bot.forms.form import Carried, Filled, Form, FormError, Setting, modal, paragraph
from bot.wording import roles as say
from bot.wording import roster as errors
from bot.wording import settings as words
from core.ledger import Notice
from core.ledger.by_hand import Hand
from core.model import Membership, Person, Role, Team, key
from core.roster.errors import RosterError, Wrong
from core.roster.roles import GIVEN, change_role

NAME = "roles"


def _view(hand: Hand, _carried: Carried) -> dict[str, Any] | None:
    teams = teams_as_coach(hand)
    if not teams:
        return None
    blocks: list[Block] = [paragraph(_standing(hand.session, team)) for team in teams[:10]]
    if len(teams) > 1:
        options = [(str(key(team)), team.name) for team in teams]
        blocks.append(inputs.choice("team", say.FIELDS["team"], options, options[0][0]))
    who = picks.person("who", say.FIELDS["who"])
    who.optional = False
    roles = [(role.value, say.MEANS[role]) for role in GIVEN]
    gives = list(say.GIVES.items())
    blocks += [
        who,
        inputs.choice("role", say.FIELDS["role"], roles, Role.ASSISTANT.value),
        inputs.choice("give", say.FIELDS["give"], gives, "give"),
        inputs.note(say.NOTE, "note"),
    ]
    return modal(NAME, {"team": key(teams[0])}, blocks, title=say.TITLE)


def teams_as_coach(hand: Hand) -> list[Team]:
    """The teams on which somebody has the coach's role, by name."""
    held = select(Membership.team_id).where(
        Membership.person_id == key(hand.person), Membership.role == Role.COACH
    )
    return list(hand.session.exec(select(Team).where(col(Team.id).in_(held)).order_by(Team.name)))


def team_as_coach(hand: Hand, carried: Carried) -> Team | None:
    """The team that is carried, or the first, of those on which somebody has the coach's role."""
    teams = teams_as_coach(hand)
    wanted = int(carried["team"]) if carried.get("team") else None
    return next((one for one in teams if wanted in (None, one.id)), None)


def _standing(session: Session, team: Team) -> str:
    rows = session.exec(
        select(Membership.role, Person.name)
        .join(Person, col(Membership.person_id) == col(Person.id))
        .where(Membership.team_id == key(team))
        .order_by(Person.name)
    ).all()
    return say.standing(
        team.name, {role: [name for held, name in rows if held == role] for role in GIVEN}
    )


def _save(hand: Hand, filled: Filled) -> list[Notice]:
    values = filled.values
    chosen = inputs.read_choice(values, "team") if "team" in values else None
    who = picks.read_person(values, "who")
    if who is None:
        raise FormError("who", errors.wrong(Wrong.NO_NAME))
    try:
        return change_role(
            hand,
            int(chosen or filled.carried["team"]),
            who,
            Role(inputs.read_choice(values, "role") or ""),
            give=inputs.read_choice(values, "give") == "give",
        )
    except RosterError as refused:
        raise FormError(refused.field, errors.wrong(refused.wrong)) from refused


def _now(session: Session, team: Team) -> str:
    """Who has which role on the staff."""
    rows = (
        select(Person.name, Membership.role)
        .join(Membership, col(Membership.person_id) == col(Person.id))
        .where(Membership.team_id == key(team))
        .order_by(col(Membership.id))
    )
    return words.roles([f"{name} ({role})" for name, role in session.exec(rows)])


FORM = Form(NAME, _view, _save, {"": "who"}, Setting(words.ROLES, _now, coach_only=True))
