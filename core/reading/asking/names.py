"""Where a name stands in a question: mentions, the roster, capitals, and the place of a subject."""

from collections.abc import Sequence
from functools import lru_cache

from core.reading.asking.tokens import Token, fold

Roster = dict[str, tuple[tuple[str, ...], ...]]


@lru_cache(maxsize=256)
def roster_words(roster: tuple[str, ...]) -> Roster:
    """First names, each with what may follow it: surname, initial or nothing, longest first."""
    found: dict[str, set[tuple[str, ...]]] = {}
    for name in roster:
        first, *rest = fold(name).replace(".", " ").split() or [""]
        tails = found.setdefault(first, {()})
        if rest:
            tails |= {tuple(rest), (rest[-1],), (rest[-1][0],)}
    return {
        first: tuple(sorted(tails, key=lambda tail: -len(tail))) for first, tails in found.items()
    }


def bare(norm: str) -> str:
    """A name without its possessive: "mateo's" is "mateo"."""
    return norm[:-2] if norm.endswith("'s") else norm


def name_length(tokens: Sequence[Token], at: int, roster: Roster) -> int:
    """How many tokens from here are one name of the roster; 0 for none."""
    first = bare(tokens[at].norm)
    if first not in roster and first.endswith("s") and first[:-1] in roster:
        first = first[:-1]  # "theos rest"
    for tail in roster.get(first, ()):
        after = tokens[at + 1 : at + 1 + len(tail)]
        if tuple(bare(token.norm) for token in after) == tail:
            return 1 + len(tail)
    return 0


def near_roster(norm: str, roster: Roster) -> bool:
    """Whether a word of five letters or more is one slip away from a first name of the roster."""
    from rapidfuzz.distance import OSA

    return len(norm) >= 5 and any(
        first and first[0] == norm[0] and OSA.distance(first, norm, score_cutoff=1) <= 1
        for first in roster
    )
