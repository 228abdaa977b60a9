"""`python -m core read`: one JSON object per line in, one per line out, in order."""

import json
from collections.abc import Iterable, Iterator
from datetime import datetime

from core.reading.reader import read

_AUTHORS = ("pitcher", "coach", "guardian")


class BadLineError(ValueError):
    """An input line that is no request; the message says what to change."""


def read_lines(lines: Iterable[str]) -> Iterator[str]:
    """Answer each line; a bad one is answered with its error, a blank one is skipped."""
    for line in lines:
        if line.strip():
            yield json.dumps(_answer(line), ensure_ascii=False)


def _answer(line: str) -> dict[str, object]:
    try:
        request = json.loads(line)
    except ValueError:
        return {"id": None, "error": "not a JSON object; write one object on each line"}
    if not isinstance(request, dict):
        return {"id": None, "error": "not a JSON object; write one object on each line"}
    try:
        return {"id": request.get("id"), **_reading(request)}
    except BadLineError as error:
        return {"id": request.get("id"), "error": str(error)}


def _reading(request: dict[str, object]) -> dict[str, object]:
    author = request.get("from", "pitcher")
    if author not in _AUTHORS:
        raise BadLineError('"from" must be "pitcher", "coach" or "guardian"')
    lang = request.get("lang")
    if lang not in (None, "en", "es"):
        raise BadLineError('"lang" must be "en" or "es", or left out')
    reading = read(
        _text(request), _posted(request), author, roster=_roster(request), lang=lang  # type: ignore[arg-type]  # checked above
    )  # fmt: skip
    return {
        "entries": [entry.as_json() for entry in reading.entries],
        "unread": [unread.text for unread in reading.unread],
    }


def _text(request: dict[str, object]) -> str:
    text = request.get("text")
    if not isinstance(text, str):
        raise BadLineError('"text" must be a string')
    return text


def _posted(request: dict[str, object]) -> datetime:
    try:
        return datetime.fromisoformat(str(request.get("posted"))).replace(tzinfo=None)
    except ValueError:
        raise BadLineError('"posted" must be a local ISO time such as 2026-04-18T20:10') from None


def _roster(request: dict[str, object]) -> tuple[str, ...]:
    names = request.get("roster", [])
    if not isinstance(names, list) or not all(isinstance(name, str) for name in names):
        raise BadLineError('"roster" must be a list of names')
    return tuple(names)
