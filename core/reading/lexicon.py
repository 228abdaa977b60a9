"""Words to symbols: the vocabulary tables of one language, ready for look-up."""

from dataclasses import dataclass
from functools import cache, lru_cache

from core.reading.tokens import tokenize
from core.reading.vocabulary import Language, given_names, language


@dataclass(frozen=True, slots=True)
class Meaning:
    """What a phrase stands for: a symbol, and for some symbols which one (the elbow, Monday)."""

    symbol: str
    value: str = ""


# By the second word ("" for none): the words after the first, and the meaning.
Phrases = dict[str, list[tuple[tuple[str, ...], Meaning]]]

_BY_WHAT_FOLLOWS = frozenset({"frac", "good", "oneout"})
SHORTEST_TYPO = 5  # a shorter word is one letter away from too many others
LONG_WORD = 8  # from here on two slips are forgiven
SHORTEST_NEAR = 4
SHORTEST_PHRASE_WORD = 6  # of words that mean something only beside others
LONGEST_SLIP = 20
MOST_SLIPS = 12  # unknown words of a line that are looked up; more of them are no slips


class Lexicon:
    """The phrases of one language, by first word, longest first; and its typo finder."""

    def __init__(self, tables: Language) -> None:
        self.phrases: dict[str, list[tuple[tuple[str, ...], Meaning]]] = {}
        for phrase, symbol, name in tables.phrases:
            self._add(phrase, Meaning(symbol, name))
        for entries in self.phrases.values():
            entries.sort(key=lambda entry: -len(entry[0]))
        # By the second word too: most lines hold "in" and "the", and few of their phrases.
        self.by_second: dict[str, Phrases] = {}
        for first, entries in self.phrases.items():
            index = self.by_second.setdefault(first, {})
            for tail, meaning in entries:
                index.setdefault(tail[0] if tail else "", []).append((tail, meaning))
        self.numbers = tables.numbers
        self.dozen = tables.dozen
        self.compound_and, self.compound_one = tables.compound_and, tables.compound_one
        self.dozens_after, self.hundred = tables.dozens_after, tables.hundred
        self.everyday = tables.everyday
        self.fillers, self.weighing = tables.fillers, tables.weighing
        self.endings, self.completions = tables.endings, tables.completions
        inside = {word for rows in self.phrases.values() for tail, _ in rows for word in tail}
        self.known = frozenset(self.phrases) | self.everyday
        self.known |= self.fillers | tables.weighing
        self.known |= frozenset(self.numbers) | frozenset(inside) | {self.dozen}
        # What may open a number in words: "half a dozen", "a dozen and a half".
        self.spell = frozenset(self.numbers) | frozenset(self.dozens_after) | {"half", "a"}
        self.spell |= {self.dozen}
        # Words that mean one thing, whatever follows: most of a line's.
        self.alone = {
            first: rows[0][1]
            for first, rows in self.phrases.items()
            if len(rows) == 1 and not rows[0][0] and first not in self.spell
            and rows[0][1].symbol not in _BY_WHAT_FOLLOWS
        }  # fmt: skip
        # Any other word or number is an item by itself.
        self.openers = self.spell | frozenset(self.by_second)
        self._in_phrases = (frozenset(self.phrases) | inside) - frozenset(self.numbers)
        self._all_known = tuple(self.known)
        alone = {word for word in self.phrases if self.is_phrase(word)}
        self._means_something = (alone - self.fillers - self.everyday) | set(self.numbers)
        trade = tuple(
            word
            for word, entries in self.phrases.items()
            if any(not tail and m.symbol in _CORRECTABLE for tail, m in entries)
        )
        self._correctable = tuple(word for word in trade if len(word) >= SHORTEST_TYPO)
        self._short = tuple(word for word in trade if len(word) == SHORTEST_TYPO - 1)
        self.corrected = lru_cache(maxsize=20_000)(self._corrected)
        self.near = lru_cache(maxsize=20_000)(self._near)

    def _add(self, phrase: str, meaning: Meaning) -> None:
        words = [token.norm for token in tokenize(phrase)]
        if not words:
            return
        entries = self.phrases.setdefault(words[0], [])
        tail = tuple(words[1:])
        if all(known != tail for known, _ in entries):
            entries.append((tail, meaning))

    def knows(self, norm: str) -> bool:
        """Whether the word is in the vocabulary or is an everyday word."""
        return norm in self.known

    def is_phrase(self, norm: str) -> bool:
        """Whether the word means something by itself, and does not only begin or end a phrase."""
        return any(not tail for tail, _ in self.phrases.get(norm, ()))

    def _corrected(self, norm: str, *, capital: bool = False) -> str | None:
        """The vocabulary word that an unknown word is a slip of, or None. Never for numbers.

        A word with a capital may be a name: only a clear slip of a trade word is put right. A
        given name ("Tommy", near "tummy") is no slip.
        """
        if len(norm) > LONGEST_SLIP or norm in given_names():
            return None
        if capital:
            return self._trade_word(norm) if len(norm) >= SHORTEST_TYPO else None
        return self._undoubled(norm) or self._trade_word(norm) or self._phrase_word(norm)

    def _near(self, norm: str) -> tuple[str, ...]:
        """Every known word that is one slip away, at most five."""
        from rapidfuzz import process
        from rapidfuzz.distance import OSA

        found = process.extract(norm, self._all_known, scorer=OSA.distance, score_cutoff=1, limit=5)
        return tuple(str(word) for word, _, _ in found)

    def near_trade(self, norm: str) -> bool:
        """Whether an unknown word is one slip away from a number or a word of the trade."""
        if not SHORTEST_NEAR <= len(norm) <= LONGEST_SLIP:
            return False
        words = {word for word in self.near(norm) if len(word) >= SHORTEST_NEAR}
        return bool(words) and words <= self._means_something

    def _undoubled(self, norm: str) -> str | None:
        """As in "ayyer": a letter typed twice."""
        for at in range(1, len(norm)):
            short = norm[: at - 1] + norm[at:]
            if norm[at] == norm[at - 1] and self.knows(short) and short not in self.numbers:
                return short
        return None

    def _trade_word(self, norm: str) -> str | None:
        from rapidfuzz import process
        from rapidfuzz.distance import OSA

        if len(norm) == SHORTEST_TYPO - 1:  # "brzo": a letter left out; "gmae": two swapped
            long = (word for word in self._correctable if len(word) == SHORTEST_TYPO)
            left_out = (word for word in long if _is_left_out(word, norm))
            swapped = (word for word in self._short if _is_swapped(word, norm))
            return next(left_out, None) or next(swapped, None)
        if len(norm) < SHORTEST_TYPO:
            return None
        slips = 2 if len(norm) >= LONG_WORD else 1
        found = process.extract(
            norm, self._correctable, scorer=OSA.distance, score_cutoff=slips, limit=3
        )
        near = [(str(word), off) for word, off, _ in found if _same_start(word, norm)]
        if near and near[0][1] > 1 and self.near(norm):
            return None  # "pithcing" is nearer to "pitching" than to "pinching"
        if near and self._is_of_body(near[0][0]):
            others = [word for word in self.near(norm) if not self._is_of_body(word)]
            if others and not _is_undoubled(
                near[0][0], norm
            ):  # "thros" is no "throbs", "piching" no "pinching"
                near = [one for one in near if not self._is_of_body(one[0])]
        return near[0][0] if near else None

    def _is_of_body(self, word: str) -> bool:
        return any(not tail and m.symbol in _OF_BODY for tail, m in self.phrases.get(word, ()))

    def _phrase_word(self, norm: str) -> str | None:
        """As in "veocidad": a word inside phrases, when no other word is as near."""
        near = self.near(norm) if len(norm) >= SHORTEST_PHRASE_WORD else ()
        sure = len(near) == 1 and near[0] in self._in_phrases and _same_start(near[0], norm)
        return near[0] if sure else None

    def slip_of_filler(self, norm: str) -> bool:
        """Whether an unknown word is a slip of fillers, and of no word that could mean more."""
        if not SHORTEST_TYPO <= len(norm) <= LONGEST_SLIP:
            return False
        found = self.near(norm)
        return bool(found) and all(word in self.fillers for word in found)


