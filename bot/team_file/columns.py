"""What the two files may hold: the keys of a team's tables and the columns of the roster."""

from typing import Annotated, Any

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field

from bot.team_file.cells import (
    AccountAge,
    Array,
    Day,
    FullArray,
    Grade,
    OptionalDay,
    OptionalText,
    QuietFrom,
    QuietTo,
    Text,
    Texts,
    Words,
    Zone,
    one_of,
)
from core.audience import LOWEST_ACCOUNT_AGE
from core.model import BreakingPitch, PitchCaller, SeasonKind
from core.roster.quiet_hours import BEGINS, ENDS


def _tables(name: str) -> BeforeValidator:
    """A validator that takes a list of tables alone, and says how to write one."""

    def read(value: object) -> object:
        if not isinstance(value, list) or not all(isinstance(one, dict) for one in value):
            raise ValueError(f"must be tables; write [[teams.{name}]] above each.")
        return tuple(value)

    return BeforeValidator(read)


def _table(value: object) -> object:
    if not isinstance(value, dict):
        raise ValueError("must be a table; write [teams.rest_day] above its keys.")
    return value


class SeasonTable(BaseModel):
    """One `[[teams.seasons]]` table: a part of the team's year."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    kind: Annotated[str, one_of(**{kind.value: kind.value for kind in SeasonKind})]
    starts_on: Day = Field(alias="from")
    ends_on: Day = Field(alias="until")
    #: Null where the team's own books hold; an empty list would bind nobody, and is refused.
    rule_books: FullArray | None = None


class EventTable(BaseModel):
    """One `[[teams.events]]` table: days on which further books apply."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    name: Text
    starts_on: Day = Field(alias="from")
    ends_on: Day = Field(alias="until")
    rule_books: FullArray


class RestDayTable(BaseModel):
    """The `[teams.rest_day]` table: what the coach allows, in the coach's own words."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    throw: Words = None
    catch: Words = None
    position: Words = None
    catcher: Words = None
    hit: Words = None


class TeamTable(BaseModel):
    """One `[[teams]]` table of the TOML file."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    key: Text
    name: Text
    age_group: OptionalText = None
    time_zone: Zone
    log_channel: Text
    staff_channel: Text
    rule_books: FullArray
    account_age: AccountAge = LOWEST_ACCOUNT_AGE
    quiet_from: QuietFrom = BEGINS[0]
    quiet_to: QuietTo = ENDS[0]
    season_start: OptionalDay = None
    coaches: FullArray
    assistants: Array = ()
    scorekeepers: Array = ()
    seasons: Annotated[tuple[SeasonTable, ...], _tables("seasons")] = ()
    events: Annotated[tuple[EventTable, ...], _tables("events")] = ()
    rest_day: Annotated[RestDayTable, BeforeValidator(_table)] = RestDayTable()


class RosterRow(BaseModel):
    """One pitcher of the roster; a field's alias is the name of its column."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    name: Text
    teams: Texts
    birth_date: Day = Field(alias="birth date")
    throws: Annotated[str, one_of(r="R", l="L", right="R", left="L")]
    breaking_pitch: Annotated[str, one_of(**{pitch.value: pitch for pitch in BreakingPitch})] = (
        Field(alias="breaking pitch")
    )
    consent_on: OptionalDay = Field(alias="consent date")
    account: OptionalText
    guardians: Texts
    pitch_caller: Annotated[str, one_of(**{caller.value: caller for caller in PitchCaller})] = (
        Field(alias="who calls pitches")
    )
    also_called: Texts = Field(alias="also called")
    grade: Grade = None
    level: OptionalText = None
    rule_books: Texts = Field(alias="rule books", default=())


def column_names(model: type[BaseModel]) -> dict[str, bool]:
    """The names under which a file gives the fields of `model`, and whether each is required."""
    return {field.alias or name: field.is_required() for name, field in model.model_fields.items()}


def in_words(error: dict[str, Any]) -> str:
    """One pydantic error in the words of whoever fills in the file."""
    name = [part for part in error["loc"] if isinstance(part, str)][-1]
    if error["type"] == "missing":
        return f"{name} is missing; add it."
    if error["type"] == "extra_forbidden":
        return f"{name} is not known here; take it out or correct its spelling."
    reason = error.get("ctx", {}).get("error") or error["msg"]
    return f"{name} {reason}"
