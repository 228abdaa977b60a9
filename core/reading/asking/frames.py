"""The shapes of questions: a clause's symbols, days and numbers taken out, to its topic."""

import re
import tomllib
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from core.reading.asking.asked import Topic

_FILE = Path(__file__).parent / "vocabulary" / "frames.toml"


@dataclass(frozen=True, slots=True)
class Frame:
    """The shapes of one topic, and what a clause must have, or must not have, to fit them."""

    topic: Topic
    shape: re.Pattern[str]
    needs: frozenset[str]
    needs_none: frozenset[str]


def fits(symbols: str, has: Iterable[str]) -> Topic | None:
    """The topic of a clause of these symbols, spaces between, that `has` day, mark, number..."""
    there = frozenset(has)
    for frame in frames():
        if (
            frame.needs <= there
            and not frame.needs_none & there
            and frame.shape.fullmatch(symbols + " ")
        ):
            return frame.topic
    return None


@cache
def frames() -> tuple[Frame, ...]:
    """Every frame in the order of the file, read on first use."""
    table = tomllib.loads(_FILE.read_text("utf-8"))
    groups: dict[str, str] = table["groups"]
    return tuple(
        Frame(
            Topic(row["topic"]),
            re.compile("|".join(shape(says, groups) for says in row["says"])),
            frozenset(row.get("needs", ())),
            frozenset(row.get("needs_none", ())),
        )
        for row in table["frame"]
    )


def shape(says: str, groups: dict[str, str]) -> str:
    """A frame as a regular expression over symbols, each with a space after it."""
    return "".join(_element(word, groups) for word in says.split())


def _element(word: str, groups: dict[str, str]) -> str:
    symbols, mark = (word[:-1], word[-1]) if word[-1] in "?*+" else (word, "")
    if symbols in _PEOPLE:
        mark = {"?": "*", "": "+"}.get(mark, mark)
    each = "|".join(f"{part} " for name in symbols.split("|") for part in _parts(name, groups))
    return f"(?:{each}){mark}"


def _parts(name: str, groups: dict[str, str]) -> list[str]:
    return groups.get(name, name).split("|")


_PEOPLE = frozenset("SP")  # groups of persons: one or several in a row
