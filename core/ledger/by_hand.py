"""Answers, corrections and undoing by hand: pressed and filled in, not typed as a line.

Whoever does it is checked against the audience table again: what a button or a form carries
can be seen and changed on its way.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from enum import StrEnum
from typing import Any

from sqlmodel import Session, col, select

from core.audience import Subject, may_log
from core.ledger.answers import BY_HAND, Answer
from core.ledger.apply import Change, correct_row, withdraw_rows, withdraw_settings
from core.ledger.clearance import may_clear
from core.ledger.crew import load_crew
from core.ledger.lines import hear_again, owed_after
from core.ledger.notices import Notice
from core.ledger.of_line import of_line
from core.ledger.one_for_all import ONCE
from core.ledger.question import QuestionCode
from core.model import Line, LineState, Outing, Person, Pitcher, key


class Refusal(StrEnum):
    """Why nothing was changed."""

    GONE = "gone"  # the line was deleted or undone, or is no longer there
    NOT_ALLOWED = "not allowed"
    IMPOSSIBLE = "impossible"
    NO_LONGER = "no longer"  # what it was about does not stand any more
    NO_GUARDIAN = "no guardian"  # nothing that an adult writes goes to one minor alone


class ByHandError(Exception):
    """Nothing was changed; `field` names the input that is wrong, where one is."""

    def __init__(self, refusal: Refusal, field: str = "") -> None:
        """Name the refusal and the field."""
        super().__init__(f"{refusal} {field}".strip())
        self.refusal, self.field = refusal, field


@dataclass(frozen=True, slots=True)
class Hand:
    """Who does it, and when (UTC)."""

    session: Session
    person: Person
    now: datetime

    @property
    def slack_id(self) -> str:
        """The account of whoever does it, as the audit names him."""
        return self.person.slack_id or ""


#: The largest values a form takes; a row of a table of the trade, not of a rule book.
LARGEST = {
    "pitches": 200, "breaking": 200, "curve": 200, "slider": 200, "changeup": 200,
    "fastball": 200, "strikes": 200, "breaking_strikes": 200, "outs": 36, "caught_outs": 36,
    "effort": 100,
}  # fmt: skip
#: How far back a form may date an outing.
LONGEST_AGO = timedelta(days=60)
KINDS = frozenset({"game", "bullpen", "live", "catch", "off"})


def choose(hand: Hand, line_id: int, answer: Answer) -> list[Notice]:
    """Answer a question of a line with one of its likely readings.

    The author may answer his own line; else whoever may log for the pitcher. Raises
    `ByHandError`.
    """
    line = standing_line(hand, line_id)
    if not _may_answer(hand, line, answer):
        raise ByHandError(Refusal.NOT_ALLOWED)
    line.answers = [*line.answers, answer.as_json()]
    return hear_again(hand.session, line, hand.person, hand.now)


def put_right(hand: Hand, outing_id: int, fields: Mapping[str, Any]) -> list[Notice]:
    """Set an outing to what a form says; questions about that pitcher's part are answered by it.

    `fields` are columns of the outing: counts as whole numbers or none, `kind`, `on` as a date.
    Raises `ByHandError` for who may not, and for values that cannot be, naming the field.
    """
    outing = hand.session.get(Outing, outing_id)
    if outing is None or outing.withdrawn_at is not None:
        raise ByHandError(Refusal.GONE)
    line = standing_line(hand, outing.line_id)
    if not _may(hand, line, outing.pitcher_id):
        raise ByHandError(Refusal.NOT_ALLOWED)
    crew = load_crew(hand.session, hand.person, None)
    check(fields, crew.local(hand.now).date())
    correct_row(
        _change(hand, line),
        outing,
        {**fields, "waiting": [one for one in outing.waiting if one == "same"]},
    )
    done = Answer(QuestionCode.KIND, BY_HAND, pitcher_id=outing.pitcher_id)
    line.answers = [*line.answers, done.as_json()]
    return hear_again(hand.session, line, hand.person, hand.now)


def see_outing(hand: Hand, outing_id: int) -> Outing | None:
    """The outing, for somebody who may put it right; none for anybody else."""
    outing = hand.session.get(Outing, outing_id)
    line = hand.session.get(Line, outing.line_id) if outing is not None else None
    if outing is None or line is None or outing.withdrawn_at is not None:
        return None
    return outing if _may(hand, line, outing.pitcher_id) else None


def undo(hand: Hand, line_id: int) -> list[Notice]:
    """Take everything that a line put into the record out again; the raw line stays.

    Raises `ByHandError` when it is gone already, or when somebody may not do that for one of
    its pitchers.
    """
    line = standing_line(hand, line_id)
    rows = hand.session.exec(
        select(Outing).where(Outing.line_id == line_id, col(Outing.withdrawn_at).is_(None))
    ).all()
    if key(hand.person) != line.author_id and not _may_undo(hand, line, rows):
        raise ByHandError(Refusal.NOT_ALLOWED)
    line.state, line.questions = LineState.UNDONE, []
    hand.session.add(line)
    withdraw_rows(_change(hand, line))
    withdraw_settings(_change(hand, line))
    hand.session.flush()
    return owed_after(hand.session, line, hand.now)


def _may_undo(hand: Hand, line: Line, rows: Sequence[Outing]) -> bool:
    """Whether somebody else than the author may; of a line without outings, the staff alone."""
    if not rows:
        return load_crew(hand.session, hand.person, None).is_staff
    return all(_may(hand, line, row.pitcher_id) for row in rows)


def check(fields: Mapping[str, Any], today: date) -> None:
    """Refuse values that cannot be, naming the first field that is wrong (`ByHandError`).

    `today` is the local day: an outing does not lie ahead.
    """
    for name, most in LARGEST.items():
        value = fields.get(name)
        if value is not None and not 0 <= value <= most:
            raise ByHandError(Refusal.IMPOSSIBLE, name)
    if fields.get("kind") is not None and fields["kind"] not in KINDS:
        raise ByHandError(Refusal.IMPOSSIBLE, "kind")
    day = fields.get("on")
    if isinstance(day, date) and not today - LONGEST_AGO <= day <= today:
        raise ByHandError(Refusal.IMPOSSIBLE, "on")
    for part, whole in PARTS:
        low, high = fields.get(part), fields.get(whole)
        if low is not None and high is not None and low > high:
            raise ByHandError(Refusal.IMPOSSIBLE, part)
    typed = [fields.get(name) for name in ("breaking", "changeup", "fastball")]
    if fields.get("pitches") is not None and sum(n or 0 for n in typed) > fields["pitches"]:
        raise ByHandError(Refusal.IMPOSSIBLE, "pitches")


#: What cannot be more than what.
PARTS = (
    ("breaking", "pitches"), ("curve", "breaking"), ("slider", "breaking"),
    ("changeup", "pitches"), ("fastball", "pitches"), ("strikes", "pitches"),
    ("breaking_strikes", "breaking"),
)  # fmt: skip


def standing_line(hand: Hand, line_id: int) -> Line:
    """The line, locked, while it stands. Raises `ByHandError` for one that is gone."""
    line = hand.session.get(Line, line_id, with_for_update=True)
    if (
        line is None
        or line.workspace_id != hand.person.workspace_id
        or line.deleted_at is not None
        or line.state == LineState.UNDONE
    ):
        raise ByHandError(Refusal.GONE)
    return line


def _may_answer(hand: Hand, line: Line, answer: Answer) -> bool:
    """The author of a line, or whoever may log for the pitcher; of pain, who may clear it."""
    if answer.code is QuestionCode.PAIN_FREE and answer.pitcher_id is not None:
        pitcher = hand.session.get_one(Pitcher, answer.pitcher_id)
        return key(hand.person) in may_clear(hand.session, pitcher, hand.now.date())
    if key(hand.person) == line.author_id:
        return True
    if answer.code in ONCE and answer.pitcher_id is None:
        rows = of_line(hand.session, line).outings
        return bool(rows) and all(_may(hand, line, row.pitcher_id) for row in rows)
    return _may(hand, line, answer.pitcher_id)


def _may(hand: Hand, line: Line, pitcher_id: int | None) -> bool:
    """Whether this person may log game counts for the pitcher, or practice."""
    if pitcher_id is None:
        return False
    relations = load_crew(hand.session, hand.person, None).relations.get(pitcher_id, frozenset())
    own_line = line.author_id == key(hand.person)
    return may_log(relations, Subject.PRACTICE) or (
        own_line and may_log(relations, Subject.GAME_COUNTS)
    )


def _change(hand: Hand, line: Line) -> Change:
    return Change(hand.session, line, hand.slack_id, hand.now)
