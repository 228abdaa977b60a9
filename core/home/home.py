"""Everything on one person's Home tab: the own arm, the children, the teams."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime

from sqlalchemy import ColumnElement
from sqlmodel import Session, col, select

from core.audience import Relation
from core.home.board import Board, board, pages_of
from core.home.card import ArmCard, cards
from core.home.sent import sent_to
from core.ledger.binding import Books
from core.ledger.command_words import Word, words_for
from core.ledger.crew import Crew, load_crew
from core.ledger.who import Arm
from core.model import HomeTab, Person, Pitcher, Team, key
from core.store.together import together


@dataclass(frozen=True, slots=True)
class Home:
    """What stands on a Home tab; for somebody whom no team knows `person` is none."""

    person: Person | None
    words: tuple[Word, ...] = ()
    own: tuple[ArmCard, ...] = ()
    children: tuple[ArmCard, ...] = ()
    board: Board | None = None
    #: Pages of all boards together, and the one that is shown.
    page: int = 1
    pages: int = 1
    #: Pitchers of the family without consent on file: nothing is kept of them.
    no_record: tuple[str, ...] = ()
    is_staff: bool = False


def home_of(
    session: Session, workspace_id: str, slack_id: str, now: datetime, books: Books
) -> Home:
    """The Home tab of a Slack account at `now` (UTC), on the page that was turned to."""
    tabs, people = together(
        session,
        (HomeTab, _is(HomeTab, workspace_id, slack_id)),
        (Person, _is(Person, workspace_id, slack_id)),
    )
    if not people:
        return Home(None)
    (person,) = people
    page = tabs[0].page if tabs else 1
    crew = load_crew(session, person, None)
    today = crew.local(now).date()
    own, children = crew.related(Relation.SELF), crew.related(Relation.GUARDIAN)
    shown, pages, team_board = _board(session, crew, page, now, books)
    return Home(
        person,
        tuple(words_for(crew)),
        _cards(session, own, today, books, None),
        _cards(session, children, today, books, now),
        team_board,
        shown,
        pages,
        tuple(arm.name for arm in [*own, *children] if not arm.consented),
        crew.is_staff,
    )


def _is(table: type[HomeTab | Person], workspace_id: str, slack_id: str) -> ColumnElement[bool]:
    return (col(table.workspace_id) == workspace_id) & (col(table.slack_id) == slack_id)


def _cards(
    session: Session, arms: Sequence[Arm], today: date, books: Books, now: datetime | None
) -> tuple[ArmCard, ...]:
    """The cards of the arms with consent; with `now`, what was sent to each."""
    ids = [arm.pitcher_id for arm in arms if arm.consented]
    if not ids:
        return ()
    rows = select(Pitcher).where(col(Pitcher.id).in_(ids)).order_by(col(Pitcher.name))
    pitchers = list(session.exec(rows))
    sent = sent_to(session, pitchers, now) if now is not None else {}
    return cards(session, pitchers, today, books, sent)


def _board(
    session: Session, crew: Crew, page: int, now: datetime, books: Books
) -> tuple[int, int, Board | None]:
    """The page of all boards that is shown, how many there are, and the board on it."""
    places = [
        (team, number)
        for team in crew.teams
        if (arms := coached(crew, team)) is not None
        for number in range(1, pages_of(arms) + 1)
    ]
    if not places:
        return 1, 1, None
    shown = min(max(page, 1), len(places))
    team, number = places[shown - 1]
    return shown, len(places), board(session, team, number, now, books)


def coached(crew: Crew, team: Team) -> int | None:
    """How many arms with consent a coach has in a team; none where he is no coach of it."""
    of_team = [arm for arm in crew.arms if key(team) in crew.teams_of[arm.pitcher_id]]
    if key(team) not in crew.coaches:
        return None
    return sum(arm.consented for arm in of_team)
