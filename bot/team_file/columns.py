"""What the two files may hold: the keys of a team's table and the columns of the roster."""

from datetime import date, datetime
from typing import Annotated, Any
from zoneinfo import available_timezones

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Field

from core.audience import LOWEST_ACCOUNT_AGE
from core.model import BreakingPitch, PitchCaller

#: A club may ask for more than Slack's lowest age, up to adulthood.
HIGHEST_ACCOUNT_AGE = 18
LONGEST_NAME = 80


def _text(value: object) -> str:
    if not isinstance(value, str) or not value.strip():
        raise ValueError("is empty; fill it in.")
    text = " ".join(value.split())
    if len(text) > LONGEST_NAME:
        raise ValueError(f"is longer than {LONGEST_NAME} characters; shorten it.")
    return text


def _texts(value: object) -> tuple[str, ...]:
    """A TOML array of texts, or one cell whose parts are separated by semicolons."""
    parts = value.split(";") if isinstance(value, str) else value
    if not isinstance(parts, list):
        raise ValueError('must be a list of names, like ["first", "second"].')
    return tuple(_text(part) for part in parts if not isinstance(part, str) or part.strip())


def _array(value: object) -> tuple[str, ...]:
    if isinstance(value, str):
        raise ValueError(f'must be a list, like ["{value}"].')
    return _texts(value)


def _optional_text(value: object) -> str | None:
    return _text(value) if isinstance(value, str) and value.strip() else None


def _day(value: object) -> date:
    if isinstance(value, date) and not isinstance(value, datetime):
        return value
    try:
        return date.fromisoformat(value.strip() if isinstance(value, str) else "")
    except ValueError:
        raise ValueError(
            f"“{value}” is no date that can be read one way only; write year-month-day, "
            "like 2012-06-01."
        ) from None


def _optional_day(value: object) -> date | None:
    return None if value is None or value == "" else _day(value)


def _one_of(**names: str) -> BeforeValidator:
    """A validator that takes one of the names, in any case, and gives its stored value."""

    def read(value: object) -> str:
        typed = value.strip().casefold() if isinstance(value, str) else ""
        if typed not in names:
            raise ValueError(f"“{value}” is not known; write {_or(list(names))}.")
        return names[typed]

    return BeforeValidator(read)


def _or(words: list[str]) -> str:
    return f"{', '.join(words[:-1])} or {words[-1]}" if len(words) > 1 else words[0]


def _zone(value: str) -> str:
    if value not in available_timezones():
        raise ValueError(
            f"“{value}” is no IANA time zone; write one like America/Chicago (Area/City)."
        )
    return value


def _account_age(value: object) -> int:
    whole = isinstance(value, int) and not isinstance(value, bool)
    if not whole or not LOWEST_ACCOUNT_AGE <= int(str(value)) <= HIGHEST_ACCOUNT_AGE:
        raise ValueError(
            f"is {value}; write {LOWEST_ACCOUNT_AGE} to {HIGHEST_ACCOUNT_AGE}. Slack's terms "
            f"do not allow accounts under {LOWEST_ACCOUNT_AGE}; a club may only ask for more."
        )
    return int(str(value))


def _grade(value: object) -> int | None:
    text = str(value).strip() if value is not None else ""
    if not text:
        return None
    if not text.isdecimal() or not 1 <= int(text) <= 12:
        raise ValueError(f"“{text}” is no school grade; write 1 to 12, or leave it empty.")
    return int(text)


def _at_least_one(value: tuple[str, ...]) -> tuple[str, ...]:
    if not value:
        raise ValueError("is empty; name at least one.")
    return value


Text = Annotated[str, BeforeValidator(_text)]
OptionalText = Annotated[str | None, BeforeValidator(_optional_text)]
Texts = Annotated[tuple[str, ...], BeforeValidator(_texts)]
Array = Annotated[tuple[str, ...], BeforeValidator(_array)]
FullArray = Annotated[tuple[str, ...], AfterValidator(_at_least_one), BeforeValidator(_array)]
Day = Annotated[date, BeforeValidator(_day)]
OptionalDay = Annotated[date | None, BeforeValidator(_optional_day)]


class TeamTable(BaseModel):
    """One `[[teams]]` table of the TOML file."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    key: Text
    name: Text
    time_zone: Annotated[Text, AfterValidator(_zone)]
    log_channel: Text
    staff_channel: Text
    rule_books: FullArray
    account_age: Annotated[int, BeforeValidator(_account_age)] = LOWEST_ACCOUNT_AGE
    season_start: OptionalDay = None
    coaches: FullArray
    assistants: Array = ()
    scorekeepers: Array = ()


class RosterRow(BaseModel):
    """One pitcher of the roster; a field's alias is the name of its column."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    name: Text
    teams: Texts
    birth_date: Day = Field(alias="birth date")
    throws: Annotated[str, _one_of(r="R", l="L", right="R", left="L")]
    breaking_pitch: Annotated[str, _one_of(**{pitch.value: pitch for pitch in BreakingPitch})] = (
        Field(alias="breaking pitch")
    )
    consent_on: OptionalDay = Field(alias="consent date")
    account: OptionalText
    guardians: Texts
    pitch_caller: Annotated[str, _one_of(**{caller.value: caller for caller in PitchCaller})] = (
        Field(alias="who calls pitches")
    )
    also_called: Texts = Field(alias="also called")
    grade: Annotated[int | None, BeforeValidator(_grade)] = None
    level: OptionalText = None
    rule_books: Texts = Field(alias="rule books", default=())


def column_names(model: type[BaseModel]) -> dict[str, bool]:
    """The names under which a file gives the fields of `model`, and whether each is required."""
    return {field.alias or name: field.is_required() for name, field in model.model_fields.items()}


def in_words(error: dict[str, Any]) -> str:
    """One pydantic error in the words of whoever fills in the file."""
    name = str(error["loc"][0])
    if error["type"] == "missing":
        return f"{name} is missing; add it."
    if error["type"] == "extra_forbidden":
        return f"{name} is not known here; take it out or correct its spelling."
    reason = error.get("ctx", {}).get("error") or error["msg"]
    return f"{name} {reason}"
