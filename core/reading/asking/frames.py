"""The shapes of questions: a clause's symbols, days and numbers taken out, to its topic."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from typing import Any

from core.reading.asking.asked import Topic
from core.reading.asking.symbols import OPENERS
from core.reading.asking.vocabulary import tables

# A word that is in no table is a name where a subject stands, and nothing elsewhere.
_SUBJECT = re.compile(r"\b((?:can|is|do|did|have|if|about) )unk\b")


@dataclass(frozen=True, slots=True)
class Frame:
    """The shapes of one topic, and what a clause must have, or must not have, to fit them."""

    topic: Topic
    shape: re.Pattern[str]
    needs: frozenset[str]
    needs_none: frozenset[str]


@dataclass(frozen=True, slots=True)
class Sketch:
    """What a clause of one topic must hold, one of each set, and what else it may hold."""

    topic: Topic
    must: tuple[frozenset[str], ...]
    may: frozenset[str]
    needs: frozenset[str]
    needs_none: frozenset[str]


def fits(symbols: str, has: Iterable[str]) -> Topic | None:
    """The topic of a clause of these symbols, spaces between, that `has` day, mark, number..."""
    there = frozenset(has)
    symbols = _SUBJECT.sub(r"\1name", symbols)
    for frame in frames():
        if (
            frame.needs <= there
            and not frame.needs_none & there
            and frame.shape.fullmatch(symbols + " ")
        ):
            return frame.topic
    return (
        _sketched(symbols, there)
        if asks(symbols) or "mark" in there or symbols.startswith("anyone ")
        else None
    )


def asks(symbols: str) -> bool:
    """Whether a clause begins with a word that asks."""
    return symbols.partition(" ")[0] in OPENERS


def _sketched(symbols: str, there: frozenset[str]) -> Topic | None:
    found = frozenset(symbols.split())
    for sketch in _book()[1]:
        if (
            found <= sketch.may
            and sketch.needs <= there
            and not sketch.needs_none & there
            and all(one & (found | there) for one in sketch.must)
        ):
            return sketch.topic
    return None


def frames() -> tuple[Frame, ...]:
    """Every frame in the order of the files."""
    return _book()[0]


@cache
def _book() -> tuple[tuple[Frame, ...], tuple[Sketch, ...]]:
    """The frames and sketches, read on first use."""
    found = tables("frames")
    groups: dict[str, str] = found[0]["groups"]
    sketches = tuple(
        Sketch(
            Topic(row["topic"]),
            tuple(_set(one.split("|"), groups) for one in row["must"]),
            _set([*row["may"].split(), *"|".join(row["must"]).split("|")], groups),
            frozenset(row.get("needs", ())),
            frozenset(row.get("needs_none", ())),
        )
        for table in found
        for row in table.get("sketch", ())
    )
    frames = tuple(frame for table in found for frame in _frames(table, groups))
    return frames, sketches


def _set(names: Iterable[str], groups: dict[str, str]) -> frozenset[str]:
    return frozenset(part for name in names for part in _parts(name, groups))


def _frames(table: dict[str, Any], groups: dict[str, str]) -> tuple[Frame, ...]:
    return tuple(
        Frame(
            Topic(row["topic"]),
            re.compile("|".join(shape(says, groups) for says in row["says"])),
            frozenset(row.get("needs", ())),
            frozenset(row.get("needs_none", ())),
        )
        for row in table.get("frame", ())
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
