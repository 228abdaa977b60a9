"""A line that a form writes, taken only when it will be read as exactly what was filled in."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime

from core.ledger.crew import Crew
from core.ledger.decide import Kept, decide
from core.ledger.who import Arm, find
from core.reading import Entry, Reading, UnreadReason, read

#: What the reader may doubt in a line that was filled in: then it asks, as after a typed line.
DOUBTS = frozenset({UnreadReason.UNLIKELY, UnreadReason.TWO_READINGS})


class DictationError(Exception):
    """No line says what was filled in; `field` names the count that cannot be, where one is."""

    def __init__(self, field: str = "") -> None:
        """Name the field."""
        super().__init__(field)
        self.field = field


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a line must say: of whom, of which day, and the fields, without a name."""

    arm: Arm
    on: date
    entry: Entry


def dictate(
    crew: Crew,
    posted: datetime,
    wanted: Sequence[Wanted],
    write: Callable[[Sequence[Entry]], str],
) -> str:
    """The line that `write` makes of the entries and that reads back as them.

    Pitchers are named in the first way that works: not at all, by name, by mention. `posted` is
    local wall-clock time. Raises `DictationError`.
    """
    wrong = ""
    for name in (_unnamed, _by_name, _by_mention):
        names = [name(crew, one.arm) for one in wanted]
        if any(one == "" for one in names):
            continue
        entries = [replace(one.entry, who=named) for one, named in zip(wanted, names, strict=True)]
        text = write(entries)
        reading = read(text, posted, crew.voice, roster=crew.roster())
        if _says(reading, crew, posted, wanted):
            return text
        wrong = wrong or _impossible(reading)
    raise DictationError(wrong)


def _unnamed(crew: Crew, arm: Arm) -> str | None:
    """No name, where a line without one can only be about this pitcher; else no way."""
    own = [one.pitcher_id for one in crew.arms if crew.speaks_for(one.pitcher_id)]
    return None if own == [arm.pitcher_id] and not crew.is_staff else ""


def _by_name(crew: Crew, arm: Arm) -> str:
    forms = (arm.name, *arm.also_called)
    return next((form for form in forms if find(form, crew.arms) == [arm]), "")


def _by_mention(crew: Crew, arm: Arm) -> str:  # noqa: ARG001 - one of three ways
    return f"<@{arm.slack_id}>" if arm.slack_id else ""


def name_of(crew: Crew, arm: Arm) -> str:
    """A name by which a line of this person's means this pitcher and nobody else."""
    return _by_name(crew, arm) or _by_mention(crew, arm) or arm.name


def _says(reading: Reading, crew: Crew, posted: datetime, wanted: Sequence[Wanted]) -> bool:
    doubts = [one.reason in DOUBTS and one.detail is not None for one in reading.unread]
    if not all(doubts):
        return False
    kept = decide(reading, crew, posted).kept
    said = {one.arm.pitcher_id: _said(one, exact=not doubts) for one in kept}
    meant = {one.arm.pitcher_id: _meant(one, exact=not doubts) for one in wanted}
    return len(kept) == len(wanted) and said == meant


def _said(kept: Kept, *, exact: bool) -> object:
    return (kept.on, kept.kind, _bare(kept.entry) if exact else None)


def _meant(wanted: Wanted, *, exact: bool) -> object:
    entry = wanted.entry
    if entry.breaking is None and (entry.curve, entry.slider) != (None, None):
        entry = replace(entry, breaking=(entry.curve or 0) + (entry.slider or 0))
    return (wanted.on, entry.kind, _bare(entry) if exact else None)


def _bare(entry: Entry) -> Entry:
    """The fields alone: whom and which day they are about is compared apart."""
    return replace(entry, who=None, except_=(), on=None, day_named=False)


def _impossible(reading: Reading) -> str:
    found = [one.detail.field for one in reading.unread if one.detail is not None]
    return found[0] if found else ""
