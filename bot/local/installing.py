"""Installing the app, taking it away, and installing it again (docs.slack.dev, "OAuth")."""

from dataclasses import replace
from urllib.parse import parse_qs, urlencode, urlsplit

from bot.local import events
from bot.local.delivery import Delivery
from bot.local.errors import ApiError, ScriptError
from bot.local.records import Json, Person
from bot.local.stage import Grant, Stage


class Installing(Stage):
    """The life of the installation."""

    def not_yet_installed(self) -> None:
        """Let the workspace be one that never had the app."""
        with self.changed:
            self.installed, self.token_revoked = False, True

    def approve(
        self, person: Person, authorize_url: str, *, whole_organization: bool = False
    ) -> str:
        """Let a person approve the app at the page to which `/slack/install` leads.

        Returns the address to which Slack sends the browser back, with code and state.
        Raises ScriptError when the page was asked for with another client id, or would lead
        back to an address that the app's manifest does not name.
        """
        asked, back = self._asked(authorize_url)
        code = self.state.ids.secret("code")
        named = asked.get("redirect_uri", "")
        with self.changed:
            self.grants[code] = Grant(person.id, asked.get("scope", ""), named, whole_organization)
        return f"{back}?{urlencode({'code': code, 'state': asked.get('state', '')})}"

    def decline(self, authorize_url: str) -> str:
        """Do not approve the app; returns the address to which Slack sends the browser back."""
        asked, back = self._asked(authorize_url)
        denied = {"error": "access_denied", "state": asked.get("state", "")}
        return f"{back}?{urlencode(denied)}"

    def _asked(self, authorize_url: str) -> tuple[dict[str, str], str]:
        """What Slack's page was asked for, and the address to go back to."""
        asked = {
            name: values[0] for name, values in parse_qs(urlsplit(authorize_url).query).items()
        }
        if asked.get("client_id") != self.installation.client_id:
            raise ScriptError(f"This is not the app's client id: {asked.get('client_id')}")
        known = self.features.redirect_urls if self.features is not None else ()
        back = asked.get("redirect_uri") or next(iter(known), "")
        if not back or (known and not back.startswith(known)):
            raise ScriptError(f"The app's manifest names no redirect URL for {back!r}.")
        return asked, back

    def exchange(self, code: str, redirect_uri: str) -> Json:
        """Give the token for a code; the app is installed from then on.

        Raises ApiError `code_already_used`, `bad_redirect_uri`.
        """
        grant = self.grants[code]
        if grant.used:
            raise ApiError("code_already_used")
        if redirect_uri != grant.redirect_uri:
            raise ApiError("bad_redirect_uri")
        grant.used = True
        self.reinstall()
        self.grant(grant.scopes.split(","))
        return {
            "access_token": self.installation.bot_token,
            "token_type": "bot",
            "scope": grant.scopes,
            "bot_user_id": self.bot.id,
            "app_id": self.installation.app_id,
            "team": None if grant.whole_organization else self._team(),
            "enterprise": {"id": "E0LOCAL", "name": "Local"} if grant.whole_organization else None,
            "authed_user": {"id": grant.person},
            "is_enterprise_install": grant.whole_organization,
            **({"refresh_token": "xoxe-1-local", "expires_in": 43_200} if self.rotates else {}),
        }

    def _team(self) -> Json:
        return {"id": self.installation.team_id, "name": self.domain}

    def reinstall(self) -> str:
        """Install the app again if it was removed, with a new token; returns the token."""
        with self.changed:
            if self.token_revoked:
                self.old_tokens.add(self.installation.bot_token)
                token = f"xoxb-local-{self.state.ids.secret('bot token')}"
                self.installation = replace(self.installation, bot_token=token)
            self.installed, self.token_revoked = True, False
            return self.installation.bot_token

    def revoke_tokens(self) -> list[Delivery]:
        """Revoke the bot's token: the event goes out, calls answer `token_revoked`."""
        event = events.tokens_revoked(self.bot.id, self.state.stamps.next())
        with self.changed:
            self.token_revoked = True
            return self.emit("tokens_revoked", event)

    def uninstall(self) -> list[Delivery]:
        """Remove the app: its two events, then nothing more; calls answer `account_inactive`."""
        with self.changed:
            sent = self.revoke_tokens()
            sent += self.emit("app_uninstalled", events.app_uninstalled(self.state.stamps.next()))
            self.installed = False
            return sent
