"""The form with which the staff record what a guardian said on paper."""

from datetime import date
from typing import Any

from slack_sdk.models.blocks import (
    DatePickerElement,
    InputBlock,
    Option,
    PlainTextInputElement,
    StaticSelectElement,
)

from bot.blocks.consent import terms_for
from bot.forms.form import Carried, Filled, Form, FormError, modal, paragraph
from bot.wording import consent as say
from bot.wording.buttons import FORM_ERRORS
from core.consent.saying import may_record, record_on_paper
from core.ledger import Notice
from core.ledger.by_hand import Hand
from core.model import ConsentAct, Pitcher, key

NAME = "consent_paper"


def _view(hand: Hand, carried: Carried) -> dict[str, Any] | None:
    pitcher = hand.session.get(Pitcher, int(carried["pitcher"]))
    if pitcher is None or not may_record(hand, key(pitcher)):
        return None
    told = say.on_paper(pitcher.name, terms_for(hand.session, pitcher, None))
    options = [Option(value=act, text=label) for act, label in say.PAPER_CHOICES.items()]
    return modal(
        NAME,
        {"pitcher": key(pitcher)},
        [
            paragraph(told),
            InputBlock(
                block_id="who",
                label=say.PAPER_FIELDS["who"],
                element=PlainTextInputElement(action_id="who", max_length=80),
            ),
            InputBlock(
                block_id="on",
                label=say.PAPER_FIELDS["on"],
                element=DatePickerElement(action_id="on"),
            ),
            InputBlock(
                block_id="act",
                label=say.PAPER_FIELDS["act"],
                element=StaticSelectElement(
                    action_id="act", options=options, initial_option=options[0]
                ),
            ),
        ],
        title=say.PAPER_TITLE,
        submit=say.PAPER_SUBMIT,
    )


def _save(hand: Hand, filled: Filled) -> list[Notice]:
    who = " ".join((filled.values["who"]["who"].get("value") or "").split())
    picked = filled.values["on"]["on"].get("selected_date")
    if not who:
        raise FormError("who", say.PAPER_NEEDS_NAME)
    if picked is None:
        raise FormError("on", FORM_ERRORS["impossible"])
    act = ConsentAct(filled.values["act"]["act"]["selected_option"]["value"])
    on = date.fromisoformat(picked)
    return record_on_paper(hand, int(filled.carried["pitcher"]), act, who, on)


FORM = Form(NAME, _view, _save, {"": "who"})
