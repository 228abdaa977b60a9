"""A pitcher's standing record, as the rest and the mix want it."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

from sqlmodel import Session

from core.ledger.joined import put_together
from core.ledger.logged import Logged, logged
from core.load import Day
from core.mix import Game
from core.model import Outing, Pitcher
from core.rest import Thrower, Thrown


def standing_outings(session: Session, pitcher_id: int) -> list[Logged]:
    """Every outing of a pitcher as the sums count it, oldest first."""
    return counted_outings(session, [pitcher_id])[pitcher_id]


def counted_outings(session: Session, pitcher_ids: Sequence[int]) -> dict[int, list[Logged]]:
    """Every outing of each of these pitchers as the sums count it, oldest first.

    What several lines told of one outing is put together; what may be the same outing again
    waits for its answer beside it, and is not counted twice.
    """
    rows = logged(session, pitcher_ids)
    return {
        one: put_together(
            [row for row in rows.get(one, ()) if "same" not in row.waiting or row.joins]
        )
        for one in pitcher_ids
    }


def thrower_of(pitcher: Pitcher) -> Thrower:
    """What the bands of the rule books go by."""
    return Thrower(birth_date=pitcher.birth_date, grade=pitcher.grade, level=pitcher.level)


def thrown(outings: Iterable[Logged]) -> list[Thrown]:
    """The outings as rest counts them.

    An outing of unknown kind counts as a game until the kind is known; one that only says
    how long he caught has no pitches. While it is asked whether two logs tell of one outing,
    the larger of their counts stands.
    """
    return [_thrown(outing) for outing in outings if outing.kind != "off"]


def _thrown(outing: Logged) -> Thrown:
    one = Thrown(
        on=outing.on,
        kind=outing.kind or "game",
        pitches=0 if only_caught(outing) else outing.pitches,
        outs=outing.outs,
        last_batter_from=outing.last_batter_from,
        game=outing.game,
        caught_outs=outing.caught_outs,
        about=outing.about,
    )
    for other in outing.open_logs:
        one = larger(one, _thrown(other))
    return one


def larger(one: Thrown, other: Thrown) -> Thrown:
    """The first of two logs of a day with the larger of each count, as rest must take them.

    A first log without a count stays uncounted, which owes the longest rest; a second one
    without takes nothing away.
    """
    counted = one.pitches is not None and other.pitches is not None
    begun = (one.last_batter_from, other.last_batter_from)
    return replace(
        one,
        kind="game" if "game" in (one.kind, other.kind) else one.kind,
        pitches=max(one.pitches or 0, other.pitches or 0) if counted else one.pitches,
        outs=_most(one.outs, other.outs),
        caught_outs=_most(one.caught_outs, other.caught_outs),
        # Less rest than the whole count owes only where both logs know of the last batter.
        last_batter_from=None if None in begun else _most(*begun),
        about=one.about or other.about,
    )


def _most(*counts: int | None) -> int | None:
    return max((count for count in counts if count is not None), default=None)


def only_caught(outing: Outing | Logged) -> bool:
    """Whether an outing only says how long the pitcher caught."""
    counts = (outing.pitches, outing.outs, outing.breaking, outing.strikes)
    return outing.caught_outs is not None and all(count is None for count in counts)


def days_of_throws(outings: Iterable[Logged]) -> list[Day]:
    """The outings as load counts them: throws of every kind, a day off as none.

    How much a catcher throws nobody counted, so such a day is unknown.
    """
    return [Day(one.on, 0 if one.kind == "off" else one.pitches) for one in outings]


def games(outings: Iterable[Logged]) -> list[Game]:
    """The outings as the mix counts them: games only, and only those whose day is certain."""
    return [game_of(outing) for outing in outings if outing.kind == "game" and not outing.waiting]


def game_of(outing: Outing | Logged) -> Game:
    """The counts of one outing."""
    return Game(outing.on, outing.pitches, outing.breaking, outing.curve, outing.slider)
