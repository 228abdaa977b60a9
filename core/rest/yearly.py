"""The most innings that a pitcher's books allow in twelve months."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from core.rest.values import Thrower
from core.rest.views import views
from core.rulebooks import RuleBook

MONTHS = 12


@dataclass(frozen=True, slots=True)
class YearOfInnings:
    """A cap on the outs of twelve months (3 to an inning), and the title of its book."""

    outs: int
    book: str


def year_of_innings(books: Iterable[RuleBook], thrower: Thrower, on: date) -> YearOfInnings | None:
    """The strictest of the books' caps on a day; none where no book has one.

    Raises as `answer` does.
    """
    caps = [
        YearOfInnings(cap.max, view.book.title)
        for view in views(tuple(books), thrower, (), "regular")
        for cap in view.rules(on).caps
        if cap.unit == "outs" and cap.window.months == MONTHS and not cap.when
    ]
    return min(caps, key=lambda cap: cap.outs, default=None)
