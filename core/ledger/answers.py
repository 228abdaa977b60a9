"""What people answered to the questions of a line, and how it completes the reading."""

from collections.abc import Sequence
from dataclasses import asdict, dataclass, replace
from datetime import date
from typing import Any

from core.ledger.question import Question, QuestionCode
from core.reading import Entry

#: The value of an answer that says: that number is no part of the log.
NO_LOG = "no log"
#: The values of the answer to "is the pain gone?".
GONE, NOT_YET = "gone", "not yet"
#: The value of an answer given with a form: the record was put right by hand.
BY_HAND = "by hand"
#: How the value begins that says: that number is the new count of an outing on record.
NEW = "new count"


@dataclass(frozen=True, slots=True)
class Answer:
    """One answer: the question's code, what it was about, and the chosen value.

    `value` is a kind, an ISO date, a pitcher's id, a field's name, "same" or "second",
    `NO_LOG` or `BY_HAND`, as the code asks for.
    """

    code: QuestionCode
    value: str
    about: str = ""
    pitcher_id: int | None = None
    #: Whose word it is, where one of the staff wrote it down.
    said_by: str = ""
    #: The line that typed it, where it was no button.
    by_line: int | None = None

    def as_json(self) -> dict[str, Any]:
        """The answer as stored with its line."""
        return asdict(self)

    @staticmethod
    def from_json(stored: dict[str, Any]) -> "Answer":
        """The answer back from its stored form."""
        return Answer(
            QuestionCode(stored["code"]),
            stored["value"],
            stored["about"],
            stored["pitcher_id"],
            stored.get("said_by", ""),
            stored.get("by_line"),
        )


@dataclass(frozen=True, slots=True)
class NewCount:
    """The answer that a number is the new count of an outing: whose, of which day, what before."""

    pitcher_id: int
    on: date
    before: int

    def as_value(self) -> str:
        """The answer's stored value."""
        return f"{NEW}/{self.pitcher_id}/{self.on.isoformat()}/{self.before}"

    @staticmethod
    def from_value(value: str) -> "NewCount | None":
        """The answer back from its stored value; none for every other answer."""
        if not value.startswith(f"{NEW}/"):
            return None
        _, pitcher, on, before = value.split("/")
        return NewCount(int(pitcher), date.fromisoformat(on), int(before))


@dataclass(frozen=True, slots=True)
class Answers:
    """All answers of one line; a later one replaces an earlier one to the same question."""

    given: tuple[Answer, ...] = ()

    def value(self, question: Question) -> str | None:
        """What was answered to a question, or none."""
        for answer in reversed(self.given):
            if answer.code is question.code and _same(answer, question):
                return answer.value
        return None

    def kind(self, pitcher_id: int) -> str | None:
        """The kind of outing that was chosen for a pitcher, or for everybody in the line."""
        return self._of_one_or_all(QuestionCode.KIND, pitcher_id)

    def day(self, pitcher_id: int) -> date | None:
        """The day that was chosen for a pitcher, or for everybody in the line."""
        chosen = self._of_one_or_all(QuestionCode.DAY, pitcher_id)
        return date.fromisoformat(chosen) if chosen else None

    def _of_one_or_all(self, code: QuestionCode, pitcher_id: int) -> str | None:
        # A form puts the row right and says nothing of what the line was answered to mean.
        said = Answers(tuple(one for one in self.given if one.value != BY_HAND))
        own = said.value(Question(code, pitcher_id=pitcher_id))
        return own if own is not None else said.value(Question(code))

    def left_out(self) -> set[int]:
        """The pitchers who were taken out of a roll call."""
        return {
            answer.pitcher_id
            for answer in self.given
            if answer.code is QuestionCode.LEFT_OUT and answer.pitcher_id is not None
        }

    def new_count(self) -> tuple[int, NewCount] | None:
        """The number that was said to be an outing's new count, and of which."""
        for answer in reversed(self.given):
            found = NewCount.from_value(answer.value)
            number = number_in(answer.about)
            if found is not None and number is not None:
                return number, found
        return None

    def put_right(self, pitcher_id: int) -> bool:
        """Whether a pitcher's part of the line was put right by hand: nothing is asked of it."""
        return any(
            answer.value == BY_HAND and answer.pitcher_id == pitcher_id for answer in self.given
        )


#: Questions that are asked once of each pitcher in a line.
BY_PITCHER = frozenset(
    {
        QuestionCode.KIND,
        QuestionCode.DAY,
        QuestionCode.SAME,
        QuestionCode.SURE,
        QuestionCode.PAIN_FREE,
    }
)


def _same(answer: Answer, question: Question) -> bool:
    if question.code in BY_PITCHER:
        return answer.pitcher_id == question.pitcher_id
    return answer.about == question.about


def complete(entry: Entry, about: str, field: str) -> Entry:
    """The entry with the number of `about` as the count that was chosen for it.

    A breaking ball of one kind counts among the breaking balls as well. `about` holds one
    whole number; the entry stays as it is where it does not.
    """
    number = number_in(about)
    if number is None:
        return entry
    changes: dict[str, Any] = {field: number}
    if field in {"curve", "slider"}:
        other = entry.slider if field == "curve" else entry.curve
        changes["breaking"] = number + (other or 0)
    return replace(entry, **changes)


def number_in(about: str) -> int | None:
    """The one whole number in some words; none where there are none or several."""
    digits = "".join(character if character.isdigit() else " " for character in about).split()
    return int(digits[0]) if len(digits) == 1 else None


#: What a stray number can count, in the order in which it is offered.
FIELDS: Sequence[str] = ("pitches", "curve", "slider", "changeup", "strikes")
