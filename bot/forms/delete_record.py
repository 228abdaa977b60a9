"""The form that says what deleting a record does; whoever goes on is asked once more."""

from typing import Any

from bot.forms.form import Carried, Filled, Form, modal, paragraph
from bot.presses.consent import begin_deletion, deletable
from bot.wording import consent as say
from core.ledger import Notice
from core.ledger.by_hand import Hand
from core.model import key

NAME = "delete_record"


def _view(hand: Hand, carried: Carried) -> dict[str, Any] | None:
    pitcher = deletable(hand, int(carried["pitcher"]))
    return modal(
        NAME,
        {"pitcher": key(pitcher)},
        [paragraph(say.delete_explained(pitcher.name))],
        title=say.DELETE_TITLE,
        submit=say.DELETE_SUBMIT,
    )


def _save(hand: Hand, filled: Filled) -> list[Notice]:
    return begin_deletion(hand, int(filled.carried["pitcher"]))


FORM = Form(NAME, _view, _save, {})
