"""What Slack hands to an app for a short while: trigger ids and response URLs."""

from dataclasses import dataclass, field
from typing import Final

from bot.local.errors import ApiError
from bot.local.stamps import Ids, Stamps

# docs.slack.dev, "Handling user interaction": seconds, and uses.
TRIGGER_LIFE: Final = 3
RESPONSE_LIFE: Final = 30 * 60
RESPONSE_USES: Final = 5


@dataclass(slots=True)
class Trigger:
    """Lets the app open one view for one user, once, within three seconds."""

    user: str
    view: str | None
    given: int
    used: bool = False


@dataclass(slots=True)
class ResponseUrl:
    """Lets the app answer an interaction, five times within thirty minutes."""

    channel: str
    user: str
    message_ts: str | None
    given: int
    thread_ts: str | None = None
    uses: int = 0


@dataclass(eq=False)
class Tickets:
    """The tickets of one workspace; ages are counted by the workspace's clock."""

    ids: Ids
    stamps: Stamps
    triggers: dict[str, Trigger] = field(default_factory=dict)
    responses: dict[str, ResponseUrl] = field(default_factory=dict)

    def trigger(self, user: str, view: str | None = None) -> str:
        """Give out a trigger id; `view` is the view in which the person acted."""
        ticket = f"{self.ids.next('')}.{self.ids.secret('trigger')}"
        self.triggers[ticket] = Trigger(user, view, self.stamps.seconds())
        return ticket

    def redeem(self, ticket: str) -> Trigger:
        """Use a trigger id up.

        Raises ApiError `invalid_trigger_id`, `exchanged_trigger_id`, `expired_trigger_id`.
        """
        trigger = self.triggers.get(ticket)
        if trigger is None:
            raise ApiError("invalid_trigger_id")
        if trigger.used:
            raise ApiError("exchanged_trigger_id")
        if self.stamps.seconds() - trigger.given > TRIGGER_LIFE:
            raise ApiError("expired_trigger_id")
        trigger.used = True
        return trigger

    def response(
        self, channel: str, user: str, message_ts: str | None, thread_ts: str | None = None
    ) -> str:
        """Give out the secret last part of a response URL."""
        ticket = self.ids.secret("response")
        given = self.stamps.seconds()
        self.responses[ticket] = ResponseUrl(channel, user, message_ts, given, thread_ts)
        return ticket

    def answer(self, ticket: str) -> ResponseUrl:
        """Count one use of a response URL; raises ApiError `used_url` or `expired_url`."""
        response = self.responses.get(ticket)
        if response is None or self.stamps.seconds() - response.given > RESPONSE_LIFE:
            raise ApiError("expired_url")
        if response.uses >= RESPONSE_USES:
            raise ApiError("used_url")
        response.uses += 1
        return response
