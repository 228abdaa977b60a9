"""Words typed instead of the buttons under "is it gone?", where exactly that question is open.

They count as the press does: "it's gone" as yes, "not yet", "no" or "still sore" as not yet.
"Better", or a yes that may answer anything, is neither: it is asked once more. Anything else,
new words of pain above all, is read as a line like any other.
"""

import re
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from sqlmodel import Session, col, select

from core.ledger.answer_words import NO, YES
from core.ledger.answers import GONE, NOT_YET, Answer
from core.ledger.clearance import arm_status
from core.ledger.notices import Notice, NoticeKind
from core.ledger.question import QuestionCode
from core.ledger.still_hurts import questions_about, said_not_yet, say_not_yet, who_may_say
from core.model import Line, OutboxMessage, PainReport, Person, Pitcher, key

#: A question of the clock is answered by a word for so long; then the next one was asked.
WITHIN = timedelta(days=7)
#: Better, or a bare yes: neither says that all of it is gone.
BETTER = "better"

_WHO = (
    r"(?:(?:it|he|she|i|the pain|pain|his arm|her arm|my arm|the arm)"
    r"\s*(?:'s|s|is|'m|am|feels)?\s+|feels\s+)?"
)
_END = r"(?:\s+(?:now|today|yet|thanks|thank you|him|her|a bit|a little|though))*"
_IS_GONE = re.compile(
    rf"(?:(?:yes|yeah|yep|yup|sí|si)\s+)?{_WHO}(?:all |completely |totally )?gone{_END}"
    rf"|(?:the )?(?:pain|soreness)(?:'s| is) (?:all )?gone{_END}|ya se (?:le )?fue"
)
_IS_NOT = re.compile(
    rf"(?:(?:no|nope|nah)\s+)?{_WHO}(?:(?:a bit |a little |much )?better but\s+)?{_WHO}"
    r"(?:not yet|not (?:all |quite |completely )?gone|not (?:quite|really|completely)"
    r"|still (?:a bit |a little |kind of )?(?:sore|hurts|hurt|hurting|there)"
    rf"|(?:sore|hurts) still|(?:not|no) (?:any )?better|no change|the same){_END}"
    r"|todav[ií]a (?:no|(?:le |me )?duele)|a[uú]n no|not yet"
)
_IS_BETTER = re.compile(
    rf"{_WHO}(?:a bit |a little |much |getting |feeling |all |a lot )*(?:better|fine|good|ok|okay)"
    rf"{_END}|mejor|mucho mejor"
)


@dataclass(frozen=True, slots=True)
class Asked:
    """A question of the clock that is open: about which arm and report, and on which day."""

    pitcher: Pitcher
    report: PainReport
    step: int


def value_typed(text: str) -> str | None:
    """`GONE`, `NOT_YET` or `BETTER`; none for whatever says anything else."""
    said = " ".join(re.sub(r"[.!?,;]+", " ", text.casefold().replace("’", "'")).split())
    if _IS_GONE.fullmatch(said):
        return GONE
    if said in NO or _IS_NOT.fullmatch(said):
        return NOT_YET
    return BETTER if said in YES or _IS_BETTER.fullmatch(said) else None


def own_answer(line: Line) -> Answer | None:
    """What a line itself answered to a question of the clock."""
    given = [Answer.from_json(one) for one in line.answers or ()]
    return next((one for one in reversed(given) if _is_own(one, line)), None)


def _is_own(answer: Answer, line: Line) -> bool:
    return answer.code is QuestionCode.PAIN_FREE and answer.by_line == key(line)


def still_so(line: Line) -> str | None:
    """What a line that is read again still answers; an edit to other words is forgotten."""
    own = own_answer(line)
    if own is None or own.value == value_typed(line.text):
        return own.value if own is not None else None
    line.answers = [one for one in line.answers if not _is_own(Answer.from_json(one), line)]
    return None


def take_typed(
    session: Session, line: Line, person: Person, on: date, now: datetime
) -> tuple[str | None, list[Notice]]:
    """Keep what a line answers to the one open question; `on` is the local day.

    Gives `GONE`, `NOT_YET` or none, and what people see of it.
    """
    value = value_typed(line.text) if line.direct else None
    asked = _open(session, line, person, on) if value in {GONE, NOT_YET} else []
    if value is None or len(asked) != 1:
        return None, []
    (one,) = asked
    answer = Answer(
        QuestionCode.PAIN_FREE, value, one.pitcher.name, key(one.pitcher), by_line=key(line)
    )
    line.answers = [*line.answers, answer.as_json()]
    if value == GONE:
        return value, []
    say_not_yet(session, one.report, one.step, person, now, on)
    return value, questions_about(session, {key(one.pitcher)}, now)


def as_no_pain(line: Line) -> str | None:
    """What a line that says "it's gone" is read as: “no pain” of the arm that was asked about."""
    own = own_answer(line)
    return f"{own.about}: no pain" if own is not None and own.value == GONE else None


def _open(session: Session, line: Line, person: Person, on: date) -> list[Asked]:
    """The newest question about each arm that its author was asked and did not answer."""
    rows = session.exec(
        select(OutboxMessage)
        .where(
            OutboxMessage.kind == NoticeKind.STILL_HURTS,
            OutboxMessage.person_id == key(person),
            col(OutboxMessage.not_before) >= line.posted_at - WITHIN,
            col(OutboxMessage.ts).is_not(None),
        )
        .order_by(col(OutboxMessage.id))
    )
    newest: dict[int, tuple[int, int]] = {}
    for row in rows:
        _, pitcher, report, step = row.slot.split("/")[:4]
        newest[int(pitcher)] = (int(report), int(step))
    found = (_stands(session, person, on, *one) for one in newest.values())
    return [one for one in found if one is not None]


def _stands(session: Session, person: Person, on: date, report_id: int, step: int) -> Asked | None:
    report = session.get(PainReport, report_id)
    if report is None or said_not_yet(session, report_id, step):
        return None
    pitcher = session.get_one(Pitcher, report.pitcher_id)
    status = arm_status(session, pitcher, on)
    if status.since is None or status.held:
        return None
    may = {key(one) for one in who_may_say(session, pitcher, on)}
    return Asked(pitcher, report, step) if key(person) in may else None
