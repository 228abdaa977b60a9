"""Questions and refusals: what was not clear, and what to do about it, in one sentence each."""

from collections.abc import Callable
from datetime import date

from bot.cut import cut
from bot.wording.calendar import unclear as calendar_unclear
from bot.wording.not_set import unclear as schedule_unclear
from bot.wording.thresholds import setting_unclear
from bot.wording.words import day, innings, listed, safe
from core.ledger.answers import NewCount
from core.ledger.question import Question, QuestionCode
from core.reading import Detail, UnreadReason

EDIT = "Edit your line to put it right; I read it again."
PRESS_OR_TYPE = "Press, type the answer here, or edit your line."

#: So much of a line is quoted (characters).
QUOTED = 120
ANSWERED = "Answered, thank you."


def asked_again(on: date, typed: str) -> str:
    """The heading of questions that come back once, with the line they are about."""
    return f"Still open from {day(on)}; I ask only this once more. {you_wrote(typed)}"


def you_wrote(typed: str) -> str:
    """Which line the questions below are about."""
    return f"You wrote: “{safe(cut(typed, QUOTED))}”"


FIELD_NAMES = {
    "pitches": "pitches", "breaking": "breaking balls", "curve": "curveballs",
    "slider": "sliders", "changeup": "changeups", "fastball": "fastballs",
    "strikes": "strikes", "breaking_strikes": "breaking-ball strikes",
    "outs": "innings pitched", "caught_outs": "innings caught", "effort": "percent effort",
    "severity": "pain",
}  # fmt: skip


def question(asked: Question, *, may_add: bool = False) -> str:
    """One question or refusal as a sentence; `may_add`: to somebody who keeps the roster."""
    if may_add:
        return _newcomer(asked)
    if asked.code is QuestionCode.UNREAD:
        return _unread(asked)
    if asked.code is QuestionCode.SAME:
        return _same(asked)
    if asked.code is QuestionCode.NOT_ALLOWED and asked.reason:
        return _ARM_NOT_TAKEN.format(about=safe(asked.about))
    if asked.code is QuestionCode.PAIN_OPEN and asked.reason == "held":
        return _HELD.format(about=safe(asked.about))
    if asked.reason == "sore" and asked.code in _SORE:
        return _SORE[asked.code].format(about=safe(asked.about))
    if asked.code is QuestionCode.SURE:
        return _sure(asked)
    if asked.code is QuestionCode.SETTING_UNCLEAR:
        return setting_unclear(asked.reason, asked.about)
    if asked.code is QuestionCode.SCHEDULE_UNCLEAR:
        return schedule_unclear(asked.reason, asked.about)
    if asked.code is QuestionCode.CALENDAR_UNCLEAR:
        return calendar_unclear(asked.reason, asked.about, asked.choices)
    if asked.code is QuestionCode.CLEARANCE_UNCLEAR:
        return _CLEARANCE[asked.reason].format(about=safe(asked.about))
    if asked.code in _OF_ALL and asked.pitcher_id is None:
        return _OF_ALL[asked.code]
    about = safe(asked.about)
    choices = listed([safe(name) for name in asked.choices], last="or")
    return (
        _SENTENCES[asked.code].format(about=about, choices=choices)
        if choices
        else _BARE[asked.code].format(about=about)
    )


