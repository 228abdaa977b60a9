"""Questions and refusals: what the author of a line is asked or told, kept with the line."""

from collections.abc import Mapping
from dataclasses import asdict, dataclass
from enum import StrEnum
from typing import Any

from core.reading import Detail


class QuestionCode(StrEnum):
    """What a question or a refusal is about."""

    UNREAD = "unread"
    WHO = "who"
    TWO_PEOPLE = "two people"
    UNKNOWN_NAME = "unknown name"
    NOT_ALLOWED = "not allowed"
    NO_CONSENT = "no consent"
    KIND = "kind"
    DAY = "day"
    SAME = "same outing"
    SURE = "sure"  # a count far outside the pitcher's history
    #: "No pain" while a report of pain stands: is it gone? Asked of who may say so.
    PAIN_FREE = "pain free"
    #: The same from somebody who may not: told that it stays open.
    PAIN_OPEN = "pain open"
    #: Not asked but pressed: somebody whom a roll call named was not there.
    LEFT_OUT = "left out"
    #: A limit that somebody else than the staff wanted to set.
    ONLY_STAFF = "only staff"
    LIMIT_UNCLEAR = "limit unclear"
    BOOK_UNCLEAR = "book unclear"
    #: A clearance that somebody else than an adult of that pitcher wanted to record.
    ONLY_ADULTS = "only adults"
    #: Consent that somebody wanted to withdraw who may not speak for that pitcher.
    ONLY_FAMILY = "only family"
    #: Whether a child is written to, which a guardian of a minor alone decides.
    ONLY_GUARDIAN = "only guardian"
    #: A clearance whose `reason` (name, day, older, limit) is missing or cannot be read.
    CLEARANCE_UNCLEAR = "clearance unclear"
    #: A threshold (`reason`) that does not take the typed value, or whose team is not clear.
    SETTING_UNCLEAR = "setting unclear"
    #: A schedule, cue or plan whose `reason` (time, night, cue, pain, team ...) is wrong.
    SCHEDULE_UNCLEAR = "schedule unclear"
    #: A line about the calendar whose `reason` (day, team, nothing) stands in its way.
    CALENDAR_UNCLEAR = "calendar unclear"
    NOT_READ = "not read"
    #: Pain that could not be laid to a pitcher's record: the staff hear of it all the same.
    PAIN_UNPLACED = "pain unplaced"
    #: The line asks to keep pain from the adults: it cannot be.
    SECRECY = "secrecy"
    #: The line suggests that somebody is in danger: a human must look.
    DANGER = "danger"


@dataclass(frozen=True, slots=True)
class Question:
    """One thing that the author is asked or told, kept with the line."""

    code: QuestionCode
    about: str = ""
    reason: str = ""
    choices: tuple[str, ...] = ()
    #: The likely answers as stored values: kinds, ISO dates, pitchers' ids, names of fields.
    values: tuple[str, ...] = ()
    pitcher_id: int | None = None
    #: What clashed with what, of an impossible or unlikely count.
    detail: Detail | None = None

    def as_json(self) -> dict[str, Any]:
        """The question as stored with the line: lists, as the database gives them back."""
        return {**asdict(self), "choices": list(self.choices), "values": list(self.values)}

    @staticmethod
    def from_json(stored: dict[str, Any]) -> "Question":
        """The question back from its stored form."""
        detail = stored["detail"]
        return Question(
            QuestionCode(stored["code"]),
            stored["about"],
            stored["reason"],
            tuple(stored["choices"]),
            tuple(stored["values"]),
            stored["pitcher_id"],
            Detail(**detail) if detail else None,
        )

    @property
    def waits(self) -> bool:
        """Whether an answer or an edit of the line is waited for."""
        return self.code not in REFUSALS


PAIN_UNPLACED = Question(QuestionCode.PAIN_UNPLACED)

#: What no better line can change: somebody else must act.
REFUSALS = frozenset(
    {
        QuestionCode.NOT_ALLOWED,
        QuestionCode.NO_CONSENT,
        QuestionCode.PAIN_UNPLACED,
        QuestionCode.SECRECY,
        QuestionCode.PAIN_OPEN,
        QuestionCode.ONLY_STAFF,
        QuestionCode.ONLY_ADULTS,
        QuestionCode.ONLY_GUARDIAN,
        QuestionCode.ONLY_FAMILY,
        QuestionCode.DANGER,
    }
)
#: Questions whose likely answers are pitchers.
OFFERS_PITCHERS = frozenset({QuestionCode.WHO, QuestionCode.TWO_PEOPLE, QuestionCode.UNKNOWN_NAME})


def asked_about(stored: Mapping[str, Any]) -> set[int]:
    """The ids of the pitchers whom a question, as stored, is about or offers."""
    offered = stored["values"] if stored["code"] in OFFERS_PITCHERS else ()
    about = {stored["pitcher_id"]} - {None}
    return about | {int(value) for value in offered}
