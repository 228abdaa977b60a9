"""The other team's players named by their team or by "their": they are nobody of ours."""

from collections.abc import Sequence

from core.reading.items import Item
from core.reading.roster import bare
from core.reading.vocabulary import given_names

_ROLES = frozenset(
    {"starter", "starters", "pitcher", "pitchers", "ace", "closer", "reliever", "lefty", "righty",
     "kid", "kids", "guy", "guys", "arm", "arms", "staff", "bullpen"}
)  # fmt: skip
_TOLD_BY = _ROLES | {"their"}
_SHORTEST_TEAM = 4  # letters, with the s of the plural


def join_rivals(items: list[Item], lang: str, roster: Sequence[str]) -> None:
    """Make one item of "Hawks starter", "the Bandits ace", "their Owen": somebody else's.

    `roster` holds our own pitchers' names, in lower case.
    """
    if lang != "en" or _TOLD_BY.isdisjoint([item.name for item in items]):
        return
    starts = frozenset(name.split(" ")[0] for name in roster)
    for at in range(len(items) - 2, -1, -1):
        first, second = items[at : at + 2]
        team = second.text.lower() in _ROLES and _is_team(first, starts)
        theirs = first.text.lower() == "their" and _is_name(second)
        used = second.symbol == "threw" and _is_team(first, starts) and _are_arms(items, at + 2)
        if team or theirs or used:
            items[at : at + 2] = [
                first._replace(symbol="other", text=f"{first.text} {second.text}", end=second.end)
            ]


def _is_team(item: Item, starts: frozenset[str]) -> bool:
    """As in "Hawks", "Hawks'": a plural with a capital that is nobody's name."""
    word = bare(item.name).rstrip("'")
    plural = word.endswith("s") and not word.endswith("ss") and len(word) >= _SHORTEST_TEAM
    named = word in given_names() or word in starts
    return item.symbol == "word" and item.text[:1].isupper() and plural and not named


def _are_arms(items: list[Item], at: int) -> bool:
    """As in "Hawks threw 5 pitchers"."""
    pair = items[at : at + 2]
    return len(pair) == 2 and pair[0].symbol == "num" and pair[1].text.lower() in _ROLES


def _is_name(item: Item) -> bool:
    """Whether it is a name by itself; "their Leo's" or "their april game" is none."""
    return item.text[:1].isupper() and item.name in given_names()


__all__ = ["join_rivals"]
