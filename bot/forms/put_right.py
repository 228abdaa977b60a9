"""The form that puts an outing right: number inputs, prefilled with what was read."""

from datetime import date
from typing import Any

from slack_sdk.models.blocks import Block

from bot.forms import inputs
from bot.forms.form import Carried, Filled, Form, FormError, Values, modal
from bot.wording import buttons as label
from bot.wording.words import innings
from core.ledger import Notice
from core.ledger.by_hand import Hand, put_right, see_outing
from core.model import Outing, key

NAME = "put_right"
KINDS = ("game", "bullpen", "live", "catch", "off")
COUNTS = ("pitches", "curve", "slider", "breaking", "changeup", "strikes", "effort")


def _view(hand: Hand, carried: Carried) -> dict[str, Any] | None:
    outing = see_outing(hand, int(carried["outing"]))
    return outing_form(outing) if outing is not None else None


def _save(hand: Hand, filled: Filled) -> list[Notice]:
    return put_right(hand, int(filled.carried["outing"]), values_of(filled.values))


#: A refusal without a field of its own is shown at the first one.
FORM = Form(NAME, _view, _save, {"outs": "innings", "": "kind"})


def outing_form(outing: Outing) -> dict[str, Any]:
    """The modal for an outing; every input may stay empty, and keeps what was read."""
    kinds = [(kind, label.CHOICES[kind]) for kind in KINDS]
    blocks: list[Block] = [
        inputs.choice("kind", label.FORM_FIELDS["kind"], kinds, outing.kind),
        inputs.day(label.FORM_FIELDS["on"], outing.on),
        *(inputs.number(name, label.FORM_FIELDS[name], _known(outing, name)) for name in COUNTS),
        inputs.text("innings", label.FORM_FIELDS["innings"], _innings(outing)),
    ]
    return modal(NAME, {"outing": key(outing)}, blocks)


def _known(outing: Outing, name: str) -> int | None:
    value: int | None = getattr(outing, name)
    return None if name == "breaking" and _is_the_sum(outing) else value


def _is_the_sum(outing: Outing) -> bool:
    """Whether the breaking balls are just the curveballs and sliders together."""
    return outing.breaking == (outing.curve or 0) + (outing.slider or 0)


def _innings(outing: Outing) -> str | None:
    return None if outing.outs is None else innings(outing.outs)


def values_of(values: Values) -> dict[str, int | str | date | None]:
    """The columns that a submitted form fills. Raises `FormError`."""
    fields: dict[str, int | str | date | None] = {
        name: inputs.read_number(values, name) for name in COUNTS
    }
    fields["kind"] = inputs.read_choice(values, "kind")
    fields["on"] = inputs.read_day(values)
    if fields["kind"] == "off" and any(fields[name] for name in COUNTS):
        raise FormError("kind", label.FORM_ERRORS["off"])
    fields["outs"] = inputs.read_outs(values)
    if fields["breaking"] is None and (fields["curve"], fields["slider"]) != (None, None):
        fields["breaking"] = _sum(fields["curve"], fields["slider"])
    return fields


def _sum(*counts: int | str | date | None) -> int:
    return sum(count for count in counts if isinstance(count, int))
