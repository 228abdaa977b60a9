"""What limits one planned outing: rest not over, and the room that each cap leaves."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import timedelta
from functools import lru_cache
from typing import Literal

from core.rest.conditions import holds
from core.rest.owed import Owed, owed_by
from core.rest.sums import Tally
from core.rest.values import Ask
from core.rest.views import Rules, View
from core.rest.windows import planned_tally
from core.rulebooks import Cap, Rest, RuleBook

Of = Literal["pitches", "outs", "mound", "plate"]
_OF: dict[str, Of] = {
    "pitches": "pitches",
    "outs": "outs",
    "innings-begun": "outs",
    "caught-innings": "plate",
    "caught-outs": "plate",
}


@dataclass(frozen=True, slots=True)
class Bound:
    """The room that one cap leaves: pitches, outs, or coming in at all (1 or more is a yes)."""

    view: View
    rules: Rules
    cap: Cap
    of: Of
    room: int
    tally: Tally
    taken: int

    @property
    def bars(self) -> bool:
        """Whether it leaves no pitch at all."""
        return self.room <= 0 and self.of != "plate"


def resting(view: View, ask: Ask) -> Iterator[Owed]:
    """Every day whose rest is not over on the day asked about."""
    first = ask.on - timedelta(days=longest_rest(view.book))
    for day in view.days_between(first, ask.on - timedelta(days=1)):
        owed = owed_by(view, day, ask.on, ask.kind)
        if owed is not None and owed.until > ask.on:
            yield owed


@lru_cache(maxsize=256)
def longest_rest(book: RuleBook) -> int:
    """The most days of rest that any table of the book owes, in whatever band."""
    return max((r.rows[-1].days for r in book.rule if isinstance(r, Rest)), default=0)


def bounds(view: View, ask: Ask) -> Iterator[Bound]:
    """What each cap that applies leaves for the outing asked about; advice is left out."""
    rules = view.rules(ask.on)
    for cap in rules.caps:
        if not cap.advice and (bound := bound_by(view, rules, cap, ask)) is not None:
            yield bound


def bound_by(view: View, rules: Rules, cap: Cap, ask: Ask) -> Bound | None:
    """The room that one cap leaves; None while it does not apply to the day."""
    if not view.counts(cap, ask.kind):
        return None
    if not all(holds(view, condition, ask) for condition in cap.when):
        return None
    found = planned_tally(view, cap, ask)
    if found is None:
        return None
    taken = _taken(rules, cap, found)
    room = cap.max - taken + _already_in(view, cap, ask)
    of = _OF.get(cap.unit, "mound")
    in_outs = room * 3 if cap.unit == "innings-begun" else room
    return Bound(view, rules, cap, of, max(0, in_outs), found, taken)


def _taken(rules: Rules, cap: Cap, found: Tally) -> int:
    """The sum, with each uncounted outing taken as the most that the book allows in a day."""
    if not found.uncounted or cap.uncounted == "skip":
        return found.value
    most = rules.daily(cap)
    return found.value + found.uncounted * (cap.max if most is None else most)


def _already_in(view: View, cap: Cap, ask: Ask) -> int:
    """1 where the planned outing adds no day or game: that day or game is already in the sum."""
    if cap.unit not in ("days", "games"):
        return 0
    today = [o for o in view.record_of(cap).between(ask.on, ask.on) if o.pitched]
    if cap.unit == "games":
        today = [outing for outing in today if ask.game and outing.game == ask.game]
    return 1 if today else 0
