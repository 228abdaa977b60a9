"""Where in a TOML text a key stands, so that an error can name its line."""

import re
from collections.abc import Sequence

_HEADER = re.compile(r"^\s*(\[\[?)\s*([\w-]+)\s*\]")


def line_of(text: str, place: Sequence[str | int]) -> int:
    """The 1-based line of a path such as ("rule", 3, "rows", 2): the nearest line above it."""
    lines = text.splitlines()
    parts = list(place)
    start, end = 0, _next_header(lines, 0)
    if parts and _is_table(lines, str(parts[0])):
        name = str(parts.pop(0))
        nth = int(parts.pop(0)) if parts and isinstance(parts[0], int) else 0
        start = _nth_header(lines, name, nth)
        end = _next_header(lines, start + 1)
    return _inside(lines, start, end, parts) + 1


def _is_table(lines: list[str], name: str) -> bool:
    return any((found := _HEADER.match(line)) and found[2] == name for line in lines)


def _nth_header(lines: list[str], name: str, nth: int) -> int:
    at = [n for n, line in enumerate(lines) if (m := _HEADER.match(line)) and m[2] == name]
    return at[min(nth, len(at) - 1)]


def _next_header(lines: list[str], start: int) -> int:
    later = (n for n in range(start, len(lines)) if _HEADER.match(lines[n]))
    return next(later, len(lines))


def _inside(lines: list[str], start: int, end: int, parts: list[str | int]) -> int:
    """The line of a key, and of the nth inline table in its array."""
    if not parts:
        return start
    key = re.compile(rf"^\s*{re.escape(str(parts[0]))}\s*=")
    at = next((n for n in range(start, end) if key.match(lines[n])), start)
    nth = parts[1] if len(parts) > 1 and isinstance(parts[1], int) else 0
    return _nth_opening(lines, at, end, nth)


def _nth_opening(lines: list[str], at: int, end: int, nth: int) -> int:
    """The line on which the nth outermost inline table opens; the first line without one."""
    depth = 0
    for n in range(at, end):
        for character in lines[n].split("#")[0]:
            if character == "{" and depth == 0:
                nth -= 1
                if nth < 0:
                    return n
            depth += {"{": 1, "}": -1}.get(character, 0)
    return at
