"""What the coach allows on a rest day, by activity: the team's file, and what was set since."""

from collections.abc import Iterable

from sqlmodel import Session, col, select

from core.model import RestDayWord, Team, key


def rest_day_words(session: Session, teams: Iterable[Team]) -> dict[str, str]:
    """The coach's own words by activity; of several teams the last one's stand."""
    found: dict[str, str] = {}
    known = list(teams)
    rows = session.exec(
        select(RestDayWord)
        .where(
            col(RestDayWord.team_id).in_([key(team) for team in known]),
            col(RestDayWord.withdrawn_at).is_(None),
        )
        .order_by(col(RestDayWord.id))
    ).all()
    for team in known:
        newest = {row.activity: row.words for row in rows if row.team_id == key(team)}
        set_since = {name: words for name, words in newest.items() if words}
        found |= {**team.rest_day, **set_since}
    return found
