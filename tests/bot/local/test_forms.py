"""Modals and Home tabs, against docs.slack.dev, "Modals" and the views.* method pages."""

from collections.abc import Iterator
from datetime import timedelta
from typing import Any

import pytest
from slack_bolt import App
from slack_sdk import WebClient

from bot.clock import SimulatedClock
from bot.local.errors import ScriptError
from bot.local.records import Json, Person
from bot.local.server import StandIn
from bot.local.workspace import Workspace
from tests.support.workspace import AppHost, bolt_app, over_http, refusal


def plain(text: str) -> Json:
    return {"type": "plain_text", "text": text}


def modal(title: str = "Outing", **fields: Any) -> Json:
    element = {"type": "plain_text_input", "action_id": "pitches", "initial_value": "60"}
    count = {"type": "input", "block_id": "count", "label": plain("Pitches"), "element": element}
    view = {"type": "modal", "callback_id": "outing", "title": plain(title)}
    return view | {"submit": plain("Save"), "blocks": [count]} | fields


HOME: Json = {"type": "home", "blocks": [{"type": "header", "text": plain("Your arms")}]}


@pytest.fixture
def answers() -> list[Json]:
    """What the app answers to the next submissions; empty closes the view."""
    return []


@pytest.fixture(autouse=True)
def app(ws: Workspace, stand_in: StandIn, app_host: AppHost, answers: list[Json]) -> Iterator[App]:
    app = bolt_app(ws)

    @app.shortcut("open")
    def open_form(ack: Any, body: Json, client: WebClient) -> None:
        client.views_open(trigger_id=body["trigger_id"], view=modal(notify_on_close=True))
        ack()

    @app.view("outing")
    def save(ack: Any) -> None:
        ack(**(answers.pop(0) if answers else {}))

    @app.view_closed("outing")
    def closed(ack: Any) -> None:
        ack()

    with over_http(stand_in, app_host, ws, app):
        yield app


def trigger_of(ws: Workspace, person: Person) -> str:
    return str(ws.shortcut(person, "unknown").payload["trigger_id"])


def test_a_submission_carries_what_was_typed_and_what_stood_there(
    ws: Workspace, rosa: Person
) -> None:
    ws.shortcut(rosa, "open").wait()
    untouched = ws.submit(rosa).payload["view"]["state"]["values"]
    ws.settle()
    ws.shortcut(rosa, "open").wait()

    typed = ws.submit(rosa, {"pitches": "62"})

    assert untouched["count"]["pitches"] == {"type": "plain_text_input", "value": "60"}
    assert typed.payload["view"]["state"]["values"]["count"]["pitches"]["value"] == "62"
    assert typed.payload["view"]["callback_id"] == "outing"
    assert typed.wait().acknowledged
    assert ws.open_views(rosa) == []


def test_complaints_leave_the_form_open(ws: Workspace, rosa: Person, answers: list[Json]) -> None:
    answers.append({"response_action": "errors", "errors": {"count": "0 to 200, please"}})
    ws.shortcut(rosa, "open").wait()

    delivery = ws.submit(rosa, {"pitches": "999"})

    assert ws.errors_of(delivery) == {"count": "0 to 200, please"}
    assert len(ws.open_views(rosa)) == 1


def test_a_submission_can_update_push_and_clear(
    ws: Workspace, rosa: Person, answers: list[Json]
) -> None:
    answers.append({"response_action": "update", "view": modal("Second")})
    answers.append({"response_action": "push", "view": modal("Third")})
    answers.append({"response_action": "clear"})
    ws.shortcut(rosa, "open").wait()

    stacks = []
    for _ in range(3):
        ws.submit(rosa).wait()
        stacks.append([v.content["title"]["text"] for v in ws.open_views(rosa)])

    assert stacks == [["Second"], ["Second", "Third"], []]


