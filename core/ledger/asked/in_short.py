"""Questions in a word or two: "who", "rest Leo", "mix"."""

from datetime import date

from core.ledger.asked.arm_words import whose_arm
from core.ledger.command_words import Does, find_word
from core.ledger.crew import Crew
from core.ledger.who import find
from core.reading.asking import Asked, Topic
from core.reading.asking.asked import CHILD, ME, Span
from core.reading.asking.upcoming import upcoming_days


def asked_in_short(text: str, today: date, crew: Crew) -> Asked | None:
    """The question that a word of the table asks, alone or with a pitcher or days after it.

    With anything else after it the text is no question: "left the field early".
    """
    whose = whose_arm(text)
    if whose is not None and (whose in {ME, CHILD} or find(whose, crew.arms)):
        return Asked(Topic.ARM, (whose,), days=(today,))
    found = find_word(text.strip(" ?!."))
    if found is None or found[0].does is not Does.ASK:
        return None
    word, rest = found
    days = upcoming_days(rest, today) if rest else ()
    who = (rest,) if rest and days is None and find(rest, crew.arms) else ()
    if rest and not who and not days:
        return None
    return _asked(word.target, who, days or (), crew)


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
    return None
