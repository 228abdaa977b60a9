"""The weekly spin reminder: who is reminded, and for whom the coach is asked instead."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from datetime import date

from sqlmodel import Session, col, func, select

from core.calendar.days import is_game_day
from core.contact.reach import pitcher_or_guardians
from core.due.due import Due
from core.due.summary import arms_of
from core.ledger.clearance import arm_records
from core.ledger.notices import Notice, NoticeKind
from core.ledger.reminders import is_first
from core.model import (
    BreakingPitch,
    MessageState,
    OutboxMessage,
    Outing,
    Person,
    Pitcher,
    Reminder,
    Season,
    SeasonKind,
    Team,
    key,
)

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
    for pitcher, last, silent in _about(session, due):
        told = _coach(due, pitcher, last) if silent else _family(session, due, pitcher)
        for notice in told:
            by_slot.setdefault(notice.slot, notice)
    return list(by_slot.values())


def spin_readers(session: Session, due: Due) -> list[Person]:
    """Who gets a private line about one pitcher, as things stand; each once."""
    found: dict[int, Person] = {}
    for pitcher, _last, silent in _about(session, due):
        if not silent:
            for one in pitcher_or_guardians(session, pitcher, due.team, due.on):
                found.setdefault(key(one), one)
    return list(found.values())


def _about(session: Session, due: Due) -> Iterator[tuple[Pitcher, date | None, bool]]:
    """Each pitcher whose arm is not stopped, his last reps, and whether the coach is asked."""
    pitchers = spinners(session, due.team)
    pain, spun = arm_records(session, pitchers), _last_spun(session, pitchers)
    reminded = _weeks_reminded(session, pitchers)
    for pitcher in pitchers:
        one, last = key(pitcher), spun.get(key(pitcher))
        if pain[one].since is not None:
            continue
        unanswered = [week for week in reminded[one] if last is None or week > last.isoformat()]
        yield pitcher, last, len(unanswered) >= PATIENCE


def last_spun(session: Session, pitcher: Pitcher) -> date | None:
    """The newest day with spin reps on record."""
    return _last_spun(session, [pitcher]).get(key(pitcher))


def _last_spun(session: Session, pitchers: Sequence[Pitcher]) -> dict[int, date]:
    newest = (
        select(Outing.pitcher_id, func.max(col(Outing.on)))
        .where(
            col(Outing.pitcher_id).in_([key(one) for one in pitchers]),
            Outing.kind == "catch",
            col(Outing.breaking) > 0,
            col(Outing.withdrawn_at).is_(None),
        )
        .group_by(col(Outing.pitcher_id))
    )
    return dict(session.exec(newest).all())


def _weeks_reminded(session: Session, pitchers: Sequence[Pitcher]) -> dict[int, set[str]]:
    """The weeks in which a reminder about each of them was sent."""
    weeks = (
        select(Reminder.pitcher_id, Reminder.period)
        .join(
            OutboxMessage,
            (col(OutboxMessage.slot) == col(Reminder.slot))
            & (col(OutboxMessage.workspace_id) == col(Reminder.workspace_id)),
        )
        .where(
            Reminder.kind == NoticeKind.SPIN_REPS,
            col(Reminder.pitcher_id).in_([key(one) for one in pitchers]),
            OutboxMessage.state == MessageState.SENT,
        )
    )
    found: dict[int, set[str]] = defaultdict(set)
    for pitcher_id, week in session.exec(weeks):
        found[pitcher_id].add(week)
    return found


def _family(session: Session, due: Due, pitcher: Pitcher) -> Iterator[Notice]:
    for person in pitcher_or_guardians(session, pitcher, due.team, due.on):
        slot = f"{NoticeKind.SPIN_REPS}/{key(person)}/{due.week}"
        is_first(
            session, NoticeKind.SPIN_REPS, person, key(pitcher),
            period=due.week.isoformat(), slot=slot,
        )  # fmt: skip
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
