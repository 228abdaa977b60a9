"""Questions in a word or two: "who", "rest Leo", "my stats", "what do you know about Leo"."""

import re
from datetime import date

from core.ledger.asked.arm_words import whose_arm
from core.ledger.command_words import Does, Word, find_word
from core.ledger.crew import Crew
from core.ledger.who import Arm, find
from core.reading.asking import Asked, Topic
from core.reading.asking.asked import CHILD, ME, Span
from core.reading.asking.upcoming import upcoming_days

_SHOW = re.compile(r"(?:(?:can|could) you )?(?:please )?(?:show|send|give|tell)(?: me)? ", re.I)
_POLITE = re.compile(r"(?:,? (?:please|pls|plz))+$", re.I)
_OWN = frozenset({"me", "myself", "my", "mine", "us"})
_CHILD = re.compile(r"(?:(?:my|our) (?:son|daughter|kid|child|boy|girl)|him|his|her)(?:'?s)?", re.I)
_OF = frozenset({"stats", "data", "rest", "mix", "innings"})


#: The staff ask who is stopped; nobody reports pain in these words.
_HURT = re.compile(
    r"(?:is )?(?:any(?:one|body)|who(?:'?s| is| else is)?)(?: still)? "
    r"(?:hurt(?:ing)?|injured|sore|in pain|on hold|stopped)|any (?:injuries|pain|holds|sore arms)"
    r"|holds|injuries",
    re.I,
)


def asked_in_short(text: str, today: date, crew: Crew) -> Asked | None:
    """The question that a word of the table asks, alone or with a pitcher or days after it.

    With anything else after it the text is no question: "left the field early".
    """
    whose = whose_arm(text)
    if whose is not None and (named := _whose(whose, crew)) is not None:
        return Asked(Topic.ARM, (named,), days=(today,))
    if crew.is_staff and _HURT.fullmatch(text.strip(" ?!.")):
        return Asked(
            Topic.STAFF, days=(today,)
        )  # the staff's sheet names every arm that is stopped
    said = _POLITE.sub("", _SHOW.sub("", text.strip(" ?!."))).strip(" ,")
    found = find_word(said)
    if found is None or found[0].does is not Does.ASK:
        return _owned(said, crew)
    word, rest = found
    days = upcoming_days(rest, today) if rest else ()
    named = _named(rest, crew) if rest and days is None else None
    if rest and not named and not days:
        return None
    return _asked(word.target, (named,) if named else (), days or (), crew)


def _whose(typed: str, crew: Crew) -> str | None:
    """Of whom a question about an arm is, where it is of a pitcher: "leos" is Leo's too."""
    if typed in {ME, CHILD} or find(typed, crew.arms):
        return typed
    return CHILD if _CHILD.fullmatch(typed) else _without_s(typed, crew.arms)


def _without_s(typed: str, arms: tuple[Arm, ...]) -> str | None:
    bare = typed.removesuffix("s").removesuffix("'")
    return bare if bare != typed and find(bare, arms) else None


def _named(typed: str, crew: Crew) -> str | None:
    if typed.casefold() in _OWN:
        return ME
    if _CHILD.fullmatch(typed):
        return CHILD
    return typed if find(typed, crew.arms) else _without_s(typed, crew.arms)


def _owned(said: str, crew: Crew) -> Asked | None:
    """A word with its pitcher before it: "my stats", "Leo's mix", "my son's rest"."""
    owner, _, last = said.replace("’", "'").rpartition(" ")
    found = find_word(last)
    if not owner or found is None or found[1] or not _is_of_one(found[0]):
        return None
    named = _named(owner, crew)
    return _asked(found[0].target, (named,), (), crew) if named else None


def _is_of_one(word: Word) -> bool:
    return word.does is Does.ASK and word.target in _OF


def _asked(target: str, who: tuple[str, ...], days: tuple[date, ...], crew: Crew) -> Asked | None:
    match target:
        case "who" if not who:
            return Asked(Topic.STAFF, days=days)
        case "left" if not who and not days:
            return Asked(Topic.LEFT)
        case "plan" if not who:
            return Asked(Topic.PLAN)
        case "rest" if days:
            return None  # "rest sunday" logs a day off
        case "rest" if who or not crew.is_staff:
            return Asked(Topic.WHEN, who)
        case "rest":  # the coach's own arm is not meant
            return Asked(Topic.STAFF)
        case "mix" if not days:
            return Asked(Topic.MIX, who, span=Span.SEASON)
        case "innings" if not days:
            return Asked(Topic.INNINGS, who, span=Span.YEAR)
        case "stats" | "data" | "delete" | "consent" if not days:
            return Asked(Topic(target), who)
    return None
