"""The settings of a team as paragraphs, each with the button that changes it."""

from collections.abc import Sequence

from sqlmodel import Session

from bot.blocks.message import Button, Part
from bot.forms.form import Form, opens
from bot.forms.settings import changes, rows
from bot.wording import settings as say
from core.model import Team, key


def settings_parts(
    session: Session, team: Team, forms: Sequence[Form], *, is_coach: bool
) -> list[Part]:
    """Every setting with its present value and its form, then the last changes."""
    parts, told = [], []
    for row in rows(session, team, forms, is_coach=is_coach):
        said = say.setting(row.title, row.now)
        if row.form:
            button = Button(say.change_of(row.title), opens(row.form), {"team": key(team)})
            parts.append(Part(said, (button,)))
        else:
            told.append(said)
    return [*parts, Part("\n".join(told)), Part(changes(session, team))]
