"""Installing by OAuth: the page that leads to Slack, and the one that Slack leads back to."""

from bot.install.flow import InstallFlow, make_flow

__all__ = ["InstallFlow", "make_flow"]
