"""A form writes the line for whoever filled it in: forms and typed lines are one way in."""

from bot.forms.form import Filled
from core.ledger import Notice, Said, record
from core.ledger.by_hand import Hand
from core.model import FORM_TS


def write_line(hand: Hand, filled: Filled, text: str, team_id: int | None = None) -> list[Notice]:
    """Record `text` as if the person had typed it to the bot; a second submission does nothing.

    The answer comes as a direct message, with "fix" and "undo". `team_id` is the team that
    words such as "everyone" are about.
    """
    return write_once(hand, filled.view_id, text, team_id)


def write_once(hand: Hand, origin: str, text: str, team_id: int | None = None) -> list[Notice]:
    """Record `text` as the person's own line to the bot, once for each `origin`.

    `origin` is Slack's id of the view or the trigger that it came by.
    """
    slack_id = hand.slack_id
    said = Said(
        workspace_id=hand.person.workspace_id,
        channel=slack_id,
        ts=f"{FORM_TS}{origin}",
        author=slack_id,
        text=text,
        direct=True,
        written_at=hand.now,
        team_id=team_id,
    )
    return record(hand.session, said, hand.now)
