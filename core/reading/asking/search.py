"""Where in a sentence the question is: from which word, up to which pause."""

from collections.abc import Sequence
from dataclasses import dataclass

from core.reading.asking.asked import Asked
from core.reading.asking.clauses import first_symbol, is_opener
from core.reading.asking.context import Context
from core.reading.asking.fill import answerable
from core.reading.asking.items import Item
from core.reading.asking.symbols import ASKING, INVERTED, SLOTS, STRONG, SUBJECTS

_TAIL_WORDS = frozenset(
    [",", "-", "(", "or", "and", "but", "because", "cause", "bc", "if", "o", "y"]
)
LONGEST_TAIL = 4  # pauses at which a question is tried to end


@dataclass(frozen=True, slots=True)
class Found:
    """A question, what stands before it and after it in its sentence, and whether apart from it."""

    asked: Asked
    before: list[Item]
    tail: list[Item]
    apart: bool


def question(
    sentence: list[Item], before: Sequence[Item], context: Context, *, alone: bool
) -> Found | None:
    """The longest run of a sentence that is a question; `before` are the sentences before it.

    `alone`: the message is this sentence and no more.
    """
    marked = any("?" in item.text for item in sentence)
    inside = False  # of a question that is no question for the log: "how fast did he throw"
    for at, item in enumerate(sentence):
        pause = at > 0 and _after_pause(sentence[at - 1])
        inside = inside and not pause
        if (
            at == 0
            or (pause and marked)
            or (is_opener(item) and not inside and (marked or not _is_told(sentence, at)))
        ):
            before_it = [*before, *sentence[:at]]
            for end in _ends(sentence, at):
                whole = end == len(sentence)
                asked = answerable(
                    sentence[at:end], before_it, context, alone=alone and whole and at == 0
                )
                if asked is not None and (whole or _is_strong(sentence[at:end])):
                    return Found(asked, sentence[:at], sentence[end:], pause or at == 0)
        inside = inside or first_symbol(item) in ASKING
    return None


def _is_told(sentence: list[Item], at: int) -> bool:
    """Whether a subject stands before the verb: "we can use Owen sunday" tells, it asks nothing."""
    return sentence[at - 1].symbol in SUBJECTS and first_symbol(sentence[at]) in INVERTED


def _ends(sentence: list[Item], start: int) -> list[int]:
    """Where a question that starts here may end: the end of the sentence, or a pause."""
    pauses = [at for at in range(start + 2, len(sentence)) if _pauses(sentence, at)]
    return [len(sentence), *reversed(pauses[-LONGEST_TAIL:])]


def _pauses(sentence: list[Item], at: int) -> bool:
    """Whether a new clause begins here: "..., but", "... tonight my arm feels good"."""
    item = sentence[at]
    fresh = item.symbol in ("i", "he", "we") and sentence[at - 1].symbol in SLOTS
    return fresh or item.symbol in ("since", "link") or item.text.lower() in _TAIL_WORDS


def _is_strong(items: list[Item]) -> bool:
    """Whether a clause speaks of pitching in so many words, so that its tail may be anything."""
    return any(set(item.symbol.split()) & STRONG for item in items)


def _after_pause(item: Item) -> bool:
    return item.text.lower() in (",", "-", ":", "so", "but", "and", "pero", "y")
