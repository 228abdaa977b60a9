"""The ground on which people and the app act: one workspace's contents, identity and delivery."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from datetime import datetime

from bot.local import subscriptions
from bot.local.calls import CallLog
from bot.local.courier import Courier
from bot.local.delivery import Delivery, Outcome, Sort
from bot.local.errors import ApiError
from bot.local.faults import Faults
from bot.local.happenings import News
from bot.local.manifest import Features, features_of
from bot.local.rates import Rates
from bot.local.records import Channel, Json, Person
from bot.local.retries import Retries
from bot.local.sockets import SocketHub
from bot.local.state import State


@dataclass(frozen=True, slots=True)
class Installation:
    """By what the app and the workspace know each other.

    The team and the bot token are the workspace's own; the rest is the app's, the same in
    every workspace where it is installed.
    """

    team_id: str
    bot_token: str
    app_id: str
    app_token: str
    client_id: str
    client_secret: str
    signing_secret: str
    verification_token: str


@dataclass(slots=True)
class Grant:
    """What a person approved; its code is exchanged once, for a token."""

    person: str
    scopes: str
    redirect_uri: str
    whole_organization: bool = False
    used: bool = False


class Stage:
    """Everything about one workspace that acts on it share."""

    def __init__(
        self,
        number: int,
        now: Callable[[], datetime],
        base_url: str,
        ack_limit: float,
        same_app_as: "Stage | None" = None,
    ) -> None:
        self.state = State(number, now)
        self.changed = self.state.changed
        self.base_url = base_url
        self.domain = f"local{number}"
        self.calls = CallLog(self.changed, now)
        self.faults = Faults()
        #: What is in the files that people sent, by the file's id.
        self.contents: dict[str, bytes] = {}
        self.rates = Rates(now)
        # Socket Mode connects an app, so all its workspaces send through one hub.
        hub = SocketHub(self.state.ids, self.changed, ack_limit)
        self.sockets: SocketHub = hub if same_app_as is None else same_app_as.sockets
        self.courier = Courier(self.changed, target=self.sockets)
        self.retries = Retries(self.courier, now)
        self.installation = self._install(same_app_as)
        self.old_tokens: set[str] = set()
        self.grants: dict[str, Grant] = {}
        self.subscriptions: set[str] = set(subscriptions.DEFAULT)
        self.scopes: frozenset[str] | None = None
        self.installed = True
        self.token_revoked = False
        #: Whether tokens are given for twelve hours (docs.slack.dev, "Using token rotation").
        self.rotates = False
        self.messages_tab = True
        self.features: Features | None = None
        self.bot = self._add_bot()
        self._watchers: list[Callable[[News], None]] = []

    def watch(self, look: Callable[[News], None]) -> None:
        """Call `look` for everything that changes from now on, in order.

        It is called with the workspace locked: it must be quick, and must not wait.
        """
        with self.changed:
            self._watchers.append(look)

    def tell(self, news: News) -> None:
        """Tell those who look on."""
        with self.changed:
            for look in self._watchers:
                look(news)

    def grant(self, scopes: Iterable[str]) -> None:
        """Check scopes from now on; before this, the app has every scope."""
        self.scopes = frozenset(scopes)

    def follow(self, manifest: Json) -> None:
        """Let the app have from now on what its manifest asks for, and nothing else.

        Scopes, events, commands, shortcuts, interactivity and the tabs of its Home; before
        this it has everything.
        """
        with self.changed:
            self.features = features_of(manifest)
            self.grant(self.features.scopes)
            self.subscriptions = set(self.features.events)
            self.messages_tab = self.features.messages_tab

    def need_scope(self, *any_of: str) -> None:
        """Raise ApiError `missing_scope` unless the app was granted one of these."""
        if self.scopes is not None and any_of and not self.scopes.intersection(any_of):
            provided = ",".join(sorted(self.scopes))
            raise ApiError("missing_scope", needed=",".join(any_of), provided=provided)

    def bot_is_in(self, channel: Channel) -> bool:
        """Whether the app sees what happens in a channel."""
        return self.bot.id in self.state.channel(channel).members

    def subscribed(self, name: str, channel: Channel | None) -> bool:
        """Whether an event of this name (such as "message.im") goes to the app."""
        if not self.installed or name not in self.subscriptions:
            return False
        if channel is not None and not self.bot_is_in(channel):
            return False
        scope = subscriptions.scope_for(name, channel)
        return scope is None or self.scopes is None or scope in self.scopes

    def emit(self, name: str, event: Json, channel: Channel | None = None) -> list[Delivery]:
        """Send an event if the app is subscribed; returns the delivery, if there is one."""
        if not self.subscribed(name, channel):
            return []
        return [self.deliver("events_api", self.event_callback(event))]

    def deliver(
        self, sort: Sort, payload: Json, on_ack: Callable[[Outcome], None] | None = None
    ) -> Delivery:
        """Send any payload to the app; raises ScriptError for a press that it cannot get."""
        if sort == "interactive" and self.features is not None:
            self.features.need(self.features.interactive, "interactivity")
        return self.courier.send(Delivery(sort, payload, self.changed, on_ack=on_ack))

    def event_callback(self, event: Json) -> Json:
        """Wrap an inner event in the Events API's envelope."""
        team = self.installation.team_id
        authorization = {
            "enterprise_id": None,
            "team_id": team,
            "user_id": self.bot.id,
            "is_bot": True,
            "is_enterprise_install": False,
        }
        return {
            "token": self.installation.verification_token,
            "team_id": team,
            "context_team_id": team,
            "context_enterprise_id": None,
            "api_app_id": self.installation.app_id,
            "event": event,
            "type": "event_callback",
            "event_id": self.state.ids.next("Ev"),
            "event_time": self.state.stamps.seconds(),
            "authorizations": [authorization],
            "is_ext_shared_channel": False,
            "event_context": f"4-{self.state.ids.next('x')}",
        }

    def _install(self, same_app_as: "Stage | None") -> Installation:
        ids = self.state.ids
        team_id, bot_token = ids.next("T"), f"xoxb-local-{ids.secret('bot token')}"
        if same_app_as is not None:
            return replace(same_app_as.installation, team_id=team_id, bot_token=bot_token)
        return Installation(
            team_id=team_id,
            bot_token=bot_token,
            app_id=ids.next("A"),
            app_token=f"xapp-1-local-{ids.secret('app token')}",
            client_id=ids.next("client."),
            client_secret=ids.secret("client secret"),
            signing_secret=ids.secret("signing secret"),
            verification_token=ids.secret("verification token")[:24],
        )

    def _add_bot(self) -> Person:
        ids = self.state.ids
        bot = Person(
            id=ids.next("U"),
            name="spinkeeper",
            real_name="Spinkeeper",
            is_bot=True,
            bot_id=ids.next("B"),
            app_id=self.installation.app_id,
        )
        return self.state.keep_person(bot)
