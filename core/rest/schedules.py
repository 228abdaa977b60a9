"""What one pitcher could do over a weekend: every way to use him that breaks no rule."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from itertools import combinations, groupby

from core.rest.breakpoints import break_points, planned, room_in_pitches
from core.rest.judging import judge
from core.rest.values import Ask
from core.rest.views import View
from core.rulebooks import Measure


@dataclass(frozen=True, slots=True)
class Game:
    """A game to cover: `number` orders the games of a day from 1, `pitches` is what it takes.

    `after_win` marks one that is only played after a win.
    """

    key: str
    on: date
    number: int
    pitches: int
    after_win: bool = False


@dataclass(frozen=True, slots=True)
class Schedule:
    """The most pitches in each game and on each day, and whether the last game finds him free."""

    limits: tuple[int, ...]
    day_limits: tuple[int, ...]
    free_at_last: bool

    @property
    def outings(self) -> int:
        """How often he is used."""
        return sum(limit > 0 for limit in self.limits)


@dataclass(frozen=True, slots=True)
class Group:
    """Pitchers who can be used in the same ways; `places` are theirs in the coach's order."""

    ways: tuple[Schedule, ...]
    places: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class _Use:
    """One way to use a pitcher on one day: the most in each game, and in the day."""

    limits: tuple[int, ...]
    total: int
    outings: tuple[tuple[int, int], ...]


def schedules(looks: Sequence[View], games: Sequence[Game], inning: int) -> list[Schedule]:
    """Every way to use a pitcher in these games (in order) that no book forbids.

    A day's total stands at the rules' break points: one more pitch would owe more rest. Fewer
    pitches than a limit never break a rule. At most two games of a day are given to one
    pitcher. Ways that another one contains are left out. Raises RuleBookError when a book does
    not cover a date.
    """
    days = [list(day) for _, day in groupby(games, key=lambda game: game.on)]
    return _best(list(_ways(looks, days, inning)))


def _ways(looks: Sequence[View], days: Sequence[list[Game]], inning: int) -> Iterator[Schedule]:
    day, later = days[0], days[1:]
    uses = list(_uses(looks, day, inning))
    by_load: dict[tuple[int, int], list[_Use]] = {}
    for use in uses:
        by_load.setdefault((len(use.outings), use.total), []).append(use)
    for alike in by_load.values():
        # What follows depends on the day's total and number of games, not on which games.
        more = list(_after(looks, day, later, alike[0], inning))
        for use in alike:
            for rest in more:
                free = rest.free_at_last if later else _free_at_last(looks, day, use, inning)
                yield Schedule((*use.limits, *rest.limits), (use.total, *rest.day_limits), free)


def _after(
    looks: Sequence[View], day: list[Game], later: Sequence[list[Game]], use: _Use, inning: int
) -> Iterator[Schedule]:
    if not later:
        yield Schedule((), (), False)
        return
    yield from _ways(_having(looks, day, use.outings, inning), later, inning)


def _having(
    looks: Sequence[View], day: list[Game], outings: Sequence[tuple[int, int]], inning: int
) -> Sequence[View]:
    """The views after planned outings, each a game's place in the day and its pitches."""
    for at, pitches in outings:
        outing = planned(day[at].on, pitches, inning=inning, game=day[at].number)
        looks = [view.plus(outing) for view in looks]
    return looks


def _free_at_last(looks: Sequence[View], day: list[Game], use: _Use, inning: int) -> bool:
    last = len(day) - 1
    if use.limits[last]:
        return True
    return _room(_having(looks, day, use.outings, inning), day[last], inning) > 0


def _room(looks: Sequence[View], game: Game, inning: int) -> int:
    return room_in_pitches(judge(looks, Ask(game.on, game.number)), inning)


def _uses(looks: Sequence[View], day: list[Game], inning: int) -> Iterator[_Use]:
    """Not at all, in one game, or in two of the day."""
    none = (0,) * len(day)
    yield _Use(none, 0, ())
    for at, game in enumerate(day):
        most = min(_room(looks, game, inning), game.pitches)
        for pitches in _counts(looks, game, most, inning):
            yield _Use((*none[:at], pitches, *none[at + 1 :]), pitches, ((at, pitches),))
    for first, second in combinations(range(len(day)), 2):
        yield from _both(looks, day, first, second, inning)


