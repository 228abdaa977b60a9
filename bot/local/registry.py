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
        self._teams: dict[str, Workspace] = {}
        self._tickets: dict[str, Workspace] = {}

    def add(self, ws: Workspace) -> None:
        """Let requests with this workspace's tokens in."""
        with self._lock:
            self._teams[ws.team_id] = ws

    def remove(self, ws: Workspace) -> None:
        """Forget a workspace."""
        with self._lock:
            self._teams.pop(ws.team_id, None)

    def workspaces(self) -> list[Workspace]:
        """Return every workspace."""
        with self._lock:
            return list(self._teams.values())

    def by_token(self, token: str, method: str) -> Workspace:
        """Return the workspace of a token that may call this method.

        Raises ApiError `invalid_auth`, `token_revoked`, `not_allowed_token_type`.
        """
        for_app = method == "apps.connections.open"
        for ws in self.workspaces():
            if token == (ws.app_token if for_app else ws.bot_token):
                return ws
            if token == (ws.bot_token if for_app else ws.app_token):
                raise ApiError("not_allowed_token_type")
            if token in ws.old_tokens:
                raise ApiError("token_revoked")
        raise ApiError("invalid_auth")

    def by_code(self, client_id: str, client_secret: str, code: str) -> Workspace:
        """Return the workspace where a person approved the app.

        Raises ApiError `invalid_client_id`, `bad_client_secret`, `invalid_code`.
        """
        of_app = [ws for ws in self.workspaces() if ws.client_id == client_id]
        if not of_app:
            raise ApiError("invalid_client_id")
        if of_app[0].client_secret != client_secret:
            raise ApiError("bad_client_secret")
        for ws in of_app:
            if code in ws.grants:
                return ws
        raise ApiError("invalid_code")

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
