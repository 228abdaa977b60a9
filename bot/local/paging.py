"""Cursor pagination, as the list methods of the Web API do it."""

import base64
from collections.abc import Sequence
from typing import TypeVar

from bot.local.arguments import Arguments
from bot.local.errors import ApiError
from bot.local.records import Json

T = TypeVar("T")
MOST = 1000


def page(items: Sequence[T], args: Arguments, default: int = 100) -> tuple[list[T], str]:
    """Return one page and the cursor of the next one ("" after the last).

    Raises ApiError `invalid_cursor` for a cursor that was not given out here.
    """
    limit = args.number("limit", default, MOST)
    start = _position(args.text("cursor") or "")
    end = start + limit
    cursor = base64.b64encode(f"next:{end}".encode()).decode() if end < len(items) else ""
    return list(items[start:end]), cursor


def next_cursor(cursor: str) -> Json:
    """Return the part of an answer that carries the cursor."""
    return {"response_metadata": {"next_cursor": cursor}}


def _position(cursor: str) -> int:
    if not cursor:
        return 0
    try:
        mark, _, position = base64.b64decode(cursor, validate=True).decode().partition(":")
    except ValueError:
        raise ApiError("invalid_cursor") from None
    if mark != "next" or not position.isdigit():
        raise ApiError("invalid_cursor")
    return int(position)
