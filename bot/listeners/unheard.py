"""Events that nothing here listens to: acknowledged, or Slack would send them again."""

import re
from collections.abc import Callable
from typing import Any

from slack_bolt import App, BoltResponse


def register(app: App) -> None:
    """Acknowledge whatever no listener takes; register it after all of them."""

    @app.middleware
    def slow_down(body: dict[str, Any], next: Callable[[], None]) -> BoltResponse | None:  # noqa: A002 - Bolt's name
        if body.get("type") == "app_rate_limited":
            return BoltResponse(status=200)
        next()
        return None

    @app.event(re.compile(""))
    def unheard() -> None:
        """Subscribed to, but nothing follows from it yet."""
