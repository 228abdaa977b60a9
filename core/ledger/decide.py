"""From what a line says to what is stored and what is asked: decided here, applied elsewhere."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from datetime import date, datetime

from core.audience import Relation, Subject, may_log
from core.ledger.crew import Crew
from core.ledger.days import day_is_unclear, outing_day
from core.ledger.question import PAIN_UNPLACED, REFUSALS, Question, QuestionCode
from core.ledger.who import Arm, find, near
from core.model import LineState
from core.reading import Entry, Reading, Unread

EVERYONE = "everyone"


@dataclass(frozen=True, slots=True)
class Kept:
    """One entry about one pitcher, with its local day and what waits for an answer."""

    arm: Arm
    slot: str
    on: date
    kind: str | None
    entry: Entry
    waiting: tuple[str, ...]
    subjects: frozenset[Subject]


@dataclass(frozen=True, slots=True)
class Decision:
    """What becomes of a line."""

    state: LineState
    kept: tuple[Kept, ...] = ()
    questions: tuple[Question, ...] = ()


@dataclass(slots=True)
class _Work:
    crew: Crew
    posted: datetime
    kept: list[Kept] = field(default_factory=list)
    questions: list[Question] = field(default_factory=list)

    def ask(self, question: Question) -> None:
        if question not in self.questions:
            self.questions.append(question)


def decide(reading: Reading, crew: Crew, posted: datetime) -> Decision:
    """What is stored for whom and what is asked; `posted` is local wall-clock time.

    What is certain is kept, what is unclear becomes a question, and what the author may
    not log for that pitcher becomes a refusal.
    """
    work = _Work(crew, posted)
    for entry in reading.entries:
        _place(work, entry)
    for unread in reading.unread:
        work.ask(_unread_question(unread))
    return Decision(_state(work), tuple(work.kept), tuple(work.questions))


def _unread_question(unread: Unread) -> Question:
    return Question(
        QuestionCode.UNREAD, about=unread.text, reason=str(unread.reason), detail=unread.detail
    )


def _place(work: _Work, entry: Entry) -> None:
    targets = _targets(work, entry)
    if not targets and entry.pain:
        work.ask(PAIN_UNPLACED)
    for arm in targets:
        _keep(work, entry, arm)


def _targets(work: _Work, entry: Entry) -> list[Arm]:
    """The pitchers an entry is about; asks and returns none where that is open."""
    if entry.who is None:
        return _unnamed(work)
    if entry.who == EVERYONE:
        return _everyone(work, entry.except_)
    return _named(work, entry.who, work.crew.local_arms()) or []


def _unnamed(work: _Work) -> list[Arm]:
    crew = work.crew
    own, children = crew.related(Relation.SELF), crew.related(Relation.GUARDIAN)
    if own and not crew.is_staff:
        return own[:1]
    if len(children) == 1 and not crew.is_staff:
        return children
    choices = children if children and not crew.is_staff else []
    work.ask(Question(QuestionCode.WHO, choices=tuple(arm.name for arm in choices)))
    return []


def _everyone(work: _Work, left_out: Iterable[str]) -> list[Arm]:
    staffed = [
        arm
        for arm in work.crew.local_arms()
        if work.crew.relations[arm.pitcher_id] & {Relation.STAFF, Relation.SCOREKEEPER}
    ]
    absent: set[int] = set()
    for name in left_out:
        found = _named(work, name, staffed)
        if found is None:
            return []  # an exception that is open: nobody is logged until it is answered
        absent |= {arm.pitcher_id for arm in found}
    if not staffed:
        work.ask(Question(QuestionCode.NOT_ALLOWED, about=EVERYONE))
    return [arm for arm in staffed if arm.pitcher_id not in absent]


def _named(work: _Work, typed: str, preferred: Sequence[Arm]) -> list[Arm] | None:
    found = find(typed, preferred) or find(typed, work.crew.arms)
    if len(found) == 1:
        return found
    if found:
        names = tuple(arm.name for arm in found)
        work.ask(Question(QuestionCode.TWO_PEOPLE, about=typed, choices=names))
    else:
        close = tuple(arm.name for arm in near(typed, work.crew.arms))
        work.ask(Question(QuestionCode.UNKNOWN_NAME, about=typed, choices=close))
    return None


def _keep(work: _Work, entry: Entry, arm: Arm) -> None:
    relations = work.crew.relations[arm.pitcher_id]
    kind = _kind(entry, relations)
    stated = _subjects(entry, kind)
    allowed = frozenset(subject for subject in stated if may_log(relations, subject))
    if stated - allowed:
        work.ask(Question(QuestionCode.NOT_ALLOWED, about=arm.name, pitcher_id=arm.pitcher_id))
        if entry.pain and Subject.ARM not in allowed:
            work.ask(PAIN_UNPLACED)
    if not allowed:
        return
    if not arm.consented:
        work.ask(Question(QuestionCode.NO_CONSENT, about=arm.name, pitcher_id=arm.pitcher_id))
        if entry.pain:
            work.ask(PAIN_UNPLACED)
        return
    waiting = _waiting(work, entry, kind, arm) if allowed & THROWING else ()
    number = sum(kept.arm.pitcher_id == arm.pitcher_id for kept in work.kept)
    work.kept.append(
        Kept(
            arm=arm,
            slot=f"{arm.pitcher_id}/{number}",
            on=outing_day(work.posted, entry.on),
            kind=kind,
            entry=entry,
            waiting=waiting,
            subjects=allowed,
        )
    )


THROWING = frozenset({Subject.GAME_COUNTS, Subject.PRACTICE})


def _kind(entry: Entry, relations: frozenset[Relation]) -> str | None:
    """The kind as typed; a scorekeeper's counts are a game's, for he logs nothing else."""
    only_scorekeeper = relations == frozenset({Relation.SCOREKEEPER})
    if entry.kind is None and only_scorekeeper and _throws(entry):
        return "game"
    return entry.kind


def _throws(entry: Entry) -> bool:
    counts = (
        entry.pitches,
        entry.breaking,
        entry.changeup,
        entry.fastball,
        entry.strikes,
        entry.breaking_strikes,
        entry.outs,
        entry.caught_outs,
        entry.effort,
    )
    return any(count is not None for count in counts)


def _subjects(entry: Entry, kind: str | None) -> frozenset[Subject]:
    subjects: set[Subject] = set()
    if kind in {"bullpen", "catch", "live", "off"}:
        subjects.add(Subject.PRACTICE)
    elif kind == "game" or _throws(entry):
        subjects.add(Subject.GAME_COUNTS)
    if entry.pain is not None or entry.tired is not None:
        subjects.add(Subject.ARM)
    return frozenset(subjects)


def _waiting(work: _Work, entry: Entry, kind: str | None, arm: Arm) -> tuple[str, ...]:
    waiting: list[str] = []
    if kind is None and entry.caught_outs is None:
        waiting.append("kind")
        work.ask(Question(QuestionCode.KIND, about=arm.name, pitcher_id=arm.pitcher_id))
    if day_is_unclear(work.posted, entry.on is not None, kind):
        waiting.append("on")
        work.ask(Question(QuestionCode.DAY, about=arm.name, pitcher_id=arm.pitcher_id))
    return tuple(waiting)


def _state(work: _Work) -> LineState:
    codes = {question.code for question in work.questions}
    if not codes:
        return LineState.READ if work.kept else LineState.TALK
    if codes <= REFUSALS and not work.kept:
        return LineState.NOT_ALLOWED
    return LineState.ASKED
