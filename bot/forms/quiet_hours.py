"""The form in which a coach lengthens the team's quiet hours."""

from typing import Any

from sqlmodel import Session

from bot.forms import inputs
from bot.forms.form import Carried, Filled, Form, FormError, Setting, modal
from bot.forms.roles import team_as_coach
from bot.wording import quiet_hours as say
from bot.wording.settings import QUIET
from core.ledger import Notice
from core.ledger.by_hand import Hand
from core.model import Team, key
from core.roster.quiet_hours import BEGINS, ENDS, StillSentError, set_quiet_hours

NAME = "quiet_hours"


def _view(hand: Hand, carried: Carried) -> dict[str, Any] | None:
    team = team_as_coach(hand, carried)
    if team is None:
        return None
    offered = {
        "quiet_from": [(str(hour), say.begins(hour)) for hour in BEGINS],
        "quiet_to": [(str(hour), say.ends(hour)) for hour in ENDS],
    }
    blocks = [
        inputs.note(say.form_note(team.name), "note"),
        inputs.choice("quiet_from", say.FROM, offered["quiet_from"], str(team.quiet_from)),
        inputs.choice("quiet_to", say.TO, offered["quiet_to"], str(team.quiet_to)),
    ]
    return modal(NAME, {"team": key(team)}, blocks)


def _save(hand: Hand, filled: Filled) -> list[Notice]:
    begin, end = (
        int(inputs.read_choice(filled.values, name) or 0) for name in ("quiet_from", "quiet_to")
    )
    try:
        set_quiet_hours(hand, int(filled.carried["team"]), begin, end)
    except StillSentError as refused:
        raise FormError("quiet_from", say.still_sent(refused.kind)) from refused
    return []


def _now(_session: Session, team: Team) -> str:
    return say.now(team.quiet_from, team.quiet_to)


FORM = Form(NAME, _view, _save, {"": "quiet_from"}, Setting(QUIET, _now, coach_only=True))