_BARE = {
    QuestionCode.WHO: "Who is this about? Add the pitcher's name to the line.",
    QuestionCode.TWO_PEOPLE: "“{about}” fits more than one pitcher. Write the full name.",
    QuestionCode.UNKNOWN_NAME: "I know no pitcher called “{about}”. Check the name, or ask a coach "
    "to add the pitcher.",
    QuestionCode.NOT_ALLOWED: "Not counted for {about}: only the pitcher, a guardian, the "
    "scorekeeper (game counts) or a coach may log that. Please ask one of them.",
    QuestionCode.NO_CONSENT: "Not counted for {about}: no consent is on file. Your line is kept, "
    "and counted by itself once a guardian (or the adult pitcher) agrees to the record.",
    QuestionCode.KIND: "What was it: game, bullpen, live or catch play? Until you say, it counts "
    "as a game for rest, and not for the mix.",
    QuestionCode.DAY: "Was that game today or yesterday? Until you say, rest "
    "counts from today, and it stays out of the mix.",
    QuestionCode.PAIN_UNPLACED: "Your line speaks of pain that I cannot put on a record, so I've "
    "told the coaches. If an arm hurts: stop throwing today and tell an adult. "
    "I'm a bot, not a doctor.",
    QuestionCode.SECRECY: "You asked to keep it quiet, and I'd rather tell you the truth: when an "
    "arm hurts, the coaches and your parents or guardians are told, always. That is there to look "
    "after you; thank you for saying it.",
    QuestionCode.DANGER: "Thank you for saying this. I'm a bot and cannot judge it, but people "
    "can help. If somebody is in danger now, call your emergency number. You can also talk to an "
    "adult you trust, to your child-protection line or, in US sport, to the US Center for "
    "SafeSport. I ask an adult to look at your line: the staff or, where it names a coach, your "
    "family.",
    QuestionCode.ONLY_STAFF: "Only the staff can set this. Please ask a coach; nothing was "
    "changed.",
    QuestionCode.LIMIT_UNCLEAR: "I set no limit: “{about}” is not clear. Write for example “limit "
    "Leo 45 until 5/20” (1 to 200 pitches a day).",
    QuestionCode.BOOK_UNCLEAR: "I set no rule book: “{about}” is not clear. Write for example "
    "“book little-league for Leo on sat”.",
    QuestionCode.PAIN_FREE: "A report of pain of {about} is still open. Is the pain gone, at rest "
    "and when throwing? Only a yes here ends it; a licensed clinician should have checked it.",
    QuestionCode.PAIN_OPEN: "Good to hear. The report of pain of {about} stays open until a parent "
    "or guardian says that it is gone, and a licensed clinician should have checked it.",
    QuestionCode.ONLY_ADULTS: "Only a coach or a guardian of that pitcher can record a clinician's "
    "clearance; nothing was changed.",
    QuestionCode.ONLY_FAMILY: "Only a guardian of that pitcher, or the pitcher from 18 on, can "
    "withdraw consent; nothing was changed.",
    QuestionCode.ONLY_GUARDIAN: "Only a guardian of that pitcher, while he is under 18, decides "
    "whether I write to him; nothing was changed.",
    QuestionCode.NOT_READ: "I could not read this line. It is kept as you typed it, and nothing "
    "was counted; try it in other words, for example “62p 11cb 4.1ip vs Summit”.",
}
#: Asked once of everybody in a line.
_OF_ALL = {
    QuestionCode.KIND: "What was it, for all of them: game, bullpen, live or catch play? Until "
    "you say, it counts as a game for rest, and not for the mix; whether a rule was gone over I "
    "say then.",
    QuestionCode.DAY: "Was that game today or yesterday, for all of them? Until you say, rest "
    "counts from today, and it stays out of the mix.",
}
_SORE = {
    QuestionCode.PAIN_FREE: "Soreness of {about} is still on record. Is it gone, at rest and when "
    "throwing? Only a yes here ends it before its 14 days.",
    QuestionCode.PAIN_OPEN: "Good to hear. The soreness of {about} stays on record until a parent "
    "or guardian says that it is gone.",
}
_HELD = (
    "Good to hear. {about} stays on hold all the same, until an adult records a licensed "
    "clinician's clearance (name and date)."
)
_ARM_NOT_TAKEN = (
    "The counts are in; what the line says of {about}'s arm I may not put on the record for you. "
    "The pitcher, a guardian or a coach can."
)
_CLEARANCE = {
    "name": "I recorded nothing: name the licensed clinician and the date, for example “cleared "
    "Leo by Dr. Reyes 5/20”.",
    "day": "I recorded nothing: the date of the clearance must be there, today or earlier, for "
    "example “cleared Leo by Dr. Reyes 5/20”.",
    "older": "I recorded nothing: that date lies before the report of pain that stands.",
    "limit": "I recorded nothing: I can keep limits such as “no breaking balls until 6/1”, “no "
    "games until 6/1”, “catch play only”, “30 throws at 60 ft”, but not “{about}”.",
}
_SENTENCES = {
    **_BARE,
    QuestionCode.WHO: "Who is this about: {choices}? Add the name to the line.",
    QuestionCode.TWO_PEOPLE: "“{about}” fits {choices}. Write the full name.",
    QuestionCode.BOOK_UNCLEAR: "I set no rule book: “{about}” is not clear. Write for example "
    "“book little-league for Leo on sat”; the books are {choices}.",
    QuestionCode.UNKNOWN_NAME: "I know no pitcher called “{about}”. Did you mean {choices}?",
}


def _newcomer(asked: Question) -> str:
    """Asked of the staff, who can add the pitcher themselves."""
    if asked.code is QuestionCode.WHO:
        return (
            "Who is this about? The roster holds no pitcher yet: add the first one, then write "
            "the name into your line."
        )
    about = safe(asked.about)
    choices = listed([safe(name) for name in asked.choices], last="or")
    meant = f" Did you mean {choices}?" if choices else ""
    return (
        f"I know no pitcher called “{about}”.{meant} Your line is kept: add the pitcher, and I "
        "read it again."
    )


