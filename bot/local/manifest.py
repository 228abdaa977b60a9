"""What an app manifest asks for (docs.slack.dev, "App manifest reference")."""

from dataclasses import dataclass
from typing import Any

from bot.local.errors import ScriptError
from bot.local.records import Json


@dataclass(frozen=True, slots=True)
class Features:
    """What people can do with the app, and what it is sent; the rest is not there for them."""

    scopes: frozenset[str]
    events: frozenset[str]
    commands: frozenset[str]
    shortcuts: frozenset[tuple[str, str]]
    interactive: bool
    home_tab: bool
    messages_tab: bool
    messages_tab_writable: bool
    redirect_urls: tuple[str, ...]

    def need(self, there: bool, what: str) -> None:
        """Raise ScriptError unless the manifest offers it."""
        if not there:
            raise ScriptError(f"The app's manifest offers no {what}.")


def features_of(manifest: Json) -> Features:
    """Read a manifest; a part that is not there is off, as in Slack."""
    home = _at(manifest, "features", "app_home") or {}
    shortcuts = _at(manifest, "features", "shortcuts") or []
    return Features(
        scopes=frozenset(_at(manifest, "oauth_config", "scopes", "bot") or []),
        events=frozenset(_at(manifest, "settings", "event_subscriptions", "bot_events") or []),
        commands=frozenset(c["command"] for c in _at(manifest, "features", "slash_commands") or []),
        shortcuts=frozenset((s["type"], s["callback_id"]) for s in shortcuts),
        interactive=bool(_at(manifest, "settings", "interactivity", "is_enabled")),
        home_tab=bool(home.get("home_tab_enabled")),
        messages_tab=bool(home.get("messages_tab_enabled")),
        messages_tab_writable=not home.get("messages_tab_read_only_enabled", True),
        redirect_urls=tuple(_at(manifest, "oauth_config", "redirect_urls") or ()),
    )


def _at(manifest: Json, *path: str) -> Any:
    found: Any = manifest
    for name in path:
        found = (found or {}).get(name)
    return found