def _is_left_out(word: str, typed: str) -> bool:
    """Whether the typed word is the other without one letter that is not its first."""
    return any(word[:at] + word[at + 1 :] == typed for at in range(1, len(word)))


def _is_undoubled(word: str, typed: str) -> bool:
    """Whether a double letter was typed once: "throbing"."""
    return any(
        word[at] == word[at - 1] and word[:at] + word[at + 1 :] == typed
        for at in range(1, len(word))
    )


def _is_swapped(word: str, typed: str) -> bool:
    """Whether two neighbouring letters of the word are swapped ("gmae")."""
    at = next((i for i, letter in enumerate(word) if letter != typed[i]), len(word))
    return word[at : at + 2] == typed[at : at + 2][::-1] and word[at + 2 :] == typed[at + 2 :]


def _same_start(word: str, typed: str) -> bool:
    """Slips spare the first letter, or swap the first two."""
    return word[0] == typed[0] or word[:2] == typed[1::-1]


_OF_BODY = frozenset({"site", "pain", "sore"})
_CORRECTABLE = frozenset(
    [
        "pitches",
        "breaking",
        "curve",
        "slider",
        "changeup",
        "fastball",
        "strikes",
        "innings",
        "bullpen",
        "site",
        "pain",
        "sore",
        "everyone",
        "yesterday",
        "today",
        "weekday",
        "tired",
        "game",
        "threw",
        "percent",
        "speed",
        "vs",
        "catch",
    ]
)


@cache
def lexicon(lang: str) -> Lexicon:
    """The lexicon of "en" or "es", built on first use."""
    return Lexicon(language(lang))
