"""A rule book told back in words, so that whoever typed it can compare it with the publication."""

from collections.abc import Iterator
from itertools import chain

from core.rulebooks.book import AgeRule, Band, RuleBook
from core.rulebooks.measure import Condition, Measure, Window
from core.rulebooks.rules import Cap, Off, Rest, Row, Rule

_UNITS = {
    "pitches": ("pitch", "pitches"),
    "outs": ("out", "outs"),
    "innings-begun": ("inning begun", "innings begun"),
    "days": ("day pitched", "days pitched"),
    "games": ("game as pitcher", "games as pitcher"),
    "appearances": ("appearance as pitcher", "appearances as pitcher"),
    "caught-innings": ("inning caught", "innings caught"),
    "caught-outs": ("out caught", "outs caught"),
}
_DONE = {
    **dict.fromkeys(("pitches", "days"), "pitching"),
    **dict.fromkeys(("caught-innings", "caught-outs"), "catching"),
}
"""What is done where it is done at all."""
_SPANS = {
    "game": "in a game",
    "other-games": "in another game of the day",
    "day": "in a day",
    "run": "over the days pitched in a row",
    "season": "in the season",
}
_THAT_DAY = {"day": "that day", "game": "in a game that day"}
_DAY_BEGINS = {
    "midnight": "A day begins at midnight.",
    "game": "A game counts for the day on which it began.",
}


def window_words(window: Window) -> str:
    """A window in words: "in any 7 days in a row"."""
    if window.span:
        return _SPANS[window.span]
    if window.months:
        return f"in any {window.months} months"
    if window.same:
        return f"in the {window.same} (or in {window.days} days where it is not named)"
    if window.last:
        where = "on the last day pitched" if window.last == "day" else "in the last outing"
        return f"{where}, up to {window.within} days back"
    if window.from_:
        return f"in the {window.days} days from {window.from_.capitalize()}"
    if window.back:
        when = "day before" if window.back == 1 else f"day {window.back} days before"
        return (
            f"on the {when}" if window.days == 1 else f"in the {window.days} days up to the {when}"
        )
    return "on the day" if window.days == 1 else f"in any {window.days} days in a row"


def unit_words(unit: str, count: int) -> str:
    """The unit for a count: "1 out", "2 outs" without the number."""
    return _UNITS[unit][0 if count == 1 else 1]


def row_words(row: Row) -> str:
    """The bounds of a row: "51–65", "66+"."""
    if row.to is None:
        return f"{row.from_}+"
    return f"{row.from_}–{row.to}" if row.to != row.from_ else f"{row.to}"


def rule_words(rule: Rule) -> str:
    """One rule as one line, without its source."""
    if isinstance(rule, Cap):
        return _cap_words(rule)
    if isinstance(rule, Rest):
        rows = ", ".join(f"{row_words(row)}: {_days(row.days)}" for row in rule.rows)
        batter = " (counted at the last batter's first pitch)" if rule.finish_batter else ""
        said = f"rest by {unit_words(rule.unit, 2)} {window_words(rule.window)}"
        return f"{said}{_kinds(rule)}{batter}{_when_words(rule.when)}: {rows}"
    if isinstance(rule, Off):
        length = f"{rule.months} months" if rule.months else f"{rule.weeks} weeks"
        whole = " in one piece" if rule.continuous else ""
        return f"{length} off {rule.of} in twelve months{whole} (reported, not enforced)"
    return f"advice: {rule.text}"


def _cap_words(rule: Cap) -> str:
    window = window_words(rule.window)
    if rule.max == 0:
        said = f"no {_DONE.get(rule.unit, unit_words(rule.unit, 1))} {window}"
    else:
        said = f"at most {rule.max} {unit_words(rule.unit, rule.max)} {window}"
    said += " (a part counts as a whole one)" if rule.unit == "innings-begun" else ""
    said += _kinds(rule)
    batter = " (a batter begun may be finished)" if rule.finish_batter else ""
    advice = " (advice, not enforced)" if rule.advice else ""
    skipped = " (outings without a count left out)" if rule.uncounted == "skip" else ""
    return said + batter + _when_words(rule.when) + skipped + advice


def _when_words(conditions: tuple[Condition, ...]) -> str:
    said = [_condition_words(condition) for condition in conditions]
    return f" after {' and '.join(said)}" if said else ""


def _condition_words(condition: Condition) -> str:
    window = _THAT_DAY.get(condition.window.span or "") or window_words(condition.window)
    if condition.at_least == 1:
        said = _DONE.get(condition.unit, f"1 or more {unit_words(condition.unit, 2)}")
    else:
        said = f"{condition.at_least} or more {unit_words(condition.unit, 2)}"
    batter = " (at the last batter's first pitch)" if condition.finish_batter else ""
    return f"{said} {window}{_kinds(condition)}{batter}"


def _kinds(measure: Measure) -> str:
    return f" ({', '.join(measure.kinds)} only)" if measure.kinds else ""


def _days(days: int) -> str:
    return "1 day" if days == 1 else f"{days} days"


def describe(book: RuleBook) -> str:
    """The whole book in words, ending with a line break."""
    lines = chain(_head(book), _counting(book), *(_band(book, band) for band in book.band))
    gaps = [f"Not in this file: {gap}" for gap in book.gaps]
    return "\n".join([*lines, *gaps]) + "\n"


def _head(book: RuleBook) -> Iterator[str]:
    yield f"{book.title} ({book.id}), {book.edition}"
    yield f"Published by {book.publisher}: {book.source}"
    until = f" until {book.valid_until}" if book.valid_until else ""
    yield f"Valid from {book.valid_from}{until}. {book.certainty}"
    if book.superseded:
        yield f"Superseded on {book.superseded.on} by {book.superseded.by}."


def _counting(book: RuleBook) -> Iterator[str]:
    counting = book.counting
    begins = _DAY_BEGINS.get(counting.day_begins, f"A day begins at {counting.day_begins}.")
    yield f"Counts: {', '.join(counting.kinds)}. {begins}"
    if walk := counting.intentional_walk:
        yield f"An intentional walk without pitches counts {walk} {unit_words('pitches', walk)}."
    if any(band.age for band in book.band):
        yield _age(book.age)
    if book.season:
        yield f"Season's sums begin on {book.season.begins}."


def _age(age: AgeRule) -> str:
    if age.on == "birthday":
        return "Age: on the day itself."
    year = {-1: " of the year before", 0: "", 1: " of the year after"}[age.year]
    turn = f"; from {age.season_from} a date belongs to the next year" if age.season_from else ""
    return f"Age: on {age.on}{year}{turn}."


def _band(book: RuleBook, band: Band) -> Iterator[str]:
    yield ""
    yield f"{band.name} ({_who(band)})"
    for rule in book.rule:
        if not rule.bands or band.name in rule.bands:
            phases = f"[{', '.join(rule.phases)}] " if rule.phases else ""
            note = f" Note: {rule.note}" if rule.note else ""
            yield f"  {phases}{rule.name}: {rule_words(rule)}. Source: {rule.cite}.{note}"


def _who(band: Band) -> str:
    said = [
        f"{key} {span[0]} to {span[1]}" if span[0] != span[1] else f"{key} {span[0]}"
        for key, span in (("age", band.age), ("grade", band.grade))
        if span is not None
    ]
    return ", ".join([*said, *band.level]) or "everyone"
