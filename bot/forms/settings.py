"""The settings of a team: what each is now, the form that changes it, and who changed what."""

from collections.abc import Sequence, Set
from dataclasses import dataclass
from typing import Any
from zoneinfo import ZoneInfo

from slack_sdk.models.blocks import (
    Block,
    ButtonElement,
    HeaderBlock,
    PlainTextObject,
    SectionBlock,
)
from slack_sdk.models.views import View
from sqlmodel import Session

from bot.forms.form import Carried, Filled, Form, opens, paragraph
from bot.wording import forms as words
from bot.wording import settings as say
from bot.wording import settings_history as history
from core.ledger import Notice
from core.ledger.by_hand import ByHandError, Hand, Refusal
from core.ledger.crew import load_crew
from core.ledger.settings_history import changes_of
from core.model import Team, key

NAME = "settings"
#: So many changes are listed, the newest ones.
MOST_CHANGES = 8
#: More teams than this fill a view (Slack allows 100 blocks).
MOST_TEAMS = 8


@dataclass(frozen=True, slots=True)
class Row:
    """One setting as it is now; without a form it is told only."""

    title: str
    now: str
    form: str = ""


def rows(session: Session, team: Team, forms: Sequence[Form], *, is_coach: bool) -> list[Row]:
    """Every setting of a team: those with a form first, then what no form sets.

    What the coach alone changes has no form for an assistant.
    """
    found = [
        Row(
            one.setting.title,
            one.setting.now(session, team),
            one.name if is_coach or not one.setting.coach_only else "",
        )
        for one in forms
        if one.setting is not None
    ]
    named = {row.title for row in found}
    told = {
        say.RULE_BOOKS: say.rule_books(team.rule_books),
        say.TEAM: say.team(team.time_zone, team.account_age),
    }
    return [*found, *(Row(title, now) for title, now in told.items() if title not in named)]


def changes(session: Session, team: Team) -> str:
    """What was changed last of a team: settings, roles, the roster and consent, newest first."""
    zone = ZoneInfo(team.time_zone)
    told = [
        history.change(one.at.astimezone(zone).date(), one, key(team))
        for one in changes_of(session, team, MOST_CHANGES)
    ]
    return "\n".join([history.CHANGES, *told]) if told else history.NO_CHANGES


def menu(forms: Sequence[Form]) -> Form:
    """The list of all settings of the coach's teams; each opens its form on top of it."""

    def view(hand: Hand, _carried: Carried) -> dict[str, Any] | None:
        crew = load_crew(hand.session, hand.person, None)
        teams = [team for team in crew.teams if key(team) in crew.coaches][:MOST_TEAMS]
        return _menu_view(hand.session, teams, forms, crew.heads) if teams else None

    return Form(NAME, view, _nothing_to_save, {})


def _nothing_to_save(_hand: Hand, _filled: Filled) -> list[Notice]:
    raise ByHandError(Refusal.GONE)  # the view has no way to be sent


def _menu_view(
    session: Session, teams: Sequence[Team], forms: Sequence[Form], heads: Set[int]
) -> dict[str, Any]:
    blocks: list[Block] = []
    for team in teams:
        blocks.append(HeaderBlock(text=PlainTextObject(text=team.name[:150], emoji=False)))
        shown = rows(session, team, forms, is_coach=key(team) in heads)
        blocks += [_block(team, row) for row in shown]
        blocks.append(paragraph(changes(session, team)))
    view = View(
        type="modal", callback_id=NAME, title=words.TITLES[NAME], close=words.CLOSE_NOTICE,
        blocks=blocks,
    )  # fmt: skip
    content: dict[str, Any] = view.to_dict()
    return content


def _block(team: Team, row: Row) -> SectionBlock:
    if not row.form:
        return paragraph(say.setting(row.title, row.now))
    button = ButtonElement(
        text=PlainTextObject(text=say.CHANGE, emoji=False),
        action_id=f"{opens(row.form)}.{key(team)}",
        value=f'{{"team": {key(team)}}}',
    )
    return paragraph(say.setting(row.title, row.now), button)
