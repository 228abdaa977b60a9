"""Inputs whose choices are Slack's own: people and channels."""

from collections.abc import Iterable

from slack_sdk.models.blocks import (
    ConversationFilter,
    ConversationSelectElement,
    InputBlock,
    UserMultiSelectElement,
    UserSelectElement,
)

from bot.forms.form import Values


def person(name: str, label: str, slack_id: str | None = None, *, hint: str = "") -> InputBlock:
    """One person with an account, or nobody."""
    element = UserSelectElement(action_id=name, initial_user=slack_id)
    return InputBlock(block_id=name, label=label, element=element, optional=True, hint=hint or None)


def people(name: str, label: str, slack_ids: Iterable[str] = (), *, hint: str = "") -> InputBlock:
    """Any number of people with accounts."""
    chosen = list(slack_ids)
    element = UserMultiSelectElement(action_id=name, initial_users=chosen or None)
    return InputBlock(block_id=name, label=label, element=element, optional=True, hint=hint or None)


def channel(
    name: str, label: str, channel_id: str | None = None, *, private: bool, hint: str = ""
) -> InputBlock:
    """A channel: of any kind, or private ones only."""
    kinds = ["private"] if private else ["public", "private"]
    element = ConversationSelectElement(
        action_id=name,
        initial_conversation=channel_id,
        filter=ConversationFilter(include=kinds, exclude_bot_users=True),
    )
    return InputBlock(block_id=name, label=label, element=element, hint=hint or None)


def read_person(values: Values, name: str) -> str | None:
    """The id of the person who was chosen, or none."""
    found: str | None = values[name][name].get("selected_user")
    return found


def read_people(values: Values, name: str) -> tuple[str, ...]:
    """The ids of the people who were chosen."""
    return tuple(values[name][name].get("selected_users") or ())


def read_channel(values: Values, name: str) -> str | None:
    """The id of the channel that was chosen, or none."""
    found: str | None = values[name][name].get("selected_conversation")
    return found