def _sure(asked: Question) -> str:
    count = asked.detail.value if asked.detail is not None else None
    return (
        f"{count} pitches are far more than {safe(asked.about)} has thrown before, so I did not "
        "count them. Is that right?"
    )


def _same(asked: Question) -> str:
    by = f" by {safe(asked.reason)}" if asked.reason else " by you"
    # One's own second count is mostly a running count, or the last one put right.
    same = "this the same one" if asked.reason else "this its new count, or a second outing"
    other = asked.detail.limit if asked.detail is not None else None
    count = f" ({other} pitches)" if other is not None else ""
    return (
        f"There is an outing of {safe(asked.about)} on that day already, logged{by}{count}. Is "
        f"{same}? Until you say, it is counted once, and the larger count owes the rest."
    )


#: Words that name what was thrown and no number, with what is counted of it.
KIND_WORDS = {
    "pen": "pitches in the bullpen",
    "bullpen": "pitches in the bullpen",
    "side": "pitches in the bullpen",
    "game": "pitches in the game",
    "live": "pitches in live batting practice",
    "catch": "throws in catch play",
    "catch play": "throws in catch play",
    "long toss": "throws in long toss",
}


def _unread(asked: Question) -> str:
    typed = safe(asked.about)
    if asked.reason == UnreadReason.VAGUE and asked.about.casefold() in KIND_WORDS:
        return f"How many {KIND_WORDS[asked.about.casefold()]}?"
    if asked.values and NewCount.from_value(asked.values[0]) is not None:
        return f"Is “{typed}” the new count of what you logged before? If not: what does it count?"
    if asked.detail is not None and asked.reason in _CLASHES:
        return _CLASHES[asked.reason](typed, asked.detail)
    return _UNREAD.get(asked.reason, _UNREAD[UnreadReason.TWO_READINGS]).format(typed=typed)


_UNREAD: dict[str, str] = {
    UnreadReason.UNKNOWN_NUMBER: "I could not place “{typed}”: what does the number count? For "
    "example “9 cb”, “40 strikes” or “3 ip”.",
    UnreadReason.UNKNOWN_PITCH: "I don't know which pitch “{typed}” is: curveballs, sliders or "
    "changeups?",
    UnreadReason.TWO_READINGS: "“{typed}” can be read in two ways. Which is it?",
    UnreadReason.VAGUE: "“{typed}” is no number yet. How many was it?",
    UnreadReason.IMPOSSIBLE: "“{typed}” cannot be right. What was it?",
    UnreadReason.UNLIKELY: "“{typed}” is far from what a game looks like, so I did not count it. "
    "What was it?",
    UnreadReason.UNKNOWN_KIND: "“{typed}”: was that a game, a bullpen, live or catch play?",
    UnreadReason.UNCLEAR_PAIN: "I am not sure what “{typed}” says about the arm. Does it hurt, and "
    "where? If it hurts: no more throwing today, and a coach or parent must know.",
    UnreadReason.UNCLEAR_DAY: "Which day is “{typed}”? A date such as 5/2 helps.",
    UnreadReason.UNKNOWN_WORD: "I am not sure what “{typed}” means for the count. Can you say it "
    "in other words?",
    UnreadReason.UNCLEAR_PERSON: "Whose count is “{typed}”? Put the name beside it.",
    UnreadReason.TOO_LONG: "That line is longer than 4,000 characters, so I read none of it. It is "
    "kept; please post the counts in a short line.",
}


def _impossible(typed: str, detail: Detail) -> str:
    value = _value(detail.field, detail.value)
    if detail.limit_field is not None and detail.limit is not None:
        limit = _value(detail.limit_field, detail.limit)
        return f"“{typed}”: {value} of {limit} cannot be, so I counted neither. Which is it?"
    return f"“{typed}”: {value} cannot be, so I did not count it. What was it?"


def _unlikely(typed: str, detail: Detail) -> str:
    value = _value(detail.field, detail.value)
    beside = ""
    if detail.limit_field is not None and detail.limit is not None:
        beside = f" beside {_value(detail.limit_field, detail.limit)}"
    return f"“{typed}”: {value}{beside} is far from usual, so I did not count it. What was it?"


_CLASHES: dict[str, Callable[[str, Detail], str]] = {
    UnreadReason.IMPOSSIBLE: _impossible,
    UnreadReason.UNLIKELY: _unlikely,
}


def _value(field: str, value: int | None) -> str:
    name = FIELD_NAMES.get(field, field)
    if value is None:
        return name
    if field in {"outs", "caught_outs"}:
        return f"{innings(value)} {name}"
    return f"{value} {name.removesuffix('es') if name == 'pitches' and value == 1 else name}"
