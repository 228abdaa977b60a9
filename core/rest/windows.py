"""Summing a unit over a window of a record."""

from collections.abc import Sequence
from datetime import date, timedelta

from dateutil.relativedelta import relativedelta

from core.rest.record import Counted, Record
from core.rest.sums import EMPTY, Tally, sum_between, sum_of
from core.rest.values import Ask
from core.rest.views import View
from core.rulebooks import Measure, Window

DAY = timedelta(1)
_WEEK = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")


def tally(view: View, measure: Measure, ask: Ask) -> Tally | None:
    """The measure seen from the day asked about, without the outing that is being planned.

    Of several games the fullest counts. None where the window does not reach that day, such as
    a Monday in a window from Friday to Sunday.
    """
    window, record = measure.window, view.record_of(measure)
    if window.span in ("game", "other-games"):
        groups = _by_game(record.between(ask.on, ask.on), window, ask)
        sums = [sum_of(group, measure) for group in groups]
        return max(sums, key=lambda each: (each.uncounted, each.value), default=EMPTY)
    if window.same is not None:
        return sum_of(_same(record, window, ask), measure)
    if window.last is not None:
        return sum_of(_last(record, window, ask), measure)
    dates = _dates(view, measure, ask.on)
    return None if dates is None else sum_between(record, measure, *dates)


def _dates(view: View, measure: Measure, on: date) -> tuple[date, date] | None:
    """The first and the last day of a window of days; None where it does not reach the day."""
    window = measure.window
    if window.span == "day":
        return on, on
    if window.span == "run":
        return _run_start(view.record_of(measure), on), on
    if window.span == "season":
        return view.book.season_start(on) or on, on
    if window.months is not None:
        return on - relativedelta(months=window.months) + timedelta(days=1), on
    length = window.days or 1
    if window.from_ is not None:
        since = (on.weekday() - _WEEK.index(window.from_)) % 7
        return (on - timedelta(days=since), on) if since < length else None
    last = on - timedelta(days=window.back or 0)
    return last - timedelta(days=length - 1), last


def _run_start(record: Record, on: date) -> date:
    """The first of the days pitched in a row that end with this day, pitched on or not."""
    first = on
    while any(o.pitched for o in record.between(first - DAY, first - DAY)):
        first -= DAY
    return first


def _by_game(day: Sequence[Counted], window: Window, ask: Ask) -> list[Sequence[Counted]]:
    """The day's outings game by game; those that carry no number are taken to be one game."""
    games: dict[int | None, list[Counted]] = {}
    for outing in day:
        games.setdefault(outing.game, []).append(outing)
    if window.span == "other-games":
        return [group for game, group in games.items() if game is None or game != ask.game]
    return list(games.values())


def planned_tally(view: View, measure: Measure, ask: Ask) -> Tally | None:
    """As `tally`, but "game" is the one game that is being planned.

    Where an outing does not say which game it was, it is taken to be the same, except for
    coming in again, which needs both to say so. A question that names no game is not about a
    game already numbered: it is the next one.
    """
    if measure.window.span != "game":
        return tally(view, measure, ask)
    day = view.record_of(measure).between(ask.on, ask.on)
    same = {ask.game, None} if measure.unit != "appearances" else {ask.game} - {None}
    return sum_of([outing for outing in day if outing.game in same], measure)


def _same(record: Record, window: Window, ask: Ask) -> list[Counted]:
    """Outings of the same tournament or series; the unnamed ones within the window's days."""
    name = ask.tournament if window.same == "tournament" else ask.series
    first = ask.on - timedelta(days=(window.days or 1) - 1)
    chosen = []
    for outing in record.until(ask.on):
        its = outing.tournament if window.same == "tournament" else outing.series
        near = outing.day >= first
        if (its == name and its is not None) or (near and (its is None or name is None)):
            chosen.append(outing)
    return chosen


def _last(record: Record, window: Window, ask: Ask) -> Sequence[Counted]:
    """The last pitched day before the one asked about, or the last outing up to it.

    What was thrown in the very game asked about is the outing that goes on, not the last one.
    """
    first = ask.on - timedelta(days=window.within or 1)
    until = ask.on if window.last == "outing" else ask.on - timedelta(days=1)
    pitched = [outing for outing in record.between(first, until) if outing.pitched]
    if window.last == "outing":
        return [o for o in pitched if o.day < ask.on or not ask.game or o.game != ask.game][-1:]
    if not pitched:
        return []
    return [outing for outing in pitched if outing.day == pitched[-1].day]
