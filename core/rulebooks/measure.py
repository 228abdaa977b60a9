"""What a rule counts: a unit, summed over a window of time."""

from typing import Annotated, Any, Literal, Self

from pydantic import (
    AfterValidator,
    BaseModel,
    ConfigDict,
    Field,
    StringConstraints,
    model_validator,
)

Unit = Literal[
    "pitches",
    "outs",
    "innings-begun",
    "days",
    "games",
    "appearances",
    "caught-innings",
    "caught-outs",
]
Code = Annotated[str, StringConstraints(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$")]
KINDS = (
    *("game", "scrimmage", "showcase", "tryout"),
    *("bullpen", "live", "catch", "practice", "lesson", "warm-up", "off"),
)
"""The kinds of outing; which of them count is the book's to say."""


def _known_kind(kind: str) -> str:
    if kind not in KINDS:
        raise ValueError(f'no kind of outing is called "{kind}": use one of {", ".join(KINDS)}')
    return kind


Kind = Annotated[str, AfterValidator(_known_kind)]
Weekday = Literal["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"]

_SPANS = ("game", "other-games", "day", "run", "season")
_HOW = (
    'write a window as "game", "other-games", "day", "run", "season", {days = 7}, '
    '{days = 2, back = 1}, {days = 7, from = "monday"}, {months = 12}, '
    '{same = "tournament", days = 4} or {last = "day", within = 4}'
)
_SHAPES = (
    {"span"},
    {"days"},
    {"days", "back"},
    {"days", "from_"},
    {"months"},
    {"same", "days"},
    {"last", "within"},
)


class Part(BaseModel):
    """Anything in a rule-book file: unknown keys are refused, values never change."""

    model_config = ConfigDict(extra="forbid", frozen=True)


class Window(Part):
    """Which outings are summed, seen from one date. FORMAT.md lists the ways to write it."""

    span: Literal["game", "other-games", "day", "run", "season"] | None = None
    days: int | None = Field(None, ge=1, le=400)
    back: int | None = Field(None, ge=1, le=60)
    from_: Weekday | None = Field(None, alias="from")
    months: int | None = Field(None, ge=1, le=24)
    same: Literal["tournament", "series"] | None = None
    last: Literal["day", "outing"] | None = None
    within: int | None = Field(None, ge=1, le=60)

    @model_validator(mode="before")
    @classmethod
    def _word_alone(cls, value: Any) -> Any:
        if isinstance(value, str) and value not in _SPANS:
            raise ValueError(_HOW)
        return {"span": value} if isinstance(value, str) else value

    @model_validator(mode="after")
    def _one_shape(self) -> Self:
        if {name for name in type(self).model_fields if getattr(self, name)} not in _SHAPES:
            raise ValueError(_HOW)
        if self.from_ and self.days is not None and self.days > 7:
            raise ValueError("a period that starts on a weekday has at most 7 days")
        return self


class Measure(Part):
    """A unit over a window; `finish_batter` when the count at the last batter's start decides.

    `kinds` are the outings it counts; none means those of the book.
    """

    unit: Unit
    window: Window
    kinds: tuple[Kind, ...] = ()
    finish_batter: bool = False

    @model_validator(mode="after")
    def _batters_are_pitched_to(self) -> Self:
        if self.finish_batter and self.unit != "pitches":
            raise ValueError('finish_batter goes with unit = "pitches": leave it out here')
        return self


class Condition(Measure):
    """Holds when the measure, without the outing that is being planned, is at least this."""

    at_least: int = Field(ge=1)
