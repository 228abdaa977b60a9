"""The form that reports pain: where, how bad, and when it is felt; told to adults alone."""

from typing import Any

from slack_sdk.models.blocks import Block

from bot.forms import arms, inputs
from bot.forms.form import Carried, Filled, Form, FormError, modal
from bot.forms.one_outing import today_of, written
from bot.forms.written import write_line
from bot.wording.forms import CHOICES, ERRORS, FIELDS, PAIN_NOTE, SEVERITY_HINT, SITES
from core.audience import Subject
from core.ledger import Notice
from core.ledger.by_hand import Hand, check
from core.ledger.dictation import Wanted
from core.reading import Entry, Pain
from core.reading.writing import WHEN, write

NAME = "pain"
#: Places of the body that are neither left nor right.
MIDDLE = frozenset({"back", "neck", "head", "chest"})


def _view(hand: Hand, carried: Carried) -> dict[str, Any] | None:
    form = arms.offered(hand, Subject.ARM)
    if form is None:
        return None
    felt = [(one, CHOICES[one]) for one in ("pain", "sore")]
    sides = [(one, CHOICES[one]) for one in ("left", "right")]
    when = [(one, CHOICES[one]) for one in WHEN]
    blocks: list[Block] = [
        inputs.note(PAIN_NOTE, "note"),
        *arms.pick(form, carried),
        inputs.choice("felt", FIELDS["felt"], felt, "pain"),
        inputs.choice("site", FIELDS["site"], list(SITES.items())),
        inputs.choice("side", FIELDS["side"], sides, optional=True),
        inputs.number("severity", FIELDS["severity"], most=10, hint=SEVERITY_HINT),
        inputs.choice("when", FIELDS["when"], when, optional=True),
        inputs.day(FIELDS["on"], today_of(form)),
        *arms.missing(form.no_consent),
    ]
    return modal(NAME, {}, blocks)


def _save(hand: Hand, filled: Filled) -> list[Notice]:
    form = arms.need(hand, Subject.ARM)
    values = filled.values
    site, side = inputs.read_choice(values, "site"), inputs.read_choice(values, "side")
    if side is not None and site in MIDDLE:
        raise FormError("side", ERRORS["side"])
    on = inputs.read_day(values)
    check({"on": on}, form.posted.date())
    pain = Pain(
        site or "",
        inputs.read_number(values, "severity"),
        side,
        inputs.read_choice(values, "when"),
        inputs.read_choice(values, "felt") == "sore",
    )
    # What is read of a pain of 0 is no pain.
    read_as = Entry(pain=(pain,) if pain.severity != 0 else ())
    text = written(
        form,
        [Wanted(arms.picked(form, values), on, read_as)],
        lambda entries: write(Entry(who=entries[0].who, pain=(pain,)), on),
        {"": "site"},
    )
    return write_line(hand, filled, text)


FORM = Form(NAME, _view, _save, {"": "site"})
