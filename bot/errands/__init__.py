"""Work that no listener may wait for: calls that ask Slack something, many lines to hear again."""

from bot.errands.run import Errands

__all__ = ["Errands"]
