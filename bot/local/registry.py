"""Which workspace a request is for: by token, by team, or by a Socket Mode ticket."""

import secrets
import threading
from collections.abc import Callable
from urllib.parse import quote

from starlette.requests import Request

from bot.local.errors import ApiError
from bot.local.workspace import Workspace


class Registry:
    """The workspaces of one server; a token belongs to one of them."""

    def __init__(self, hang_up: Callable[[Request], None]) -> None:
        self.hang_up = hang_up
        self._lock = threading.Lock()
        self._bot_tokens: dict[str, Workspace] = {}
        self._app_tokens: dict[str, Workspace] = {}
        self._teams: dict[str, Workspace] = {}
        self._tickets: dict[str, Workspace] = {}

    def add(self, ws: Workspace) -> None:
        """Let requests with this workspace's tokens in."""
        with self._lock:
            self._bot_tokens[ws.bot_token] = ws
            self._app_tokens[ws.app_token] = ws
            self._teams[ws.team_id] = ws

    def remove(self, ws: Workspace) -> None:
        """Forget a workspace."""
        with self._lock:
            self._bot_tokens.pop(ws.bot_token, None)
            self._app_tokens.pop(ws.app_token, None)
            self._teams.pop(ws.team_id, None)

    def workspaces(self) -> list[Workspace]:
        """Return every workspace."""
        with self._lock:
            return list(self._teams.values())

    def by_token(self, token: str, method: str) -> Workspace:
        """Return the workspace of a token that may call this method.

        Raises ApiError `invalid_auth`, `not_allowed_token_type`.
        """
        right, wrong = self._bot_tokens, self._app_tokens
        if method == "apps.connections.open":
            right, wrong = wrong, right
        with self._lock:
            if token in right:
                return right[token]
            raise ApiError("not_allowed_token_type" if token in wrong else "invalid_auth")

    def by_team(self, team_id: str) -> Workspace:
        """Return a workspace by its id."""
        with self._lock:
            return self._teams[team_id]

    def by_ticket(self, ticket: str) -> Workspace | None:
        """Use a Socket Mode ticket up; None if it is not valid."""
        with self._lock:
            return self._tickets.pop(ticket, None)

    def socket_url(self, ws: Workspace) -> str:
        """Return a WebSocket address that lets one client in, once."""
        ticket = secrets.token_hex(16)
        with self._lock:
            self._tickets[ticket] = ws
        base = ws.base_url.replace("http://", "ws://")
        return f"{base}/link?ticket={ticket}&app_id={quote(ws.installation.app_id)}"
