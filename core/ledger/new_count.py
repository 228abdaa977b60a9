"""A bare number soon after the author's own count: offered as that outing's new count.

"Oops it was 26" after "24p vs Summit" hardly means anything else, but it is asked, with one
button, and never taken by itself.
"""

import re
from collections.abc import Sequence
from dataclasses import replace

from sqlalchemy import ColumnElement
from sqlmodel import Session, col, select

from core.audience import Relation
from core.ledger.answers import FIELDS, Answers, NewCount, number_in
from core.ledger.crew import Crew
from core.ledger.decide import Decision
from core.ledger.question import Question, QuestionCode
from core.ledger.spoken import spoken
from core.ledger.twins import SAME_EVENING
from core.ledger.who import Arm, find, is_named_in, names_of, plain
from core.model import Line, LineState, Outing, key
from core.reading import UnreadReason
from core.reading.stage import puts_right

#: A correction that names a number and hardly more: "it was 26", "sorry, 26 not 24".
_NUMBER = re.compile(r"(?<![\d./:-])\d{1,3}(?![\d./:%-])")
MOST_WORDS = 7
#: What a correction says beside its number and a name; with any other word it is another line.
_SMALL = (
    "oops whoops woops sorry no not wait actually it was is it's its were should be have been "
    "i meant mean make that correction my bad the a count only just really rather instead of and "
    "he she they change set fix to threw pitches for him her perdón perdon eran fueron era fue "
    "son quise decir en realidad me equivoqué equivoque corrección correccion solo sólo y de"
)
_SMALL_WORDS = frozenset(_SMALL.split())
#: The new count is no more than so many times the old one, and the other way round.
FAR = 3
MOST = 3


def with_new_count(
    session: Session, line: Line, decision: Decision, crew: Crew, answers: Answers
) -> Decision:
    """The decision with the author's last outings offered for a number that stands alone."""
    text = spoken(session, line)
    numbers = [int(one) for one in _NUMBER.findall(text)]
    if decision.kept or not numbers or not _is_short(text, crew):
        return decision
    asked = _asked(decision, numbers, corrects=puts_right(text))
    if asked is None or answers.value(asked) is not None:
        return decision
    numbers = [
        number_in(asked.about) or 0,
        *(one for one in numbers if str(one) not in asked.about),
    ]
    recent = _last(session, line) or _of_named(session, line, text, crew)
    last = [one for one in recent if _may_mean(one, numbers, text, crew)][:MOST]
    if not last:
        return decision
    names = {arm.pitcher_id: arm.name for arm in crew.arms}
    counts = [NewCount(one.pitcher_id, one.on, one.pitches or 0) for one in last]
    question = replace(
        asked,
        choices=tuple(names.get(one.pitcher_id, "") for one in counts),
        values=(*(one.as_value() for one in counts), *asked.values),
    )
    others = [one for one in decision.questions if one != asked]
    return Decision(LineState.ASKED, questions=(question, *others))


def _is_short(text: str, crew: Crew) -> bool:
    """Whether a line says hardly more than that a number was another one."""
    words = re.sub(r"[\d.,;:!?—–-]+", " ", text.casefold().replace("’", "'")).split()
    names = {part for arm in crew.arms for form in names_of(arm) for part in form.split()}
    return len(words) <= MOST_WORDS and all(
        word in _SMALL_WORDS or plain(word) in names for word in words
    )


def _asked(decision: Decision, numbers: Sequence[int], *, corrects: bool) -> Question | None:
    """The question about the one number of a line; of a correction that is read as talk too."""
    stray = [one for one in decision.questions if one.values[: len(FIELDS)] == tuple(FIELDS)]
    if stray and len(decision.questions) == 1:
        return stray[0]
    if decision.state is LineState.TALK and corrects:
        reason = str(UnreadReason.UNKNOWN_NUMBER)
        return Question(QuestionCode.UNREAD, about=str(numbers[0]), reason=reason)
    return None


def _counted_before(line: Line) -> tuple[ColumnElement[bool], ...]:
    """What holds of an outing that another line of the same evening counts, up to this one."""
    return (
        col(Line.id) != line.id,
        col(Line.posted_at) <= line.posted_at,
        col(Line.posted_at) >= line.posted_at - SAME_EVENING,
        col(Outing.withdrawn_at).is_(None),
        col(Outing.pitches).is_not(None),
    )


def _last(session: Session, line: Line) -> list[Outing]:
    """The counted outings of the author's newest line of the evening that has any."""
    rows = session.exec(
        select(Outing, Line)
        .join(Line, col(Outing.line_id) == col(Line.id))
        .where(
            Line.workspace_id == line.workspace_id,
            Line.author_slack_id == line.author_slack_id,
            col(Line.deleted_at).is_(None),
            *_counted_before(line),
        )
        .order_by(col(Line.posted_at).desc(), col(Line.id).desc(), col(Outing.id))
    ).all()
    return [outing for outing, of in rows if key(of) == key(rows[0][1])]


def _of_named(session: Session, line: Line, text: str, crew: Crew) -> list[Outing]:
    """The newest counted outing of the evening, by anybody, of the one pitcher the staff name."""
    arm = _one_named(text, crew.related(Relation.STAFF))
    if arm is None:
        return []
    rows = session.exec(
        select(Outing)
        .join(Line, col(Outing.line_id) == col(Line.id))
        .where(
            Outing.pitcher_id == arm.pitcher_id,
            col(Outing.joins).is_(None),
            *_counted_before(line),
        )
        .order_by(col(Line.posted_at).desc(), col(Outing.id).desc())
    )
    return list(rows)[:1]


def _one_named(text: str, arms: Sequence[Arm]) -> Arm | None:
    """The one pitcher whom a word, or two together, name: "Sam R" rather than "Sam"."""
    words = text.split()
    for size in (2, 1):
        spoken = (" ".join(words[at : at + size]) for at in range(len(words) - size + 1))
        for found in (find(one, arms) for one in spoken):
            if len(found) == 1:
                return found[0]
    return None


def _may_mean(outing: Outing, numbers: Sequence[int], text: str, crew: Crew) -> bool:
    """Whether a correction may be of this outing; "26 not 24" names the count before."""
    new, before = numbers[0], outing.pitches or 0
    if len(numbers) > 1:
        return list(numbers[1:]) == [before]
    named = [arm for arm in crew.arms if is_named_in(text, arm)]
    if named and outing.pitcher_id not in {arm.pitcher_id for arm in named}:
        return False
    return new != before and new <= FAR * before and before <= FAR * new
