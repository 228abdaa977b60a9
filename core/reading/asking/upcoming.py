"""The days ahead that a few words name: "sat", "fri-sun", "5/20"."""

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
    tokens = tokenize(text)
    spoken = tell_language(tokens)
    items = name_days(itemize(tokens, words(spoken), roster_words(())), spoken)
    found: set[date] = set()
    for item in items:
        if isinstance(item.value, Named):
            found.update(resolve(item.value, today, past=False))
        elif item.symbol not in {"glue", "mark", "stop", "through", "in"}:
            return None
    return tuple(sorted(found))
