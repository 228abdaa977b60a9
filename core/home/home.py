"""Everything on one person's Home tab: the own arm, the children, the teams."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime

from sqlalchemy import ColumnElement
from sqlmodel import Session, col

from core.audience import Relation
from core.due.summary import by_name
from core.home.board import Board, Held, board, held, pages_of
from core.home.card import ArmCard, cards
from core.home.sent import sent_to
from core.home.shut import is_last_to, is_shut
from core.ledger.binding import Books
from core.ledger.clearance import arm_records
from core.ledger.command_words import Word, words_for
from core.ledger.crew import Crew, load_crew
from core.ledger.who import Arm
from core.model import HomeTab, OutboxMessage, Person, Team, key
from core.store.together import together


@dataclass(frozen=True, slots=True)
class Home:
    """What stands on a Home tab; for somebody whom no team knows `person` is none."""

    person: Person | None
    words: tuple[Word, ...] = ()
    own: tuple[ArmCard, ...] = ()
    children: tuple[ArmCard, ...] = ()
    board: Board | None = None
    #: Holds and limits of the coach's other teams, whose boards are on other pages.
    held_elsewhere: tuple[Held, ...] = ()
    #: The team of each page of all boards together, and the page that is shown.
    page: int = 1
    pages: tuple[str, ...] = ()
    #: Pitchers of the family without consent on file: nothing of theirs is counted or shown.
    no_record: tuple[Arm, ...] = ()
    is_staff: bool = False
    #: Whether the team on the board is one that this person is the coach of, no assistant.
    is_coach: bool = False
    #: Slack takes no direct messages for this person: the last one was refused for good.
    is_shut: bool = False


def home_of(
    session: Session, workspace_id: str, slack_id: str, now: datetime, books: Books
) -> Home:
    """The Home tab of a Slack account at `now` (UTC), on the page that was turned to."""
    tabs, people, last = together(
        session,
        (HomeTab, _is(HomeTab, workspace_id, slack_id)),
        (Person, _is(Person, workspace_id, slack_id)),
        (OutboxMessage, is_last_to(workspace_id, slack_id)),
    )
    if not people:
        return Home(None)
    (person,) = people
    page = tabs[0].page if tabs else 1
    crew = load_crew(session, person, None)
    today = crew.local(now).date()
    own, children = crew.related(Relation.SELF), crew.related(Relation.GUARDIAN)
    pages = _pages(crew)
    shown = min(max(page, 1), len(pages))
    return Home(
        person,
        tuple(words_for(crew)),
        own=_cards(session, crew, own, today, books, None),
        children=_cards(session, crew, children, today, books, now),
        board=_board(session, crew, *pages[shown - 1], now, books) if pages else None,
        held_elsewhere=_held_elsewhere(session, crew, pages[shown - 1][0], today) if pages else (),
        page=shown,
        pages=tuple(team.name for team, _ in pages),
        no_record=tuple(arm for arm in [*own, *children] if not arm.consented),
        is_staff=crew.is_staff,
        is_coach=bool(pages) and key(pages[shown - 1][0]) in crew.heads,
        is_shut=is_shut(last),
    )


def _is(table: type[HomeTab | Person], workspace_id: str, slack_id: str) -> ColumnElement[bool]:
    return (col(table.workspace_id) == workspace_id) & (col(table.slack_id) == slack_id)


def _board(
    session: Session, crew: Crew, team: Team, page: int, now: datetime, books: Books
) -> Board:
    arms = [one for number, one in crew.pitchers.items() if key(team) in crew.teams_of[number]]
    return board(session, team, by_name(arms), page, now, books)


def _cards(
    session: Session,
    crew: Crew,
    arms: Sequence[Arm],
    today: date,
    books: Books,
    now: datetime | None,
) -> tuple[ArmCard, ...]:
    """The cards of the arms with consent; with `now`, what was sent to each."""
    pitchers = [crew.pitchers[arm.pitcher_id] for arm in arms if arm.consented]
    if not pitchers:
        return ()
    pitchers.sort(key=lambda one: one.name)
    sent = sent_to(session, pitchers, now) if now is not None else {}
    return cards(session, pitchers, today, books, sent)


def _pages(crew: Crew) -> list[tuple[Team, int]]:
    """The team of each page of all boards, and which of the team's pages it is."""
    return [
        (team, number)
        for team in crew.teams
        if (arms := coached(crew, team)) is not None
        for number in range(1, pages_of(arms) + 1)
    ]


def _held_elsewhere(session: Session, crew: Crew, shown: Team, today: date) -> tuple[Held, ...]:
    """The arms of the coach's other teams that must not throw: a hold is on every page."""
    pitchers = [
        crew.pitchers[arm.pitcher_id]
        for arm in crew.arms
        if arm.consented
        and crew.coaches.intersection(crew.teams_of[arm.pitcher_id])
        and key(shown) not in crew.teams_of[arm.pitcher_id]
    ]
    if not pitchers:
        return ()
    pitchers.sort(key=lambda one: one.name)
    return held(arm_records(session, pitchers), pitchers, today)


def coached(crew: Crew, team: Team) -> int | None:
    """How many arms with consent a coach has in a team; none where he is no coach of it."""
    of_team = [arm for arm in crew.arms if key(team) in crew.teams_of[arm.pitcher_id]]
    if key(team) not in crew.coaches:
        return None
    return sum(arm.consented for arm in of_team)
