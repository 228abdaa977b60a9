"""The demo club and its season as the files have them, for the tests that check or replay them."""

import csv
import json
import tomllib
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from functools import cache
from pathlib import Path
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

from bot.team_file import ListedDirectory, SlackChannel, SlackPerson

DEMO = Path(__file__).parents[2] / "fixtures" / "demo"

Count = Annotated[int, Field(ge=0, le=150)]


class Strict(BaseModel):
    """A value of the demo's files: nothing unknown, nothing converted."""

    model_config = ConfigDict(extra="forbid", frozen=True, strict=True)


class PainSaid(Strict):
    site: Annotated[str, Field(pattern=r"^[a-z]+$")]
    severity: Annotated[int, Field(ge=0, le=10)] | None = None
    side: Literal["left", "right"] | None = None
    when: Literal["during", "after", "next day", "at rest"] | None = None
    sore: Literal[True] | None = None


class Entry(Strict):
    """What a line says about one pitcher; keys that it does not state are absent."""

    who: str | None = None
    except_: list[str] | None = Field(default=None, alias="except")
    kind: Literal["game", "bullpen", "catch", "live", "off"] | None = None
    on: Annotated[str, Field(pattern=r"^2026-\d\d-\d\d$")] | None = None
    pitches: Count | None = None
    breaking: Count | None = None
    curve: Count | None = None
    slider: Count | None = None
    changeup: Count | None = None
    fastball: Count | None = None
    strikes: Count | None = None
    breaking_strikes: Count | None = None
    outs: Count | None = None
    caught_outs: Count | None = None
    effort: Annotated[int, Field(ge=1, le=100)] | None = None
    pain: list[PainSaid] | None = None
    about: Literal[True] | None = None
    tired: bool | None = None


class Expect(Strict):
    """What is right to read, and for what Spinkeeper must ask."""

    entries: list[Entry]
    ask: Literal[True] | None = None
    ask_for: Literal["number", "kind", "day", "who"] | None = None


class DemoLine(Strict):
    """One thing that somebody does in the demo season."""

    id: str
    at: Annotated[str, Field(pattern=r"^2026-05-\d\dT\d\d:\d\d$")]
    do: Literal["say", "edit", "delete"]
    as_: str = Field(alias="as")
    in_: str = Field(alias="in")
    of: str | None = None
    thread_of: str | None = None
    text: str | None = None
    expect: Expect | None = None

    @property
    def time(self) -> datetime:
        """The local time."""
        return datetime.fromisoformat(self.at)

    @property
    def day(self) -> date:
        """The day a line belongs to when it names none: before 04:00 the day before."""
        return (self.time - timedelta(hours=4)).date()


class DemoPerson(Strict):
    key: str
    id: str
    name: str
    handle: str


class DemoChannel(Strict):
    key: str
    id: str
    name: str
    private: bool
    members: list[str]


@dataclass(frozen=True, slots=True)
class RosterPitcher:
    """A pitcher of the demo's roster; `key` is that of his account, where he has one."""

    name: str
    team: str
    birth_date: date
    breaking_pitch: str
    key: str | None
    guardians: tuple[str, ...]


@cache
def season() -> tuple[DemoLine, ...]:
    """The lines of the demo season, in their order."""
    text = (DEMO / "season.jsonl").read_text(encoding="utf-8")
    return tuple(DemoLine.model_validate(json.loads(line)) for line in text.splitlines())


@cache
def people() -> dict[str, DemoPerson]:
    """Everybody with an account, by key."""
    listed = tomllib.loads((DEMO / "people.toml").read_text(encoding="utf-8"))["people"]
    return {one["key"]: DemoPerson.model_validate(one) for one in listed}


@cache
def channels() -> dict[str, DemoChannel]:
    """The channels, by key."""
    listed = tomllib.loads((DEMO / "people.toml").read_text(encoding="utf-8"))["channels"]
    return {one["key"]: DemoChannel.model_validate(one) for one in listed}


@cache
def roster() -> tuple[RosterPitcher, ...]:
    """The pitchers."""
    keys = {f"@{person.handle}": key for key, person in people().items()}
    with (DEMO / "roster.csv").open(encoding="utf-8", newline="") as file:
        return tuple(
            RosterPitcher(
                name=row["name"],
                team=row["teams"],
                birth_date=date.fromisoformat(row["birth date"]),
                breaking_pitch=row["breaking pitch"],
                key=keys[row["account"]] if row["account"] else None,
                guardians=tuple(keys[name] for name in row["guardians"].split(";") if name in keys),
            )
            for row in csv.DictReader(file)
        )


def directory() -> ListedDirectory:
    """The demo's workspace as a directory."""
    return ListedDirectory(
        [SlackPerson(one.id, one.name, one.handle) for one in people().values()],
        [SlackChannel(one.id, one.name, one.private, joined=True) for one in channels().values()],
    )
