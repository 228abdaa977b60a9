"""On which line of a team file a key stands, in a team's own table or in one under it."""

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from core.rulebooks.places import line_of

_HEADER = re.compile(r"^\s*\[\[?\s*([\w-]+(?:\s*\.\s*[\w-]+)*)\s*\]")

Place = Sequence[str | int]


@dataclass(frozen=True, slots=True)
class _Section:
    """The lines of one table (from 0, the end excluded) and its place, as in ("teams", 0)."""

    place: tuple[str | int, ...]
    start: int
    end: int


def line_at(text: str, place: Place) -> int:
    """The 1-based line of a place like ("teams", 0, "seasons", 1, "from").

    The nearest line above it where the key itself is missing: its table's header.
    """
    lines = text.splitlines()
    wanted = tuple(place)
    holding = [one for one in _sections(lines) if _holds(one.place, wanted)]
    section = max(holding, key=lambda one: len(one.place), default=_Section((), -1, len(lines)))
    # The header itself is left blank, so that only keys are looked for.
    body = "\n".join(["", *lines[section.start + 1 : section.end]])
    return max(section.start + line_of(body, wanted[len(section.place) :]), 1)


def _holds(table: tuple[str | int, ...], wanted: tuple[str | int, ...]) -> bool:
    return wanted[: len(table)] == table


def _sections(lines: list[str]) -> list[_Section]:
    headers = [(n, found[1]) for n, line in enumerate(lines) if (found := _HEADER.match(line))]
    ends = [n for n, _ in headers[1:]] + [len(lines)]
    seen: Counter[tuple[str | int, ...]] = Counter()
    sections = []
    for (start, name), end in zip(headers, ends, strict=True):
        table, *part = re.split(r"\s*\.\s*", name)
        parent: tuple[str | int, ...] = (table, seen[(table,)] - 1, *part) if part else (table,)
        single = lines[start].lstrip()[:2] != "[["
        sections.append(_Section(parent if single else (*parent, seen[parent]), start, end))
        seen[parent] += 1
    return sections
