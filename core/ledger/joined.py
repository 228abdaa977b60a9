"""Outings that belong together: counts that came in parts, and one outing logged twice.

"45 after 3 innings" and later "finished with 71" are one outing, and so are the pitcher's
line and the scorekeeper's about the same game. Nothing is overwritten: each line keeps its
own row, and the rows are put together when the record is read.
"""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from typing import Any

from core.ledger.fields import COUNTS
from core.ledger.logged import Logged
from core.model import JoinedAs, Outing


def put_together(outings: Sequence[Logged]) -> list[Logged]:
    """The outings as the sums count them: one for each, whatever number of lines told of it.

    Later parts win over earlier ones, count by count; another log of the same outing only
    fills in what the first one left open, but of two pitch counts the higher one stands.
    A log that may be another of the same outing stands beside it until that is answered.
    """
    if all(outing.joins is None for outing in outings):
        return list(outings)
    standing = {outing.id: outing for outing in outings}
    joining: dict[int, list[Logged]] = defaultdict(list)
    for outing in outings:
        if outing.joins in standing:
            joining[_base(outing, standing)].append(outing)
    return [
        _merged(outing, joining[outing.id]) if outing.id in joining else outing
        for outing in outings
        if outing.joins not in standing
    ]


def whole_of(outing: Outing, record: Sequence[Logged]) -> Outing:
    """The outing with everything that belongs to it, under its own id; itself where alone.

    `record` is what `put_together` gave.
    """
    for whole in record:
        if whole.id in {outing.id, outing.joins}:
            if outing.joined_as == JoinedAs.OPEN:
                return outing
            own = {"id": outing.id, "line_id": outing.line_id, "team_id": outing.team_id}
            return Outing(**{**outing.model_dump(), **_columns(whole), **own})
    return outing


def _columns(whole: Logged) -> dict[str, Any]:
    return {name: value for name, value in whole._asdict().items() if name != "open_logs"}


def _base(outing: Logged, standing: dict[int, Logged]) -> int:
    """The outing at the root of a chain of joined ones."""
    seen = {outing.id}
    while outing.joins in standing and outing.joins not in seen:
        outing = standing[outing.joins]
        seen.add(outing.id)
    return outing.id


def _merged(base: Logged, joining: Iterable[Logged]) -> Logged:
    whole: dict[str, Any] = base._asdict()
    for outing in sorted(joining, key=lambda one: one.id):
        if outing.joined_as == JoinedAs.OPEN:
            whole["open_logs"] = (*whole["open_logs"], outing)
            continue
        adds = outing.joined_as == JoinedAs.PART
        for name in COUNTS:
            value = getattr(outing, name)
            if value is not None and (adds or whole[name] is None):
                whole[name] = value
        if adds and outing.pitches is not None:
            whole["about"] = outing.about
        if not adds and whole["pitches"] is not None and outing.pitches is not None:
            # Two people counted: rest goes by the higher count until one is put right.
            whole["pitches"] = max(whole["pitches"], outing.pitches)
    if whole["breaking"] is None and (whole["curve"], whole["slider"]) != (None, None):
        whole["breaking"] = (whole["curve"] or 0) + (whole["slider"] or 0)
    return Logged(**whole)
