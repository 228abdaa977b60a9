"""The weekly spin reminder: who is reminded, and for whom the coach is asked instead."""

from collections.abc import Iterator
from datetime import date

from sqlmodel import Session, col, func, select

from core.calendar.days import is_game_day
from core.contact.reach import pitcher_or_guardians
from core.due.due import Due
from core.due.summary import arms_of
from core.ledger.clearance import arm_status
from core.ledger.notices import Notice, NoticeKind
from core.model import (
    BreakingPitch,
    MessageState,
    OutboxMessage,
    Outing,
    Pitcher,
    Reminder,
    Season,
    SeasonKind,
    Team,
    key,
)
from core.store.once import insert_once

#: After so many reminders in a row without a rep the coach is asked instead.
PATIENCE = 4


def spin_wanted(session: Session, due: Due) -> bool:
    """Whether the team is reminded at all: never in the months off, never on a game day."""
    off = select(Season.id).where(
        Season.team_id == key(due.team),
        Season.kind == SeasonKind.OFF,
        col(Season.starts_on) <= due.on,
        col(Season.ends_on) >= due.on,
    )
    is_off = session.exec(off).first() is not None
    barred = is_off or is_game_day(session, [key(due.team)], due.on)
    return not barred and bool(spinners(session, due.team))


def spinners(session: Session, team: Team) -> list[Pitcher]:
    """The pitchers of a team with a breaking ball, those without consent left out."""
    return [
        one
        for one in arms_of(session, team)
        if one.consent_on is not None and one.breaking_pitch != BreakingPitch.NONE_YET
    ]


def spin_notices(session: Session, due: Due) -> list[Notice]:
    """One post for everybody, one private line a reader, or a question to the coach."""
    post = Notice(
        slot=due.slot,
        kind=NoticeKind.SPIN,
        destination=due.team.log_channel,
        not_before=due.at,
        team_id=key(due.team),
    )
    by_slot = {post.slot: post}
    for pitcher in spinners(session, due.team):
        if arm_status(session, pitcher, due.on).since is not None:
            continue
        last = last_spun(session, pitcher)
        silent = _unanswered(session, pitcher, last) >= PATIENCE
        told = _coach(due, pitcher, last) if silent else _family(session, due, pitcher)
        for notice in told:
            by_slot.setdefault(notice.slot, notice)
    return list(by_slot.values())


def last_spun(session: Session, pitcher: Pitcher) -> date | None:
    """The newest day with spin reps on record."""
    newest = select(func.max(col(Outing.on))).where(
        Outing.pitcher_id == key(pitcher),
        Outing.kind == "catch",
        col(Outing.breaking) > 0,
        col(Outing.withdrawn_at).is_(None),
    )
    found: date | None = session.exec(newest).one()
    return found


def _unanswered(session: Session, pitcher: Pitcher, last: date | None) -> int:
    """The weeks in which a reminder about him was sent since the one of his last reps."""
    weeks = (
        select(Reminder.period)
        .join(
            OutboxMessage,
            (col(OutboxMessage.slot) == col(Reminder.slot))
            & (col(OutboxMessage.workspace_id) == col(Reminder.workspace_id)),
        )
        .where(
            Reminder.kind == NoticeKind.SPIN_REPS,
            Reminder.pitcher_id == key(pitcher),
            OutboxMessage.state == MessageState.SENT,
            col(Reminder.period) > (last.isoformat() if last is not None else ""),
        )
        .distinct()
    )
    return len(session.exec(weeks).all())


def _family(session: Session, due: Due, pitcher: Pitcher) -> Iterator[Notice]:
    for person in pitcher_or_guardians(session, pitcher, due.team, due.on):
        slot = f"{NoticeKind.SPIN_REPS}/{key(person)}/{due.week}"
        values = {
            "workspace_id": due.team.workspace_id,
            "kind": NoticeKind.SPIN_REPS,
            "person_id": key(person),
            "pitcher_id": key(pitcher),
            "period": due.week.isoformat(),
            "slot": slot,
        }
        session.execute(insert_once(session, Reminder, values))
        yield Notice(
            slot=slot,
            kind=NoticeKind.SPIN_REPS,
            destination=person.slack_id or "",
            not_before=due.at,
            team_id=key(due.team),
            person_id=key(person),
        )


def _coach(due: Due, pitcher: Pitcher, last: date | None) -> Iterator[Notice]:
    """One question, until reps are logged again; its slot names the reps that were the last."""
    yield Notice(
        slot=f"{NoticeKind.SPIN_SILENT}/{key(due.team)}/{key(pitcher)}/{last or 'none yet'}",
        kind=NoticeKind.SPIN_SILENT,
        destination=due.team.staff_channel,
        not_before=due.at,
        team_id=key(due.team),
    )
