"""Finding and pressing the buttons of the bot's messages."""

from bot.local.records import Message
from tests.support.club import Club


def answer_to(club: Club, who: str) -> Message:
    """The bot's newest direct message to somebody."""
    mine = club.ws.dm_messages(club.people[who])
    return [message for message in mine if message.user == club.ws.bot.id][-1]


def labels(message: Message) -> list[str]:
    """What stands on the buttons of a message."""
    rows = [block for block in message.blocks if block["type"] == "actions"]
    return [element["text"]["text"] for row in rows for element in row["elements"]]


def action_id(message: Message, label: str) -> str:
    """The action of the one button with this label."""
    rows = [block for block in message.blocks if block["type"] == "actions"]
    (button,) = [e for row in rows for e in row["elements"] if e["text"]["text"] == label]
    return str(button["action_id"])


def tap(club: Club, who: str, message: Message, label: str) -> None:
    """Let somebody press a button, and let the bot finish."""
    club.ws.press(club.people[who], message, action_id(message, label))
    club.settle()
