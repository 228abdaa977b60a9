"""What the forms for one outing of one pitcher share: a screen of counts becomes a line."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from slack_sdk.models.blocks import Block

from bot.forms import arms, inputs
from bot.forms.form import Carried, Filled, Form, FormError, Values, modal
from bot.forms.written import write_line
from bot.wording.forms import CHOICES, ERRORS, FIELDS, LEFT_EMPTY
from core.audience import Subject, may_log
from core.ledger import Notice
from core.ledger.by_hand import Hand, check
from core.ledger.days import outing_day
from core.ledger.decide import PRACTICE_KINDS
from core.ledger.dictation import DictationError, Wanted, dictate
from core.reading import Entry
from core.reading.writing import write

#: Fields of an entry by the inputs that fill them, where the names differ.
FIELD_OF = {"throws": "pitches", "spins": "breaking"}


@dataclass(frozen=True, slots=True)
class Sheet:
    """One form: what it is about, its kinds of outing, its inputs in order.

    The first kind is offered where none is known; with one kind there is nothing to choose.
    """

    name: str
    subject: Subject
    kinds: tuple[str, ...]
    counts: tuple[str, ...]
    has_innings: bool = False


def form_of(sheet: Sheet) -> Form:
    """The form of a sheet."""

    def view(hand: Hand, carried: Carried) -> dict[str, Any] | None:
        return _view(sheet, hand, carried)

    def save(hand: Hand, filled: Filled) -> list[Notice]:
        return _save(sheet, hand, filled)

    return Form(sheet.name, view, save, places_of(sheet))


def _view(sheet: Sheet, hand: Hand, carried: Carried) -> dict[str, Any] | None:
    form = arms.offered(hand, sheet.subject)
    if form is None:
        return None
    blocks: list[Block] = [
        *arms.pick(form, carried),
        *_kind(sheet, hand, form, carried),
        inputs.day(FIELDS["on"], today_of(form)),
        *(inputs.number(name, FIELDS[name], most=most(name)) for name in sheet.counts),
    ]
    if sheet.has_innings:
        blocks.append(inputs.text("innings", FIELDS["innings"]))
    blocks.append(inputs.note(LEFT_EMPTY, "note"))
    return modal(sheet.name, {}, blocks + arms.missing(form.no_consent))


def most(name: str) -> int:
    """The largest number that an input takes."""
    return 100 if name == "effort" else 200


def _kind(sheet: Sheet, hand: Hand, form: arms.Offered, carried: Carried) -> list[Block]:
    kinds = _kinds(sheet, form)
    if len(kinds) == 1:
        return []
    known = form.arms[0].pitcher_id if len(form.arms) == 1 else carried.get("pitcher")
    last = arms.last_kind(hand, int(known), kinds) if known else None
    options = [(kind, CHOICES[kind]) for kind in kinds]
    return [inputs.choice("kind", FIELDS["kind"], options, last or kinds[0])]


def _kinds(sheet: Sheet, form: arms.Offered) -> list[str]:
    """The kinds that may be logged here: a scorekeeper's counts are a game's."""
    practice = any(
        may_log(form.crew.relations[arm.pitcher_id], Subject.PRACTICE) for arm in form.arms
    )
    return [kind for kind in sheet.kinds if practice or kind not in PRACTICE_KINDS]


def _save(sheet: Sheet, hand: Hand, filled: Filled) -> list[Notice]:
    form = arms.need(hand, sheet.subject)
    values = filled.values
    kind = inputs.read_choice(values, "kind") if "kind" in values else sheet.kinds[0]
    fields = counts_of(sheet, values)
    on = inputs.read_day(values)
    check({**fields, "kind": kind, "on": on}, form.posted.date())
    entry = Entry(kind=kind, **fields)
    wanted = Wanted(arms.picked(form, values), on, entry)
    text = written(form, [wanted], lambda entries: write(entries[0], on), places_of(sheet))
    return write_line(hand, filled, text)


def counts_of(sheet: Sheet, values: Values) -> dict[str, Any]:
    """The counts that were filled in, by field. Raises `FormError` where none was."""
    found = {FIELD_OF.get(name, name): inputs.read_number(values, name) for name in sheet.counts}
    if sheet.has_innings:
        found["outs"] = inputs.read_outs(values)
    if all(count is None for count in found.values()):
        raise FormError(sheet.counts[0], ERRORS["empty"])
    curve, slider = found.get("curve"), found.get("slider")
    if (curve, slider) != (None, None):
        found.setdefault("breaking", (curve or 0) + (slider or 0))
    return found


def places_of(sheet: Sheet) -> Mapping[str, str]:
    """The input at which a field's error is shown; one of no field at the first count."""
    fields = {FIELD_OF.get(name, name): name for name in sheet.counts}
    return {"outs": "innings", "breaking": "curve", **fields, "": sheet.counts[0]}


def written(
    form: arms.Offered,
    wanted: Sequence[Wanted],
    write_all: Callable[[Sequence[Entry]], str],
    places: Mapping[str, str],
) -> str:
    """The line that says it, or the error at the input that cannot be. Raises `FormError`."""
    try:
        return dictate(form.crew, form.posted, wanted, write_all)
    except DictationError as wrong:
        block = places.get(wrong.field, places[""])
        raise FormError(block, ERRORS["unwritten"]) from wrong


def today_of(form: arms.Offered) -> date:
    """The local day that a form offers: before four in the morning it is still the day before."""
    return outing_day(form.posted, None)
