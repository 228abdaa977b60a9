"""The season so far: innings and pitches against the year's caps, and the months off."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import pairwise

from dateutil.relativedelta import relativedelta

from core.rest.bounds import bound_by
from core.rest.sums import sum_between
from core.rest.values import Ask, Phase, Thrower, Thrown
from core.rest.views import View, views
from core.rulebooks import Measure, Off, RuleBook, Window

YEAR = relativedelta(months=12)
#: Days; no shorter stretch can be the weeks or the months that a rule asks for.
WEEK, SHORTEST_MONTH = 7, 28


@dataclass(frozen=True, slots=True)
class Total:
    """A sum over a season or months against its cap; `maximum` None where no book has one.

    `uncounted` outings are not in `used`. `unit` is "outs" or "pitches" (or the cap's own).
    """

    rulebook: str
    rule: str
    unit: str
    used: int
    maximum: int | None
    uncounted: int
    citation: str = ""
    advice: bool = False


@dataclass(frozen=True, slots=True)
class TimeOff:
    """Time off within twelve months, as far as the log shows it: a gap in the log is no proof.

    `needed_months` or `needed_weeks` is what the book asks for, `longest_days` the longest
    stretch without such throwing in the last twelve months, `months_so_far` the whole months of
    all stretches of a month or more. `start_by` is the last date on which a break can start to
    fit into twelve months from `year_from`; None when it is done, or when nothing was thrown.
    """

    rulebook: str
    rule: str
    of: str
    continuous: bool
    needed_months: int | None
    needed_weeks: int | None
    months_so_far: int
    longest_days: int
    done: bool
    year_from: date | None
    start_by: date | None
    citation: str


@dataclass(frozen=True, slots=True)
class Standing:
    """Totals and time off on a date; `logged_since` is the first day that the log covers."""

    on: date
    logged_since: date | None
    totals: tuple[Total, ...]
    time_off: tuple[TimeOff, ...]


@dataclass(frozen=True, slots=True)
class _Free:
    """Days without throwing, both ends included."""

    first: date
    last: date

    @property
    def days(self) -> int:
        return (self.last - self.first).days + 1

    @property
    def months(self) -> int:
        if self.days < SHORTEST_MONTH:
            return 0
        whole = relativedelta(self.last + timedelta(1), self.first)
        return whole.years * 12 + whole.months


def standing(
    books: Sequence[RuleBook],
    thrower: Thrower,
    outings: Sequence[Thrown],
    on: date,
    *,
    phase: Phase = "regular",
    logged_since: date | None = None,
) -> Standing:
    """The season so far on a date. Days before `logged_since` (default: the first outing) are
    unknown, never off. Raises as `answer` does.
    """
    return standing_from(views(books, thrower, outings, phase), outings, on, logged_since)


def standing_from(
    looks: Sequence[View], outings: Sequence[Thrown], on: date, logged_since: date | None = None
) -> Standing:
    """As `standing`, from books that look at these outings already."""
    past = [outing for outing in outings if outing.on <= on]
    since = logged_since or min((outing.on for outing in past), default=None)
    totals = [t for view in looks for t in _totals(view, on)]
    free = [_off(view, rule, past, since, on) for view in looks for rule in view.rules(on).offs]
    return Standing(on, since, (*_facts(looks[0], on), *totals), tuple(free))


def _facts(view: View, on: date) -> Iterator[Total]:
    """Pitches and outs of twelve months, in the outings that the first book counts."""
    for unit in ("pitches", "outs"):
        measure = Measure(unit=unit, window=Window(months=12))
        found = sum_between(view.record, measure, on - YEAR + timedelta(1), on)
        yield Total(view.book.id, "twelve-months", unit, found.value, None, found.uncounted)


def _totals(view: View, on: date) -> Iterator[Total]:
    rules = view.rules(on)
    for cap in rules.caps:
        if cap.window.months is None and cap.window.span != "season":
            continue
        bound = bound_by(view, rules, cap, Ask(on))
        if bound is not None:
            found = bound.tally
            yield Total(
                *(view.book.id, cap.name, cap.unit, found.value, cap.max, found.uncounted),
                *(cap.cite, cap.advice),
            )


def _off(view: View, rule: Off, past: Sequence[Thrown], since: date | None, on: date) -> TimeOff:
    kinds = view.book.counting.kinds
    competitive = rule.of == "competition"
    thrown = sorted({o.on for o in past if (o.kind in kinds if competitive else o.kind != "off")})
    gaps = _gaps(thrown, max(since or on, on - YEAR + timedelta(1)), on)
    free = [_Free(a + timedelta(1), b - timedelta(1)) for a, b in gaps if (b - a).days > WEEK]
    months = sum(stretch.months for stretch in free)
    done = any(_fits(rule, s) for s in free) if rule.continuous else months >= (rule.months or 0)
    start = _year_from(rule, thrown, on)
    return TimeOff(
        *(view.book.id, rule.name, rule.of, rule.continuous, rule.months, rule.weeks),
        months_so_far=months,
        longest_days=max(((b - a).days - 1 for a, b in gaps), default=0),
        done=done,
        year_from=start,
        start_by=None if done or start is None else start + YEAR - _missing(rule, months),
        citation=rule.cite,
    )


def _gaps(thrown: Sequence[date], first: date, last: date) -> list[tuple[date, date]]:
    """Each throw with the next one, from the day before `first` to the day after `last`."""
    known = (day for day in thrown if first <= day <= last)
    return list(pairwise([first - timedelta(1), *known, last + timedelta(1)]))


def _length(rule: Off) -> relativedelta:
    return relativedelta(months=rule.months or 0, weeks=rule.weeks or 0)


def _fits(rule: Off, stretch: _Free) -> bool:
    """Whether one stretch is as long as the rule asks for."""
    if stretch.days < SHORTEST_MONTH * (rule.months or 0) + 7 * (rule.weeks or 0):
        return False  # most stretches: no need to look at the calendar
    return stretch.first + _length(rule) <= stretch.last + timedelta(1)


def _missing(rule: Off, months: int) -> relativedelta:
    """How long a break must still be: the whole piece, or the months that are not yet off."""
    if rule.continuous:
        return _length(rule)
    return relativedelta(months=max(0, (rule.months or 0) - months))


def _year_from(rule: Off, thrown: Sequence[date], on: date) -> date | None:
    """The first throw after the last such break, else the first of the last twelve months."""
    year_ago = on - YEAR
    recent = [day for day in thrown if day > year_ago]
    if not rule.continuous:
        return recent[0] if recent else None
    after = [
        b
        for a, b in pairwise(thrown)
        if (b - a).days > WEEK and _fits(rule, _Free(a + timedelta(1), b - timedelta(1)))
    ]
    return after[-1] if after else (thrown[0] if thrown else None)
