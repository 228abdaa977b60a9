"""The outbox: one row for each message that people see, delivered once, at Slack's pace."""

from bot.outbox.deliver import Outbox
from bot.outbox.owe import owe
from bot.outbox.rendered import Reaction, Rendered, Words

__all__ = ["Outbox", "Reaction", "Rendered", "Words", "owe"]
