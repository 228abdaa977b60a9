"""Choosing one schedule for each pitcher: a mixed-integer program, solved by HiGHS in scipy.

Pitchers who can be used in the same ways are interchangeable, and a program that tells them
apart is slow to prove that nothing is better. So it is solved over groups of like pitchers.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import coo_array

from core.rest.schedules import Game, Group
from core.rest.values import RestError

Terms = list[tuple[int, float]]
Row = tuple[Terms, float, float]


@dataclass(frozen=True, slots=True)
class Chosen:
    """How often each way of each group is taken, its pitches per game, and what games lack.

    `gap` is 0.0 when every aim is proven, else the largest relative gap that the solver left.
    """

    taken: list[list[int]]
    pitches: list[list[int]]
    short: list[int]
    gap: float


class _Columns:
    """Where the variables stand."""

    def __init__(self, groups: Sequence[Group], games: int) -> None:
        self.size = 0
        self.ways = [self._take(len(group.ways)) for group in groups]
        self.places = [self._take(len(group.places)) for group in groups]
        self.whole = self.size
        self.pitches = [self._take(games) for _ in groups]
        self.short = self._take(games)

    def _take(self, count: int) -> list[int]:
        self.size += count
        return list(range(self.size - count, self.size))


def choose(games: Sequence[Game], groups: Sequence[Group], seconds: float) -> Chosen:
    """The best choice by the aims in order; each is held while the next one is sought.

    Raises RestError when the solver finds nothing within `seconds` for one aim.
    """
    columns = _Columns(groups, len(games))
    rows = list(_rows(columns, games, groups))
    gap, solution = 0.0, np.zeros(columns.size)
    for aim in _aims(columns, games, groups):
        solution, value, left = _solve(columns, rows, aim, seconds)
        gap = max(gap, left)
        rows.append((aim, -np.inf, value + 0.5))
    return Chosen(
        [_read(solution, ways) for ways in columns.ways],
        [_read(solution, pitches) for pitches in columns.pitches],
        _read(solution, columns.short),
        gap,
    )


def _read(solution: np.ndarray, columns: Sequence[int]) -> list[int]:
    return [round(float(solution[column])) for column in columns]


def _rows(columns: _Columns, games: Sequence[Game], groups: Sequence[Group]) -> Iterator[Row]:
    """Every pitcher takes one way, throws within it, and every game is covered or short."""
    days = [[n for n, _ in day] for _, day in groupby(enumerate(games), lambda g: g[1].on)]
    for number, group in enumerate(groups):
        ways, size = columns.ways[number], float(len(group.places))
        yield [(way, 1.0) for way in ways], size, size
        used = [(c, -1.0) for c, way in zip(ways, group.ways, strict=True) if way.outings]
        yield [*((place, 1.0) for place in columns.places[number]), *used], 0.0, 0.0
        thrown = columns.pitches[number]
        for game in range(len(games)):
            yield _within([thrown[game]], ways, [way.limits[game] for way in group.ways])
        for nth, day in enumerate(days):
            limits = [way.day_limits[nth] for way in group.ways]
            yield _within([thrown[game] for game in day], ways, limits)
    for game, wanted in enumerate(games):
        terms = [(columns.pitches[number][game], 1.0) for number in range(len(groups))]
        yield [*terms, (columns.short[game], 1.0)], float(wanted.pitches), float(wanted.pitches)


def _within(thrown: Sequence[int], ways: Sequence[int], limits: Sequence[int]) -> Row:
    """A group's pitches stay within the limits of the ways that it takes."""
    room = [(way, -float(limit)) for way, limit in zip(ways, limits, strict=True)]
    return [*((column, 1.0) for column in thrown), *room], -np.inf, 0.0


def _aims(columns: _Columns, games: Sequence[Game], groups: Sequence[Group]) -> Iterator[Terms]:
    """What is made small: certain games short, others short, arms gone, outings, late places."""
    for after_win in (False, True):
        yield [
            (column, 1.0)
            for column, game in zip(columns.short, games, strict=True)
            if game.after_win is after_win
        ]
    every = [
        (column, way)
        for number, group in enumerate(groups)
        for column, way in zip(columns.ways[number], group.ways, strict=True)
    ]
    yield [(column, -1.0) for column, way in every if way.free_at_last]
    yield [(column, float(way.outings)) for column, way in every]
    yield [
        (column, float(place + 1))
        for number, group in enumerate(groups)
        for column, place in zip(columns.places[number], group.places, strict=True)
    ]


def _solve(
    columns: _Columns, rows: Sequence[Row], aim: Terms, seconds: float
) -> tuple[np.ndarray, float, float]:
    """The solution that makes the aim small, its value, and the gap that is left to the best."""
    cost = np.zeros(columns.size)
    for column, weight in aim:
        cost[column] = weight
    at = [(r, column, weight) for r, (terms, *_) in enumerate(rows) for column, weight in terms]
    matrix = coo_array(
        ([w for *_, w in at], ([r for r, *_ in at], [c for _, c, _ in at])),
        shape=(len(rows), columns.size),
    ).tocsr()
    high = np.full(columns.size, np.inf)
    high[[place for group in columns.places for place in group]] = 1.0
    result = milp(
        cost,
        integrality=np.ones(columns.size, dtype=np.int64),
        bounds=Bounds(np.zeros(columns.size), high),
        constraints=LinearConstraint(matrix, [r[1] for r in rows], [r[2] for r in rows]),
        options={"time_limit": seconds},
    )
    if result.x is None:
        raise RestError("no plan was found in the time given: give it more, or plan fewer games")
    return np.asarray(result.x), float(round(result.fun)), float(result.mip_gap or 0.0)
