"""An outing as it is read for sums: a plain row, quick to load by the thousand."""

from collections import defaultdict
from collections.abc import Iterable
from datetime import date
from typing import NamedTuple

from sqlmodel import Session, bindparam, col, select

from core.model import Outing


class Logged(NamedTuple):
    """The columns of an outing that sums and answers read; they mean what `Outing` says."""

    id: int
    pitcher_id: int
    line_id: int
    team_id: int | None
    on: date
    kind: str | None
    pitches: int | None
    breaking: int | None
    curve: int | None
    slider: int | None
    changeup: int | None
    fastball: int | None
    strikes: int | None
    breaking_strikes: int | None
    outs: int | None
    caught_outs: int | None
    effort: int | None
    last_batter_from: int | None
    game: int | None
    about: bool
    waiting: list[str]
    joins: int | None
    joined_as: str | None


_ROWS = (
    select(*(getattr(Outing, name) for name in Logged._fields))
    .where(
        col(Outing.pitcher_id).in_(bindparam("pitchers", expanding=True)),
        col(Outing.withdrawn_at).is_(None),
    )
    .order_by(col(Outing.on), col(Outing.id))
)


def logged(session: Session, pitcher_ids: Iterable[int]) -> dict[int, list[Logged]]:
    """The outings of these pitchers that stand, line by line, oldest first."""
    found: dict[int, list[Logged]] = defaultdict(list)
    for row in session.execute(_ROWS, {"pitchers": list(pitcher_ids)}):
        one = Logged._make(row)
        found[one.pitcher_id].append(one)
    return found
