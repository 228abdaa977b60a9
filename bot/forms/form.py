"""What a form is: a view for whoever may open it, and what is done with what he filled in."""

import json
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from slack_sdk.models.blocks import Block, ButtonElement, MarkdownTextObject, SectionBlock
from slack_sdk.models.views import View
from sqlmodel import Session

from bot.wording import forms as say
from core.ledger import Notice
from core.ledger.by_hand import Hand
from core.model import Team

#: What a button or a view carries; it can be changed on its way, so it is checked again.
Carried = Mapping[str, Any]
#: What was filled in: Slack's `view.state.values`, by block id and action id.
Values = Mapping[str, Mapping[str, Any]]


class FormError(Exception):
    """An input that cannot be taken: the block it stands in, and what is wrong, in words."""

    def __init__(self, block: str, error: str, more: Mapping[str, str] | None = None) -> None:
        """Name the block; `error` is the sentence that stands under it; `more` has others."""
        super().__init__(block)
        self.errors = {**(more or {}), block: error}


class Next(Exception):  # noqa: N818 - no error: the form goes on
    """The submission changes nothing, and another view takes the place of this one."""

    def __init__(self, view: dict[str, Any]) -> None:
        """Name the view."""
        super().__init__(view.get("callback_id"))
        self.view = view


@dataclass(frozen=True, slots=True)
class Filled:
    """A submitted form: its view's id (unique for each opening), what it carried, the inputs."""

    view_id: str
    carried: Carried
    values: Values


@dataclass(frozen=True, slots=True)
class Setting:
    """What a form sets for a team: its name in the list of settings, and what it is now."""

    title: str
    now: Callable[[Session, Team], str]
    #: Whether the coach alone changes it, and no assistant.
    coach_only: bool = False


@dataclass(frozen=True, slots=True)
class Form:
    """One form.

    `view` gives the modal for whoever opens it, or none for somebody who may not; `save` does
    its work in the listener's transaction and raises `FormError` for an input that cannot be
    taken, `Next` for a second screen, `ByHandError` for whoever may not; `blocks` tells the
    block that shows a refusal of a field. A form with a `setting` stands in the list of
    settings, for the coaches; it is opened with the team's id as "team".
    """

    name: str
    view: Callable[[Hand, Carried], dict[str, Any] | None]
    save: Callable[[Hand, Filled], list[Notice]]
    blocks: Mapping[str, str]
    setting: Setting | None = None


def opens(name: str) -> str:
    """The action of a button that opens the form of this name."""
    return f"open.{name}"


def modal(
    name: str,
    carried: Carried,
    blocks: Sequence[Block],
    *,
    title: str | None = None,
    submit: str = say.SUBMIT,
) -> dict[str, Any]:
    """The view of a form: its inputs, and what it carries.

    The title is the form's own in the list of forms, where none is given.
    """
    view = View(
        type="modal",
        callback_id=name,
        title=say.TITLES[name] if title is None else title,
        submit=submit,
        close=say.CLOSE,
        private_metadata=json.dumps(dict(carried)),
        blocks=list(blocks),
    )
    content: dict[str, Any] = view.to_dict()
    return content


def paragraph(said: str, button: ButtonElement | None = None) -> SectionBlock:
    """A text of a view as it stands, links and mentions in it inert."""
    return SectionBlock(text=MarkdownTextObject(text=said, verbatim=True), accessory=button)


def notice_view(said: str) -> dict[str, Any]:
    """A view that only says something: why nothing was opened."""
    view = View(
        type="modal", title=say.NOTICE_TITLE, close=say.CLOSE_NOTICE, blocks=[paragraph(said)]
    )
    content: dict[str, Any] = view.to_dict()
    return content
