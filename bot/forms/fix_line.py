"""Which outing of a line is to be put right, chosen from the menu of its message."""

from typing import Any

from sqlmodel import col, select

from bot.forms import inputs
from bot.forms.form import Carried, Filled, Form, FormError, Next, modal
from bot.forms.put_right import outing_form
from bot.wording.answers import outing_heading
from bot.wording.forms import ERRORS, FIELDS
from core.ledger import Notice
from core.ledger.by_hand import ByHandError, Hand, Refusal, see_outing
from core.model import Line, OutboxMessage, Outing, Pitcher, key

NAME = "fix_line"


def _view(hand: Hand, carried: Carried) -> dict[str, Any] | None:
    """The form of the line's only outing, or the choice of one; none where there is nothing."""
    outings = _outings(hand, str(carried["channel"]), str(carried["ts"]))
    if not outings:
        return None
    if len(outings) == 1:
        return outing_form(outings[0])
    named = [(str(key(one)), _named(hand, one)) for one in outings[:100]]
    return modal(NAME, {}, [inputs.choice("outing", FIELDS["outing"], named, named[0][0])])


def _named(hand: Hand, outing: Outing) -> str:
    name = hand.session.get_one(Pitcher, outing.pitcher_id).name
    return outing_heading(name, outing).replace("*", "")


def _outings(hand: Hand, channel: str, ts: str) -> list[Outing]:
    """The outings that this person may put right, of a line or of the bot's answer to it."""
    workspace_id = hand.person.workspace_id
    typed = select(Line.id).where(
        Line.workspace_id == workspace_id, Line.channel == channel, Line.ts == ts
    )
    answered = select(OutboxMessage.line_id).where(
        OutboxMessage.workspace_id == workspace_id,
        OutboxMessage.channel == channel,
        OutboxMessage.ts == ts,
    )
    rows = hand.session.exec(
        select(Outing)
        .where(
            col(Outing.line_id).in_(typed) | col(Outing.line_id).in_(answered),
            col(Outing.withdrawn_at).is_(None),
        )
        .order_by(col(Outing.id))
    )
    return [row for row in rows.all() if see_outing(hand, key(row)) is not None]


def _save(hand: Hand, filled: Filled) -> list[Notice]:
    chosen = inputs.read_choice(filled.values, "outing")
    if chosen is None:
        raise FormError("outing", ERRORS["nobody"])
    outing = see_outing(hand, int(chosen))
    if outing is None:
        raise ByHandError(Refusal.GONE, "outing")
    raise Next(outing_form(outing))


FORM = Form(NAME, _view, _save, {"": "outing"})
