"""A question cut into what is asked, what is supposed (if ...), and what must still go later."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from core.reading.asking.items import Item
from core.reading.asking.symbols import (
    AMOUNTS,
    LEFTOVERS,
    NAME,
    OPENERS,
    SILENT,
    SUPPOSING,
    UNKNOWN,
)


@dataclass(frozen=True, slots=True)
class Clauses:
    """The three parts of a question; `supposed` and `later` are mostly empty."""

    asked: tuple[Item, ...]
    supposed: tuple[Item, ...] = ()
    later: tuple[Item, ...] = ()


def symbols(items: Sequence[Item]) -> str:
    """The symbols of a clause with everything that says nothing, or fills a slot, left out."""
    return " ".join(
        LEFTOVERS.get(item.symbol, item.symbol) for item in items if item.symbol not in SILENT
    )


def first_symbol(item: Item) -> str:
    """The first symbol of an item that has several."""
    return item.symbol.split(" ", 1)[0]


def is_opener(item: Item) -> bool:
    """Whether a question may begin here."""
    return first_symbol(item) in OPENERS or item.symbol == "if"


def divide(items: Sequence[Item]) -> Clauses:
    """Cut a question; the order in which its parts were typed does not matter."""
    start = next((at for at, item in enumerate(items) if _supposes(items, at, item)), None)
    if start is None:
        return _cut_later(tuple(items), ())
    end = _end_of_supposed(items, start)
    rest = (*items[:start], *items[end:])
    return _cut_later(rest, tuple(items[start:end]))


def _supposes(items: Sequence[Item], at: int, item: Item) -> bool:
    if item.symbol == "after":
        return any(later.symbol in ("n_pitches", "n_bare", "n_innings") for later in items[at:])
    return item.symbol == "if" and not _is_politeness(items, at)


def _is_politeness(items: Sequence[Item], at: int) -> bool:
    """Whether the if supposes nothing: "is it ok if he plays short"."""
    it = any("it" in item.symbol.split() for item in items[:at])
    return it and items[at - 1].symbol == "able"


def _end_of_supposed(items: Sequence[Item], start: int) -> int:
    """Up to the question that follows: the first opener after a verb."""
    verb = False
    for at in range(start + 1, len(items)):
        if verb and first_symbol(items[at]) in OPENERS and items[at].symbol != "have":
            return at
        if items[at].text == "," and verb and not _number_follows(items, at):
            return at
        verb = (
            verb
            or bool(set(items[at].symbol.split()) & SUPPOSING)
            or items[start].symbol == "after"
        )
    return len(items)


def _number_follows(items: Sequence[Item], at: int) -> bool:
    return at + 1 < len(items) and items[at + 1].symbol in AMOUNTS


def _cut_later(items: tuple[Item, ...], supposed: tuple[Item, ...]) -> Clauses:
    at = next((at for at, item in enumerate(items) if at and item.symbol == "link"), None)
    if at is None or not any(item.symbol == "day" for item in items[at:]):
        return Clauses(tuple(_unlinked(items)), supposed)
    return Clauses(items[:at], supposed, items[at + 1 :])


def _unlinked(items: Sequence[Item]) -> list[Item]:
    """A "and pitch" that no day follows links nothing."""
    return [replace(item, symbol="other") if item.symbol == "link" else item for item in items]


def tidy(items: Sequence[Item]) -> list[Item]:
    """The items without opponents ("vs Summit") and coaches' names; `without` takes its names."""
    made: list[Item] = []
    at = 0
    while at < len(items):
        length = _run_of_names(items, at + 1)
        if items[at].symbol == "versus" and _text_at(items, at + 1) == "the":
            at += 3  # "vs the Hawks"
        elif items[at].symbol == "after" and _symbol_at(items, at + 1) == "n_game":
            at += 2  # "who's left after game 1"
        elif _names_nobody_here(items[at].symbol, _symbol_at(items, at + 1), length):
            at += length + 1
        elif items[at].symbol == "without" and length and not items[at + 1].text.endswith("ing"):
            made.extend(replace(item, symbol="n_without") for item in _names(items, at + 1, length))
            at += length + 1
        elif items[at].symbol == "after" and _only_after_throwing(items, at):
            at += 2 + (items[at + 1].symbol in ("he", "i", NAME))
            at += at < len(items) and items[at].symbol == "day"
        else:
            made.append(items[at])
            at += 1
    return made


def _names_nobody_here(symbol: str, following: str, names: int) -> bool:
    """Whether the names after this word are opponents, a place or a coach."""
    if symbol == "at":
        return names > 0 and following == NAME
    return symbol == "versus" or (symbol == "coach" and names == 1)


def _symbol_at(items: Sequence[Item], at: int) -> str:
    return items[at].symbol if at < len(items) else ""


def _text_at(items: Sequence[Item], at: int) -> str:
    return items[at].text.lower() if at < len(items) else ""


def _run_of_names(items: Sequence[Item], at: int) -> int:
    """How many items from here are names, with "and" between."""
    end = at
    while end < len(items) and (
        items[end].symbol in (NAME, UNKNOWN)
        or (
            end > at
            and items[end].text.lower() in (",", "and", "or", "&", "y", "o")
            and _name_at(items, end + 1)
        )
    ):
        end += 1
    return end - at


def _name_at(items: Sequence[Item], at: int) -> bool:
    return at < len(items) and items[at].symbol in (NAME, UNKNOWN)


def _names(items: Sequence[Item], at: int, length: int) -> list[Item]:
    return [item for item in items[at : at + length] if item.symbol in (NAME, UNKNOWN)]


def _only_after_throwing(items: Sequence[Item], at: int) -> bool:
    """Whether it says when in the day, not how many: "after pitching", "after he throws"."""
    after = [item.symbol for item in items[at + 1 : at + 3]]
    who = after[:1] in (["he"], ["i"], [NAME])
    verb = after[1:2] if who else after[:1]
    counted = any(item.symbol in AMOUNTS for item in items[at:])
    return verb in (["pitch"], ["pitches"], ["throws"], ["threw"]) and not counted
