"""What a question asks, as values. Nothing here knows how it was typed."""

from dataclasses import dataclass, fields
from datetime import date, time
from enum import StrEnum


class Topic(StrEnum):
    """What is asked. Topics that look back resolve "sat" to the last one, the others ahead."""

    STAFF = "staff"  # who can throw on the days
    LEFT = "left"  # who is left now, between the games of a day
    ONE = "one"  # can X throw on the days, and how many
    WHEN = "when"  # when can X throw next
    THROWN = "thrown"  # how many did X throw on the days, or over the span
    REST = "rest"  # how long must X rest; with `pitches`: the rest that so many cost
    WHAT_IF = "what_if"  # if X throws `pitches` on the day, when next; eligible on `later`?
    MOST = "most"  # the most X can throw on the day and still go on `later`
    PLAN = "plan"  # who covers these games
    ACTIVITY = "activity"  # may X play catch, catch, hit, play the field
    INNINGS = "innings"  # innings pitched on the days, or over the span
    MIX = "mix"  # breaking balls: how many, what share
    HELP = "help"
    ARM = "arm"  # whether an arm is well: never answered with a yes
    STATS = "stats"  # the last outings and the season at a glance
    DATA = "data"  # what is kept about X, and who reads it
    CONSENT = "consent"  # whether consent to X's record stands, and how it is given or ended
    DELETE = "delete"  # how X's record is deleted


class Activity(StrEnum):
    """What else than pitching in a game is asked about."""

    THROW = "throw"  # a bullpen, throwing at practice
    CATCH = "catch"  # catch play, long toss
    POSITION = "position"
    CATCHER = "catcher"
    HIT = "hit"


class Span(StrEnum):
    """A stretch of the past. Its days stand in `days` too where they are at most 31 and known."""

    WEEK = "week"  # Monday to today
    LAST_WEEK = "last_week"
    MONTH = "month"  # the 1st to today
    LAST_MONTH = "last_month"
    LAST_DAYS = "last_days"  # the last `back` days, today included
    SINCE = "since"  # from the one day in `days` to today
    SEASON = "season"
    YEAR = "year"
    TWELVE_MONTHS = "twelve_months"
    LAST_OUTING = "last_outing"
    EVER = "ever"


ME = "me"  # in `who`: the asker
CHILD = "child"  # in `who`: "he", "she", "my son": whoever the asker may mean


@dataclass(frozen=True, slots=True)
class PlannedGame:
    """A game to cover: expected pitches or innings of the whole staff, where stated."""

    on: date
    at: time | None = None
    pitches: int | None = None
    innings: int | None = None
    only_after_win: bool = False


@dataclass(frozen=True, slots=True)
class Asked:
    """One question. Where `unclear` is not empty, ask back instead of answering.

    `who` holds names and mentions as typed, ME or CHILD; () names nobody. `days` ascend; in
    WHAT_IF, MOST and REST they are the days of the outing, and `later` the day to be eligible on.
    `pitches` is a count that the question names: asked for (STAFF, ONE), supposed (WHAT_IF), thrown
    (REST), or to be confirmed (THROWN). `innings` likewise. `times` are clock times outside a plan.
    `without` are pitchers to leave out. `then` is the next question of the same message.
    """

    topic: Topic
    who: tuple[str, ...] = ()
    days: tuple[date, ...] = ()
    span: Span | None = None
    back: int | None = None
    pitches: int | None = None
    innings: int | None = None
    later: date | None = None
    rest_days: int | None = None  # "on 3 days rest", "is it 4 days for 66"
    game: int | None = None  # which game of the day: 1, 2
    times: tuple[time, ...] = ()
    team: str | None = None  # "14u"
    activity: Activity | None = None
    games: tuple[PlannedGame, ...] = ()
    guests: tuple[str, ...] = ()
    without: tuple[str, ...] = ()
    unclear: tuple[str, ...] = ()
    then: "Asked | None" = None

    def as_json(self) -> dict[str, object]:
        """The fields that the question states, as JSON values."""
        return _stated(self)


def _stated(value: "Asked | PlannedGame") -> dict[str, object]:
    pairs = ((field.name, getattr(value, field.name)) for field in fields(value))
    return {name: _plain(item) for name, item in pairs if item not in (None, (), False)}


def _plain(value: object) -> object:
    if isinstance(value, tuple):
        return [_plain(item) for item in value]
    if isinstance(value, Asked | PlannedGame):
        return _stated(value)
    if isinstance(value, time):
        return f"{value:%H:%M}"
    return value.isoformat() if isinstance(value, date) else value
