"""The roster's first screen: what to do, and for whom; the next screen does it."""

from typing import Any

from slack_sdk.models.blocks import Block
from sqlmodel import Session, col, func, select

from bot.forms import consent_paper, inputs, move, pitcher, roster_paste
from bot.forms.form import Carried, Filled, Form, FormError, Next, Setting, modal
from bot.wording import roster as say
from bot.wording import settings as words
from core.ledger import Notice
from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.model import Pitcher, PitcherTeam, Team, key
from core.roster.people import coached_teams

NAME = "roster"
ADD, CHANGE, MOVE, PAPER, PASTE = "add", "change", "move", "paper", "paste"
_WHATS = (
    (ADD, say.ADD),
    (CHANGE, say.CHANGE),
    (MOVE, say.MOVE_LABEL),
    (PAPER, say.PAPER),
    (PASTE, say.PASTE),
)


def _view(hand: Hand, carried: Carried) -> dict[str, Any] | None:
    teams = coached_teams(hand.session, hand.person)
    if not teams:
        return None
    named = [(str(key(one)), one.name) for one in _pitchers(hand, teams)]
    whats = _WHATS if named else tuple(one for one in _WHATS if one[0] in {ADD, PASTE})
    what = carried.get("what") or ADD
    blocks: list[Block] = [inputs.choice("what", say.FIELDS["what"], whats, str(what))]
    if named:
        blocks.append(inputs.choice("who", say.FIELDS["pitcher"], named[:100], optional=True))
    return modal(NAME, {}, blocks, title=say.ROSTER_TITLE, submit=say.ROSTER_SUBMIT)


def _pitchers(hand: Hand, teams: list[int]) -> list[Pitcher]:
    links = select(PitcherTeam.pitcher_id).where(col(PitcherTeam.team_id).in_(teams))
    rows = hand.session.exec(select(Pitcher).where(col(Pitcher.id).in_(links)))
    return sorted(rows, key=lambda one: (one.name.casefold(), key(one)))


def _save(hand: Hand, filled: Filled) -> list[Notice]:
    """Nothing is saved here: the screen that was asked for takes this one's place."""
    what = inputs.read_choice(filled.values, "what") or ADD
    who = inputs.read_choice(filled.values, "who") if "who" in filled.values else None
    if what not in {ADD, PASTE} and who is None:
        raise FormError("who", say.CHOOSE)
    carried = {} if what in {ADD, PASTE} else {"pitcher": who}
    view = _NEXT[what](hand, carried) if what in _NEXT else None
    if view is None:
        raise ByHandError(Refusal.NOT_ALLOWED)
    raise Next(view)


_NEXT = {
    ADD: pitcher.FORM.view,
    CHANGE: pitcher.FORM.view,
    MOVE: move.FORM.view,
    PAPER: consent_paper.FORM.view,
    PASTE: roster_paste.FORM.view,
}


def _now(session: Session, team: Team) -> str:
    """How many pitchers there are, and how many with consent."""
    rows = (
        select(func.count(), func.count(col(Pitcher.consent_on)))
        .join(PitcherTeam, col(PitcherTeam.pitcher_id) == col(Pitcher.id))
        .where(PitcherTeam.team_id == key(team))
    )
    return words.roster(*session.exec(rows).one())


FORM = Form(NAME, _view, _save, {"": "what"}, Setting(words.ROSTER, _now))
