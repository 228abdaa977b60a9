from slack_sdk import WebClient

from bot.local.happenings import EphemeralNews, MessageNews, News, ReactionNews, ViewNews
from bot.local.records import Channel, Person
from bot.local.workspace import Workspace


def test_an_onlooker_is_told_of_everything_in_order(
    ws: Workspace, rosa: Person, log: Channel, client: WebClient
) -> None:
    news: list[News] = []
    ws.watch(news.append)

    said = ws.say(rosa, log, "62p")
    client.reactions_add(channel=log.id, timestamp=said.ts, name="baseball")
    ws.edit(said, "63p")
    client.chat_postEphemeral(channel=log.id, user=rosa.id, text="sure?")
    client.views_publish(user_id=rosa.id, view={"type": "home", "blocks": []})
    ws.delete(said)

    assert [_told(item) for item in news] == [
        "posted 62p",
        "baseball",
        "changed 63p",
        "sure?",
        "home",
        "deleted 63p",
    ]


def _told(news: News) -> str:
    match news:
        case MessageNews(what, message):
            return f"{what} {message.text}"
        case ReactionNews(_, _, reaction, _):
            return reaction.name
        case EphemeralNews(ephemeral):
            return ephemeral.text
        case ViewNews(view):
            return str(view.content["type"])
