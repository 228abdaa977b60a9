"""Block Kit checks: the limits that make Slack refuse a message or a view.

Limits from docs.slack.dev/reference/block-kit (blocks, block elements, composition objects).
"""

from collections.abc import Callable, Iterator
from typing import Any, Final

from bot.local.errors import ApiError
from bot.local.records import Json

MESSAGE_BLOCKS: Final = 50
VIEW_BLOCKS: Final = 100
# Undocumented: slackapi/bolt-js issues 2509 and 2867 report 12,000 to 13,200 characters.
ALL_TEXT: Final = 12_000

# Longest text, by the block or element and the field that holds it.
TEXT_LIMITS: Final = {
    ("header", "text"): 150,
    ("section", "text"): 3000,
    ("button", "text"): 75,
    ("input", "label"): 2000,
    ("input", "hint"): 2000,
    ("confirm", "title"): 100,
    ("confirm", "text"): 300,
    ("confirm", "confirm"): 30,
    ("confirm", "deny"): 30,
    ("option", "text"): 75,
    ("option", "description"): 75,
    ("modal", "title"): 24,
    ("modal", "submit"): 24,
    ("modal", "close"): 24,
}
FIELD_LIMITS: Final = {
    "action_id": 255,
    "block_id": 255,
    "callback_id": 255,
    "external_id": 255,
    "private_metadata": 3000,
    "value": 2000,
    "url": 3000,
    "accessibility_label": 75,
    "alt_text": 2000,
}
COUNT_LIMITS: Final = {
    ("actions", "elements"): (1, 25),
    ("context", "elements"): (1, 10),
    ("section", "fields"): (1, 10),
    ("overflow", "options"): (1, 5),
    ("checkboxes", "options"): (1, 10),
    ("radio_buttons", "options"): (1, 10),
    ("static_select", "options"): (1, 100),
    ("multi_static_select", "options"): (1, 100),
}
EVERYWHERE: Final = frozenset(
    {"actions", "context", "divider", "header", "image", "rich_text", "section", "video"}
)
BLOCK_TYPES: Final = {
    "message": EVERYWHERE | {"file", "input", "markdown", "table", "context_actions"},
    "modal": EVERYWHERE | {"input", "alert"},
    "home": EVERYWHERE | {"input"},
}
ELEMENT_TYPES: Final = frozenset(
    {
        "button",
        "channels_select",
        "checkboxes",
        "conversations_select",
        "datepicker",
        "datetimepicker",
        "email_text_input",
        "external_select",
        "feedback_buttons",
        "file_input",
        "icon_button",
        "image",
        "multi_channels_select",
        "multi_conversations_select",
        "multi_external_select",
        "multi_static_select",
        "multi_users_select",
        "number_input",
        "overflow",
        "plain_text_input",
        "radio_buttons",
        "rich_text_input",
        "static_select",
        "timepicker",
        "url_text_input",
        "users_select",
        "workflow_button",
    }
)
NEEDED: Final = {
    "header": ("text",),
    "input": ("label", "element"),
    "actions": ("elements",),
    "context": ("elements",),
    "image": ("alt_text",),
    "button": ("text", "action_id"),
}


def check_message_blocks(blocks: Any) -> None:
    """Check the blocks of a message; raises ApiError `invalid_blocks` with what is wrong."""
    _refuse(list(_block_faults(blocks, "message", MESSAGE_BLOCKS)), "invalid_blocks")
    if sum(_text_lengths(blocks)) > ALL_TEXT:
        raise ApiError("msg_blocks_too_long")


def check_view(view: Any) -> None:
    """Check a modal or Home view; raises ApiError `invalid_arguments` with what is wrong."""
    if not isinstance(view, dict) or view.get("type") not in ("modal", "home"):
        raise ApiError("invalid_arguments", "[ERROR] unsupported type [json-pointer:/view/type]")
    faults = list(_block_faults(view.get("blocks"), str(view["type"]), VIEW_BLOCKS))
    shell = {k: v for k, v in view.items() if k != "blocks"}
    faults += _text_faults(shell, str(view["type"]), "/view") + _field_faults(shell, "/view")
    if view["type"] == "modal" and "title" not in view:
        faults.append("missing required field: title [json-pointer:/view]")
    if view["type"] == "home" and ("submit" in view or "close" in view):
        faults.append("a home has no submit or close [json-pointer:/view]")
    inputs = [
        b for b in view.get("blocks") or [] if isinstance(b, dict) and b.get("type") == "input"
    ]
    if view["type"] == "modal" and inputs and "submit" not in view:
        faults.append("a modal with an input needs submit [json-pointer:/view]")
    _refuse(faults, "invalid_arguments")


def with_block_ids(blocks: list[Json], new_id: Callable[[], str]) -> list[Json]:
    """Return the blocks as Slack keeps them: each has a `block_id`."""
    return [b if b.get("block_id") else b | {"block_id": new_id()} for b in blocks]


def _text_lengths(node: Any) -> Iterator[int]:
    if isinstance(node, list):
        for item in node:
            yield from _text_lengths(item)
    elif isinstance(node, dict):
        if isinstance(node.get("text"), str):
            yield len(node["text"])
        for value in node.values():
            yield from _text_lengths(value)


