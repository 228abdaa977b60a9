"""An outing as it is read for sums: a plain row, quick to load by the thousand."""

import json
from collections import defaultdict
from collections.abc import Iterable
from datetime import date
from typing import Any, NamedTuple

from sqlalchemy import (
    ColumnElement,
    Dialect,
    String,
    TypeDecorator,
    bindparam,
    cast,
    select,
    type_coerce,
)
from sqlmodel import Session

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
    #: Logs that may tell of this outing again, while nobody has answered; for rest alone.
    open_logs: tuple["Logged", ...] = ()


class _Names(TypeDecorator[list[str]]):
    """A stored list of names; nearly every one is empty, and that is told without parsing."""

    impl = String
    cache_ok = True

    def process_result_value(
        self,
        value: str | None,
        dialect: Dialect,  # noqa: ARG002 - SQLAlchemy gives it
    ) -> list[str]:
        """The names."""
        return list(json.loads(value)) if value and value != "[]" else []


_OUTINGS = Outing.metadata.tables[str(Outing.__tablename__)].c


def _column(name: str) -> ColumnElement[Any]:
    if name != "waiting":
        return _OUTINGS[name]
    return type_coerce(cast(_OUTINGS[name], String), _Names)


#: Of the table, not of the model: no object is made for a row.
_ROWS = (
    select(*(_column(name) for name in Logged._fields if name != "open_logs"))
    .where(
        _OUTINGS.pitcher_id.in_(bindparam("pitchers", expanding=True)),
        _OUTINGS.withdrawn_at.is_(None),
    )
    .order_by(_OUTINGS.on, _OUTINGS.id)
)


def logged(session: Session, pitcher_ids: Iterable[int]) -> dict[int, list[Logged]]:
    """The outings of these pitchers that stand, line by line, oldest first."""
    found: dict[int, list[Logged]] = defaultdict(list)
    for row in session.execute(_ROWS, {"pitchers": list(pitcher_ids)}):
        one = Logged(*row)
        found[one.pitcher_id].append(one)
    return found
