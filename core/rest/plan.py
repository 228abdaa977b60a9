"""The weekend plan: who pitches which game, up to how many, breaking no rule."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from core.rest.breakpoints import per_inning
from core.rest.schedules import Game, Group, Schedule, schedules
from core.rest.staff import Arm
from core.rest.values import Phase, RestError
from core.rest.views import views
from core.rulebooks import RuleBookError

Use = tuple[Schedule, list[int]]
"""The way a pitcher is used, and his pitches in each game."""


@dataclass(frozen=True, slots=True)
class Assignment:
    """One pitcher in one game: the pitches planned, and the most that keep the plan possible."""

    game: str
    pitcher: str
    pitches: int
    at_most: int


@dataclass(frozen=True, slots=True)
class Plan:
    """Assignments in the order of games and of the staff.

    `short` names the games that cannot be covered, with the pitches that are missing.
    `last_game_arms` are the pitchers whom the last game finds eligible. `gap` is 0.0 when the
    solver proved that no better plan exists among those looked at, else how far it may be off.
    `left_out` are pitchers whom no book could answer for, with the reason.
    """

    assignments: tuple[Assignment, ...]
    short: tuple[tuple[str, int], ...]
    last_game_arms: tuple[str, ...]
    gap: float
    left_out: tuple[tuple[str, str], ...] = ()


def expected_pitches(innings: int, oldest_age: int) -> int:
    """What a game is expected to take, by the innings and the oldest age of the team."""
    return innings * per_inning(oldest_age)


def weekend_plan(
    games: Sequence[Game],
    staff: Sequence[Arm],
    *,
    inning: int,
    guests: Sequence[Arm] = (),
    phase: Phase = "regular",
    seconds: float = 2.0,
) -> Plan:
    """The best plan that breaks no rule of any pitcher's books.

    In this order: the fewest pitches missing in games that are certain, then in games after a
    win; the most arms for the last game; the fewest outings; the coach's order (that of
    `staff`, guests last). `inning` is the expected pitches of an inning; `seconds` bounds the
    solver for each of the five. Raises RestError when no game is given, two have one key, or
    no plan is found in time.
    """
    if not games:
        raise RestError("no game to plan: give at least one")
    if len({game.key for game in games}) < len(games):
        raise RestError("two games have the same key: give each its own")
    ordered = sorted(games, key=lambda game: (game.on, game.number))
    arms, ways, left_out = _all_ways(ordered, [*staff, *guests], inning, phase)
    # The solver is large: it is loaded only when a plan is asked for.
    from core.rest.solver import choose

    groups = _groups(ways)
    chosen = choose(ordered, groups, seconds)
    uses = _shared(ordered, groups, chosen.taken, chosen.pitches)
    return Plan(
        assignments=tuple(_assigned(ordered, arms, uses)),
        short=tuple(
            (game.key, missing)
            for game, missing in zip(ordered, chosen.short, strict=True)
            if missing
        ),
        last_game_arms=tuple(
            arms[a].key for a, (way, _) in sorted(uses.items()) if way.free_at_last
        ),
        gap=chosen.gap,
        left_out=left_out,
    )


def _groups(ways: Sequence[Sequence[Schedule]]) -> list[Group]:
    """Pitchers by their ways, each group and its members in the coach's order."""
    alike: dict[tuple[Schedule, ...], list[int]] = {}
    for place, each in enumerate(ways):
        alike.setdefault(tuple(each), []).append(place)
    return [Group(each, tuple(places)) for each, places in alike.items()]


def _shared(
    games: Sequence[Game],
    groups: Sequence[Group],
    taken: Sequence[Sequence[int]],
    pitches: Sequence[Sequence[int]],
) -> dict[int, Use]:
    """Each pitcher's way and pitches: the more a way holds, the earlier in order he is."""
    from core.rest.sharing import share

    days = _days(games)
    uses: dict[int, Use] = {}
    for group, counts, thrown in zip(groups, taken, pitches, strict=True):
        each = [w for w, n in zip(group.ways, counts, strict=True) for _ in range(n)]
        each.sort(key=lambda way: sum(way.day_limits), reverse=True)
        shares = share(each, days, thrown)
        uses.update(zip(group.places, zip(each, shares, strict=True), strict=True))
    return uses


def _days(games: Sequence[Game]) -> list[list[int]]:
    """The places of each day's games."""
    return [[n for n, _ in day] for _, day in groupby(enumerate(games), lambda g: g[1].on)]


def _assigned(
    games: Sequence[Game], arms: Sequence[Arm], uses: dict[int, Use]
) -> Iterator[Assignment]:
    for day, places in enumerate(_days(games)):
        for game in places:
            for a, (way, thrown) in sorted(uses.items()):
                if thrown[game]:
                    others = sum(thrown[other] for other in places if other != game)
                    most = min(way.limits[game], way.day_limits[day] - others)
                    yield Assignment(games[game].key, arms[a].key, thrown[game], most)


def _all_ways(
    games: Sequence[Game], arms: Sequence[Arm], inning: int, phase: Phase
) -> tuple[list[Arm], list[list[Schedule]], tuple[tuple[str, str], ...]]:
    """The pitchers who can be planned with, their ways, and the others with the reason."""
    usable: list[Arm] = []
    ways: list[list[Schedule]] = []
    left_out: list[tuple[str, str]] = []
    for arm in arms:
        try:
            looks = views(arm.books, arm.thrower, arm.outings, phase)
            ways.append(schedules(looks, games, inning))
            usable.append(arm)
        except (RestError, RuleBookError) as error:
            left_out.append((arm.key, str(error)))
    return usable, ways, tuple(left_out)
