"""Sharing what a group of like pitchers throws among its members, the first in order the most."""

from collections.abc import Sequence

import numpy as np
from scipy.optimize import linprog

from core.rest.schedules import Schedule
from core.rest.values import RestError


def share(
    ways: Sequence[Schedule], days: Sequence[Sequence[int]], thrown: Sequence[int]
) -> list[list[int]]:
    """Pitches per member and game: within each member's way, adding up to what is thrown.

    `ways` are those of the members in the coach's order, `days` the games of each day. The
    limits are nested (games within days), so the corner that the solver returns is whole.
    """
    games = len(thrown)
    size = len(ways) * games
    within, room = [], []
    for member, way in enumerate(ways):
        for nth, day in enumerate(days):
            row = np.zeros(size)
            row[[member * games + game for game in day]] = 1
            within.append(row)
            room.append(way.day_limits[nth])
    each_game = np.tile(np.eye(games), len(ways))
    found = linprog(
        np.repeat(np.arange(1, len(ways) + 1), games),
        A_ub=np.array(within),
        b_ub=room,
        A_eq=each_game,
        b_eq=list(thrown),
        bounds=[(0, limit) for way in ways for limit in way.limits],
        method="highs-ds",
    )
    if found.x is None:
        raise RestError("the plan could not be shared out among like pitchers: plan fewer games")
    flat = [round(float(value)) for value in found.x]
    return [flat[member * games : (member + 1) * games] for member in range(len(ways))]
