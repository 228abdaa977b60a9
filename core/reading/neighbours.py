"""Words that mean one thing or another by what stands beside them, told apart before all rules."""

from collections.abc import Callable
from typing import NamedTuple

from core.reading.items import Item


class _Word(NamedTuple):
    """Such a word, the symbols before and after it, and all symbols of the line."""

    text: str
    before: str
    after: str
    line: frozenset[str]


def tell_apart(items: list[Item]) -> None:
    """Give each such item the symbol that its neighbours show."""
    symbols = frozenset([item.symbol for item in items])
    if symbols.isdisjoint(_TOLD):
        return
    for at, item in enumerate(items):
        if item.symbol in _TOLD:
            before = items[at - 1].symbol if at else ""
            after = items[at + 1].symbol if at + 1 < len(items) else ""
            told = _TOLD[item.symbol](_Word(item.text, before, after, symbols))
            items[at] = item._replace(symbol=told)


def _few_or_many(word: _Word) -> str:
    """Spanish "unas 10 curvas" are about ten, "unas curvas" no number at all."""
    return "about" if word.after == "num" else "vague"


def _pitch_or_ball(word: _Word) -> str:
    """Spanish "tiré 40 bolas" are pitches; beside pitches or strikes "bolas" are balls."""
    return "balls" if word.line & {"pitches", "strikes"} else "pitches"


def _threw_or_pitches(word: _Word) -> str:
    """Spanish "29 picheo", "picheo: 29" count pitches; "Leo picheo 3 entradas" means threw."""
    noun = word.before == "num" or word.after == "colon"
    return "pitches" if noun and not word.text.endswith("ó") else "threw"


def _throw(word: _Word) -> str:
    """As in "22 throw catch" counts; "throw strikes" does not."""
    return "pitches" if word.before == "num" else "word"


def _throws(word: _Word) -> str:
    """As in "30 throws", "throws: 30" count; in "throws 1 inning" it is what he does."""
    acts = word.after in ("num", "a") and word.before not in ("num", "adj")
    return "threw" if acts and word.line & {"innings", "everyone"} else "pitches"


def _so_far(word: _Word) -> str:
    """Spanish "lleva 45 en la 3ra" is a count on the way, "lleva 120" a total of many outings."""
    return "running" if word.line & {"ord", "ordword", "innings"} else "season"


def _game_or_inning(game: str, short: str) -> Callable[[_Word], str]:
    """Spanish "el segundo" is an inning where another inning is told, and else a game."""

    def told(word: _Word) -> str:
        inning = word.text.lower() == short and "ordword" in word.line
        return "ordword" if inning and word.line.isdisjoint(("twogames", "bothends")) else game

    return told


_TOLD = {
    "firstgame": _game_or_inning("firstgame", "el primero"),
    "secondgame": _game_or_inning("secondgame", "el segundo"),
    "throwcount": _throw,
    "throwscount": _throws,
    "fewormany": _few_or_many,
    "pitchorball": _pitch_or_ball,
    "throworpitches": _threw_or_pitches,
    "sofar": _so_far,
}

__all__ = ["tell_apart"]
