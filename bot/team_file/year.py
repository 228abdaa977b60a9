"""A team's year: its seasons and events, and what changes between two lists of them; pure."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True, slots=True)
class PartOfYear:
    """A season or an event, both days included; `name` is a season's kind."""

    name: str
    starts_on: date
    ends_on: date
    #: Null for a season in which the team's own books hold.
    rule_books: tuple[str, ...] | None


@dataclass(frozen=True, slots=True)
class StoredPart:
    """The row of a season or an event."""

    id: int
    part: PartOfYear


@dataclass(frozen=True, slots=True)
class PartPlan:
    """What becomes of one row: `before` is null for one to add, `after` for one to remove."""

    id: int | None
    before: PartOfYear | None
    after: PartOfYear | None

    @property
    def differs(self) -> bool:
        """Whether anything is to be written."""
        return self.before != self.after


#: From the same row to one that was moved within the year.
_LIKENESSES: tuple[Callable[[PartOfYear], object], ...] = (
    lambda part: part,
    lambda part: (part.name, part.starts_on),
    lambda part: part.name,
)


def plan_parts(stored: Sequence[StoredPart], wanted: Sequence[PartOfYear]) -> tuple[PartPlan, ...]:
    """Pair the rows with what the file says, the likest first; what is left is added or removed."""
    old, new = list(stored), list(wanted)
    paired = [pair for likeness in _LIKENESSES for pair in _pair(old, new, likeness)]
    removed = [PartPlan(one.id, one.part, None) for one in old]
    added = [PartPlan(None, None, one) for one in new]
    return tuple(sorted([*paired, *added, *removed], key=_starts_on))


def _pair(
    old: list[StoredPart], new: list[PartOfYear], likeness: Callable[[PartOfYear], object]
) -> Iterator[PartPlan]:
    """Take alike ones out of both lists, in the order of their days."""
    for after in sorted(new, key=lambda one: one.starts_on):
        alike = [one for one in old if likeness(one.part) == likeness(after)]
        if alike:
            before = min(alike, key=lambda one: one.part.starts_on)
            old.remove(before)
            new.remove(after)
            yield PartPlan(before.id, before.part, after)


def _starts_on(plan: PartPlan) -> date:
    part = plan.after or plan.before
    return part.starts_on if part else date.max
