"""Read one question: tokens, items, days and numbers, then the sentence that asks."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from typing import Literal

from core.reading.asking.amounts import place_numbers
from core.reading.asking.asked import Asked, Topic
from core.reading.asking.beside import after_matters, before_matters, tail_matters
from core.reading.asking.clauses import tidy
from core.reading.asking.context import Context
from core.reading.asking.days import name_days
from core.reading.asking.items import Item, itemize
from core.reading.asking.languages import tell_language
from core.reading.asking.names import roster_words
from core.reading.asking.plan import read_plan
from core.reading.asking.search import Found, question
from core.reading.asking.symbols import NAME
from core.reading.asking.tokens import tokenize
from core.reading.asking.vocabulary import words

LONGEST_QUESTION = 1000
_SILENT_BESIDE_HELP = frozenset(["glue", "mark", "stop"])
Sentence = list[Item]


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
    context = Context(text, posted.date(), spoken, bool(roster))
    if [item.symbol for item in placed if item.symbol not in _SILENT_BESIDE_HELP] == ["help"]:
        return Asked(Topic.HELP)
    return read_plan(placed, context) or _first(_sentences(placed), context)


def _first(sentences: list[Sentence], context: Context, told: Sequence[Item] = ()) -> Asked | None:
    """The first question of the message, with what only adds to it ("or Owen?"), then the next."""
    for at, sentence in enumerate(sentences):
        before = [*told, *(item for earlier in sentences[:at] for item in earlier)]
        found = question(sentence, before, context, alone=len(sentences) == 1 and not told)
        if found is None:
            continue
        rest = sentences[at + 1 :]
        while not found.tail and rest and _only_adds(rest[0]):
            sentence = [*sentence, *rest.pop(0)]
            found = question(sentence, before, context, alone=False) or found
        return _beside(found, rest, context, [*before, *sentence])
    return None


def _beside(found: Found, rest: list[Sentence], context: Context, told: Sequence[Item]) -> Asked:
    """The question with the next one, and what stands beside it and could change the answer."""
    then = _first([found.tail], context, told) if found.tail else None
    unclear = [found.before] if before_matters(found.asked, found.before, apart=found.apart) else []
    if then is None and tail_matters(found.tail):
        unclear.append(found.tail)
    then = then or _first(rest, context, told)
    unclear += [sentence for sentence in rest[:1] if then is None and after_matters(sentence)]
    quoted = (context.quote(items) for items in unclear)
    return replace(found.asked, unclear=(*found.asked.unclear, *quoted), then=then)


def _only_adds(sentence: Sentence) -> bool:
    """Whether it holds names and days and no word of its own: "or Owen?", "and sun?"."""
    told = [item.symbol for item in sentence if item.symbol not in ("glue", "mark")]
    return bool(told[:-1]) and told[-1] == "stop" and set(told) <= {NAME, "day", "stop"}


def _sentences(items: list[Item]) -> list[Sentence]:
    """The items by sentence, each with the marks that end it."""
    made: list[Sentence] = [[]]
    for item in items:
        made[-1].append(item)
        if item.symbol == "stop" and "¿" not in item.text:
            made.append([])
    return [sentence for sentence in made if sentence]
