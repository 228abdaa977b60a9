"""Each number and the word beside it: pitches, innings, days' rest, a game, a clock time.

Every number becomes one of the `n_` items below. `n_bare` waits for the topic to say what it
counts; `n_odd` is a number that no question can place, and is asked about.
"""

from collections.abc import Sequence
from dataclasses import replace

from core.reading.asking.items import Item, clock_time

MOST_PITCHES = 150  # a larger number is no count of one pitcher
_UNITS = {
    "pitches": "n_pitches",
    "innings": "n_innings",
    "rest": "n_rest",
    "days": "n_rest",
    "gm": "n_games",
}


def place_numbers(items: Sequence[Item]) -> list[Item]:
    """The items with every number placed beside its unit, or marked as bare or odd."""
    made: list[Item] = []
    at = 0
    while at < len(items):
        item, length = _amount(items, at)
        made.append(item)
        at += length
    return made


def _amount(items: Sequence[Item], at: int) -> tuple[Item, int]:
    item, after = items[at], _symbol(items, at + 1)
    if item.symbol == "num":
        return _number(items, at)
    if item.symbol in ("range", "ord") or (item.symbol == "clock" and item.value is None):
        return replace(item, symbol="n_odd"), 1
    if item.symbol == "day" and after == "innings" and "/" in item.text:
        return replace(item, symbol="n_odd"), 2  # "2/3 of an inning"
    if item.symbol == "inn":
        return replace(item, symbol="n_innings", value=1), 1
    if item.symbol == "few":
        value = int(str(item.value))
        return (_join(items[at : at + 2], "n_innings", value), 2) if after == "innings" else (
            replace(item, symbol="n_odd"), 1)  # fmt: skip
    if item.symbol == "gm" and after == "num" and items[at + 1].value in (1, 2, 3, 4):
        return _join(items[at : at + 2], "n_game", items[at + 1].value), 2
    if item.symbol == "game":
        return replace(item, symbol="n_game", value=int(str(item.value))), 1
    if item.text.lower() in ("at", "@") and after == "num" and _symbol(items, at + 2) not in _UNITS:
        time = clock_time(items[at + 1].text) if items[at + 1].text.isdigit() else None
        if time is not None and 1 <= int(items[at + 1].text) <= 12:
            return _join(items[at : at + 2], "clock", time), 2
    if item.symbol == "at" and after == "clock":
        return items[at + 1], 2
    return item, 1


def _number(items: Sequence[Item], at: int) -> tuple[Item, int]:
    item = items[at]
    if item.text.lower() == "one" and _symbol(items, at + 1) not in _UNITS:
        return replace(item, symbol="glue"), 1  # "which one"
    if _symbol(items, at + 1) == "aged":
        return replace(item, symbol="he"), 2  # "my 12 year old"
    if item.value is None:
        return replace(item, symbol="n_odd"), 1
    skip = 2 if _symbol(items, at + 1) == "more" or _text(items, at + 1) == "+" else 1
    unit = _UNITS.get(_symbol(items, at + skip))
    if unit is not None:
        return _join(items[at : at + skip + 1], unit, item.value), skip + 1
    return replace(item, symbol="n_bare"), 1


def _symbol(items: Sequence[Item], at: int) -> str:
    return items[at].symbol if at < len(items) else ""


def _join(items: Sequence[Item], symbol: str, value: object) -> Item:
    text = " ".join(item.text for item in items)
    return Item(symbol, text, items[0].start, items[-1].end, value)


def _text(items: Sequence[Item], at: int) -> str:
    return items[at].text if at < len(items) else ""
