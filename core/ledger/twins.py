"""Whether a new outing belongs to one that is on record: a part of it, or the same again."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta

from sqlalchemy import bindparam
from sqlmodel import Session, col, select

from core.ledger.answers import Answers, NewCount
from core.ledger.decide import Decision, Kept
from core.ledger.fields import throws
from core.ledger.history import only_caught
from core.ledger.question import Question, QuestionCode
from core.model import JoinedAs, Line, LineState, Outing, Person, key
from core.reading import Detail
from core.reading.stage import Stage, another_opponent, game_of_day, puts_right, stage_of

#: Two counts this close (pitches, or a tenth of the larger) can be one outing counted twice.
CLOSE = 5
#: A line that carries an outing on comes within this time of the one before.
SAME_EVENING = timedelta(hours=8)
SAME, SECOND = "same", "second"


def with_joins(session: Session, line: Line, decision: Decision, answers: Answers) -> Decision:
    """The decision with what belongs to outings on record; asks where it may be the same again."""
    questions = list(decision.questions)
    kept: list[Kept] = []
    for one in decision.kept:
        if throws(one):
            one = replace(one, game=_game(line, decision, one))
            one = _join(session, line, one, answers, questions)
        kept.append(one)
    state = decision.state
    if state in {LineState.READ, LineState.ASKED}:
        state = LineState.ASKED if questions else LineState.READ
    return replace(decision, kept=tuple(kept), questions=tuple(questions), state=state)


def _game(line: Line, decision: Decision, one: Kept) -> int | None:
    """Which game of the day: by its place among the pitcher's games of the line, or as named."""
    if one.kind != "game":
        return None
    same_day = [
        other.slot
        for other in decision.kept
        if (other.arm, other.on, other.kind) == (one.arm, one.on, "game")
    ]
    return same_day.index(one.slot) + 1 if len(same_day) > 1 else game_of_day(line.text)


def _join(
    session: Session, line: Line, one: Kept, answers: Answers, questions: list[Question]
) -> Kept:
    earlier = _earlier(session, line, one)
    part = _continued(line, one, earlier)
    if part is not None:
        return _settled(replace(one, joins=key(part), joined_as=JoinedAs.PART), part, questions)
    said = answers.new_count()
    told = _said_before(said[1], earlier) if said is not None else None
    twin = told or _twin(line, one, earlier)
    if twin is None:
        return one
    outing, before = twin
    question = Question(
        QuestionCode.SAME,
        about=one.arm.name,
        reason="" if before.author_id == line.author_id else _name(session, before),
        values=(SAME, SECOND),
        pitcher_id=one.arm.pitcher_id,
        detail=Detail("pitches", one.entry.pitches, "pitches", outing.pitches),
    )
    answer = SAME if told is not None else answers.value(question)
    if answer is None:
        # What it was is asked only if it turns out to be another outing.
        _without(questions, QuestionCode.KIND, one)
        questions.append(question)
        waiting = (*one.waiting, "same")
        return replace(one, waiting=waiting, joins=key(outing), joined_as=JoinedAs.OPEN)
    if answer != SAME:
        return one
    own = before.author_slack_id == line.author_slack_id
    as_what = JoinedAs.PART if own or told is not None else JoinedAs.SAME
    _without(questions, QuestionCode.KIND, one)
    waiting = tuple(name for name in one.waiting if name != "kind")
    kind = one.kind or outing.kind
    return replace(one, kind=kind, waiting=waiting, joins=key(outing), joined_as=as_what)


def _without(questions: list[Question], code: QuestionCode, one: Kept) -> None:
    """Leave out what need not be asked of that pitcher."""
    questions[:] = [
        asked
        for asked in questions
        if not (asked.code is code and asked.pitcher_id == one.arm.pitcher_id)
    ]


def _name(session: Session, line: Line) -> str:
    author = session.get(Person, line.author_id) if line.author_id is not None else None
    return author.name if author is not None else ""


_EARLIER = (
    select(Outing, Line)
    .join(Line, col(Outing.line_id) == col(Line.id))
    .where(
        col(Outing.pitcher_id) == bindparam("pitcher"),
        col(Outing.on) == bindparam("day"),
        col(Outing.withdrawn_at).is_(None),
        col(Outing.line_id) != bindparam("line"),
        # Two of one instant: one of them is the earlier, or each would wait for the other.
        (col(Line.posted_at) < bindparam("at"))
        | ((col(Line.posted_at) == bindparam("at")) & (col(Line.id) < bindparam("line"))),
    )
    .order_by(col(Line.posted_at).desc(), col(Outing.id).desc())
)


def _earlier(session: Session, line: Line, one: Kept) -> list[tuple[Outing, Line]]:
    """The standing outings of that pitcher and day from lines that came before this one."""
    found = session.exec(
        _EARLIER,
        params={
            "pitcher": one.arm.pitcher_id, "day": one.on, "line": key(line), "at": line.posted_at
        },
    )  # fmt: skip
    return [(outing, before) for outing, before in found.all()]


