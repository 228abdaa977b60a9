"""A form filled in at the prompt by its labels: "Pitches = 62; Curveballs = 11"."""

from collections.abc import Iterable, Mapping
from typing import Any

from bot.local.errors import ScriptError
from bot.local.interactions import option_of
from bot.local.records import Json

BETWEEN, IS = ";", "="


def filled(blocks: Iterable[Json], typed: str) -> dict[str, Any]:
    """What was typed as values by action id; raises `ScriptError` for what does not fit."""
    inputs = {_label(block).casefold(): block["element"] for block in blocks if "element" in block}
    values = {}
    for pair in filter(None, map(str.strip, typed.split(BETWEEN))):
        label, _, value = (part.strip() for part in pair.partition(IS))
        element = inputs.get(label.casefold())
        if element is None:
            raise ScriptError(f"There is no “{label}”; there is: {', '.join(inputs)}.")
        values[str(element["action_id"])] = _value(element, value, label)
    return values


def _label(block: Json) -> str:
    return str((block.get("label") or {}).get("text", ""))


def _value(element: Json, typed: str, label: str) -> Any:
    options = _options(element)
    if not options:
        return typed
    if element["type"] != "multi_static_select":
        return _chosen(element, options, typed, label)
    return [_chosen(element, options, one.strip(), label) for one in typed.split(",")]


def _options(element: Json) -> Mapping[str, str]:
    """The options of a menu: their values by what people read."""
    groups = [group["options"] for group in element.get("option_groups", [])]
    offered = [*element.get("options", []), *(one for group in groups for one in group)]
    return {str(one["text"]["text"]).casefold(): str(one["value"]) for one in offered}


def _chosen(element: Json, options: Mapping[str, str], typed: str, label: str) -> str:
    value = options.get(typed.casefold())
    if value is None:
        raise ScriptError(f"{label} takes one of: {', '.join(options)}.")
    return str(option_of(element, value)["value"])
