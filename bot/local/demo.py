"""The demo club's files: who is in the workspace, and what was said there in four weeks."""

import tomllib
from datetime import datetime, timedelta
from importlib.resources import files
from pathlib import Path
from typing import Literal, Self

from pydantic import BaseModel, ConfigDict, Field, ValidationError, model_validator

#: How many calendar days at the end of the season are shown; what is before goes in quietly.
SHOWN_DAYS = 7


class DemoError(Exception):
    """The demo cannot be played; the message says what is wrong and what to do."""


class _Row(BaseModel):
    model_config = ConfigDict(extra="ignore", frozen=True)


class DemoPerson(_Row):
    """Somebody with an account; `key` is what the other files call them."""

    key: str
    id: str
    name: str
    handle: str


class DemoChannel(_Row):
    """A channel and the keys of those who are in it."""

    key: str
    id: str
    name: str
    private: bool
    members: list[str]


class DemoWorkspace(_Row):
    """The workspace; its id is the stand-in's own."""

    name: str


class Cast(_Row):
    """Everybody and every channel of the demo's workspace."""

    workspace: DemoWorkspace
    people: list[DemoPerson]
    channels: list[DemoChannel]

    @model_validator(mode="after")
    def _members_are_people(self) -> Self:
        known = {person.key for person in self.people}
        for channel in self.channels:
            if strangers := set(channel.members) - known:
                raise ValueError(f"{channel.name}: no such people: {sorted(strangers)}")
        return self


class Act(_Row):
    """One thing that somebody does: says a line, edits it or deletes it.

    `at` is the team's local time, `where` the key of a channel or "dm"; `of` is the act
    whose line is edited or deleted, `thread_of` the one that is answered in its thread.
    """

    id: str
    at: datetime
    do: Literal["say", "edit", "delete"]
    person: str = Field(alias="as")
    where: str = Field(alias="in")
    text: str = ""
    of: str | None = None
    thread_of: str | None = None


def demo_folder() -> Path:
    """Where the demo's files are: in the installed package, or in a checkout.

    Raises `DemoError` when they are in neither.
    """
    installed = Path(str(files("bot.local"))) / "demo_data"
    checkout = Path(__file__).parents[2] / "fixtures" / "demo"
    for folder in (installed, checkout):
        if (folder / "season.jsonl").is_file():
            return folder
    raise DemoError(f"The demo's files are missing ({installed}): install Spinkeeper again.")


def read_cast(folder: Path) -> Cast:
    """The people and channels of `people.toml`; raises `DemoError` when it is unusable."""
    file = folder / "people.toml"
    try:
        return Cast.model_validate(tomllib.loads(file.read_text(encoding="utf-8")))
    except (OSError, tomllib.TOMLDecodeError, ValidationError) as wrong:
        raise DemoError(f"{file} cannot be used: {wrong}") from wrong


def read_season(folder: Path) -> list[Act]:
    """The acts of `season.jsonl`, in their order; raises `DemoError` when it is unusable."""
    file = folder / "season.jsonl"
    try:
        lines = file.read_text(encoding="utf-8").splitlines()
        acts = [Act.model_validate_json(line) for line in lines if line.strip()]
    except (OSError, ValidationError) as wrong:
        raise DemoError(f"{file} cannot be used: {wrong}") from wrong
    if not acts:
        raise DemoError(f"{file} is empty: there is nothing to play.")
    return acts


def split_season(acts: list[Act]) -> tuple[list[Act], list[Act]]:
    """What goes in quietly, and what is shown: the last `SHOWN_DAYS` calendar days."""
    first_shown = acts[-1].at.date() - timedelta(days=SHOWN_DAYS - 1)
    quiet = [act for act in acts if act.at.date() < first_shown]
    return quiet, acts[len(quiet) :]
