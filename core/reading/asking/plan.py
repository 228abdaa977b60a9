"""A plan of games to cover: "plan sat 9am 80, sat 2pm 70, sun 10am 90 if we win, plus guest Nico".

A game ends at a comma, an "and", a new line, or where a field comes that it already has; a game
without a day is on the day of the one before.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import date, time

from core.reading.asking.asked import Asked, PlannedGame, Topic
from core.reading.asking.calendar import Named, resolve
from core.reading.asking.context import Context
from core.reading.asking.items import Item, clock_time
from core.reading.asking.symbols import IN_PLAN, NAME, PLAN_HEAD, UNKNOWN

FEWEST_PITCHES = 15  # of a whole game; a smaller bare number is an hour or is asked about
LATEST_HOUR = 12
MOST_PITCHES = 250  # of a whole staff in one game
MOST_GAMES = 6  # on one day
_SEPARATORS = frozenset([",", ";", "and", "&", "y", "then", "/", "+", "luego"])


@dataclass(slots=True)
class _Draft:
    """A game while it is read."""

    day: date | None = None
    at: time | None = None
    pitches: int | None = None
    innings: int | None = None
    copies: int = 1
    win: bool = False

    @property
    def empty(self) -> bool:
        return self.at is None and self.uncounted and self.copies == 1

    @property
    def uncounted(self) -> bool:
        return self.pitches is None and self.innings is None


@dataclass(slots=True)
class _Plan:
    """The plan so far: the day that is spoken of, the game that is being read, those read."""

    context: Context
    spoken: tuple[date, ...] = ()
    draft: _Draft = field(default_factory=_Draft)
    drafts: list[_Draft] = field(default_factory=list)
    days: set[date] = field(default_factory=set)
    guests: list[str] = field(default_factory=list)
    without: list[str] = field(default_factory=list)
    unclear: list[str] = field(default_factory=list)
    hours: bool = False  # an hour without am or pm stood before: "9 and 2"
    each: bool = False

    def waiting(self) -> "_Draft | None":
        """The game before a comma, where its count follows: "sat 9am, 80"."""
        fresh = self.draft.empty and self.draft.day is None and not self.draft.win
        last = self.drafts[-1] if self.drafts else None
        return last if fresh and last and last.uncounted and last.at is not None else None

    def close(self) -> None:
        """End the game that is being read, if there is one."""
        if not self.draft.empty or (self.draft.day is not None):
            self.drafts.append(self.draft)
        self.draft = _Draft(win=self.draft.win and self.draft.empty and self.draft.day is None)


def read_plan(items: Sequence[Item], context: Context) -> Asked | None:
    """The weekend plan that a message asks for, or None where it is none."""
    start = next((at for at, item in enumerate(items) if item.symbol not in PLAN_HEAD), len(items))
    if [item.symbol for item in items[start : start + 2]] in (["can", "you"], ["can", "we"]):
        start += 2  # "can you plan ..."
    if start == len(items) or items[start].symbol != "plan":
        return None
    told = items[start + 1 :]
    if any(item.symbol not in IN_PLAN for item in told):
        return None
    plan = _Plan(context)
    for at, item in enumerate(told):
        _take(plan, told, at, item)
    plan.close()
    if not plan.days:
        begun = plan.unclear and any(not draft.empty for draft in plan.drafts)
        return Asked(Topic.PLAN, unclear=tuple(plan.unclear)) if begun else None
    games = _games(plan)
    if not games and plan.unclear:
        return None
    days = {game.on for game in games} or plan.days
    return Asked(
        Topic.PLAN,
        days=tuple(sorted(days)),
        games=tuple(games),
        guests=tuple(plan.guests),
        without=tuple(plan.without),
        team=next((str(item.value) for item in told if item.symbol == "team"), None),
        unclear=tuple(plan.unclear),
    )


def _take(plan: _Plan, items: Sequence[Item], at: int, item: Item) -> None:
    if item.text.lower() in _SEPARATORS or item.symbol == "stop":
        plan.close()
    elif item.symbol == "day":
        _day(plan, item)
    elif item.symbol == "clock" and isinstance(item.value, time):
        _clock(plan, item.value)
    elif item.symbol == "n_bare" and isinstance(item.value, int):
        _bare(plan, item, item.value)
    elif item.symbol in ("n_pitches", "n_innings") and isinstance(item.value, int):
        _count(plan, item, item.symbol == "n_pitches", item.value)
    elif item.symbol == "n_games" and isinstance(item.value, int) and item.value <= MOST_GAMES:
        plan.draft.copies = item.value
    elif item.symbol == "n_game":
        plan.close()
    elif item.symbol == "win":
        _win(plan, items, at)
    elif item.symbol == "each":
        plan.each = True
    elif item.symbol in (NAME, UNKNOWN):
        _person(plan, items, at)
    elif item.symbol == "n_without":
        plan.without.append(item.text)
    elif item.symbol in ("lose", "n_odd", "n_games", "clock", "span"):
        plan.unclear.append(item.text)


def _day(plan: _Plan, item: Item) -> None:
    named = item.value if isinstance(item.value, Named) else Named()
    dates = resolve(named, plan.context.today, past=False)
    if not dates or dates[0] < plan.context.today:
        plan.unclear.append(item.text)
        return
    if not plan.draft.empty and plan.draft.day is None and not plan.spoken:
        plan.draft.day = dates[0]  # "80 on sat"
    elif not plan.draft.empty or plan.draft.day is not None:
        plan.close()
    plan.spoken = dates
    plan.days.update(dates)
    if len(dates) == 1:
        plan.draft.day = dates[0]


def _clock(plan: _Plan, at: time) -> None:
    if plan.draft.at is not None:
        plan.close()
    plan.draft.at = at


def _bare(plan: _Plan, item: Item, value: int) -> None:
    fresh = plan.draft.at is None and plan.draft.uncounted
    if fresh and 1 <= value <= LATEST_HOUR and (plan.draft.day is not None or plan.hours):
        plan.hours = True
        plan.draft.at = clock_time(str(value))
    elif plan.hours and not plan.draft.uncounted and 1 <= value <= LATEST_HOUR:
        _clock_after(plan, value)  # "sat 9 75 12 75"
    elif FEWEST_PITCHES <= value <= MOST_PITCHES:
        _count(plan, item, True, value)
    else:
        plan.unclear.append(item.text)


def _clock_after(plan: _Plan, hour: int) -> None:
    plan.close()
    plan.draft.at = clock_time(str(hour))


def _count(plan: _Plan, item: Item, pitches: bool, value: int) -> None:
    if pitches and value <= LATEST_HOUR and re.fullmatch(r"\d+ ?p", item.text.lower()):
        _clock(plan, clock_time(f"{value}pm") or time(value))  # "sat 1p"
        return
    if value > MOST_PITCHES or (pitches and value < FEWEST_PITCHES):
        plan.unclear.append(item.text)
        return
    game = plan.waiting() or plan.draft
    if (game.pitches if pitches else game.innings) is not None:
        plan.close()
        game = plan.draft
    if pitches:
        game.pitches = value
    else:
        game.innings = value


def _win(plan: _Plan, items: Sequence[Item], at: int) -> None:
    """The game before "if we win", or the one after it; unclear where it could be either."""
    following = next((i for i in items[at + 1 :] if i.symbol not in ("glue", "mark")), None)
    game_follows = following is not None and following.symbol in ("day", "clock", "n_bare", "at")
    begun = not plan.draft.empty or plan.draft.day is not None
    if begun and game_follows and items[at + 1].text.lower() not in _SEPARATORS:
        plan.unclear.append(items[at].text)
    elif not begun and not game_follows and plan.drafts:
        plan.drafts[-1].win = True  # "sun 3pm 75, if we win"
    else:
        plan.draft.win = True


def _person(plan: _Plan, items: Sequence[Item], at: int) -> None:
    before = at - 1
    while before >= 0 and (
        items[before].symbol in (NAME, UNKNOWN, "glue") or items[before].text == ","
    ):
        before -= 1
    if before >= 0 and items[before].symbol == "guest":
        plan.guests.append(items[at].text)
    else:
        plan.unclear.append(items[at].text)


def _games(plan: _Plan) -> list[PlannedGame]:
    """The drafts as games. A day named alone is a game of its own only beside other games."""
    if all(draft.empty for draft in plan.drafts) and not plan.each:
        return []
    shared = next((d for d in plan.drafts if not d.uncounted), None) if plan.each else None
    games: list[PlannedGame] = []
    for draft in _with_days(plan):
        counts = shared if shared is not None and draft.uncounted else draft
        game = PlannedGame(
            draft.day or plan.context.today, draft.at, counts.pitches, counts.innings, draft.win
        )
        if draft.copies > 1 and not draft.uncounted and not plan.each:
            plan.unclear.append(str(draft.pitches or draft.innings))
            game = replace(game, pitches=None, innings=None)
        games.extend([game] * draft.copies)
    return games


def _with_days(plan: _Plan) -> list[_Draft]:
    """Every draft with its day: its own, or that of the one before; without one it is unclear."""
    placed: list[_Draft] = []
    day: date | None = None
    alone = next(iter(plan.days)) if len(plan.days) == 1 else None
    for draft in plan.drafts:
        day = draft.day or day or alone
        if day is None:
            plan.unclear.append(str(draft.pitches or draft.innings or draft.at))
        else:
            placed.append(replace(draft, day=day))
    return placed
