"""The inputs that forms are made of, and what was put into them."""

import re
from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from typing import Any

from slack_sdk.models.blocks import (
    ContextBlock,
    DatePickerElement,
    InputBlock,
    MarkdownTextObject,
    NumberInputElement,
    Option,
    PlainTextInputElement,
    PlainTextObject,
    StaticMultiSelectElement,
    StaticSelectElement,
)
from slack_sdk.models.blocks.basic_components import OptionGroup

from bot.forms.form import FormError, Values
from bot.wording.buttons import FORM_ERRORS
from core.ledger.by_hand import LARGEST

_INNINGS = re.compile(r"^(\d{1,2})(?:[.,]([012]))?$")
#: Slack's limit of an option's text (characters).
LONGEST_OPTION = 75
Options = Sequence[tuple[str, str]]


def number(
    name: str, label: str, value: int | None = None, most: int | None = None, hint: str = ""
) -> InputBlock:
    """A whole number that may stay empty."""
    element = NumberInputElement(
        action_id=name,
        is_decimal_allowed=False,
        initial_value=None if value is None else str(value),
        min_value="0",
        max_value=str(LARGEST[name] if most is None else most),
    )
    return InputBlock(block_id=name, label=label, element=element, optional=True, hint=hint or None)


def day(label: str, value: date, name: str = "on") -> InputBlock:
    """A day."""
    element = DatePickerElement(action_id=name, initial_date=value.isoformat())
    return InputBlock(block_id=name, label=label, element=element)


def text(
    name: str, label: str, value: str | None = None, *, lines: bool = False, most: int = 5,
    hint: str = "",
) -> InputBlock:  # fmt: skip
    """Free text that may stay empty, at most so many characters."""
    element = PlainTextInputElement(
        action_id=name, initial_value=value or None, multiline=lines, max_length=most
    )
    return InputBlock(block_id=name, label=label, element=element, optional=True, hint=hint or None)


def needed(name: str, label: str, *, most: int, lines: bool = False) -> InputBlock:
    """Free text that must not stay empty, at most so many characters."""
    element = PlainTextInputElement(action_id=name, max_length=most, multiline=lines)
    return InputBlock(block_id=name, label=label, element=element)


def choice(
    name: str, label: str, options: Options, value: str | None = None, *, optional: bool = False
) -> InputBlock:
    """One of several; `options` are stored values with their labels."""
    offered = {stored: _option(stored, shown) for stored, shown in options}
    element = StaticSelectElement(
        action_id=name,
        options=list(offered.values()),
        initial_option=offered.get(value) if value is not None else None,
    )
    return InputBlock(block_id=name, label=label, element=element, optional=optional)


def choices(
    name: str, label: str, groups: Mapping[str, Options], chosen: Iterable[str] = ()
) -> InputBlock:
    """Several of several, under the names of their groups where there are two or more."""
    made = {group: [_option(*one) for one in options] for group, options in groups.items()}
    wanted = set(chosen)
    initial = [one for options in made.values() for one in options if one.value in wanted]
    if len(made) == 1:
        (options,) = made.values()
        element = StaticMultiSelectElement(
            action_id=name, options=options, initial_options=initial or None
        )
    else:
        grouped = [
            OptionGroup(label=PlainTextObject(text=_short(group), emoji=False), options=options)
            for group, options in made.items()
        ]
        element = StaticMultiSelectElement(
            action_id=name, option_groups=grouped, initial_options=initial or None
        )
    return InputBlock(block_id=name, label=label, element=element)


def note(said: str, name: str) -> ContextBlock:
    """A sentence that asks nothing."""
    return ContextBlock(block_id=name, elements=[MarkdownTextObject(text=said, verbatim=True)])


def _option(stored: str, shown: str) -> Option:
    return Option(value=stored, text=PlainTextObject(text=_short(shown), emoji=False))


def _short(label: str) -> str:
    return label if len(label) <= LONGEST_OPTION else label[: LONGEST_OPTION - 1] + "…"


def read_number(values: Values, name: str) -> int | None:
    """A whole number, or none. Raises `FormError`."""
    typed = values[name][name].get("value")
    if typed in (None, ""):
        return None
    if not str(typed).isdecimal():
        raise FormError(name, FORM_ERRORS["number"])
    return int(typed)


def read_outs(values: Values, name: str = "innings") -> int | None:
    """Innings such as "4.1" as outs, or none. Raises `FormError`."""
    typed = values[name][name].get("value")
    if not typed or not typed.strip():
        return None
    found = _INNINGS.match(typed.strip())
    if found is None:
        raise FormError(name, FORM_ERRORS["innings"])
    return int(found[1]) * 3 + int(found[2] or 0)


def read_day(values: Values, name: str = "on") -> date:
    """The day. Raises `FormError`."""
    picked = values[name][name].get("selected_date")
    if picked is None:
        raise FormError(name, FORM_ERRORS["day"])
    return date.fromisoformat(picked)


def read_choice(values: Values, name: str) -> str | None:
    """The stored value that was chosen, or none."""
    option = values[name][name].get("selected_option") or {}
    found: str | None = option.get("value")
    return found


def read_choices(values: Values, name: str) -> list[str]:
    """The stored values that were chosen."""
    options: list[dict[str, Any]] = values[name][name].get("selected_options") or []
    return [str(option["value"]) for option in options]


def read_text(values: Values, name: str) -> str:
    """What was typed, without blanks around it."""
    return str(values[name][name].get("value") or "").strip()
