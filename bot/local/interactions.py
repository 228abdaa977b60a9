"""The payloads that Slack sends when a person presses, chooses, submits or calls a command.

Shapes follow docs.slack.dev/reference/interaction-payloads and "Slash commands".
"""

from dataclasses import dataclass
from typing import Any

from bot.local.records import Channel, Json, Person, View


@dataclass(frozen=True, slots=True)
class Sender:
    """What every interaction payload says about the workspace, the app and the person."""

    team_id: str
    domain: str
    app_id: str
    token: str
    person: Person

    def base(self, kind: str) -> Json:
        """Return the part that all payloads share."""
        user = {
            "id": self.person.id,
            "username": self.person.name,
            "name": self.person.name,
            "team_id": self.team_id,
        }
        return {
            "type": kind,
            "user": user,
            "api_app_id": self.app_id,
            "token": self.token,
            "team": {"id": self.team_id, "domain": self.domain},
            "enterprise": None,
            "is_enterprise_install": False,
        }


def action(element: Json, block_id: str, stamp: str, chosen: Any) -> Json:
    """Return the entry of `actions` for an element; `chosen` depends on the element's type."""
    kind = element["type"]
    common = {"type": kind, "action_id": element["action_id"], "block_id": block_id}
    return common | value_of(element, chosen) | {"action_ts": stamp}


def value_of(element: Json, chosen: Any) -> Json:
    """Return what an element holds once a person has put `chosen` into it.

    `chosen` is an option's value (a list of them where several can be chosen), a user or
    channel id, a date or a time, or the typed text; for a button it is not used.
    """
    kind = str(element["type"])
    if kind == "button":
        return {name: element[name] for name in ("text", "value", "style") if name in element}
    if kind in ("checkboxes", "multi_static_select"):
        return {"selected_options": [option_of(element, value) for value in chosen]}
    if kind in ("static_select", "radio_buttons", "overflow"):
        return {"selected_option": option_of(element, chosen) if chosen is not None else None}
    return {_VALUE_NAMES.get(kind, "value"): chosen}


_VALUE_NAMES = {
    "users_select": "selected_user",
    "multi_users_select": "selected_users",
    "channels_select": "selected_channel",
    "conversations_select": "selected_conversation",
    "multi_conversations_select": "selected_conversations",
    "datepicker": "selected_date",
    "timepicker": "selected_time",
    "datetimepicker": "selected_date_time",
}


def option_of(element: Json, value: str) -> Json:
    """Return the option with this value; raises LookupError when there is none."""
    groups = [g["options"] for g in element.get("option_groups", [])]
    for option in [*element.get("options", []), *(o for g in groups for o in g)]:
        if option["value"] == value:
            found: Json = option
            return found
    raise LookupError(f"{element.get('action_id')} has no option {value!r}")


def view_json(view: View, team_id: str, app_id: str, bot_id: str | None) -> Json:
    """Return a view as Slack shows it to the app."""
    shown = {
        "id": view.id,
        "team_id": team_id,
        "state": {"values": view.values},
        "hash": view.hash,
        "private_metadata": "",
        "callback_id": "",
        "external_id": "",
        "title": None,
        "submit": None,
        "close": None,
        "clear_on_close": False,
        "notify_on_close": False,
        "root_view_id": view.root,
        "previous_view_id": view.previous,
        "app_id": app_id,
        "app_installed_team_id": team_id,
        "bot_id": bot_id,
    }
    return shown | view.content


def slash_command(
    sender: Sender, channel: Channel, command: str, text: str, trigger_id: str, response_url: str
) -> Json:
    """Return the form fields of a slash command."""
    names = {"im": "directmessage", "mpim": "mpdm", "private": "privategroup"}
    return {
        "token": sender.token,
        "team_id": sender.team_id,
        "team_domain": sender.domain,
        "channel_id": channel.id,
        "channel_name": names.get(channel.kind, channel.name),
        "user_id": sender.person.id,
        "user_name": sender.person.name,
        "command": command,
        "text": text,
        "api_app_id": sender.app_id,
        "is_enterprise_install": "false",
        "response_url": response_url,
        "trigger_id": trigger_id,
    }
