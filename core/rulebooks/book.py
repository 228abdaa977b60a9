"""A rule book: whose it is, whom it covers, how it counts, and its rules."""

from collections.abc import Iterable
from datetime import date, timedelta
from functools import lru_cache
from typing import Annotated, Literal, Self

from pydantic import BeforeValidator, Field, model_validator

from core.rulebooks.ages import age_from, age_on, day_start, month_day
from core.rulebooks.errors import NotCoveredError, RuleBookError
from core.rulebooks.measure import Code, Kind, Part
from core.rulebooks.rules import Rule, Said

MonthDay = Annotated[str, BeforeValidator(month_day)]
Span = tuple[int, int]


class Band(Part):
    """Whom a set of limits covers: ages, grades or levels, alone or together; none is everyone."""

    name: Said
    age: Span | None = None
    grade: Span | None = None
    level: tuple[Code, ...] = ()

    @model_validator(mode="after")
    def _spans_rise(self) -> Self:
        for span in (self.age, self.grade):
            if span is not None and not 0 <= span[0] <= span[1] <= 120:
                raise ValueError("write the youngest (lowest) first: [13, 14]")
        return self


class AgeRule(Part):
    """Which age counts: on the birthday, or on a month and day of the season's year."""

    on: Annotated[str, BeforeValidator(age_from)] = "birthday"
    year: int = Field(0, ge=-1, le=1)
    season_from: MonthDay | None = None


class Season(Part):
    """When the season's sums start again; used by window = "season"."""

    begins: MonthDay


class Superseded(Part):
    """A newer edition exists; a league may still play by this one, so it goes on answering."""

    on: date
    by: Said


class Counting(Part):
    """What counts, and to which day."""

    kinds: tuple[Kind, ...] = ("game", "scrimmage", "showcase", "tryout")
    day_begins: Annotated[str, BeforeValidator(day_start)] = "midnight"
    intentional_walk: int = Field(0, ge=0, le=4)
    pitch: tuple[Code, ...] = ()
    no_pitch: tuple[Code, ...] = ()

    def count(self, deliveries: Iterable[str]) -> int:
        """Pitches among deliveries named as in `pitch` and `no_pitch`, or "intentional-walk".

        Raises RuleBookError for a name in neither list.
        """
        total = 0
        for name in deliveries:
            if name == "intentional-walk":
                total += self.intentional_walk
            elif name in self.pitch:
                total += 1
            elif name not in self.no_pitch:
                raise RuleBookError(f"{name} is in neither list of this book: pitch, no_pitch")
        return total


class RuleBook(Part):
    """One published rule set in one edition."""

    format: Literal[1]
    id: Code
    title: Said
    publisher: Said
    edition: Said
    valid_from: date
    valid_until: date | None = None
    superseded: Superseded | None = None
    source: Said
    certainty: Said
    gaps: tuple[Said, ...] = ()
    phases: tuple[Code, ...] = ("regular",)
    age: AgeRule = AgeRule()
    season: Season | None = None
    counting: Counting = Counting()
    band: tuple[Band, ...] = Field(min_length=1)
    rule: tuple[Rule, ...] = Field(min_length=1)

    @model_validator(mode="after")
    def _fits_together(self) -> Self:
        if self.valid_until is not None and self.valid_until < self.valid_from:
            raise ValueError("valid_until comes before valid_from: swap or correct them")
        if "regular" not in self.phases:
            raise ValueError('phases must name "regular"; the others come beside it')
        return self

    def check_date(self, on: date) -> None:
        """Raise NotCoveredError when the edition does not cover that date."""
        if on < self.valid_from:
            raise NotCoveredError(
                f"{self.id}: the edition {self.edition} is valid from {self.valid_from}, not on "
                f"{on}: use the edition of that date"
            )
        if self.valid_until is not None and on > self.valid_until:
            raise NotCoveredError(
                f"{self.id}: the edition {self.edition} is valid until {self.valid_until}, not on "
                f"{on}: add the newer edition"
            )

    def age_of(self, born: date, on: date) -> int:
        """The age in whole years that this book goes by, on a date."""
        if self.age.on == "birthday":
            return age_on(born, on)
        month, day = map(int, self.age.on.split("-"))
        year = on.year + self.age.year
        if self.age.season_from is not None and f"{on:%m-%d}" >= self.age.season_from:
            year += 1
        return age_on(born, _in_year(year, month, day))

    def band_for(self, *, age: int | None, grade: int | None, level: str | None) -> Band:
        """The one band that covers this pitcher.

        Raises NotCoveredError when none does, or when the book goes by something not given.
        """
        return _band_for(self, age, grade, level)

    def season_start(self, on: date) -> date | None:
        """The latest start of the season's sums on or before a date; None without a season."""
        if self.season is None:
            return None
        month, day = map(int, self.season.begins.split("-"))
        start = _in_year(on.year, month, day)
        return start if start <= on else _in_year(on.year - 1, month, day)

    def __hash__(self) -> int:
        return hash((self.id, self.edition))


def _in_year(year: int, month: int, day: int) -> date:
    if (month, day) == (2, 29):
        return date(year, 3, 1) - timedelta(days=1)
    return date(year, month, day)


@lru_cache(maxsize=4096)
def _band_for(book: RuleBook, age: int | None, grade: int | None, level: str | None) -> Band:
    given = {"age": age, "grade": grade, "level": level}
    needs = [key for key in given if any(getattr(band, key) for band in book.band)]
    missing = [key for key in needs if given[key] is None]
    if missing and len(missing) == len(needs):
        raise NotCoveredError(
            f"{book.id} goes by {' and '.join(needs)}: give the pitcher's {' and '.join(missing)}"
        )
    for band in book.band:
        if _covers(band, age, grade, level):
            return band
    known = ", ".join(f"{key} {given[key]}" for key in needs if given[key] is not None)
    offered = ", ".join(map(_offer, book.band))
    also = f" (or give {' and '.join(missing)} too)" if missing else ""
    raise NotCoveredError(
        f"{book.id} has no band for {known}: its bands are {offered}{also}; use a book that "
        "covers this pitcher"
    )


def _offer(band: Band) -> str:
    return f"{band.name} (level {' or '.join(band.level)})" if band.level else band.name


def _covers(band: Band, age: int | None, grade: int | None, level: str | None) -> bool:
    return (
        _within(band.age, age)
        and _within(band.grade, grade)
        and (not band.level or level in band.level)
    )


def _within(span: tuple[int, int] | None, value: int | None) -> bool:
    return span is None or (value is not None and span[0] <= value <= span[1])