@pytest.mark.parametrize(
    "answer",
    [
        {"response_action": "errors", "errors": {"no_such_block": "?"}},
        {"response_action": "update", "view": modal("x" * 25)},
        {"response_action": "dance"},
    ],
)
def test_an_answer_that_slack_does_not_understand_is_reported(
    ws: Workspace, rosa: Person, answers: list[Json], answer: Json
) -> None:
    ws.shortcut(rosa, "open").wait()
    answers.append(answer)

    delivery = ws.submit(rosa)

    with pytest.raises(ScriptError, match=r"errors must name|wrong view|'dance'"):
        delivery.wait()
    with pytest.raises(ScriptError):
        ws.settle()


def test_closing_is_told_only_on_request(ws: Workspace, rosa: Person, client: WebClient) -> None:
    ws.shortcut(rosa, "open").wait()
    told = ws.close_view(rosa)
    client.views_open(trigger_id=trigger_of(ws, rosa), view=modal())

    silent = ws.close_view(rosa)

    assert told is not None
    assert (told.payload["type"], told.payload["is_cleared"]) == ("view_closed", False)
    assert silent is None
    with pytest.raises(ScriptError, match="no modal open"):
        ws.top_view(rosa)


def test_a_trigger_opens_one_view_within_three_seconds(
    ws: Workspace, rosa: Person, client: WebClient, clock: SimulatedClock
) -> None:
    def opening(trigger: str) -> Any:
        return client.views_open(trigger_id=trigger, view=modal())

    once = trigger_of(ws, rosa)
    opening(once)
    assert refusal(lambda: opening(once)) == "exchanged_trigger_id"

    late = trigger_of(ws, rosa)
    clock.advance(timedelta(seconds=4))
    assert refusal(lambda: opening(late)) == "expired_trigger_id"
    assert refusal(lambda: opening("made.up")) == "invalid_trigger_id"


def test_an_update_with_an_old_hash_is_refused(
    ws: Workspace, rosa: Person, client: WebClient
) -> None:
    view = client.views_open(trigger_id=trigger_of(ws, rosa), view=modal())["view"]
    client.views_update(view_id=view["id"], hash=view["hash"], view=modal("New"))

    refused = refusal(
        lambda: client.views_update(view_id=view["id"], hash=view["hash"], view=modal("Newer"))
    )

    assert refused == "hash_conflict"
    assert ws.top_view(rosa).content["title"]["text"] == "New"


def test_three_views_lie_on_one_another_at_most(
    ws: Workspace, rosa: Person, client: WebClient
) -> None:
    button = {"type": "button", "action_id": "more", "text": plain("More")}
    view = modal(blocks=[{"type": "actions", "elements": [button]}])
    client.views_open(trigger_id=trigger_of(ws, rosa), view=view)

    def push() -> Any:
        trigger = ws.press_in_view(rosa, ws.top_view(rosa), "more").payload["trigger_id"]
        return client.views_push(trigger_id=trigger, view=view)

    push()
    push()

    assert refusal(push) == "push_limit_reached"


def test_a_published_home_is_shown_on_the_next_opening(
    ws: Workspace, rosa: Person, client: WebClient
) -> None:
    client.views_publish(user_id=rosa.id, view=HOME)

    (delivery,) = ws.open_home(rosa)

    assert delivery.event["view"]["blocks"][0]["text"]["text"] == "Your arms"
    home = ws.home(rosa)
    assert home is not None
    assert home.content["type"] == "home"


def test_a_form_that_breaks_a_limit_is_refused(
    ws: Workspace, rosa: Person, client: WebClient
) -> None:
    def opening(view: Json) -> str:
        return refusal(lambda: client.views_open(trigger_id=trigger_of(ws, rosa), view=view))

    without_submit = modal()
    del without_submit["submit"]

    assert opening(modal("x" * 25)) == "invalid_arguments"
    assert opening(without_submit) == "invalid_arguments"
    assert opening(HOME) == "invalid_arguments"
