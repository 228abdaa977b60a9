"""Record, correct and withdraw a typed line.

The message is the record: an edit corrects it, a deletion withdraws it. Slack redelivers,
duplicates and reorders, so each of the three does nothing when it comes a second time, an
edit that comes before its original stands, and a deletion is final.
"""

import logging
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from typing import Any, Literal
from zoneinfo import ZoneInfo

from sqlalchemy.dialects import postgresql, sqlite
from sqlmodel import Session, col, func, select

from core.audience import Relation
from core.ledger.apply import Change, apply_reading, withdraw_rows
from core.ledger.crew import Crew, find_person, load_crew
from core.ledger.days import before_the_day_turns
from core.ledger.decide import Decision, Question, QuestionCode, decide
from core.ledger.fields import snapshot
from core.ledger.hints import hints, stranger
from core.ledger.notices import Heard, Notice, owed
from core.model import Line, LineState, Person, Team, Workspace, key
from core.reading import Reading, read

log = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True)
class Said:
    """A message as Slack tells of it: `ts` is Slack's id of it, seconds with microseconds."""

    workspace_id: str
    channel: str
    ts: str
    author: str
    text: str
    direct: bool = False
    thread_ts: str | None = None


@dataclass(frozen=True, slots=True)
class Edited:
    """The newest text of a message; the newest `edited_ts` wins."""

    said: Said
    edited_ts: str


@dataclass(frozen=True, slots=True)
class Deleted:
    """A message that its author took back; final."""

    said: Said


def record(session: Session, said: Said, now: datetime) -> list[Notice]:
    """Store a typed line and what it says; a line that is known already changes nothing.

    `now` is UTC. Lines outside the channels of a team are not kept at all.
    """
    place = _place(session, said)
    if place is None:
        return []
    line = _claim(session, said, place, now)
    return [] if line is None else _hear(session, line, place, now)


def correct(session: Session, edited: Edited, now: datetime) -> list[Notice]:
    """Read a line again after an edit; an older edit, or one of a deleted line, is ignored."""
    place = _place(session, edited.said)
    if place is None:
        return []
    line = _claim(session, edited.said, place, now)
    if line is None:
        line = _find(session, edited.said)
        if line.deleted_at is not None or not _newer(edited.edited_ts, line.edited_ts):
            return []
        if line.text == edited.said.text:
            return []  # a link preview, not an edit
    line.text = edited.said.text
    line.edited_ts = edited.edited_ts
    return _hear(session, line, place, now)


def withdraw(session: Session, deleted: Deleted, now: datetime) -> list[Notice]:
    """Take a deleted line out of the record; the raw line and its rows are kept."""
    place = _place(session, deleted.said)
    if place is None:
        return []
    line = _claim(session, deleted.said, place, now) or _find(session, deleted.said)
    if line.deleted_at is not None:
        return []
    line.deleted_at = now
    session.add(line)
    withdraw_rows(Change(session, line, line.author_slack_id, now))
    session.flush()
    crew = load_crew(session, place.person, place.team) if place.person else None
    return owed(session, _heard(line, place, now, crew))


@dataclass(frozen=True, slots=True)
class _Place:
    """Where a line stands and who wrote it."""

    team: Team | None
    person: Person | None


def _place(session: Session, said: Said) -> _Place | None:
    team = session.exec(
        select(Team).where(
            Team.workspace_id == said.workspace_id,
            (col(Team.log_channel) == said.channel) | (col(Team.staff_channel) == said.channel),
        )
    ).first()
    if team is None and not said.direct:
        return None
    return _Place(team, find_person(session, said.workspace_id, said.author))


def _claim(session: Session, said: Said, place: _Place, now: datetime) -> Line | None:
    """The line as a new row; none when a row with its key is there already.

    The database decides: of two processes that hold the same message, one inserts.
    """
    values: dict[str, Any] = {
        "workspace_id": said.workspace_id,
        "channel": said.channel,
        "ts": said.ts,
        "thread_ts": said.thread_ts,
        "direct": said.direct,
        "author_slack_id": said.author,
        "author_id": key(place.person) if place.person else None,
        "team_id": key(place.team) if place.team else None,
        "text": said.text,
        "posted_at": _moment(said.ts),
        "received_at": now,
        "state": LineState.TALK,
        "entries": [],
        "questions": [],
    }
    if place.team is None:
        session.execute(_insert(session, Workspace, {"id": said.workspace_id, **_NO_NAMES}))
    line_id = session.scalar(_insert(session, Line, values).returning(col(Line.id)))
    return None if line_id is None else session.get_one(Line, line_id)


_NO_NAMES = {"name": "", "bot_user_id": ""}


