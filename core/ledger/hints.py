"""Notices for lines that are no log: a photo, an emoji, a stranger, a first hello."""

import re
from datetime import datetime
from enum import StrEnum

from core.ledger.notices import Notice, NoticeKind
from core.model import Line, LineState, key
from core.reading.languages import tell_language
from core.reading.tokens import tokenize

_EMOJI_NAME = re.compile(r":[a-z0-9_+'-]+:")


#: Courtesy and chatter that wants no answer.
_THANKS = re.compile(
    r"(?:(?:ok(?:ay)?|k|kk|lol|haha\w*|thanks?(?: you)?(?: so much| a lot)?|thx|ty|tysm|cool|nice|"
    r"great|got it|gotcha|sounds good|will do|bet|np|no problem|perfect|awesome|good night|gn|"
    r"bye|good|sweet|word|yep|yup|yes|gracias|muchas gracias|bueno|vale|de nada|sir|coach|bot|man|"
    r"bro)[\s,.!]*)+",
    re.IGNORECASE,
)
_WHO = re.compile(
    r"(?:(?:hi|hey|hello|um|ok|wait)[,.!]?\s+)*"
    r"(?:who|what)(?:'?s|\s+is|\s+are|\s+r)?\s+(?:this|you|u|that|it|spinkeeper)"
    r"(?:\s+(?:for|about|thing|bot))*[\s?!.]*"
    r"|how does (?:this|it) work[\s?!.]*|what do i (?:do|type|write|say)(?: here)?[\s?!.]*"
    r"|(?:hi|hey|hello|yo|sup|start)[\s?!.]*",
    re.IGNORECASE,
)
_SPANISH = re.compile(
    r"\b(?:hola|buenas|buenos|qu[ié]en|c[oó]mo|est[aá]s?|espa[nñ]ol|ingl[eé]s|por ?favor|"
    r"no entiendo|necesito|puedes?|qu[eé] es|mi hij[oa])\b|¿",
    re.IGNORECASE,
)
_ASKS = re.compile(
    r"\?\s*$|^(?:can|could|am|is|are|do|does|did|will|would|should|why|how|what|when|where|who|"
    r"which)\b",
    re.IGNORECASE,
)


class Hint(StrEnum):
    """What a line without a log was."""

    NO_TEXT = "no text"  # a photo or a file alone
    NO_WORDS = "no words"  # emoji alone
    TALK = "talk"
    THANKS = "thanks"  # owes nothing
    WHO = "who"  # asks what the bot is
    QUESTION = "question"  # one that the bot has no answer to
    SPANISH = "spanish"


def hint_for(text: str) -> Hint:
    """What a text that logs nothing was: nothing at all, emoji alone, or talk."""
    if not text.strip():
        return Hint.NO_TEXT
    if not any(character.isalnum() for character in _EMOJI_NAME.sub("", text)):
        return Hint.NO_WORDS
    if _THANKS.fullmatch(text.strip()):
        return Hint.THANKS
    if _SPANISH.search(text) or tell_language(tokenize(text)) == "es":
        return Hint.SPANISH
    if _WHO.fullmatch(text.strip()):
        return Hint.WHO
    return Hint.QUESTION if _ASKS.search(text.strip()) else Hint.TALK


def hints(line: Line, now: datetime) -> list[Notice]:
    """The sentence owed to the author of a line that logs nothing; most lines owe none.

    In a channel a photo or an emoji is answered the first time only, and talk never: the
    log must not chatter. In a direct message talk is answered once a day, a question always,
    and thanks never.
    """
    hint = hint_for(line.text)
    is_talk = hint not in {Hint.NO_TEXT, Hint.NO_WORDS}
    if line.state != LineState.TALK or hint is Hint.THANKS or (is_talk and not line.direct):
        return []
    times = f"{now.date().isoformat()}" if line.direct and hint is Hint.TALK else "once"
    if line.direct and hint is not Hint.TALK:
        times = str(key(line))
    slot = f"{NoticeKind.HINT}/{line.author_slack_id}/{hint}/{times}"
    return [_to_author(line, NoticeKind.HINT, slot, now)]


def stranger(line: Line, now: datetime, is_log: bool) -> list[Notice]:
    """Told once to somebody who is on no team and writes a log line or a direct message."""
    if not (is_log or line.direct):
        return []
    slot = f"{NoticeKind.STRANGER}/{line.author_slack_id}"
    return [_to_author(line, NoticeKind.STRANGER, slot, now)]


def _to_author(line: Line, kind: NoticeKind, slot: str, now: datetime) -> Notice:
    return Notice(
        slot=slot,
        kind=kind,
        destination=line.author_slack_id,
        not_before=now,
        line_id=key(line),
        person_id=line.author_id,
    )
