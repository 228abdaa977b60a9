"""The counts of one game: a row for each of the first pitchers, and lines for more."""

from datetime import date
from typing import Any

from slack_sdk.models.blocks import Block, DividerBlock

from bot.forms import arms, inputs
from bot.forms.form import Carried, Filled, Form, FormError, Values, modal
from bot.forms.one_outing import today_of, written
from bot.forms.written import write_line
from bot.wording.forms import ERRORS, FIELDS, MORE_HINT, row
from core.audience import Subject
from core.ledger import Notice
from core.ledger.by_hand import ByHandError, Hand, Refusal, check
from core.ledger.dictation import Wanted
from core.reading import Entry
from core.reading.writing import write_game

NAME = "game_counts"
#: Most games take no more pitchers than this (common practice, no source); more go by lines.
ROWS = 5
LONGEST_MORE = 1_000


def _view(hand: Hand, carried: Carried) -> dict[str, Any] | None:
    form = arms.offered(hand, Subject.GAME_COUNTS, whole_staff=True)
    if form is None:
        return None
    named = [(str(arm.pitcher_id), arm.name) for arm in form.arms[:100]]
    blocks: list[Block] = [inputs.day(FIELDS["on"], _day(form, carried))]
    for number in range(1, ROWS + 1):
        blocks += [
            DividerBlock(block_id=f"row{number}"),
            inputs.choice(f"who{number}", row("", number), named, optional=True),
            inputs.number(f"pitches{number}", row(FIELDS["pitches"], number), most=200),
            inputs.number(f"breaking{number}", row(FIELDS["breaking"], number), most=200),
            inputs.text(f"innings{number}", row(FIELDS["innings"], number)),
        ]
    more = inputs.text("more", FIELDS["more"], lines=True, most=LONGEST_MORE, hint=MORE_HINT)
    return modal(NAME, {}, [*blocks, more, *arms.missing(form.no_consent)])


def _day(form: arms.Offered, carried: Carried) -> date:
    """The day that a button names, else today."""
    return date.fromisoformat(str(carried["on"])) if "on" in carried else today_of(form)


def _save(hand: Hand, filled: Filled) -> list[Notice]:
    form = arms.need(hand, Subject.GAME_COUNTS, whole_staff=True)
    on = inputs.read_day(filled.values)
    check({"on": on}, form.posted.date())
    wanted = [
        wanted
        for number in range(1, ROWS + 1)
        if (wanted := _row(form, filled.values, number, on)) is not None
    ]
    more = inputs.read_text(filled.values, "more")
    if not wanted and not more:
        raise FormError("who1", ERRORS["nobody"])
    head = write_game([], on)
    if wanted:
        head = written(form, wanted, lambda entries: write_game(entries, on), {"": "who1"})
    return write_line(hand, filled, f"{head}\n{more}" if more else head)


def _row(form: arms.Offered, values: Values, number: int, on: Any) -> Wanted | None:
    """What a row says; none where it is empty. Raises `FormError`."""
    names = {"pitches": f"pitches{number}", "breaking": f"breaking{number}"}
    counts: dict[str, Any] = {
        field: inputs.read_number(values, name) for field, name in names.items()
    }
    counts["outs"] = inputs.read_outs(values, f"innings{number}")
    chosen, is_empty = inputs.read_choice(values, f"who{number}"), not any_of(counts)
    if chosen is None and is_empty:
        return None
    if chosen is None:
        raise FormError(f"who{number}", ERRORS["row"])
    if is_empty:
        raise FormError(f"pitches{number}", ERRORS["counts"])
    _refuse_twice(values, number, chosen)
    try:
        check({**counts, "kind": "game", "on": on}, form.posted.date())
    except ByHandError as wrong:
        place = {"outs": "innings"}.get(wrong.field, wrong.field) or "pitches"
        raise ByHandError(Refusal.IMPOSSIBLE, f"{place}{number}") from wrong
    return Wanted(arms.by_id(form, chosen, f"who{number}"), on, Entry(kind="game", **counts))


def any_of(counts: dict[str, Any]) -> bool:
    """Whether anything was counted; a zero is a count."""
    return any(count is not None for count in counts.values())


def _refuse_twice(values: Values, number: int, chosen: str) -> None:
    before = (inputs.read_choice(values, f"who{one}") for one in range(1, number))
    if chosen in before:
        raise FormError(f"who{number}", ERRORS["twice"])


FORM = Form(NAME, _view, _save, {"": "who1"})
