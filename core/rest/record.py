"""The outings that one book counts, put to the days and in the units that the book goes by."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date, time, timedelta
from typing import TYPE_CHECKING

from core.rest.values import Thrown
from core.rulebooks import Counting, RuleBook

if TYPE_CHECKING:
    from core.rest.sums import Running


@dataclass(frozen=True, slots=True)
class Counted:
    """One outing in a book's own terms; None is a number that nobody counted.

    `trim` is what the count drops by where the first pitch to the last batter decides.
    """

    day: date
    game: int | None
    tournament: str | None
    series: str | None
    pitched: bool
    about: bool
    pitches: int | None
    outs: int | None
    innings_begun: int | None
    caught_innings: int
    caught_outs: int
    trim: int


class Record:
    """A pitcher's outings of some kinds in order of days, with quick slices.

    `kinds` are those that count; none means those of the book.
    """

    def __init__(
        self, book: RuleBook, outings: Iterable[Thrown], kinds: Sequence[str] = ()
    ) -> None:
        self._counting = book.counting
        self._kinds = kinds or book.counting.kinds
        mine = [counted(book.counting, o) for o in outings if o.kind in self._kinds]
        mine.sort(key=lambda outing: outing.day)
        self._take(_keep_last_trims(mine))

    def _take(self, outings: Sequence[Counted]) -> None:
        self.outings = outings
        self.dates = [outing.day for outing in outings]
        self.running: dict[str, Running] = {}

    def plus(self, outing: Thrown) -> "Record":
        """This record with one more outing; quick where it is on or after the last day."""
        if outing.kind not in self._kinds:
            return self
        new = counted(self._counting, outing)
        more = Record.__new__(Record)
        more._counting, more._kinds = self._counting, self._kinds
        at = bisect_left(self.dates, new.day)
        until = bisect_right(self.dates, new.day)
        day = _ordered([*self.outings[at:until], new])
        more._take([*self.outings[:at], *day, *self.outings[until:]])
        return more

    def between(self, first: date, last: date) -> Sequence[Counted]:
        """Outings from the first day to the last, both included, in order."""
        return self.outings[bisect_left(self.dates, first) : bisect_right(self.dates, last)]

    def until(self, last: date) -> Sequence[Counted]:
        """Every outing up to and including a day."""
        return self.outings[: bisect_right(self.dates, last)]

    def days_between(self, first: date, last: date) -> list[date]:
        """The days from the first to the last, both included, on which anything was done."""
        low, high = bisect_left(self.dates, first), bisect_right(self.dates, last)
        return list(dict.fromkeys(self.dates[low:high]))


def counted(counting: Counting, outing: Thrown) -> Counted:
    """One outing as a book counts it: its day, its pitches with announced walks, its innings."""
    walks = counting.intentional_walk * outing.intentional_walks
    pitches = None if outing.pitches is None else outing.pitches + walks
    caught_outs = outing.caught_outs or 0
    caught = outing.caught_innings or -(-caught_outs // 3)
    pitched = _pitched(pitches, outing.outs, outing.innings_begun, caught)
    return Counted(
        day=_day_of(counting, outing),
        game=outing.game,
        tournament=outing.tournament,
        series=outing.series,
        pitched=pitched,
        about=outing.about and pitched,
        pitches=pitches,
        outs=outing.outs,
        innings_begun=_begun(outing),
        caught_innings=caught,
        caught_outs=caught_outs,
        trim=_trim(pitches, outing.last_batter_from, walks),
    )


def _pitched(pitches: int | None, outs: int | None, begun: int | None, caught: int) -> bool:
    """No count at all is an outing nobody counted, unless the line only tells of catching."""
    if pitches is None and outs is None and begun is None:
        return not caught
    return bool(pitches or outs or begun) or (pitches is None and not caught)


def _begun(outing: Thrown) -> int | None:
    if outing.innings_begun is not None or outing.outs is None:
        return outing.innings_begun
    return max(1, -(-outing.outs // 3))


def _trim(pitches: int | None, last_batter_from: int | None, walks: int) -> int:
    """Pitches after the first one to the last batter; walks are taken to have come before him."""
    if pitches is None or last_batter_from is None:
        return 0
    return max(0, pitches - (last_batter_from + walks + 1))


def _day_of(counting: Counting, outing: Thrown) -> date:
    if counting.day_begins == "game":
        return outing.began_on or outing.on
    if counting.day_begins != "midnight" and outing.at is not None:
        early = outing.at < time.fromisoformat(counting.day_begins)
        return outing.on - timedelta(days=1) if early else outing.on
    return outing.on


def _keep_last_trims(outings: list[Counted]) -> list[Counted]:
    """Order a day by its games; only the day's last outing may keep its trim.

    Where a day has several outings and not all are numbered, none keeps it: the order is not
    known, and the full count is the cautious one.
    """
    by_day: dict[date, list[Counted]] = {}
    for outing in outings:
        by_day.setdefault(outing.day, []).append(outing)
    kept: list[Counted] = []
    for day in by_day.values():
        kept.extend(_ordered(day))
    return kept


def _ordered(day: list[Counted]) -> list[Counted]:
    pitched = [outing for outing in day if outing.pitched]
    if len(pitched) < 2:
        return day
    games = [outing.game for outing in pitched]
    known = None not in games and len(set(games)) == len(games)
    if known:
        day = sorted(day, key=lambda outing: outing.game or 0)
    last = max(pitched, key=lambda outing: outing.game or 0) if known else None
    return [o if o is last else replace(o, trim=0) for o in day]
