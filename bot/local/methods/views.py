"""views.*: the app opens modals and publishes Home tabs."""

from dataclasses import replace
from typing import Final

from bot.local.arguments import Arguments
from bot.local.blockkit import check_view, with_block_ids
from bot.local.errors import ApiError
from bot.local.records import Json, View
from bot.local.workspace import Workspace

MOST_IN_STACK: Final = 3


def open_(ws: Workspace, args: Arguments) -> Json:
    """views.open: show a modal to the person whose trigger id it is."""
    content = _content(ws, args, "modal")
    trigger = ws.tickets.redeem(_trigger_id(args))
    return _shown(ws, ws.show_view(trigger.user, content))


def push(ws: Workspace, args: Arguments) -> Json:
    """views.push: put a modal on top of the one in which the person acted."""
    content = _content(ws, args, "modal")
    trigger = ws.tickets.redeem(_trigger_id(args))
    below = ws.state.views.get(trigger.view or "")
    if below is None or below.closed:
        raise ApiError("not_found")
    if len(ws.stack_of(below)) >= MOST_IN_STACK:
        raise ApiError("push_limit_reached")
    return _shown(ws, ws.show_view(trigger.user, content, below))


def update(ws: Workspace, args: Arguments) -> Json:
    """views.update: change a modal that is still open."""
    content = _content(ws, args, "modal")
    view = _open_view(ws, args)
    if (expected := args.text("hash")) and expected != view.hash:
        raise ApiError("hash_conflict")
    return _shown(ws, ws.change_view(view, content))


def publish(ws: Workspace, args: Arguments) -> Json:
    """views.publish: set a person's Home tab."""
    content = _content(ws, args, "home")
    user = args.required("user_id")
    if user not in ws.state.people:
        raise ApiError("invalid_arguments", "[ERROR] unknown user [json-pointer:/user_id]")
    before = ws.state.homes.get(user)
    if before is not None and (expected := args.text("hash")) and expected != before.hash:
        raise ApiError("hash_conflict")
    return _shown(ws, ws.publish_home(user, content))


def _trigger_id(args: Arguments) -> str:
    if trigger_id := args.text("trigger_id"):
        return trigger_id
    raise ApiError("invalid_arguments", "[ERROR] missing required field: trigger_id")


def _content(ws: Workspace, args: Arguments, kind: str) -> Json:
    view = args.structure("view", "invalid_arguments")
    check_view(view)
    if view["type"] != kind:
        raise ApiError("invalid_arguments", f"[ERROR] must be a {kind} [json-pointer:/view/type]")
    content: Json = view
    return content | {"blocks": with_block_ids(view["blocks"], ws.new_block_id)}


def _open_view(ws: Workspace, args: Arguments) -> View:
    external = args.text("external_id")
    open_now = [v for v in ws.state.views.values() if not v.closed]
    for view in open_now:
        if view.id == args.text("view_id") or (
            external is not None and view.content.get("external_id") == external
        ):
            return view
    raise ApiError("not_found")


def _shown(ws: Workspace, view: View) -> Json:
    return {"view": ws.shown_view(replace(view))}
