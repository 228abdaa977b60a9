"""A clause that fits a frame, and what stands beside it, become the values of a question."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import date, time

from core.reading.asking.amounts import MOST_PITCHES
from core.reading.asking.asked import CHILD, ME, Activity, Asked, Topic
from core.reading.asking.calendar import Named, Turn
from core.reading.asking.clauses import Clauses, divide, symbols
from core.reading.asking.context import Context
from core.reading.asking.frames import fits
from core.reading.asking.items import Item
from core.reading.asking.symbols import COUNTED, NAME, UNKNOWN
from core.reading.asking.topics import counted, topic_of
from core.reading.asking.when import Days, days_of

NEAR = 2  # days ahead at which a weekday is not taken for last week's
_LOOK_BACK = frozenset([Topic.THROWN, Topic.INNINGS, Topic.MIX])
_OF_NOBODY = frozenset([Topic.STAFF, Topic.LEFT, Topic.HELP])
_OF_ONE_OUTING = frozenset([Topic.WHAT_IF, Topic.REST, Topic.MOST])
_COUNTING = frozenset(
    [Topic.STAFF, Topic.LEFT, Topic.ONE, Topic.THROWN, Topic.REST, Topic.WHAT_IF, Topic.MOST]
)
_ACTIVITIES = {
    "pen": Activity.THROW,
    "catchplay": Activity.CATCH,
    "spot": Activity.POSITION,
    "catch": Activity.CATCHER,
    "hit": Activity.HIT,
}


def answerable(
    items: Sequence[Item], before: Sequence[Item], context: Context, *, alone: bool
) -> Asked | None:
    """The question that these items are from the first to the last, or None.

    `alone`: nothing else stands in the message, so that a few words with no question word and no
    question mark ("counts from sat") may be one.
    """
    clauses = divide(items)
    topic = topic_of(clauses, items, context, alone=alone)
    if topic is None:
        return None
    asked = symbols(clauses.asked)
    days, later, unclear = _days(topic, clauses, context)
    topic, days = _left_is_today(topic, days, context.today)
    if not days.days and not days.unclear and _of_today(topic, asked, items):
        days = replace(days, days=(context.today,))
    plain = Asked(topic, _who(topic, items, before), days.days, days.span, days.back)
    if topic in _OF_ONE_OUTING:
        unclear += _second_outing(clauses)
    numbered = _numbers(plain, items, [*unclear, *_not_supposed(clauses, context)])
    return replace(numbered, later=later, activity=_activity(topic, asked))


def _second_outing(clauses: Clauses) -> list[str]:
    """The days and counts after the first, where one outing is asked about."""
    outing = clauses.supposed or clauses.asked
    days = [item.text for item in outing if item.symbol == "day"]
    counts = [item.text for item in outing if item.symbol in COUNTED]
    return days[1:] + counts[1:]


def _not_supposed(clauses: Clauses, context: Context) -> list[str]:
    """What is supposed without a number, or denied, or of one of several."""
    if not clauses.supposed:
        return []
    inside = set(symbols(clauses.supposed).split())
    he = "he" in inside and len(_named(clauses.asked, (NAME, UNKNOWN))) > 1
    whole = counted(clauses.supposed) or counted(clauses.asked)
    about_all = fits(symbols(clauses.asked), ()) is Topic.STAFF
    clear = whole and "not" not in inside and not about_all and not he
    return [] if clear else [context.quote(clauses.supposed)]


def _days(topic: Topic, clauses: Clauses, context: Context) -> tuple[Days, date | None, list[str]]:
    """The days of the question, the later day, and what of them could not be told."""
    today = context.today
    if clauses.supposed and topic is not Topic.STAFF:
        days = days_of(clauses.supposed, today, past=topic is Topic.REST)
        ahead = days_of(clauses.asked, today, past=False, after=days.last)
    else:
        past = topic in _LOOK_BACK or (topic is Topic.REST and counted(clauses.asked))
        days = days_of(clauses.asked, today, past=past)
        ahead = days_of(clauses.later, today, past=False, after=days.last)
    unclear = [*days.unclear, *ahead.unclear, *_could_be_to_come(topic, clauses, today)]
    later = ahead.days[0] if len(ahead.days) == 1 else None
    if ahead.days and (later is None or (days.last and later <= days.last)):
        return days, None, [*unclear, context.quote(clauses.later or clauses.asked)]
    return days, later, unclear


def _could_be_to_come(topic: Topic, clauses: Clauses, today: date) -> list[str]:
    """The weekdays of "if he threw 40 thursday" on a Wednesday: tomorrow, rather than last week."""
    if topic is not Topic.REST or not any(item.symbol == "if" for item in clauses.supposed):
        return []
    return [
        item.text
        for item in clauses.supposed
        if isinstance(item.value, Named)
        and item.value.weekday is not None
        and item.value.turn is Turn.NONE
        and 0 < (item.value.weekday - today.weekday()) % 7 <= NEAR
    ]


def _of_today(topic: Topic, asked: str, items: Sequence[Item]) -> bool:
    """Whether a question that names no day can only be about today."""
    if topic is Topic.ONE and "left" in asked.split():
        return True
    if topic is Topic.THROWN and asked.endswith(" at"):
        return True
    ahead = topic in (Topic.ONE, Topic.STAFF, Topic.ACTIVITY)
    return ahead and any(item.symbol == "n_game" for item in items)


def _left_is_today(topic: Topic, days: Days, today: date) -> tuple[Topic, Days]:
    """Who is left is asked of now; of another day it is a question about the staff."""
    if topic is not Topic.LEFT or days.unclear:
        return topic, days
    if days.days and days.days != (today,):
        return Topic.STAFF, days
    return topic, replace(days, days=(today,))


def _who(topic: Topic, items: Sequence[Item], before: Sequence[Item]) -> tuple[str, ...]:
    if topic in _OF_NOBODY:
        return ()
    names = _named(items, (NAME, UNKNOWN))
    inside = {symbol for item in items for symbol in item.symbol.split()}
    if names or not inside & {"he", "i", "can"} or inside & {"everyone", "anyone"}:
        return names  # "puede lanzar" leaves out the "he"
    if "i" in inside and "he" not in inside:
        return (ME,)
    earlier = _named(before, (NAME,))
    return earlier if len(earlier) == 1 else (CHILD,)


def _named(items: Iterable[Item], kinds: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(item.text for item in items if item.symbol in kinds))


def _numbers(plain: Asked, items: Sequence[Item], unclear: list[str]) -> Asked:
    """Every number of the question in its field; one too many stands in `unclear`."""
    fields: dict[str, int] = {}
    for item in items:
        field = _field(plain.topic, item)
        if field is None:
            continue
        if field and field not in fields and isinstance(item.value, int):
            fields[field] = item.value
        else:
            unclear.append(item.text)
    return replace(
        plain,
        pitches=fields.get("pitches"),
        innings=fields.get("innings"),
        rest_days=fields.get("rest_days"),
        game=fields.get("game"),
        times=tuple(i.value for i in items if i.symbol == "clock" and isinstance(i.value, time)),
        team=next((str(item.value) for item in items if item.symbol == "team"), None),
        without=_named(items, ("n_without",)),
        unclear=tuple(dict.fromkeys(unclear)),
    )


def _field(topic: Topic, item: Item) -> str | None:
    """The field of a number's item, "" for none that fits, None for an item of another kind."""
    if item.symbol in ("n_pitches", "n_bare"):
        small = isinstance(item.value, int) and item.value <= MOST_PITCHES
        return "pitches" if small and topic in _COUNTING else ""
    if item.symbol in ("n_games", "n_odd"):
        return ""
    return {"n_innings": "innings", "n_rest": "rest_days", "n_game": "game"}.get(item.symbol)


def _activity(topic: Topic, asked: str) -> Activity | None:
    if topic is not Topic.ACTIVITY:
        return None
    return next(kind for symbol, kind in _ACTIVITIES.items() if symbol in asked.split())
