"""From what a line says to what is stored and what is asked: decided here, applied elsewhere."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime, timedelta

from core.audience import Relation, Subject, may_log
from core.ledger.answer_words import kind_of
from core.ledger.answers import FIELDS, Answers, complete
from core.ledger.crew import Crew
from core.ledger.days import day_is_unclear, outing_day
from core.ledger.question import PAIN_UNPLACED, REFUSALS, Question, QuestionCode
from core.ledger.who import Arm
from core.ledger.whom import Finder
from core.model import LineState
from core.reading import Entry, Reading, Unread, UnreadReason

#: The refusal is of what was said of the arm; the counts were taken.
ARM_ONLY = "arm only"
#: The kinds that are offered where a line leaves its kind open.
KINDS = ("game", "bullpen", "live", "catch")
THROWING = frozenset({Subject.GAME_COUNTS, Subject.PRACTICE})
PRACTICE_KINDS = frozenset({"bullpen", "catch", "live", "off"})


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
    #: Which game of the day, where the line says so.
    game: int | None = None
    #: The outing on record that this one joins, and as what.
    joins: int | None = None
    joined_as: str | None = None


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
    answers: Answers
    kept: list[Kept] = field(default_factory=list)
    questions: list[Question] = field(default_factory=list)

    def ask(self, question: Question) -> None:
        if question not in self.questions:
            self.questions.append(question)


def decide(
    reading: Reading, crew: Crew, posted: datetime, answers: Answers | None = None
) -> Decision:
    """What is stored for whom and what is asked; `posted` is local wall-clock time.

    What is certain is kept, what is unclear becomes a question, and what the author may
    not log for that pitcher becomes a refusal. What was answered before completes the reading.
    """
    work = _Work(crew, posted, answers or Answers())
    finder = Finder(crew, work.answers, work.ask)
    for entry in _completed(work, reading):
        arms = finder.find(entry)
        if not arms and entry.pain:
            work.ask(replace(PAIN_UNPLACED, about=entry.who or ""))
        for arm in arms:
            _keep(work, entry, arm)
    for unread in reading.unread:
        _ask_of(work, unread)
    return Decision(_state(work), tuple(work.kept), tuple(work.questions))


def _completed(work: _Work, reading: Reading) -> Sequence[Entry]:
    """The entries, with the numbers whose meaning was answered; only where there is one entry."""
    said = work.answers.new_count()
    if said is not None and not reading.entries:
        number, count = said
        named = [arm.name for arm in work.crew.arms if arm.pitcher_id == count.pitcher_id]
        return [Entry(who=name, pitches=number, on=count.on) for name in named]
    if len(reading.entries) > 1:
        return reading.entries
    entry = reading.entries[0] if reading.entries else Entry()
    for unread in reading.unread:
        chosen = work.answers.value(_unread_question(unread))
        if chosen is not None and chosen in FIELDS:
            entry = complete(entry, unread.text, chosen)
        elif chosen is not None and chosen.isdecimal():
            kind = entry.kind or kind_of(unread.text)
            entry = replace(entry, kind=kind, pitches=int(chosen))
    return [entry] if reading.entries or entry != Entry() else []


def _ask_of(work: _Work, unread: Unread) -> None:
    question = _unread_question(unread)
    by_hand = work.kept and all(work.answers.put_right(kept.arm.pitcher_id) for kept in work.kept)
    if work.answers.value(question) is None and not by_hand:
        work.ask(question)


def _unread_question(unread: Unread) -> Question:
    whole = re.fullmatch(r"\D*\d{1,3}\D*", unread.text) and "%" not in unread.text
    stray = unread.reason == UnreadReason.UNKNOWN_NUMBER and whole
    return Question(
        QuestionCode.UNREAD,
        about=unread.text,
        reason=str(unread.reason),
        values=tuple(FIELDS) if stray else (),
        detail=unread.detail,
    )


def _keep(work: _Work, entry: Entry, arm: Arm) -> None:
    relations = work.crew.relations[arm.pitcher_id]
    kind = _kind(work, entry, arm, relations)
    stated = _subjects(entry, kind)
    allowed = frozenset(subject for subject in stated if may_log(relations, subject))
    if entry.pain and arm.consented and Relation.SCOREKEEPER in relations:
        allowed |= {Subject.ARM}  # pain is taken from whoever keeps the score: health comes first
    if stated - allowed and (entry.pain or stated - allowed != {Subject.ARM}):
        reason = ARM_ONLY if allowed else ""
        refused = Question(QuestionCode.NOT_ALLOWED, about=arm.name, reason=reason)
        work.ask(replace(refused, pitcher_id=arm.pitcher_id))
        if entry.pain and Subject.ARM not in allowed:
            work.ask(replace(PAIN_UNPLACED, about=arm.name, pitcher_id=arm.pitcher_id))
    if not allowed:
        return
    if not arm.consented:
        work.ask(Question(QuestionCode.NO_CONSENT, about=arm.name, pitcher_id=arm.pitcher_id))
        if entry.pain:
            work.ask(replace(PAIN_UNPLACED, about=arm.name, pitcher_id=arm.pitcher_id))
        return
    named = entry.on or work.answers.day(arm.pitcher_id)
    waiting = _waiting(work, replace(entry, on=named), kind, arm) if allowed & THROWING else ()
    number = sum(kept.arm.pitcher_id == arm.pitcher_id for kept in work.kept)
    work.kept.append(
        Kept(
            arm=arm,
            slot=f"{arm.pitcher_id}/{number}",
            on=outing_day(work.posted, named),
            kind=kind,
            entry=entry,
            waiting=waiting,
            subjects=allowed,
        )
    )


def _kind(work: _Work, entry: Entry, arm: Arm, relations: frozenset[Relation]) -> str | None:
    """The kind as typed or answered; a scorekeeper's counts are a game's, his only ones."""
    if entry.kind is not None:
        return entry.kind
    if relations == frozenset({Relation.SCOREKEEPER}) and _throws(entry):
        return "game"
    chosen = work.answers.kind(arm.pitcher_id)
    return chosen if _throws(entry) else None


def _throws(entry: Entry) -> bool:
    counts = (
        entry.pitches, entry.breaking, entry.changeup, entry.fastball, entry.strikes,
        entry.breaking_strikes, entry.outs, entry.caught_outs, entry.effort,
    )  # fmt: skip
    return any(count is not None for count in counts)


def _subjects(entry: Entry, kind: str | None) -> frozenset[Subject]:
    subjects: set[Subject] = set()
    if kind in PRACTICE_KINDS:
        subjects.add(Subject.PRACTICE)
    elif kind == "game" or _throws(entry):
        subjects.add(Subject.GAME_COUNTS)
    if entry.pain is not None or entry.tired is not None:
        subjects.add(Subject.ARM)
    return frozenset(subjects)


def _waiting(work: _Work, entry: Entry, kind: str | None, arm: Arm) -> tuple[str, ...]:
    """The fields that wait for an answer; each is asked about."""
    if work.answers.put_right(arm.pitcher_id):
        return ()
    waiting: list[str] = []
    if kind is None and entry.caught_outs is None:
        waiting.append("kind")
        question = Question(QuestionCode.KIND, about=arm.name, values=KINDS)
        work.ask(replace(question, pitcher_id=arm.pitcher_id))
    if day_is_unclear(work.posted, entry.on is not None or entry.day_named, kind):
        waiting.append("on")
        today = work.posted.date()
        days = (today.isoformat(), (today - timedelta(days=1)).isoformat())
        question = Question(QuestionCode.DAY, about=arm.name, values=days)
        work.ask(replace(question, pitcher_id=arm.pitcher_id))
    return tuple(waiting)


def _state(work: _Work) -> LineState:
    codes = {question.code for question in work.questions}
    if not codes:
        return LineState.READ if work.kept else LineState.TALK
    if codes <= REFUSALS and not work.kept:
        return LineState.NOT_ALLOWED
    return LineState.ASKED
