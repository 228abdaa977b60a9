"""The days that a few words name: "sat", "fri-sun", "5/20"; ahead, or in the past."""

from datetime import date

from core.reading.asking.calendar import Named, resolve
from core.reading.asking.days import name_days
from core.reading.asking.items import itemize
from core.reading.asking.languages import tell_language
from core.reading.asking.names import roster_words
from core.reading.asking.tokens import tokenize
from core.reading.asking.vocabulary import words


def upcoming_days(text: str, today: date) -> tuple[date, ...] | None:
    """The days named, ascending; () for none, and none at all where a word is no day."""
    return _days(text, today, past=False)


def past_day(text: str, today: date) -> date | None:
    """The one day named, the last such day up to today; none where the words name no one day.

    A date of this year that lies ahead is given as it is, so that it can be refused.
    """
    behind, ahead = _days(text, today, past=True), _days(text, today, past=False)
    if behind is None or len(behind) != 1:
        return ahead[0] if ahead is not None and len(ahead) == 1 else None
    far_back = (today - behind[0]).days > 120
    return ahead[0] if far_back and ahead is not None and len(ahead) == 1 else behind[0]


def _days(text: str, today: date, *, past: bool) -> tuple[date, ...] | None:
    tokens = tokenize(text)
    spoken = tell_language(tokens)
    items = name_days(itemize(tokens, words(spoken), roster_words(())), spoken)
    found: set[date] = set()
    for item in items:
        if isinstance(item.value, Named):
            found.update(resolve(item.value, today, past=past))
        elif item.symbol not in {"glue", "mark", "stop", "through", "in"}:
            return None
    return tuple(sorted(found))