def _counts(looks: Sequence[View], game: Game, most: int, inning: int) -> list[int]:
    if most < 1:
        return []
    return break_points(looks, Ask(game.on, game.number), most, inning)


def _both(
    looks: Sequence[View], day: list[Game], first: int, second: int, inning: int
) -> Iterator[_Use]:
    """Two games of a day, where both are allowed."""
    room = min(_room(looks, day[first], inning), day[first].pitches)
    if not room or not _left(looks, day, (first, 1), second, inning):
        return
    split = _fixed_splits if _by_innings(looks, day[0].on) else _free_splits
    for one, other, total in split(looks, day, (first, room), second, inning):
        limits = [0] * len(day)
        limits[first], limits[second] = one, other
        yield _Use(tuple(limits), total, ((first, one), (second, total - one)))


def _left(
    looks: Sequence[View], day: list[Game], thrown: tuple[int, int], game: int, inning: int
) -> int:
    """What a later game of the day has room for, after so many pitches in an earlier one."""
    return _room(_having(looks, day, [thrown], inning), day[game], inning)


def _by_innings(looks: Sequence[View], on: date) -> bool:
    """Whether innings limit single days: then what a split takes depends on where it is made."""
    applying = [view.rules(on) for view in looks]
    measures: list[Measure] = [cap for rules in applying for cap in rules.caps]
    measures += [table.rule for rules in applying for table in rules.tables]
    return any(
        measure.unit in ("outs", "innings-begun")
        and measure.window.span != "season"
        and not measure.window.months
        for measure in measures
    )


def _free_splits(
    looks: Sequence[View], day: list[Game], most: tuple[int, int], second: int, inning: int
) -> Iterator[tuple[int, int, int]]:
    """Any split of a total at a break point, within each game's own limit."""
    first, room = most

    def left(pitches: int) -> int:
        return _left(looks, day, (first, pitches), second, inning)

    then = min(left(1), day[second].pitches)
    most_first = _largest(room, lambda pitches: left(pitches) > 0)
    ends = {1 + left(1), most_first + left(most_first)}
    for total in sorted({*_counts(looks, day[first], max(ends), inning), *ends}):
        one, other = min(most_first, total - 1), min(then, total - 1)
        if one > 0 and other > 0 and left(one) >= total - one > 0:
            yield one, other, total


def _fixed_splits(
    looks: Sequence[View], day: list[Game], most: tuple[int, int], second: int, inning: int
) -> Iterator[tuple[int, int, int]]:
    """Whole innings in the first game, and what they leave for the second."""
    first, room = most
    for one in range(inning, room + 1, inning):
        later = _having(looks, day, [(first, one)], inning)
        then = min(_room(later, day[second], inning), day[second].pitches)
        for other in _counts(later, day[second], then, inning):
            yield one, other, one + other


def _largest(most: int, holds: Callable[[int], bool]) -> int:
    """The largest count from 1 to `most` for which it holds, when it holds for 1."""
    low, high = 1, most
    while low < high:
        middle = (low + high + 1) // 2
        low, high = (middle, high) if holds(middle) else (low, middle - 1)
    return low


def _best(ways: list[Schedule]) -> list[Schedule]:
    """Without the ways that another one contains with as few outings."""
    kept: list[Schedule] = []
    for way in sorted(set(ways), key=_size, reverse=True):
        if not any(_contains(other, way) for other in kept):
            kept.append(way)
    return kept


def _size(way: Schedule) -> tuple[int, int, bool, int, tuple[int, ...]]:
    """Whatever contains a way comes before it."""
    return (*(sum(way.day_limits), sum(way.limits), way.free_at_last, -way.outings, way.limits),)


def _contains(other: Schedule, way: Schedule) -> bool:
    pairs = zip((*other.limits, *other.day_limits), (*way.limits, *way.day_limits), strict=True)
    return (
        other.free_at_last >= way.free_at_last
        and other.outings <= way.outings
        and all(big >= small for big, small in pairs)
    )
