"""What happened in the workspace, as entries for whoever looks on: who, where, what."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from bot.local.happenings import EphemeralNews, MessageNews, News, ReactionNews, ViewNews
from bot.local.records import Channel, Ephemeral, Json, Message, View
from bot.local.touch import elements_of
from bot.local.workspace import Workspace

BOT_NAME = "Spinkeeper"


@dataclass(frozen=True, slots=True)
class Entry:
    """One thing that happened: `head` says who did what and where, `body` is mrkdwn.

    `emoji` names what the bot put under the line, `ts` is when it was said (none: now).
    """

    head: str
    body: str
    by_bot: bool
    ts: str | None = None
    emoji: tuple[str, ...] = ()
    buttons: tuple[str, ...] = ()
    #: Channel and ts of the message that this is about.
    about: tuple[str, str] = ("", "")


class Observer:
    """Turns news of one workspace into entries."""

    def __init__(self, ws: Workspace) -> None:
        """Know people and channels by this workspace."""
        self._ws = ws
        self._forms: set[str] = set()

    def entries(self, news: Iterable[News]) -> list[Entry]:
        """What is worth showing, in order; reactions stand with the line they belong to."""
        shown: list[Entry] = []
        for one in news:
            match one:
                case MessageNews():
                    shown += self._message(one)
                case ReactionNews():
                    self._reaction(shown, one)
                case EphemeralNews(ephemeral):
                    shown.append(self._ephemeral(ephemeral))
                case ViewNews(view):
                    shown += self._form(view)
        return shown

    def name_of(self, slack_id: str) -> str:
        """The name of a person or a channel by its id; a stranger's id."""
        person = self._ws.state.people.get(slack_id)
        if person is not None:
            return person.real_name
        channel = self._ws.state.channels.get(slack_id)
        return channel.name if channel is not None else slack_id

    def _message(self, news: MessageNews) -> list[Entry]:
        message = news.message
        by_bot = message.user == self._ws.bot.id
        if not by_bot and news.what == "changed" and not (message.edited or message.is_tombstone):
            return []  # a link preview: nobody did anything
        head = self._bot_head(news) if by_bot else self._head(news)
        return [
            Entry(
                head=head,
                body="" if message.is_tombstone else message.text,
                by_bot=by_bot,
                ts=message.ts if news.what == "posted" else None,
                buttons=buttons_of(message.blocks) if news.what != "deleted" else (),
                about=(message.channel, message.ts),
            )
        ]

    def _head(self, news: MessageNews) -> str:
        message = news.message
        where = self._where(message)
        if message.is_tombstone:
            return f"A line {where} is deleted; its thread stays"
        name = self.name_of(message.user or "")
        match news.what:
            case "posted" if self._ws.state.channel(message.channel).kind == "im":
                return f"{name} → {BOT_NAME} (direct message)"
            case "posted":
                return f"{name} {where}"
            case "changed":
                return f"{name} edits the line {where} to:"
            case "deleted":
                return f"{name} deletes the line {where}:"

    def _bot_head(self, news: MessageNews) -> str:
        message = news.message
        channel = self._ws.state.channel(message.channel)
        direct = channel.kind in ("im", "mpim")
        to = self._listeners(channel)
        match news.what:
            case "posted":
                return f"{BOT_NAME} → {to} (direct message)" if direct else (
                    f"{BOT_NAME} {self._where(message)}"
                )  # fmt: skip
            case "changed":
                whom = f"to {to}" if direct else self._where(message)
                return f"{BOT_NAME} edits its answer {whom}:"
            case "deleted":
                whom = f"to {to}" if direct else self._where(message)
                return f"{BOT_NAME} deletes its message {whom}:"

    def _where(self, message: Message) -> str:
        channel = self._ws.state.channel(message.channel)
        if channel.kind in ("im", "mpim"):
            return "in the direct message"
        return f"in the thread in #{channel.name}" if message.is_reply else f"in #{channel.name}"

    def _listeners(self, channel: Channel) -> str:
        others = [self.name_of(one) for one in channel.members if one != self._ws.bot.id]
        return " and ".join(others)

    def _reaction(self, shown: list[Entry], news: ReactionNews) -> None:
        """Put the bot's emoji to the line's own entry, or make an entry of it."""
        if news.user != self._ws.bot.id:
            return
        message, added = news.message, (news.reaction.name,) * news.present
        for place, entry in enumerate(shown):
            if entry.about == (message.channel, message.ts) and not entry.by_bot:
                shown[place] = replace(entry, emoji=entry.emoji + added)
                return
        if added:
            author = self.name_of(message.user or "")
            head = f"{BOT_NAME} marks the line of {author} {self._where(message)}"
            about = (message.channel, message.ts)
            shown.append(Entry(head, message.text, by_bot=True, emoji=added, about=about))

    def _ephemeral(self, ephemeral: Ephemeral) -> Entry:
        channel = self._ws.state.channel(ephemeral.channel)
        where = f" in #{channel.name}" if channel.name else ""
        to = self.name_of(ephemeral.user)
        head = f"{BOT_NAME} → {to} (seen by nobody else{where})"
        return Entry(head, ephemeral.text, by_bot=True, buttons=buttons_of(ephemeral.blocks))

    def _form(self, view: View) -> list[Entry]:
        """A modal that opens; forms are filled in on Slack, not in this terminal."""
        if view.content.get("type") != "modal" or view.closed or view.hash in self._forms:
            return []
        self._forms.add(view.hash)
        title = (view.content.get("title") or {}).get("text", "")
        labels = [_label(block) for block in view.content["blocks"] if block["type"] == "input"]
        head = f"{BOT_NAME} opens a form for {self.name_of(view.user)}: {title}"
        return [Entry(head, "\n".join(labels), by_bot=True)]


def home_entry(name: str, view: View) -> Entry:
    """Somebody's Home tab as it stands, buttons in brackets."""
    body = "\n".join(map(_on_home, view.content["blocks"]))
    return Entry(f"Home tab of {name}", body, by_bot=True)


def _on_home(block: Json) -> str:
    if block["type"] == "header":
        return f"\n*{block['text']['text']}*"
    if block["type"] == "actions":
        return "  ".join(f"[{label}]" for label in buttons_of([block]))
    return str(block["text"]["text"])


def buttons_of(blocks: Iterable[Json]) -> tuple[str, ...]:
    """The labels of a message's buttons, in order."""
    elements = (element for block in blocks for element in elements_of(block))
    return tuple(str(one["text"]["text"]) for one in elements if one["type"] == "button")


def _label(block: Json) -> str:
    return str((block.get("label") or {}).get("text", ""))
