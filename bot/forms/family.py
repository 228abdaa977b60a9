"""The form in which the staff write to a family about a report of pain: to all of it at once."""

from typing import Any

from bot.forms import inputs
from bot.forms.form import Carried, Filled, Form, FormError, modal, notice_view
from bot.wording import contact as say
from bot.wording.forms import ERRORS, FIELDS
from core.contact.family import family_of, write_to_family
from core.ledger import Notice
from core.ledger.by_hand import Hand

NAME = "family"
#: Characters; a section of a message holds 3,000, quoted and framed.
LONGEST = 2_000


def _view(hand: Hand, carried: Carried) -> dict[str, Any] | None:
    """The form; where no adult of the family can be reached, why nothing can be sent."""
    family = family_of(hand, int(carried["line"]), int(carried["pitcher"]))
    if family is None:
        return None
    if not family.is_open:
        return notice_view(say.no_family(family.pitcher.name))
    names = [one.name for one in family.readers]
    blocks = [
        inputs.note(say.goes_to(names), "note"),
        inputs.needed("words", FIELDS["words"], most=LONGEST, lines=True),
    ]
    return modal(NAME, {"line": carried["line"], "pitcher": carried["pitcher"]}, blocks)


def _save(hand: Hand, filled: Filled) -> list[Notice]:
    words = inputs.read_text(filled.values, "words")
    if not words:
        raise FormError("words", ERRORS["words"])
    line_id, pitcher_id = int(filled.carried["line"]), int(filled.carried["pitcher"])
    return write_to_family(hand, line_id, pitcher_id, words, filled.view_id)


FORM = Form(NAME, _view, _save, {"": "words"})
