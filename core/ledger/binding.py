"""Which rule books bind a pitcher on a day: teams, seasons, events, his own, an outing's."""

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from sqlalchemy import BindParameter, ColumnElement, Date, bindparam
from sqlmodel import Session, col, select

from core.model import (
    CoachLimit,
    OutingBook,
    Pitcher,
    PitcherTeam,
    Season,
    SeasonKind,
    Team,
    TeamEvent,
    key,
)
from core.rest.coach import coach_limits
from core.rulebooks import RuleBook, load_books
from core.store.together import Together

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


@dataclass(frozen=True, slots=True)
class Bindings:
    """What binds some pitchers over some days, read at once: by pitcher, or by team."""

    teams: Mapping[int, Sequence[Team]]
    seasons: Mapping[int, Sequence[Season]]
    events: Mapping[int, Sequence[TeamEvent]]
    named: Mapping[int, Sequence[OutingBook]]
    limits: Mapping[int, Sequence[CoachLimit]]

    def books_for(self, pitcher: Pitcher, on: date, books: Books) -> tuple[RuleBook, ...]:
        """Every book that binds a pitcher on a day; all of them apply, the stricter answer wins.

        Raises as `books` does.
        """
        found = books(tuple(dict.fromkeys(self._names(pitcher, on))))
        limit = self.limit(pitcher, on)
        return found if limit is None else (*found, coach_limits(pitches_per_day=limit.pitches))

    def limit(self, pitcher: Pitcher, on: date) -> CoachLimit | None:
        """The coach's lowest own limit for a pitcher on a day."""
        return next((one for one in self.limits[key(pitcher)] if _runs(one, on)), None)

    def _names(self, pitcher: Pitcher, on: date) -> Iterator[str]:
        for team in self.teams[key(pitcher)]:
            yield from self._of_team(team, on, has_own_books=bool(pitcher.rule_books))
        yield from pitcher.rule_books
        yield from (one.rule_book for one in self.named[key(pitcher)] if one.on == on)

    def _of_team(self, team: Team, on: date, *, has_own_books: bool) -> list[str]:
        season = next((one for one in self.seasons[key(team)] if _runs(one, on)), None)
        events = [one for one in self.events[key(team)] if _runs(one, on)]
        of_events = [name for event in events for name in event.rule_books]
        # While only the school plays, its books decide, for whoever has any: no books is no answer.
        if season is not None and season.kind == SeasonKind.SCHOOL_ONLY and has_own_books:
            return of_events
        if season is not None and season.rule_books is not None:
            return season.rule_books + of_events
        return team.rule_books + of_events


def bindings(session: Session, pitchers: Iterable[Pitcher], first: date, last: date) -> Bindings:
    """What binds these pitchers on the days from `first` to `last`, both included."""
    ids = [key(one) for one in pitchers]
    found = _BINDING.rows(session, pitchers=ids, first=first, last=last)
    links, teams, seasons, events, named, limits = found
    by_id = {key(team): team for team in teams}
    teams_of: dict[int, list[Team]] = defaultdict(list)
    for link in sorted(links, key=lambda one: one.team_id):
        teams_of[link.pitcher_id].append(by_id[link.team_id])
    return Bindings(
        teams_of,
        _grouped("team_id", sorted(seasons, key=key)),
        _grouped("team_id", sorted(events, key=key)),
        _grouped("pitcher_id", sorted(named, key=key)),
        _grouped("pitcher_id", sorted(limits, key=lambda one: (one.pitches, key(one)))),
    )


def books_for(session: Session, pitcher: Pitcher, on: date, books: Books) -> tuple[RuleBook, ...]:
    """The books that bind one pitcher on one day, as `Bindings.books_for` gives them."""
    return bindings(session, [pitcher], on, on).books_for(pitcher, on, books)


def _runs(one: Season | TeamEvent | CoachLimit, on: date) -> bool:
    return one.starts_on <= on and (one.ends_on is None or one.ends_on >= on)


def _grouped(by: str, rows: Iterable[Any]) -> Mapping[int, list[Any]]:
    found: dict[int, list[Any]] = defaultdict(list)
    for row in rows:
        found[getattr(row, by)].append(row)
    return found


_PITCHERS: BindParameter[Any] = bindparam("pitchers", expanding=True)
_FIRST, _LAST = bindparam("first", type_=Date), bindparam("last", type_=Date)
_TEAMS = select(PitcherTeam.team_id).where(col(PitcherTeam.pitcher_id).in_(_PITCHERS))


def _of_days(table: type[Season] | type[TeamEvent]) -> ColumnElement[bool]:
    return (
        col(table.team_id).in_(_TEAMS)
        & (col(table.starts_on) <= _LAST)
        & (col(table.ends_on) >= _FIRST)
    )


def _named() -> ColumnElement[bool]:
    return (
        col(OutingBook.pitcher_id).in_(_PITCHERS)
        & (col(OutingBook.on) >= _FIRST)
        & (col(OutingBook.on) <= _LAST)
        & col(OutingBook.withdrawn_at).is_(None)
    )


def _limits() -> ColumnElement[bool]:
    return (
        col(CoachLimit.pitcher_id).in_(_PITCHERS)
        & col(CoachLimit.withdrawn_at).is_(None)
        & (col(CoachLimit.starts_on) <= _LAST)
        & (col(CoachLimit.ends_on).is_(None) | (col(CoachLimit.ends_on) >= _FIRST))
    )


_BINDING = Together(
    (PitcherTeam, col(PitcherTeam.pitcher_id).in_(_PITCHERS)),
    (Team, col(Team.id).in_(_TEAMS)),
    (Season, _of_days(Season)),
    (TeamEvent, _of_days(TeamEvent)),
    (OutingBook, _named()),
    (CoachLimit, _limits()),
)
