"""The form into which a short roster is pasted, where no file can be dropped."""

from typing import Any

from bot.forms import inputs
from bot.forms.form import Carried, Filled, Form, modal, paragraph
from bot.roster_file import begin
from bot.wording import roster as say
from core.ledger import Notice
from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.model import Team
from core.roster.people import coached_teams

NAME = "roster_paste"
LONGEST = 3_000


def _view(hand: Hand, _carried: Carried) -> dict[str, Any] | None:
    teams = coached_teams(hand.session, hand.person)
    if not teams:
        return None
    team = hand.session.get_one(Team, teams[0])
    box = inputs.text("csv", say.FIELDS["csv"], lines=True, most=LONGEST, hint=say.HINTS["csv"])
    box.optional = False
    return modal(
        NAME,
        {},
        [
            paragraph(say.template(team.name)),
            box,
        ],
        title=say.PASTE_TITLE,
        submit=say.PASTE_SUBMIT,
    )


def _save(hand: Hand, filled: Filled) -> list[Notice]:
    if not coached_teams(hand.session, hand.person):
        raise ByHandError(Refusal.NOT_ALLOWED)
    return begin(hand, {"csv": inputs.read_text(filled.values, "csv"), "name": "the roster"})


FORM = Form(NAME, _view, _save, {"": "csv"})