def _continued(line: Line, one: Kept, earlier: Sequence[tuple[Outing, Line]]) -> Outing | None:
    """The outing whose count this entry carries on or completes."""
    for outing, before in earlier:
        apart = outing.joined_as in {JoinedAs.SAME, JoinedAs.OPEN}
        if apart or line.posted_at - before.posted_at > SAME_EVENING:
            continue
        if _another_opponent(line, before):
            continue
        if _adds_to(one, outing) and before.author_slack_id == line.author_slack_id:
            return outing
        in_its_thread = line.thread_ts is not None and line.thread_ts in (
            before.ts,
            before.thread_ts,
        )
        on_the_way = stage_of(before.text) is Stage.SO_FAR
        if (in_its_thread or on_the_way) and _carries_on(one, outing):
            return outing
    return None


def _adds_to(one: Kept, outing: Outing) -> bool:
    """Strikes or pitch types alone, for an outing that has its count but not these."""
    entry = one.entry
    alone = one.kind is None and entry.pitches is None and entry.outs is None
    said = [
        name for name in ("breaking", "changeup", "strikes") if getattr(entry, name) is not None
    ]
    return (
        alone
        and bool(said)
        and outing.pitches is not None
        and all(getattr(outing, name) is None for name in said)
        and all(getattr(entry, name) <= outing.pitches for name in said)
    )


def _carries_on(one: Kept, outing: Outing) -> bool:
    """The same outing with a count that is no smaller, and of no other game of the day."""
    pitches = one.entry.pitches
    return (
        one.kind in {None, outing.kind}
        and not _another_game(one, outing)
        and pitches is not None
        and (outing.pitches is None or pitches >= outing.pitches)
    )


def _another_game(one: Kept, outing: Outing) -> bool:
    return one.game is not None and one.game != (outing.game or 1)


def _said_before(
    count: NewCount, earlier: Sequence[tuple[Outing, Line]]
) -> tuple[Outing, Line] | None:
    """The outing whose count before was said to be put right by this one."""
    found = (
        (outing, before)
        for outing, before in earlier
        if outing.pitcher_id == count.pitcher_id and outing.pitches == count.before
    )
    return next(((o, before) for o, before in found if o.joins is None), None)


def _twin(
    line: Line, one: Kept, earlier: Sequence[tuple[Outing, Line]]
) -> tuple[Outing, Line] | None:
    """An outing on record that this entry may tell of again.

    Two lines about a game of one pitcher and day usually mean the same one, whatever their
    counts: two people kept count, or one person's count went on or was put right. A second
    game is one where it is said: "game 2", or the author names another opponent. In practice
    the counts must be close, or the line say that it puts the last one right.
    """
    right = puts_right(line.text)
    for outing, before in earlier:
        if outing.joins is not None or _another_game(one, outing) or not _alike(one, outing):
            continue
        if _another_opponent(line, before):
            continue
        corrects = right and before.author_slack_id == line.author_slack_id
        if corrects or _may_be_a_game(one, outing) or _close(one, outing):
            return outing, before
    return None


def _another_opponent(line: Line, before: Line) -> bool:
    """Whether one author names two opponents; two people may know a team by two names."""
    own = before.author_slack_id == line.author_slack_id
    return own and another_opponent(line.text, before.text)


def _alike(one: Kept, outing: Outing) -> bool:
    """Whether the kinds can be the same; one that is not known yet can be any but a day off."""
    if "off" in (one.kind, outing.kind) or _only_caught(one) != only_caught(outing):
        return False
    return one.kind == outing.kind or None in (one.kind, outing.kind)


def _only_caught(one: Kept) -> bool:
    """Whether the entry only says how long he caught, which is no outing on the mound."""
    entry = one.entry
    counts = (entry.pitches, entry.outs, entry.breaking, entry.strikes)
    return entry.caught_outs is not None and all(count is None for count in counts)


def _may_be_a_game(one: Kept, outing: Outing) -> bool:
    return {one.kind, outing.kind} <= {"game", None}


def _close(one: Kept, outing: Outing) -> bool:
    mine, other = one.entry.pitches, outing.pitches
    if mine is None or other is None:
        return one.kind == outing.kind == "game"
    return abs(mine - other) <= max(CLOSE, max(mine, other) // 10)


def _settled(one: Kept, part: Outing, questions: list[Question]) -> Kept:
    """A part has the kind and the day of what it joins: nothing is asked about them."""
    for code in (QuestionCode.KIND, QuestionCode.DAY):
        _without(questions, code, one)
    return replace(one, kind=part.kind, on=part.on, waiting=())


def lines_that_depend_on(session: Session, line: Line) -> list[Line]:
    """Later lines with an outing that waits to be told from one of this line, or joins it."""
    own = session.exec(select(Outing).where(Outing.line_id == key(line))).all()
    ids = {key(outing) for outing in own}
    others = session.exec(
        select(Outing, Line)
        .join(Line, col(Outing.line_id) == col(Line.id))
        .where(
            col(Outing.pitcher_id).in_({outing.pitcher_id for outing in own}),
            col(Outing.withdrawn_at).is_(None),
            col(Outing.line_id) != key(line),
            col(Line.posted_at) >= line.posted_at,
            col(Line.deleted_at).is_(None),
        )
    ).all()
    found = {
        key(other): other
        for outing, other in others
        if "same" in outing.waiting or outing.joins in ids
    }
    return [found[line_id] for line_id in sorted(found)]
