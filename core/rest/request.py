"""A question about rest as it comes in from outside: one JSON object, checked."""

from datetime import date, time
from typing import Annotated, Any

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    StrictBool,
    StrictInt,
    StrictStr,
    ValidationError,
)

from core.rest.values import RestError, Thrower, Thrown


def _iso(value: Any) -> Any:
    try:
        return value if isinstance(value, date) else date.fromisoformat(value)
    except (TypeError, ValueError):
        raise ValueError(f'write a date as "2026-05-02", not {value}') from None


def _clock(value: Any) -> Any:
    try:
        return time.fromisoformat(value)
    except (TypeError, ValueError):
        raise ValueError(f'write a time of 24 hours as "01:30", not {value}') from None


def _this_era(value: date) -> date:
    if not 1900 <= value.year <= 2199:
        raise ValueError(f"the year {value.year} cannot be right: correct it")
    return value


Day = Annotated[date, BeforeValidator(_iso), AfterValidator(_this_era)]
Clock = Annotated[time, BeforeValidator(_clock)]
Count = Annotated[StrictInt, Field(ge=0)]


class Outing(BaseModel):
    """One outing of a question; a key that is not known is refused, for it may hold a count."""

    model_config = ConfigDict(extra="forbid")

    on: Day
    kind: StrictStr | None = None
    pitches: Count | None = None
    outs: Count | None = None
    last_batter_from: Count | None = None
    game: StrictInt | None = None
    caught_outs: Count | None = None
    caught_innings: Count | None = None
    innings_begun: Count | None = None
    intentional_walks: Count | None = None
    about: StrictBool | None = None
    at: Clock | None = None
    began_on: Day | None = None
    tournament: StrictStr | None = None
    series: StrictStr | None = None

    def thrown(self) -> Thrown:
        """The outing as a value. Raises RestError."""
        return Thrown(**self.model_dump(exclude_none=True))


class Request(BaseModel):
    """One question: the books, the pitcher, the outings and the date."""

    rulebooks: list[StrictStr] = Field(min_length=1)
    on: Day
    outings: list[Outing] = Field(default_factory=list)
    birth_date: Day | None = None
    age: StrictInt | None = None
    grade: StrictInt | None = None
    level: StrictStr | None = None
    phase: StrictStr = "regular"
    kind: StrictStr = "game"
    game: StrictInt | None = None
    tournament: StrictStr | None = None
    series: StrictStr | None = None

    def thrower(self) -> Thrower:
        """The pitcher as a value."""
        return Thrower(self.birth_date, self.age, self.grade, self.level)


def parse_request(data: object) -> Request:
    """A checked question. Raises RestError that names each wrong key and what to give."""
    if not isinstance(data, dict):
        raise RestError(
            'the line is no JSON object: give one per line, with "rulebooks", "on" and "outings"'
        )
    try:
        return Request.model_validate(data)
    except ValidationError as error:
        said = "; ".join(_fault(e["loc"], e["type"], e["msg"]) for e in error.errors())
        raise RestError(said) from error


def _fault(loc: tuple[int | str, ...], kind: str, message: str) -> str:
    where = "".join(f"[{p}]" if isinstance(p, int) else f".{p}" for p in loc).lstrip(".")
    if kind == "missing":
        return f"{where} is missing: add it"
    if kind == "extra_forbidden":
        return f"{where} is not known: take it out or correct its name"
    return f"{where}: {message.removeprefix('Value error, ')}"
