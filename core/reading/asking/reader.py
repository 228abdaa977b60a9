"""Read one question: tokens, items, days and numbers, the clause that asks, its values."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Literal

from core.reading.asking.amounts import place_numbers
from core.reading.asking.asked import Asked, Topic
from core.reading.asking.clauses import first_symbol, is_opener, tidy
from core.reading.asking.days import name_days
from core.reading.asking.fill import Context, answerable
from core.reading.asking.items import Item, itemize
from core.reading.asking.languages import tell_language
from core.reading.asking.names import roster_words
from core.reading.asking.plan import read_plan
from core.reading.asking.symbols import ASKING, INVERTED, NAME, SLOTS, STRONG, SUBJECTS
from core.reading.asking.tokens import tokenize
from core.reading.asking.vocabulary import words

LONGEST_QUESTION = 1000
_TAIL_WORDS = frozenset(
    [",", "-", "(", "or", "and", "but", "because", "cause", "bc", "if", "o", "y"]
)
LONGEST_TAIL = 4  # pauses at which a question is tried to end
_SILENT_BESIDE_HELP = frozenset(["glue", "mark", "stop"])


@dataclass(frozen=True, slots=True)
class Found:
    """A question and what follows it in the same sentence."""

    asked: Asked
    tail: list[Item]


def ask(
    text: str,
    posted: datetime,
    *,
    roster: Sequence[str] = (),
    lang: Literal["en", "es"] | None = None,
) -> Asked | None:
    """Read a typed message as a question for the log; None when it holds none.

    `posted` is local wall-clock time; `roster` helps to see lower-case and misspelt names. The
    caller takes a mention of the bot itself out of the text. Never raises on any text.
    """
    if len(text) > LONGEST_QUESTION:
        return None
    tokens = tokenize(text)
    spoken = lang or tell_language(tokens)
    items = itemize(tokens, words(spoken), roster_words(tuple(roster)))
    placed = tidy(place_numbers(name_days(items, spoken)))
    context = Context(text, posted.date(), spoken)
    if [item.symbol for item in placed if item.symbol not in _SILENT_BESIDE_HELP] == ["help"]:
        return Asked(Topic.HELP)
    return read_plan(placed, context) or _first(_sentences(placed), context)


def _first(
    sentences: list[list[Item]], context: Context, told: Sequence[Item] = ()
) -> Asked | None:
    """The first question of the message, with what only adds to it ("or Owen?"), then the next."""
    for at, sentence in enumerate(sentences):
        before = [*told, *(item for earlier in sentences[:at] for item in earlier)]
        alone = len(sentences) == 1 and not told
        found = _question(sentence, before, context, alone)
        if found is not None:
            more = at + 1
            while not found.tail and more < len(sentences) and _only_adds(sentences[more]):
                sentence = [*sentence, *sentences[more]]
                found = _question(sentence, before, context, False) or found
                more += 1
            others = [found.tail, *sentences[more:]] if found.tail else sentences[more:]
            return _with_tail(found, _first(others, context, [*before, *sentence]), context)
    return None


def _with_tail(found: Found, then: Asked | None, context: Context) -> Asked:
    """The question with the next one; a tail that is none and says a day or a number is unclear."""
    if then is None and any(item.symbol in SLOTS | {NAME} for item in found.tail):
        return replace(found.asked, unclear=(*found.asked.unclear, context.quote(found.tail)))
    return replace(found.asked, then=then)


def _question(
    sentence: list[Item], before: list[Item], context: Context, alone: bool
) -> Found | None:
    """The longest run of a sentence that is a question."""
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
                    return Found(asked, sentence[end:])
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


def _only_adds(sentence: list[Item]) -> bool:
    """Whether it holds names and days and no word of its own: "or Owen?", "and sun?"."""
    told = [item.symbol for item in sentence if item.symbol not in ("glue", "mark")]
    return bool(told[:-1]) and told[-1] == "stop" and set(told) <= {NAME, "day", "stop"}


def _sentences(items: list[Item]) -> list[list[Item]]:
    """The items by sentence, each with the marks that end it."""
    made: list[list[Item]] = [[]]
    for item in items:
        made[-1].append(item)
        if item.symbol == "stop" and "¿" not in item.text:
            made.append([])
    return [sentence for sentence in made if sentence]
