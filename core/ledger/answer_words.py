"""What a word or two, typed instead of a button, answers to an open question."""

import re
from collections.abc import Mapping

from core.ledger.answers import GONE, NO_LOG, NOT_YET
from core.ledger.question import OFFERS_PITCHERS, Question, QuestionCode
from core.ledger.who import plain
from core.reading import UnreadReason

_BEFORE = re.compile(
    r"^(?:(?:it|its|it's|that|that's|thats|was|is|a|an|the|my|in|um|oh|to|for|just|only|like)\s+)+"
)
_NUMBER = re.compile(r"^(\d{1,3})(?:\s*(p|pitches|pitch|throws|[a-z]+))?$")
YES = frozenset({"yes", "y", "yeah", "yep", "yup", "correct", "right", "si", "sí", "that's right"})
NO = frozenset({"no", "nope", "n", "nah"})
UNSURE = frozenset(
    {"idk", "i don't know", "i dont know", "dont know", "don't know", "not sure", "dunno",
     "no idea", "no clue", "no se", "no sé", "practice"}
)  # fmt: skip
_PLACES = {
    "first": 0, "1st": 0, "first one": 0, "second": 1, "2nd": 1, "second one": 1, "third": 2,
    "3rd": 2, "third one": 2, "last": -1, "last one": -1,
}  # fmt: skip
_KINDS = {
    "game": "game", "scrimmage": "game", "bullpen": "bullpen", "pen": "bullpen", "side": "bullpen",
    "live": "live", "live bp": "live", "catch": "catch", "catch play": "catch", "juego": "game",
    "partido": "game",
}  # fmt: skip
_DAYS = {
    "today": 0, "tonight": 0, "this morning": 0, "hoy": 0, "yesterday": 1, "last night": 1,
    "ayer": 1,
}  # fmt: skip
_SAME = {
    "same": "same", "same one": "same", "same game": "same", "same outing": "same",
    "new count": "same", "second": "second", "second one": "second", "second outing": "second",
    "second game": "second", "another one": "second", "another": "second", "different": "second",
    "different one": "second", "new one": "second",
}  # fmt: skip
_FIELDS = {
    "pitches": "pitches", "pitch": "pitches", "p": "pitches", "throws": "pitches",
    "curves": "curve", "curve": "curve", "curveballs": "curve", "cb": "curve", "cbs": "curve",
    "sliders": "slider", "sl": "slider", "changeups": "changeup", "changes": "changeup",
    "ch": "changeup", "strikes": "strikes", "k": "strikes",
}  # fmt: skip
_NOTHING = frozenset({"nothing", "not part of the log", "not part of it", "ignore it", "ignore"})
_PAIN_FREE = {**dict.fromkeys(YES, GONE), **dict.fromkeys(NO, NOT_YET)}
_PAIN_FREE |= {"gone": GONE, "all gone": GONE, "not yet": NOT_YET, "still hurts": NOT_YET}


def words_of(text: str) -> str:
    """The words of an answer, without what leads up to them."""
    said = " ".join(text.casefold().replace("’", "'").strip(" .!?,").split())
    return said if said in _PAIN_FREE or said in UNSURE else _BEFORE.sub("", said)


def is_unsure(text: str) -> bool:
    """Whether somebody cannot tell: the question is said once more."""
    return words_of(text) in UNSURE


def fits_any(text: str) -> bool:
    """Whether it is an answer that fits many a question: "yes", "the second one"."""
    return is_bare(text) or _NUMBER.match(words_of(text)) is not None


def is_bare(text: str) -> bool:
    """Whether it says nothing but by the question: "yes", "the second one"."""
    said = words_of(text)
    return said in YES or said in NO or said in _PLACES


def value_of(question: Question, text: str) -> str | None:
    """The stored value that the words choose; none where they answer something else."""
    said = words_of(text)
    match question.code:
        case QuestionCode.KIND:
            return _offered(question, _KINDS.get(said))
        case QuestionCode.DAY:
            return _at(question, _DAYS.get(said))
        case QuestionCode.SAME:
            return _same(question, said)
        case QuestionCode.SURE:
            return _at(question, 0) if said in YES else None
        case QuestionCode.PAIN_FREE:
            return _offered(question, _PAIN_FREE.get(said))
        case QuestionCode.UNREAD:
            return _unread(question, said)
        case code if code in OFFERS_PITCHERS:
            return _pitcher(question, said)
    return None


def _same(question: Question, said: str) -> str | None:
    """With `reason` it is asked whether it is the same as another's: yes or no will do."""
    by_another: Mapping[str, str] = {
        **dict.fromkeys(YES, "same"), **dict.fromkeys(NO, "second")
    }  # fmt: skip
    found = _SAME.get(said) or (by_another.get(said) if question.reason else None)
    return _offered(question, found)


def _unread(question: Question, said: str) -> str | None:
    number = _NUMBER.match(said)
    if question.reason == UnreadReason.VAGUE and kind_of(question.about) is not None:
        counts = number is not None and number[2] in {None, "p", "pitches", "pitch", "throws"}
        return number[1] if number is not None and counts else None
    if number is not None and number[2] and number[1] in re.findall(r"\d+", question.about):
        said = number[2]
    if said in _NOTHING and question.values:
        return NO_LOG
    return _offered(question, _FIELDS.get(said)) or _at(question, _PLACES.get(said))


def _pitcher(question: Question, said: str) -> str | None:
    if said in YES and len(question.values) == 1:
        return question.values[0]
    names = [plain(name) for name in question.choices]
    fits = [at for at, name in enumerate(names) if said == name or said in name.split()]
    return _at(question, fits[0]) if len(fits) == 1 else _at(question, _PLACES.get(said))


def _offered(question: Question, value: str | None) -> str | None:
    return value if value in question.values else None


def _at(question: Question, place: int | None) -> str | None:
    if place is None or not -len(question.values) <= place < len(question.values):
        return None
    return question.values[place]


_KIND_WORDS = {
    "pen": "bullpen", "bullpen": "bullpen", "side": "bullpen", "game": "game", "live": "live",
    "catch": "catch", "catch play": "catch", "long toss": "catch",
}  # fmt: skip


def kind_of(about: str) -> str | None:
    """The kind that the words of a count without a number name: "pen" is a bullpen."""
    return _KIND_WORDS.get(about.casefold())
