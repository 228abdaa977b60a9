"""Rules and sums put into reasons: the numbers, the source, and one plain sentence."""

from core.rest.bounds import Bound
from core.rest.coach import OWN
from core.rest.owed import Owed
from core.rest.values import ESTIMATE_MARGIN, Reason
from core.rest.views import View
from core.rulebooks import Band, RuleBook
from core.rulebooks.words import row_words, rule_words, unit_words, window_words


def rest_reason(owed: Owed, *, binds: bool) -> Reason:
    """Why one day's outings owe what they owe."""
    book, row = owed.view.book, owed.row
    found = owed.tally
    return Reason(
        rulebook=book.id,
        title=book.title,
        rule=owed.rule.name,
        says=_rest_says(owed),
        citation=row.cite or owed.rule.cite,
        band=_band(book, owed.rules.band),
        on=owed.day,
        pitches=pitches_on(owed),
        days=row.days,
        until=owed.until,
        row_from=row.from_,
        row_to=row.to,
        unit=owed.rule.unit,
        used=found.value,
        uncounted=found.uncounted > 0,
        about=found.about,
        binds=binds,
    )


def pitches_on(owed: Owed) -> int | None:
    """All the pitches of the day that owes the rest; None when one outing was not counted."""
    day = owed.view.record_of(owed.rule).between(owed.day, owed.day)
    counts = [outing.pitches for outing in day if outing.pitched]
    return None if None in counts else sum(count or 0 for count in counts)


def _rest_says(owed: Owed) -> str:
    rule, found, days = owed.rule, owed.tally, day_words(owed.row.days)
    unit = unit_words(rule.unit, 2)
    if found.uncounted:
        return (
            f"{unit} on {owed.day} not counted: {days}, the longest rest of its band, "
            "until they are counted"
        )
    when = _when(owed)
    count = f"{found.value} {unit_words(rule.unit, found.value)}"
    if owed.over is not None:
        return f"{count} {when}, over the maximum of {owed.over}: {days}, the longest of its band"
    if found.about and owed.row.from_ > found.settled:
        return (
            f"about {count} {when}, an estimate within {ESTIMATE_MARGIN} of "
            f"{row_words(owed.row)}: {days}"
        )
    about = "about " if found.about else ""
    last = f", {found.settled} at the first pitch to the last batter" if found.trim else ""
    return f"{about}{count} {when}{last}: {days}"


def _when(owed: Owed) -> str:
    if owed.rule.window.span == "day":
        return f"on {owed.day}"
    return f"{window_words(owed.rule.window)} up to {owed.day}"


def day_words(days: int) -> str:
    """A number of days in words: "1 day", "3 days"."""
    return "1 day" if days == 1 else f"{days} days"


def _band(book: RuleBook, band: Band) -> str:
    """Whom a limit covers; the coach's own book holds for the one pitcher it was set for."""
    return "" if book.id == OWN else band.name


def cap_reason(bound: Bound, *, binds: bool) -> Reason:
    """Why a cap leaves what it leaves."""
    book, cap = bound.view.book, bound.cap
    return Reason(
        rulebook=book.id,
        title=book.title,
        rule=cap.name,
        says=_cap_says(bound),
        citation=cap.cite,
        band=_band(book, bound.rules.band),
        unit=cap.unit,
        at_most=cap.max,
        used=bound.taken,
        uncounted=bound.tally.uncounted > 0,
        about=bound.tally.about,
        binds=binds,
    )


def _cap_says(bound: Bound) -> str:
    said = rule_words(bound.cap)
    if bound.cap.max and bound.tally.value:
        said += f"; {bound.tally.value} so far"
    if bound.tally.uncounted:
        outings = "1 outing" if bound.tally.uncounted == 1 else f"{bound.tally.uncounted} outings"
        rule = "left out" if bound.cap.uncounted == "skip" else "taken as the most allowed"
        said += f"; {outings} without a count, {rule}"
    return said


def note(view: View, rule: str, says: str, citation: str = "") -> Reason:
    """A remark of a book that no single number explains."""
    book = view.book
    return Reason(book.id, book.title, rule, says, citation or book.source)
