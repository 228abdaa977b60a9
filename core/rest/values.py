"""What goes into a question about rest, and what comes out."""

from dataclasses import dataclass
from datetime import date, time

Phase = str
"""A part of the season that a rule book names: "regular", "playoffs", or its own word."""

NO_PITCH_LIMIT = 999
"""`pitches_allowed` where no book limits pitches, only outs; `pitches_limited` is then False."""

ESTIMATE_MARGIN = 5
"""An estimated count this close below a stricter row owes that row (pitches)."""


_COUNTS = (
    *("pitches", "outs", "last_batter_from", "caught_outs"),
    *("caught_innings", "innings_begun", "intentional_walks"),
)


class RestError(ValueError):
    """A question about rest cannot be answered: the message says what to change."""


@dataclass(frozen=True, slots=True)
class Thrown:
    """One outing, bullpen or day behind the plate, as it was logged.

    `pitches` and `outs` are None when nobody counted them. `last_batter_from` is the number of
    pitches thrown before the last batter came up. `caught_innings` and `innings_begun` count
    innings of which at least one pitch was caught or thrown; without them outs are rounded up.
    `began_on` is the day on which a suspended game began, `at` the local time of the outing.
    Announced intentional walks are not part of `pitches`: the book says what they add.

    Raises RestError for a count below zero, or a last batter that begins after the last pitch.
    """

    on: date
    kind: str = "game"
    pitches: int | None = None
    outs: int | None = None
    last_batter_from: int | None = None
    game: int | None = None
    caught_outs: int | None = None
    about: bool = False
    caught_innings: int | None = None
    innings_begun: int | None = None
    intentional_walks: int = 0
    at: time | None = None
    began_on: date | None = None
    tournament: str | None = None
    series: str | None = None

    def __post_init__(self) -> None:
        counts = (
            *(self.pitches, self.outs, self.last_batter_from, self.caught_outs),
            *(self.caught_innings, self.innings_begun, self.intentional_walks),
        )
        for name, value in zip(_COUNTS, counts, strict=True):
            if value is not None and value < 0:
                raise RestError(f"{name} on {self.on} is {value}: give 0 or more")
        if self.game is not None and self.game < 1:
            raise RestError(f"game on {self.on} is {self.game}: number a day's games from 1")
        if self.last_batter_from is not None and self.last_batter_from > (
            self.last_batter_from if self.pitches is None else self.pitches
        ):
            raise RestError(
                f"last_batter_from on {self.on} is {self.last_batter_from}, more than the "
                f"{self.pitches} pitches thrown: correct one of them"
            )


@dataclass(frozen=True, slots=True)
class Thrower:
    """Whom the bands are chosen for; each book goes by what it needs of these.

    A birth date wins over an age; `age` is the age that the book itself goes by (league age).
    """

    birth_date: date | None = None
    age: int | None = None
    grade: int | None = None
    level: str | None = None


@dataclass(frozen=True, slots=True)
class Ask:
    """A planned outing: the day, and what is known of its game."""

    on: date
    game: int | None = None
    tournament: str | None = None
    series: str | None = None
    kind: str = "game"


@dataclass(frozen=True, slots=True)
class Reason:
    """Why an answer is what it is: one rule of one book, with what it was applied to.

    `binds` is True when this rule alone forbids or limits the outing asked about; the others
    are notes. `days` are days of rest, `until` the first date after them, `at_most` a cap.
    """

    rulebook: str
    title: str
    rule: str
    says: str
    citation: str
    band: str = ""
    on: date | None = None
    pitches: int | None = None
    days: int | None = None
    until: date | None = None
    row_from: int | None = None
    row_to: int | None = None
    unit: str = "pitches"
    at_most: int | None = None
    used: int | None = None
    uncounted: bool = False
    about: bool = False
    binds: bool = False


@dataclass(frozen=True, slots=True)
class RestOwed:
    """The calendar days of rest that one day's outings owe; pitches None when nobody counted.

    In an answer the reason is given for the last day and for rest that is not over.
    """

    on: date
    pitches: int | None
    days: int
    reason: Reason | None = None


@dataclass(frozen=True, slots=True)
class RestAnswer:
    """What every book together allows on one date.

    `pitches_allowed` is 0 to the largest cap, or NO_PITCH_LIMIT where `pitches_limited` is
    False; `outs_allowed` is None where no book limits outs. `next_eligible` is the first date on
    or after the one asked about with at least one pitch, None when there is none within a year.
    `may_catch` is False when a book bars the plate that day.
    """

    eligible: bool
    pitches_allowed: int
    outs_allowed: int | None
    next_eligible: date | None
    rest: tuple[RestOwed, ...]
    why: tuple[Reason, ...]
    pitches_limited: bool = True
    may_catch: bool = True
