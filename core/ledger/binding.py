"""Which rule books bind a pitcher on a day: teams, seasons, events, his own, an outing's."""

from collections.abc import Callable
from datetime import date

from sqlmodel import Session, col, select

from core.ledger.people import teams_of
from core.model import CoachLimit, OutingBook, Pitcher, Season, SeasonKind, Team, TeamEvent, key
from core.rest.coach import coach_limits
from core.rulebooks import RuleBook, load_books

#: From ids of rule books to the books; raises `RuleBookError` for one that is unknown.
Books = Callable[[tuple[str, ...]], tuple[RuleBook, ...]]

#: Where a session carries the books that the program was started with.
BOOKS = "rule books"


def books_at_hand(session: Session) -> Books:
    """The books that this session's store was given; the built-in ones where it was given none.

    What is stored with a line may turn on a published number, and the ledger itself knows no
    folder of books.
    """
    books: Books = session.info.get(BOOKS, load_books)
    return books


def books_for(session: Session, pitcher: Pitcher, on: date, books: Books) -> tuple[RuleBook, ...]:
    """Every book that binds a pitcher on a day; all of them apply, the stricter answer wins."""
    found = books(_names(session, pitcher, on))
    limit = coach_limit(session, pitcher, on)
    return found if limit is None else (*found, coach_limits(pitches_per_day=limit.pitches))


def coach_limit(session: Session, pitcher: Pitcher, on: date) -> CoachLimit | None:
    """The coach's lowest own limit for a pitcher on a day."""
    return session.exec(
        select(CoachLimit)
        .where(
            CoachLimit.pitcher_id == key(pitcher),
            col(CoachLimit.withdrawn_at).is_(None),
            col(CoachLimit.starts_on) <= on,
            col(CoachLimit.ends_on).is_(None) | (col(CoachLimit.ends_on) >= on),
        )
        .order_by(col(CoachLimit.pitches), col(CoachLimit.id))
    ).first()


def _names(session: Session, pitcher: Pitcher, on: date) -> tuple[str, ...]:
    own = list(pitcher.rule_books)
    names = [
        name
        for team in teams_of(session, {key(pitcher)})
        for name in _of_team(session, team, on, has_own_books=bool(own))
    ]
    named = session.exec(
        select(OutingBook.rule_book).where(
            OutingBook.pitcher_id == key(pitcher),
            OutingBook.on == on,
            col(OutingBook.withdrawn_at).is_(None),
        )
    )
    return tuple(dict.fromkeys([*names, *own, *named]))


def _of_team(session: Session, team: Team, on: date, *, has_own_books: bool) -> list[str]:
    season = session.exec(
        select(Season).where(
            Season.team_id == key(team), col(Season.starts_on) <= on, col(Season.ends_on) >= on
        )
    ).first()
    events = session.exec(
        select(TeamEvent).where(
            TeamEvent.team_id == key(team),
            col(TeamEvent.starts_on) <= on,
            col(TeamEvent.ends_on) >= on,
        )
    )
    of_events = [name for event in events for name in event.rule_books]
    # While only the school plays, its books decide, for whoever has any: no books is no answer.
    if season is not None and season.kind == SeasonKind.SCHOOL_ONLY and has_own_books:
        return of_events
    if season is not None and season.rule_books is not None:
        return season.rule_books + of_events
    return team.rule_books + of_events
