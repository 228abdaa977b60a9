"""The row of a message: claimed by whoever holds the message first, in the database itself."""

from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

from sqlalchemy import BindParameter, ColumnElement, bindparam
from sqlmodel import Session, col, select

from core.ledger.messages import Said
from core.model import Line, LineState, Person, Team, Workspace, key
from core.store.once import insert_once
from core.store.together import Together


@dataclass(frozen=True, slots=True)
class Place:
    """Where a line stands and who wrote it."""

    team: Team | None
    person: Person | None


def _place(team: ColumnElement[bool]) -> Together:
    """The question of `find_place`; the workspace is asked for beside, as every line needs it."""
    here: BindParameter[Any] = bindparam("workspace")
    return Together(
        (Team, (col(Team.workspace_id) == here) & team),
        (
            Person,
            (col(Person.workspace_id) == here) & (col(Person.slack_id) == bindparam("author")),
        ),
        (Workspace, col(Workspace.id) == here),
    )


_IN_CHANNEL = _place(
    (col(Team.log_channel) == bindparam("channel"))
    | (col(Team.staff_channel) == bindparam("channel"))
)
_BY_ID = _place(col(Team.id) == bindparam("team"))


def find_place(session: Session, said: Said) -> Place | None:
    """The place of a message; none where no line is kept at all."""
    asked = _IN_CHANNEL if said.team_id is None else _BY_ID
    where = {"channel": said.channel} if said.team_id is None else {"team": said.team_id}
    teams, people, _ = asked.rows(session, workspace=said.workspace_id, author=said.author, **where)
    if not teams and not said.direct:
        return None
    return Place(min(teams, key=key, default=None), next(iter(people), None))


def claim(session: Session, said: Said, place: Place, now: datetime) -> Line | None:
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
        "posted_at": said.written_at or _moment(said.ts),
        "received_at": now,
        "state": LineState.TALK,
        "entries": [],
        "questions": [],
        "answers": [],
    }
    line: Line | None = insert_once(session, Line, values, returning=Line)
    # A session holds its rows weakly: whoever asks for the line later has it without a question.
    session.info["the line that came"] = line
    return line


def find_line(session: Session, said: Said) -> Line:
    """The row of a message that is known already, locked until the transaction ends."""
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