def _refuse(faults: list[str], error: str) -> None:
    if faults:
        raise ApiError(error, *(f"[ERROR] {fault}" for fault in faults))


def _block_faults(blocks: Any, surface: str, most: int) -> Iterator[str]:
    if not isinstance(blocks, list):
        yield "must be an array [json-pointer:/blocks]"
        return
    if len(blocks) > most:
        yield f"no more than {most} items allowed [json-pointer:/blocks]"
    seen: set[str] = set()
    for number, block in enumerate(blocks):
        where = f"/blocks/{number}"
        if not isinstance(block, dict) or block.get("type") not in BLOCK_TYPES[surface]:
            yield f"unsupported type [json-pointer:{where}/type]"
            continue
        block_id = block.get("block_id")
        if block_id in seen:
            yield f"block_id already exists: {block_id} [json-pointer:{where}/block_id]"
        seen |= {block_id} if block_id else set()
        yield from _faults(block, where)


def _faults(node: Json, where: str) -> Iterator[str]:
    kind = str(node.get("type"))
    if kind == "rich_text":
        return
    for name in NEEDED.get(kind, ()):
        if not node.get(name):
            yield f"missing required field: {name} [json-pointer:{where}]"
    if kind == "section" and not (node.get("text") or node.get("fields")):
        yield f"a section needs text or fields [json-pointer:{where}]"
    yield from _text_faults(node, kind, where)
    yield from _field_faults(node, where)
    yield from _count_faults(node, kind, where)
    yield from _parts_faults(node, kind, where)


def _parts_faults(node: Json, kind: str, where: str) -> Iterator[str]:
    elements = node.get("elements", [])
    if kind == "actions":
        actions = [e.get("action_id") for e in elements if isinstance(e, dict)]
        if len(set(actions)) != len(actions):
            yield f"action_id must be unique in a block [json-pointer:{where}/elements]"
    for number, element in enumerate(elements if isinstance(elements, list) else []):
        yield from _element_faults(element, f"{where}/elements/{number}", kind)
    for name in ("accessory", "element"):
        if name in node:
            yield from _element_faults(node[name], f"{where}/{name}", kind)
    for number, field in enumerate(node.get("fields", [])):
        yield from _text_object_faults(field, 2000, f"{where}/fields/{number}")
    if "confirm" in node and kind != "confirm":
        yield from _text_faults(node["confirm"], "confirm", f"{where}/confirm")
    for number, option in enumerate(node.get("options", [])):
        yield from _option_faults(option, f"{where}/options/{number}")


def _element_faults(element: Any, where: str, block: str) -> Iterator[str]:
    kind = element.get("type") if isinstance(element, dict) else None
    if block == "context" and kind in ("mrkdwn", "plain_text"):
        yield from _text_object_faults(element, 3000, where)
    elif kind not in ELEMENT_TYPES or (block == "context" and kind != "image"):
        yield f"unsupported type [json-pointer:{where}/type]"
    else:
        if element.get("style") not in (None, "primary", "danger"):
            yield f"unknown style [json-pointer:{where}/style]"
        yield from _faults(element, where)


def _option_faults(option: Any, where: str) -> Iterator[str]:
    if not isinstance(option, dict) or "text" not in option or "value" not in option:
        yield f"an option needs text and value [json-pointer:{where}]"
        return
    yield from _text_faults(option, "option", where)
    # The SDK's own limit; Slack's pages give 75 and 150 in different places.
    if len(str(option["value"])) > 150:
        yield f"must be less than 151 characters [json-pointer:{where}/value]"


def _text_faults(node: Json, kind: str, where: str) -> list[str]:
    faults: list[str] = []
    for (owner, name), most in TEXT_LIMITS.items():
        if owner == kind and node.get(name) is not None:
            faults += _text_object_faults(node[name], most, f"{where}/{name}")
            plain = isinstance(node[name], dict) and node[name].get("type") == "plain_text"
            if (owner in ("header", "button", "input", "modal")) and not plain:
                faults.append(f"must be plain_text [json-pointer:{where}/{name}]")
    return faults


def _text_object_faults(text: Any, most: int, where: str) -> list[str]:
    if not isinstance(text, dict) or text.get("type") not in ("mrkdwn", "plain_text"):
        return [f"must be a text object [json-pointer:{where}]"]
    if not isinstance(text.get("text"), str) or not text["text"]:
        return [f"must be more than 0 characters [json-pointer:{where}/text]"]
    # Slack does not say in which unit it counts; UTF-16 is the stricter one.
    if len(text["text"].encode("utf-16-le")) // 2 > most:
        return [f"must be less than {most + 1} characters [json-pointer:{where}/text]"]
    return []


def _field_faults(node: Json, where: str) -> list[str]:
    return [
        f"must be less than {most + 1} characters [json-pointer:{where}/{name}]"
        for name, most in FIELD_LIMITS.items()
        if len(str(node.get(name, ""))) > most
    ]


def _count_faults(node: Json, kind: str, where: str) -> list[str]:
    return [
        f"must have {least} to {most} items [json-pointer:{where}/{name}]"
        for (owner, name), (least, most) in COUNT_LIMITS.items()
        if owner == kind and name in node and not least <= len(node[name]) <= most
    ]
