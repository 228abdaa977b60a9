"""The morning after a game: whose line is missing, and whom the one quiet question goes to."""

from collections import defaultdict
from dataclasses import dataclass
from datetime import date, timedelta

from sqlmodel import Session, col, select

from core.audience import Occasion, Told, who_is_told
from core.calendar.days import entries, is_game_day
from core.due.due import Due
from core.ledger.asked.arms import Gathered, staff_of
from core.ledger.binding import Books
from core.ledger.notices import Notice, NoticeKind
from core.model import (
    CalendarEntry,
    EntryKind,
    Line,
    Membership,
    Outing,
    Person,
    Pitcher,
    PitcherTeam,
    Role,
    Team,
    key,
)
from core.rest import RestError, answer
from core.rulebooks import RuleBookError

#: A pitcher usually throws who pitched in at least this share of the team's last games, so many
#: of them, no farther back than this (common practice, no source).
SHARE, LAST_GAMES, FEWEST_GAMES = 1 / 3, 6, 2
LOOK_BACK = timedelta(days=60)
DAY = timedelta(days=1)


@dataclass(frozen=True, slots=True)
class GameAsked:
    """What is asked of a game day: who is missing, and whether anybody's count is in."""

    team: Team
    on: date
    missing: tuple[Pitcher, ...]
    has_counts: bool
    games: tuple[CalendarEntry, ...]


def post_game_wanted(session: Session, due: Due) -> bool:
    """Whether the calendar knows a game of the day before."""
    return is_game_day(session, [key(due.team)], due.on - DAY)


def post_game_notice(session: Session, due: Due) -> Notice:
    """One question a game day; whether anybody is missing is seen when it leaves."""
    person = _scorekeeper(session, due.team, due.on - DAY)
    return Notice(
        slot=due.slot,
        kind=NoticeKind.POST_GAME,
        destination=(person.slack_id if person is not None else None) or due.team.staff_channel,
        not_before=due.at,
        team_id=key(due.team),
        person_id=key(person) if person is not None else None,
    )


def game_asked(session: Session, team: Team, on: date, books: Books) -> GameAsked:
    """Whose line of a game day is missing, as the record stands.

    Those who usually throw and have no outing of that day. Whoever was not cleared, or had
    his rest not done that day, is not waited for.
    """
    arms = _arms(session, team)
    pitched = _game_days(session, arms, team, on)
    there = _threw_on(session, arms, on)
    usual = [one for one in arms if key(one) not in there and _usually_throws(pitched, key(one))]
    staff = staff_of(session, usual, on, on)
    missing = tuple(one for one in usual if _could_pitch(staff.on(one, on, books), on))
    games = entries(session, [key(team)], on, on, EntryKind.GAME)
    return GameAsked(team, on, missing, bool(there), tuple(games))


def _arms(session: Session, team: Team) -> list[Pitcher]:
    links = select(PitcherTeam.pitcher_id).where(PitcherTeam.team_id == key(team))
    rows = select(Pitcher).where(col(Pitcher.id).in_(links), col(Pitcher.consent_on).is_not(None))
    return list(session.exec(rows.order_by(Pitcher.name, col(Pitcher.id))))


def _game_days(
    session: Session, arms: list[Pitcher], team: Team, before: date
) -> dict[date, set[int]]:
    """Who pitched on each of the team's last game days before a day."""
    rows = session.exec(
        select(col(Outing.on), col(Outing.pitcher_id)).where(
            col(Outing.pitcher_id).in_([key(one) for one in arms]),
            col(Outing.team_id).is_(None) | (Outing.team_id == key(team)),
            Outing.kind == "game",
            col(Outing.withdrawn_at).is_(None),
            col(Outing.on) < before,
            col(Outing.on) >= before - LOOK_BACK,
        )
    )
    days: dict[date, set[int]] = defaultdict(set)
    for on, pitcher_id in rows:
        days[on].add(pitcher_id)
    return {on: days[on] for on in sorted(days)[-LAST_GAMES:]}


def _usually_throws(days: dict[date, set[int]], pitcher_id: int) -> bool:
    games = sum(pitcher_id in who for who in days.values())
    return len(days) >= FEWEST_GAMES and games >= SHARE * len(days)


def _threw_on(session: Session, arms: list[Pitcher], on: date) -> set[int]:
    """Of whom anything is logged on a day, a day off too."""
    rows = select(Outing.pitcher_id).where(
        col(Outing.pitcher_id).in_([key(one) for one in arms]),
        Outing.on == on,
        col(Outing.withdrawn_at).is_(None),
    )
    return set(session.exec(rows))


def _could_pitch(one: Gathered, on: date) -> bool:
    if one.arm is None or one.status.bars_pitching:
        return False
    try:
        return answer(one.arm.books, one.arm.thrower, one.arm.outings, on).eligible
    except (RestError, RuleBookError):
        return True  # nobody knows that he rested


def _scorekeeper(session: Session, team: Team, on: date) -> Person | None:
    """Who kept score that day, as far as the lines tell, else the first one with an account."""
    if Told.SCOREKEEPER_OR_STAFF not in who_is_told(Occasion.POST_GAME).told:
        return None
    people = list(
        session.exec(
            select(Person)
            .join(Membership, col(Membership.person_id) == col(Person.id))
            .where(
                Membership.team_id == key(team),
                Membership.role == Role.SCOREKEEPER,
                col(Person.slack_id).is_not(None),
            )
            .order_by(col(Person.id))
        )
    )
    wrote = set(
        session.exec(
            select(Line.author_id)
            .join(Outing, col(Outing.line_id) == col(Line.id))
            .where(Outing.on == on, col(Line.author_id).in_([key(one) for one in people]))
        )
    )
    kept = [one for one in people if key(one) in wrote]
    return next(iter([*kept, *people]), None)
