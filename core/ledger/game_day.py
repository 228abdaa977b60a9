"""The question of the morning after a game: its key, and what brings it up to date."""

from collections.abc import Iterator
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

from sqlmodel import Session, col, select

from core.ledger.notices import Heard, Notice, NoticeKind
from core.model import GameAnswer, Team, key

DAY = timedelta(days=1)
#: So long after the game day it can be answered.
OPEN_FOR = timedelta(days=7)


def team_and_day(slot: str) -> tuple[int, date]:
    """The team and the game day that a question is about; its slot names the day it is asked."""
    _kind, _of, team_id, asked_on = slot.split("/")
    return int(team_id), date.fromisoformat(asked_on) - DAY


def shown(team: Team, on: date, now: datetime) -> Notice:
    """The question about a game day, brought up to date where it stands already."""
    return Notice(
        slot=f"{NoticeKind.POST_GAME}/team/{key(team)}/{on + DAY}",
        kind=NoticeKind.POST_GAME,
        destination="",
        not_before=now,
        team_id=key(team),
        only_if_shown=True,
    )


def answered_by_lines(heard: Heard) -> Iterator[Notice]:
    """The questions that a line of a day gone by may answer."""
    days = {one["on"] for one in heard.line.entries if one.get("outing")}
    if not days:
        return
    today = heard.now.astimezone(ZoneInfo(heard.time_zone)).date()
    for team in heard.teams:
        for on in sorted(date.fromisoformat(day) for day in days):
            if today - OPEN_FOR <= on < today:
                yield shown(team, on, heard.now)


def answer_of(session: Session, team_id: int, on: date) -> GameAnswer | None:
    """Who said that nobody else pitched that day, if anybody did."""
    rows = select(GameAnswer).where(GameAnswer.team_id == team_id, col(GameAnswer.on) == on)
    return session.exec(rows).first()
