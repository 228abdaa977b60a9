"""The form in which a coach writes down that a family says soreness is gone."""

from typing import Any

from sqlmodel import select

from bot.forms import inputs
from bot.forms.form import Carried, Filled, Form, FormError, modal, notice_view
from bot.forms.written import write_line
from bot.wording.buttons import FORM_ERRORS
from bot.wording.forms import ERRORS, FIELDS, NOBODY_SAYS, SORE_GONE_NOTE
from bot.wording.words import safe
from core.ledger import Notice
from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.ledger.crew import load_crew
from core.ledger.dictation import name_of
from core.ledger.sore_gone import say_gone, sore_pitcher
from core.model import FORM_TS, Line, key

NAME = "sore_gone"


def _view(hand: Hand, carried: Carried) -> dict[str, Any] | None:
    try:
        pitcher, people = sore_pitcher(hand, int(carried["pitcher"]))
    except ByHandError as refused:
        if refused.refusal is Refusal.NO_LONGER:
            return notice_view(FORM_ERRORS[refused.refusal])
        raise
    if not people:
        return notice_view(NOBODY_SAYS.format(name=safe(pitcher.name)))
    named = [(str(key(one)), one.name) for one in people]
    only = named[0][0] if len(named) == 1 else None
    blocks = [
        inputs.note(SORE_GONE_NOTE.format(name=safe(pitcher.name)), "note"),
        inputs.choice("said_by", FIELDS["said_by"], named, only),
    ]
    return modal(NAME, {"pitcher": key(pitcher)}, blocks)


def _save(hand: Hand, filled: Filled) -> list[Notice]:
    pitcher, people = sore_pitcher(hand, int(filled.carried["pitcher"]))
    chosen = inputs.read_choice(filled.values, "said_by")
    said_by = [one for one in people if str(key(one)) == chosen]
    if not said_by:
        raise FormError("said_by", ERRORS["nobody"])
    crew = load_crew(hand.session, hand.person, None)
    arm = next(one for one in crew.arms if one.pitcher_id == key(pitcher))
    notices = write_line(hand, filled, f"{name_of(crew, arm)}: no pain")
    line = hand.session.exec(select(Line).where(Line.ts == f"{FORM_TS}{filled.view_id}")).one()
    return [*notices, *say_gone(hand, line, pitcher, said_by[0])]


FORM = Form(NAME, _view, _save, {"": "said_by"})
