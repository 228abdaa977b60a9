"""What one day's outings owe: the row of each rest table, and the strictest of them."""

from dataclasses import dataclass
from datetime import date, timedelta

from core.rest.conditions import holds
from core.rest.sums import Tally
from core.rest.values import ESTIMATE_MARGIN, Ask
from core.rest.views import Rules, Table, View
from core.rest.windows import tally
from core.rulebooks import Rest, Row


@dataclass(frozen=True, slots=True)
class Owed:
    """The row of one rest table that one day's outings fall in, and how it was found."""

    view: View
    rules: Rules
    rule: Rest
    day: date
    tally: Tally
    row: Row
    over: int | None = None

    @property
    def until(self) -> date:
        """The first date after the days of rest."""
        return self.day + timedelta(days=self.row.days + 1)


def owed_by(view: View, day: date, on: date, kind: str | None = None) -> Owed | None:
    """The strictest rest that the outings up to the end of a day owe; None when they owe none.

    With a `kind`, only by the tables that count such outings: a bullpen's rest binds bullpens.
    """
    rules = view.rules_then(day, on)
    tables = [t for t in rules.tables if kind is None or view.counts(t.rule, kind)]
    found = [owed for table in tables if (owed := _by_table(view, rules, table, day)) is not None]
    return max(found, key=lambda owed: owed.row.days, default=None)


def _by_table(view: View, rules: Rules, table: Table, day: date) -> Owed | None:
    rule = table.rule
    that_day = view.record_of(rule).between(day, day)
    caught = rule.unit.startswith("caught")
    if not any(o.caught_innings if caught else o.pitched for o in that_day):
        return None
    last = that_day[-1]
    ask = Ask(day, last.game, last.tournament, last.series)
    if not all(holds(view, condition, ask) for condition in rule.when):
        return None
    found = tally(view, rule, ask)
    if found is None:
        return None
    passed = table.maximum is not None and found.value > table.maximum
    over = table.maximum if passed else None
    return Owed(view, rules, rule, day, found, _row(rule, found, passed), over)


def _row(rule: Rest, found: Tally, over: bool) -> Row:
    """The row of a sum; the last one when nobody counted, or when the maximum was passed."""
    if found.uncounted or over:
        return rule.rows[-1]
    margin = ESTIMATE_MARGIN if found.about and rule.unit == "pitches" else 0
    reached = (row for row in reversed(rule.rows) if row.from_ <= found.settled + margin)
    return next(reached, rule.rows[0])
