"""Which topic a clause asks about: its frame, and what the other clauses make of it."""

from collections.abc import Sequence

from core.reading.asking.asked import Topic
from core.reading.asking.clauses import Clauses, symbols
from core.reading.asking.context import Context
from core.reading.asking.frames import asks, fits
from core.reading.asking.items import Item
from core.reading.asking.symbols import (
    AMOUNTS,
    COUNTED,
    IN_LATER,
    IN_SUPPOSED,
    STRONG,
    THROWING,
    THROWN_ALREADY,
    UNKNOWN,
)
from core.reading.asking.when import is_past

# These may be typed with no word that asks: "max for Theo friday if we want him sunday".
_BARE = frozenset(Topic) - {Topic.ONE, Topic.ACTIVITY, Topic.REST}
_SUPPOSABLE = frozenset([Topic.WHEN, Topic.ONE, Topic.REST, Topic.STAFF])


def topic_of(
    clauses: Clauses, items: Sequence[Item], context: Context, *, alone: bool
) -> Topic | None:
    """The topic of a question; None where its clauses are none, or ask about something else."""
    asked = symbols(clauses.asked)
    bare = not asks(asked) and not (clauses.supposed and asked)
    if bare and not (_marked(items) or (alone and UNKNOWN not in asked)):
        return None
    if context.rostered and UNKNOWN in asked.split() and not set(asked.split()) & STRONG:
        return None  # "is parking good for saturday"
    framed = fits(asked, _has(clauses, items, context)) if asked else None
    topic = _with_other_clauses(framed, asked, clauses)
    return None if bare and topic not in _BARE and not _marked(items) else topic


def counted(items: Sequence[Item]) -> bool:
    """Whether a clause says how much is thrown."""
    return any(item.symbol in COUNTED for item in items)


def _marked(items: Sequence[Item]) -> bool:
    return any("?" in item.text for item in items if item.symbol == "stop")


def _has(clauses: Clauses, items: Sequence[Item], context: Context) -> set[str]:
    """What a frame may need: see `needs` in the frames' file."""
    found = {item.symbol for item in clauses.asked}
    counts = found | {item.symbol for item in clauses.supposed}
    has = {"day"} & found
    if context.lang == "es":
        has.add("spanish")
    if found & AMOUNTS - {"clock", "n_game"}:
        has.add("number")
    if counts & {"n_pitches", "n_bare"}:
        has.add("pitches")
    if "n_rest" in found:
        has.add("rest_days")
    if "n_game" in found and "day" not in found:
        has.add("game")
    if _marked(items):
        has.add("mark")
    if any(is_past(item, context.today) for item in clauses.asked):
        has.add("past")
    return has


def _with_other_clauses(topic: Topic | None, asked: str, clauses: Clauses) -> Topic | None:
    """The topic once what is supposed and what must still go later are seen too."""
    if clauses.supposed:
        inside = set(symbols(clauses.supposed).split())
        if not inside <= IN_SUPPOSED or (asked and topic not in _SUPPOSABLE):
            return None
        if not asked and not (inside & THROWING and counted(clauses.supposed)):
            return None
        if topic is Topic.STAFF:
            return topic
        return Topic.REST if inside & THROWN_ALREADY else Topic.WHAT_IF
    if clauses.later:
        if not set(symbols(clauses.later).split()) <= IN_LATER:
            return None
        if topic is Topic.ONE:
            return Topic.WHAT_IF if counted(clauses.asked) else Topic.MOST
        return topic if topic in (Topic.STAFF, Topic.LEFT) else None
    return topic
