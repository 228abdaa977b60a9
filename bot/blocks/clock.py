"""Messages that nobody asked for: what the clock calls for, from the record as it stands."""

from collections.abc import Callable
from datetime import datetime
from zoneinfo import ZoneInfo

from sqlmodel import Session, select

from bot.blocks.calendar import source_text
from bot.blocks.message import Button, Part, as_message
from bot.forms.form import opens
from bot.presses.game_day import NOBODY
from bot.presses.press import presses
from bot.wording import post_game, spin
from bot.wording import summary as say
from bot.wording.rest_days import CHANGED, last_rest_day, rest_days
from core.due.last_day import last_day_of
from core.due.pages import page_number
from core.due.post_game import game_asked
from core.due.resting import family_rest
from core.due.spin import team_plans
from core.due.spin_due import PATIENCE, last_spun
from core.due.spin_reps import someone_has_reps_to_go, spin_so_far
from core.due.summary import PAGE, summary
from core.due.weekly import Weekly
from core.ledger import NoticeKind
from core.ledger.binding import Books
from core.ledger.game_day import answer_of, team_and_day
from core.model import OutboxMessage, Person, Pitcher, ScheduleKind, Team, TeamSchedule, key
from core.reading.coach_words import speaks_of_pain

Parts = list[Part]
Tell = Callable[[Session, OutboxMessage, Books, datetime], Parts]


def by_the_clock(session: Session, row: OutboxMessage, books: Books, now: datetime) -> Parts:
    """What such a message says at `now` (UTC); nothing when it came too late or has no reason."""
    return _TELL[NoticeKind(row.kind)](session, row, books, now)


def _summary(session: Session, row: OutboxMessage, books: Books, now: datetime) -> Parts:
    team = session.get(Team, row.team_id)
    if team is None or _too_late(row, team, now):
        return []
    found = summary(session, team, row.not_before, books)
    number = page_number(row.slot)
    if number > 1:
        return [Part(text) for text in say.page(found, number)]
    return [Part(text) for text in say.summary(found, PAGE)]


def _rest_days(session: Session, row: OutboxMessage, books: Books, now: datetime) -> Parts:
    person = session.get(Person, row.person_id)
    children = family_rest(session, row, now, books)
    if person is None or not children:
        return []
    parts = [Part(text) for text in rest_days(person.name, children)]
    # A change is marked as one, so that a parent who read the first words sees it.
    # Where the first sending has an unknown outcome, its words were those of this version.
    unseen = row.shown is None and row.wanted == 1
    same = row.ts is None or unseen or as_message(parts).digest == row.shown
    return parts if same else [Part(CHANGED), *parts]


def _last_rest_day(session: Session, row: OutboxMessage, books: Books, now: datetime) -> Parts:
    person = session.get(Person, row.person_id)
    children = last_day_of(session, row, now, books)
    return [Part(last_rest_day(person.name, children))] if person is not None and children else []


def _spin(session: Session, row: OutboxMessage, _books: Books, now: datetime) -> Parts:
    team = session.get(Team, row.team_id)
    if team is None or _too_late(row, team, now) or row.ts is not None:
        return []
    if not someone_has_reps_to_go(session, team, now):
        return []
    cues = session.exec(
        select(TeamSchedule.cues).where(
            TeamSchedule.team_id == row.team_id, TeamSchedule.kind == ScheduleKind.SPIN
        )
    ).first()
    week = row.not_before.astimezone(ZoneInfo(team.time_zone)).date()
    # A cue from before such words were refused is not said either.
    kept = [one for one in cues or () if not speaks_of_pain(one)]
    return [Part(spin.post(kept, week, team_plans(session, key(team))))]


def _spin_reps(session: Session, row: OutboxMessage, books: Books, now: datetime) -> Parts:
    team, person = session.get(Team, row.team_id), session.get(Person, row.person_id)
    if team is None or person is None or _too_late(row, team, now):
        return []
    so_far = spin_so_far(session, row, team, now, books)
    return [Part(spin.private(person.name, so_far))] if so_far else []


def _spin_silent(session: Session, row: OutboxMessage, _books: Books, _now: datetime) -> Parts:
    pitcher = session.get_one(Pitcher, int(row.slot.split("/")[2]))
    return [Part(spin.silent(pitcher.name, PATIENCE, last_spun(session, pitcher)))]


def _post_game(session: Session, row: OutboxMessage, books: Books, now: datetime) -> Parts:
    team_id, on = team_and_day(row.slot)
    team = session.get(Team, team_id)
    if team is None or _too_late(row, team, now):
        return []
    said = answer_of(session, team_id, on)
    if said is not None:
        by = session.get_one(Person, said.said_by).name
        return [Part(post_game.nobody(on, by))] if row.ts else []
    found = game_asked(session, team, on, books)
    if not found.missing:
        return [Part(post_game.all_in(on))] if row.ts else []
    carried = {"team": team_id, "on": on.isoformat()}
    buttons = (
        Button(post_game.NOBODY, presses(NOBODY), carried),
        Button(post_game.LOG, opens("game_counts"), carried),
    )
    return [Part(post_game.asked(found), buttons)]


def _calendar(session: Session, row: OutboxMessage, _books: Books, now: datetime) -> Parts:
    return [Part(source_text(session, row, now))]


def _too_late(row: OutboxMessage, team: Team, now: datetime) -> bool:
    """Whether the day after it was due is over, and it does not stand in Slack yet."""
    local = row.not_before.astimezone(ZoneInfo(team.time_zone))
    weekly = Weekly(local.weekday(), local.time(), team.time_zone)
    return row.ts is None and now >= weekly.lapses(row.not_before)


_TELL: dict[NoticeKind, Tell] = {
    NoticeKind.MONDAY_SUMMARY: _summary,
    NoticeKind.REST_DAYS: _rest_days,
    NoticeKind.LAST_REST_DAY: _last_rest_day,
    NoticeKind.SPIN: _spin,
    NoticeKind.SPIN_REPS: _spin_reps,
    NoticeKind.SPIN_SILENT: _spin_silent,
    NoticeKind.CALENDAR: _calendar,
    NoticeKind.POST_GAME: _post_game,
}
#: The kinds of message that this file renders.
CLOCK_KINDS = frozenset(_TELL)
