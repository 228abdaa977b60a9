"""Notices for lines that are no log: a photo, an emoji, a stranger, a first hello."""

import re
from datetime import datetime
from enum import StrEnum

from core.ledger.notices import Notice, NoticeKind
from core.model import Line, LineState, key

_EMOJI_NAME = re.compile(r":[a-z0-9_+'-]+:")


class Hint(StrEnum):
    """What a line without a log was."""

    NO_TEXT = "no text"  # a photo or a file alone
    NO_WORDS = "no words"  # emoji alone
    TALK = "talk"


def hint_for(text: str) -> Hint:
    """What a text that logs nothing was: nothing at all, emoji alone, or talk."""
    if not text.strip():
        return Hint.NO_TEXT
    if not any(character.isalnum() for character in _EMOJI_NAME.sub("", text)):
        return Hint.NO_WORDS
    return Hint.TALK


def hints(line: Line, now: datetime) -> list[Notice]:
    """The sentence owed to the author of a line that logs nothing; most lines owe none.

    In a channel a photo or an emoji is answered the first time only, and talk never: the
    log must not chatter. In a direct message talk is answered once a day.
    """
    hint = hint_for(line.text)
    if line.state != LineState.TALK or (hint is Hint.TALK and not line.direct):
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
