"""One workspace as a script or a test sees it: its people, what they do, and what is there."""

from bot.local.courier import Target
from bot.local.errors import ApiError, ScriptError
from bot.local.forms import Forms
from bot.local.installing import Installing
from bot.local.reading import Reading
from bot.local.staff import Staff
from bot.local.talk import Said

__all__ = ["Said", "Workspace"]


class Workspace(Staff, Installing, Forms, Reading):
    """A workspace in which the app is installed.

    Made by `StandIn.new_workspace`, which gives it tokens of its own. Safe to use from
    several threads.
    """

    @property
    def team_id(self) -> str:
        """The workspace's id."""
        return self.installation.team_id

    @property
    def name(self) -> str:
        """The workspace's name."""
        return "Local workspace"

    @property
    def bot_token(self) -> str:
        """The token (xoxb-) for the Web API; a new one after `reinstall`."""
        return self.installation.bot_token

    @property
    def app_token(self) -> str:
        """The token (xapp-) for Socket Mode."""
        return self.installation.app_token

    @property
    def signing_secret(self) -> str:
        """The secret by which the app checks requests."""
        return self.installation.signing_secret

    @property
    def client_id(self) -> str:
        """The app's client id, for installing by OAuth."""
        return self.installation.client_id

    @property
    def client_secret(self) -> str:
        """The app's client secret."""
        return self.installation.client_secret

    @property
    def api_url(self) -> str:
        """The base URL for the app's Web API client."""
        return f"{self.base_url}/api/"

    def deliver_by(self, target: Target) -> None:
        """Send everything to this target from now on (see `StandIn.deliver_to`)."""
        with self.changed:
            self.courier.target = target

    def deliver_by_sockets(self) -> None:
        """Send everything to the clients connected by Socket Mode (the default)."""
        self.deliver_by(self.sockets)

    def check_call(self, scopes: tuple[str, ...]) -> None:
        """Check what Slack checks before it does anything.

        Raises ApiError `token_revoked`, `account_inactive`, `missing_scope`.
        """
        if not self.installed:
            raise ApiError("account_inactive")
        if self.token_revoked:
            raise ApiError("token_revoked")
        self.need_scope(*scopes)

    def settle(self, timeout: float = 10.0) -> None:
        """Return when no delivery is unanswered and no Web API call is under way.

        What is held back does not count. Raises ScriptError after `timeout` seconds, and
        when the app answered something that Slack does not understand.
        """
        with self.changed:
            if not self.changed.wait_for(self._is_settled, timeout):
                waiting = [*map(str, self.courier.outstanding())]
                waiting += [c.method for c in self.calls.under_way()]
                raise ScriptError(f"Not settled within {timeout} s: {', '.join(waiting)}")
            if self.courier.complaints:
                raise self.courier.complaints.pop(0)

    def _is_settled(self) -> bool:
        return not self.courier.outstanding() and not self.calls.under_way()