def _insert(
    session: Session, table: type[Line] | type[Workspace], values: dict[str, Any]
) -> postgresql.Insert | sqlite.Insert:
    """An insert that does nothing where a row with the same key is there already."""
    if session.get_bind().dialect.name == "postgresql":
        return postgresql.insert(table).values(values).on_conflict_do_nothing()
    return sqlite.insert(table).values(values).on_conflict_do_nothing()


def _find(session: Session, said: Said) -> Line:
    return session.exec(
        select(Line)
        .where(
            Line.workspace_id == said.workspace_id,
            Line.channel == said.channel,
            Line.ts == said.ts,
        )
        .with_for_update()
    ).one()


def _moment(ts: str) -> datetime:
    return datetime.fromtimestamp(int(ts.partition(".")[0]), UTC)


def _newer(ts: str, known: str | None) -> bool:
    # Slack's stamps are text for keys; as pairs of whole numbers they compare exactly.
    return known is None or _parts(ts) > _parts(known)


def _parts(ts: str) -> tuple[int, int]:
    seconds, _, fraction = ts.partition(".")
    return int(seconds), int(fraction.ljust(6, "0") or 0)


def _hear(session: Session, line: Line, place: _Place, now: datetime) -> list[Notice]:
    """Read a line, bring the record to what it says and work out who must hear of it."""
    session.add(line)
    if place.person is None:
        line.state = LineState.STRANGER
        reading = _try_to_read(line, None, line.posted_at.replace(tzinfo=None))
        is_log = reading is not None and bool(reading.entries or reading.unread)
        return stranger(line, now, is_log)
    crew = load_crew(session, place.person, place.team)
    posted = line.posted_at.astimezone(ZoneInfo(_zone(crew))).replace(tzinfo=None)
    reading = _try_to_read(line, crew, posted)
    decision = decide(reading, crew, posted) if reading is not None else _NOT_READ
    first = not _has_been_read_before(session, line)
    before, line.entries = line.entries, [snapshot(kept) for kept in decision.kept]
    line.questions = [question.as_json() for question in decision.questions]
    line.state = decision.state
    apply_reading(Change(session, line, line.author_slack_id, now), before, line.entries, crew)
    session.flush()
    heard = replace(
        _heard(line, place, now, crew),
        in_words=_in_words(decision, posted, first),
        by_scorekeeper=_by_scorekeeper(decision, crew),
    )
    return [*owed(session, heard), *hints(line, now)]


_NOT_READ = Decision(LineState.NOT_READ, questions=(Question(QuestionCode.NOT_READ),))


def _try_to_read(line: Line, crew: Crew | None, posted: datetime) -> Reading | None:
    """The reading of a line; none when the reader fails on it, for the line must be kept."""
    arms = crew.arms if crew is not None else ()
    roster = [name for arm in arms for name in (arm.name, *arm.also_called)]
    try:
        return read(line.text, posted, _voice(crew), roster=roster)
    except Exception:
        log.exception("line %s could not be read; it is kept as typed", line.id)
        return None


def _voice(crew: Crew | None) -> Literal["pitcher", "coach", "guardian"]:
    if crew is None or (crew.related(Relation.SELF) and not crew.is_staff):
        return "pitcher"
    return "guardian" if crew.related(Relation.GUARDIAN) and not crew.is_staff else "coach"


def _zone(crew: Crew) -> str:
    if crew.here is not None:
        return crew.here.time_zone
    return crew.teams[0].time_zone if crew.teams else "UTC"


def _heard(line: Line, place: _Place, now: datetime, crew: Crew | None) -> Heard:
    return Heard(
        line=line,
        now=now,
        in_words=False,
        by_scorekeeper=False,
        teams=(place.team,) if place.team else crew.teams if crew else (),
    )


def _in_words(decision: Decision, posted: datetime, first: bool) -> bool:
    """Whether the answer needs words: a game, a question, the arm, a moved day, the first time."""
    if decision.questions:
        return True
    kept = decision.kept
    return bool(kept) and (
        first
        or any(one.kind == "game" or one.entry.pain or one.entry.tired for one in kept)
        or (before_the_day_turns(posted) and any(one.entry.on is None for one in kept))
    )


def _by_scorekeeper(decision: Decision, crew: Crew) -> bool:
    only = frozenset({Relation.SCOREKEEPER})
    return any(crew.relations[kept.arm.pitcher_id] == only for kept in decision.kept)


def _has_been_read_before(session: Session, line: Line) -> bool:
    earlier = select(func.count()).where(
        Line.author_id == line.author_id,
        col(Line.state).in_([LineState.READ, LineState.ASKED]),
        Line.id != line.id,
    )
    return bool(session.exec(earlier).one())
