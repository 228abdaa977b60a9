"""The form that puts an outing right: number inputs, prefilled with what was read."""

import json
import re
from collections.abc import Mapping
from datetime import date
from typing import Any

from slack_sdk.models.blocks import (
    Block,
    DatePickerElement,
    InputBlock,
    NumberInputElement,
    Option,
    PlainTextInputElement,
    StaticSelectElement,
)
from slack_sdk.models.views import View

from bot.forms.form import Carried, Filled, Form, FormError
from bot.wording import buttons as label
from bot.wording.words import innings
from core.ledger import Notice
from core.ledger.by_hand import LARGEST, Hand, put_right, see_outing
from core.model import Outing, key

NAME = "put_right"
KINDS = ("game", "bullpen", "live", "catch", "off")
COUNTS = ("pitches", "curve", "slider", "breaking", "changeup", "strikes", "effort")
_INNINGS = re.compile(r"^(\d{1,2})(?:[.,]([012]))?$")


def _view(hand: Hand, carried: Carried) -> dict[str, Any] | None:
    outing = see_outing(hand, int(carried["outing"]))
    return outing_form(outing) if outing is not None else None


def _save(hand: Hand, filled: Filled) -> list[Notice]:
    return put_right(hand, int(filled.carried["outing"]), values_of(filled.values))


#: A refusal without a field of its own is shown at the first one.
FORM = Form(NAME, _view, _save, {"outs": "innings", "": "kind"})


def outing_form(outing: Outing) -> dict[str, Any]:
    """The modal for an outing; every input may stay empty, and keeps what was read."""
    view = View(
        type="modal",
        callback_id=NAME,
        title=label.FORM_TITLE,
        submit=label.FORM_SUBMIT,
        close=label.FORM_CLOSE,
        private_metadata=json.dumps({"outing": key(outing)}),
        blocks=[_kind(outing), _day(outing), *_counts(outing), _innings(outing)],
    )
    content: dict[str, Any] = view.to_dict()
    return content


def _kind(outing: Outing) -> Block:
    options = {kind: Option(value=kind, text=label.CHOICES[kind]) for kind in KINDS}
    chosen = options.get(outing.kind) if outing.kind is not None else None
    element = StaticSelectElement(
        action_id="kind", options=list(options.values()), initial_option=chosen
    )
    return InputBlock(block_id="kind", label=label.FORM_FIELDS["kind"], element=element)


def _day(outing: Outing) -> Block:
    element = DatePickerElement(action_id="on", initial_date=outing.on.isoformat())
    return InputBlock(block_id="on", label=label.FORM_FIELDS["on"], element=element)


def _counts(outing: Outing) -> list[Block]:
    blocks: list[Block] = []
    for name in COUNTS:
        value = None if name == "breaking" and _is_the_sum(outing) else getattr(outing, name)
        element = NumberInputElement(
            action_id=name,
            is_decimal_allowed=False,
            initial_value=None if value is None else str(value),
            min_value="0",
            max_value=str(LARGEST[name]),
        )
        blocks.append(
            InputBlock(block_id=name, label=label.FORM_FIELDS[name], element=element, optional=True)
        )
    return blocks


def _is_the_sum(outing: Outing) -> bool:
    """Whether the breaking balls are just the curveballs and sliders together."""
    return outing.breaking == (outing.curve or 0) + (outing.slider or 0)


def _innings(outing: Outing) -> Block:
    element = PlainTextInputElement(
        action_id="innings",
        initial_value=None if outing.outs is None else innings(outing.outs),
        max_length=5,
    )
    return InputBlock(
        block_id="innings", label=label.FORM_FIELDS["innings"], element=element, optional=True
    )


def values_of(values: Mapping[str, Mapping[str, Any]]) -> dict[str, int | str | date | None]:
    """The columns that a submitted form fills. Raises `FormError`."""
    fields: dict[str, int | str | date | None] = {name: _number(values, name) for name in COUNTS}
    option = values["kind"]["kind"].get("selected_option") or {}
    fields["kind"] = option.get("value")
    picked = values["on"]["on"].get("selected_date")
    if picked is None:
        raise FormError("on", label.FORM_ERRORS["impossible"])
    fields["on"] = date.fromisoformat(picked)
    if fields["kind"] == "off" and any(fields[name] for name in COUNTS):
        raise FormError("kind", label.FORM_ERRORS["off"])
    fields["outs"] = _outs(values["innings"]["innings"].get("value"))
    if fields["breaking"] is None and (fields["curve"], fields["slider"]) != (None, None):
        fields["breaking"] = _sum(fields["curve"], fields["slider"])
    return fields


def _sum(*counts: int | str | date | None) -> int:
    return sum(count for count in counts if isinstance(count, int))


def _number(values: Mapping[str, Mapping[str, Any]], name: str) -> int | None:
    typed = values[name][name].get("value")
    if typed in (None, ""):
        return None
    if not str(typed).isdecimal():
        raise FormError(name, label.FORM_ERRORS["number"])
    return int(typed)


def _outs(typed: str | None) -> int | None:
    if not typed or not typed.strip():
        return None
    found = _INNINGS.match(typed.strip())
    if found is None:
        raise FormError("innings", label.FORM_ERRORS["innings"])
    return int(found[1]) * 3 + int(found[2] or 0)
