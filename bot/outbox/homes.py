"""Brings the Home tabs up to date on which a change shows, for whoever has opened one."""

from collections.abc import Iterable
from datetime import datetime, timedelta
from typing import Any

from sqlalchemy import BindParameter, Update, bindparam, case, update
from sqlmodel import Session, col, select, union

from core.ledger import Notice, NoticeKind
from core.model import (
    STAFF_ROLES,
    Clearance,
    CoachLimit,
    GuardianLink,
    HomeTab,
    Line,
    LineState,
    Membership,
    MessageState,
    Outing,
    PainReport,
    Person,
    Pitcher,
    PitcherTeam,
    Stored,
    Team,
    key,
)

#: Several changes within this time are one new Home tab.
TOGETHER = timedelta(seconds=2)
#: A Home tab that nobody opened for so long is not brought to the new day.
LATELY = timedelta(days=30)
#: A line in one of these states, never edited, has changed nothing that a Home tab shows.
_IDLE = frozenset({LineState.TALK, LineState.QUESTION, LineState.STRANGER})
_ABOUT: tuple[type[Outing | PainReport | CoachLimit | Clearance], ...] = (
    Outing, PainReport, CoachLimit, Clearance,
)  # fmt: skip


def refresh_homes(
    session: Session, workspace_id: str, notices: Iterable[Notice], now: datetime
) -> None:
    """Owe the Home tabs of the staff, and of the families of the pitchers of these lines, anew.

    `notices` are those of one change at `now` (UTC). One statement: Home tabs that nobody has
    opened have no row.
    """
    ids = {one.line_id for one in notices if one.line_id is not None}
    lines = [line for one in ids if (line := session.get(Line, one)) is not None]
    if lines and all(_is_idle(line) for line in lines):
        return
    ids_of_lines = [key(one) for one in lines]
    session.execute(_OF_LINES, {"here": workspace_id, "lines": ids_of_lines, "at": now + TOGETHER})


def refresh_homes_of_day(session: Session, team: Team, now: datetime) -> None:
    """Owe the Home tabs of a team anew at `now` (UTC): the day is another one.

    One statement: those of the staff, the pitchers and the guardians who opened them lately.
    """
    arms = select(PitcherTeam.pitcher_id).where(PitcherTeam.team_id == key(team))
    staff = select(Membership.person_id).where(
        Membership.team_id == key(team), col(Membership.role).in_(STAFF_ROLES)
    )
    lately = (
        select(slot_of(col(Person.slack_id)))
        .join(
            HomeTab,
            (col(HomeTab.slack_id) == col(Person.slack_id))
            & (col(HomeTab.workspace_id) == col(Person.workspace_id)),
        )
        .where(
            Person.workspace_id == team.workspace_id,
            col(HomeTab.opened_at) >= now - LATELY,
            col(Person.id).in_(_people(staff, arms)),
        )
    )
    _owe_anew(session, team.workspace_id, lately, now)


def refresh_home(session: Session, workspace_id: str, slack_id: str, now: datetime) -> None:
    """Owe one account's Home tab anew at `now` (UTC), where it was opened."""
    _owe_anew(session, workspace_id, [slot_of(slack_id)], now)


def _owe_anew(session: Session, workspace_id: str, slots: Any, not_before: datetime) -> None:
    session.execute(_anew(slots), {"here": workspace_id, "at": not_before})


def _is_idle(line: Line) -> bool:
    return line.state in _IDLE and line.edited_ts is None and line.deleted_at is None


def slot_of(slack_id: Any) -> Any:
    """The slot of somebody's Home tab in the outbox; of a column, the slots of its accounts."""
    return f"{NoticeKind.HOME}/" + slack_id


_HERE: BindParameter[Any] = bindparam("here")


def _anew(slots: Any) -> Update:
    """The statement that owes the Home tabs of these slots anew at a moment."""
    # Of the table: whoever holds such a row as an object is no part of this.
    row = Stored.metadata.tables["outboxmessage"]
    return (
        update(row)
        .where(
            row.c.workspace_id == _HERE,
            row.c.slot.in_(slots),
            # One that Slack refused for good waits until it is opened again.
            row.c.state != MessageState.FAILED,
        )
        .values(
            wanted=row.c.wanted + 1,
            state=case(
                (row.c.state == MessageState.SENDING, MessageState.SENDING),
                else_=MessageState.QUEUED,
            ),
            not_before=bindparam("at"),
        )
    )


def _slots() -> Any:
    """The Home tabs of the staff and of the families of the lines' pitchers."""
    lines: BindParameter[Any] = bindparam("lines", expanding=True)
    pitchers: Any = union(
        *(select(table.pitcher_id).where(col(table.line_id).in_(lines)) for table in _ABOUT)
    )
    staff = select(Membership.person_id).where(
        Membership.workspace_id == _HERE, col(Membership.role).in_(STAFF_ROLES)
    )
    return select(slot_of(col(Person.slack_id))).where(
        Person.workspace_id == _HERE, col(Person.id).in_(_people(staff, pitchers))
    )


def _people(staff: Any, pitchers: Any) -> Any:
    """The staff, the guardians of some pitchers, and the pitchers themselves."""
    people: Any = union(
        staff,
        select(GuardianLink.person_id).where(col(GuardianLink.pitcher_id).in_(pitchers)),
        select(Pitcher.person_id).where(
            col(Pitcher.id).in_(pitchers), col(Pitcher.person_id).is_not(None)
        ),
    )
    return people


#: Put together once: every line asks it.
_OF_LINES = _anew(_slots())
