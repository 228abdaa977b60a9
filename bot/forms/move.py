"""The form for a second team, a transfer and the end of a season."""

from typing import Any

from slack_sdk.models.blocks import Block
from sqlmodel import select

from bot.forms import inputs
from bot.forms.form import Carried, Filled, Form, FormError, modal, paragraph
from bot.wording import roster as say
from bot.wording.words import safe
from core.ledger import Notice
from core.ledger.by_hand import Hand
from core.ledger.people import teams_of
from core.model import Team, key
from core.roster.errors import RosterError
from core.roster.keep import staffed_pitcher
from core.roster.moves import Move, move_pitcher
from core.roster.people import coached_teams

NAME = "move_pitcher"


def move_view(hand: Hand, carried: Carried) -> dict[str, Any] | None:
    """The form for one pitcher; none for somebody who does not coach him. Raises `ByHandError`."""
    pitcher = staffed_pitcher(hand, int(carried["pitcher"]))
    mine = set(coached_teams(hand.session, hand.person))
    here = [one for one in teams_of(hand.session, {key(pitcher)}) if key(one) in mine]
    every = select(Team).where(Team.workspace_id == pitcher.workspace_id).order_by(Team.name)
    others = [(str(key(one)), one.name) for one in hand.session.exec(every)]
    says = f"*{safe(pitcher.name)}.* {say.MOVE_SAYS}"
    blocks: list[Block] = [paragraph(says)]
    if len(here) > 1:
        options = [(str(key(one)), one.name) for one in here]
        blocks.append(inputs.choice("team", say.FIELDS["team"], options, options[0][0]))
    moves = [(move.value, label) for move, label in say.MOVES.items()]
    blocks.append(inputs.choice("move", say.FIELDS["move"], moves))
    blocks.append(inputs.choice("to", say.FIELDS["to"], others[:100], optional=True))
    return modal(
        NAME, {"pitcher": key(pitcher), "team": key(here[0])}, blocks, title=say.MOVE_TITLE
    )


def _save(hand: Hand, filled: Filled) -> list[Notice]:
    values = filled.values
    chosen = inputs.read_choice(values, "team") if "team" in values else None
    to_team = inputs.read_choice(values, "to")
    try:
        return move_pitcher(
            hand,
            int(filled.carried["pitcher"]),
            int(chosen or filled.carried["team"]),
            Move(inputs.read_choice(values, "move") or Move.ALSO),
            int(to_team) if to_team else None,
        )
    except RosterError as refused:
        raise FormError(refused.field, say.wrong(refused.wrong)) from refused


FORM = Form(NAME, move_view, _save, {"": "move"})
