"""The arguments of one Web API call, checked as Slack checks them."""

import json
from typing import Any

from bot.local.errors import ApiError
from bot.local.records import Json


class Arguments:
    """Reads arguments that came as a form or as JSON; a wrong one is `invalid_arguments`."""

    def __init__(self, given: Json) -> None:
        self.given = {name: value for name, value in given.items() if value is not None}

    def __contains__(self, name: str) -> bool:
        return name in self.given

    def text(self, name: str) -> str | None:
        """Return a string, or None when the argument is absent."""
        value = self.given.get(name)
        if value is None or isinstance(value, str):
            return value
        if isinstance(value, bool | dict | list):
            raise ApiError("invalid_arguments", f"[ERROR] must be a string [json-pointer:/{name}]")
        return str(value)

    def required(self, name: str) -> str:
        """Return a string that must be there and not empty."""
        value = self.text(name)
        if not value:
            raise ApiError("invalid_arguments", f"[ERROR] missing required field: {name}")
        return value

    def flag(self, name: str, *, default: bool = False) -> bool:
        """Return a boolean; forms send it as 1/0 or true/false."""
        value = self.given.get(name, default)
        if isinstance(value, bool):
            return value
        if str(value).lower() in ("1", "true"):
            return True
        if str(value).lower() in ("0", "false", ""):
            return False
        raise ApiError("invalid_arguments", f"[ERROR] must be a boolean [json-pointer:/{name}]")

    def number(self, name: str, default: int, most: int) -> int:
        """Return a whole number from 1 to `most`."""
        value = self.given.get(name, default)
        if str(value).isdigit() and 1 <= int(value) <= most:
            return int(value)
        raise ApiError("invalid_limit", f"[ERROR] must be 1 to {most} [json-pointer:/{name}]")

    def structure(self, name: str, error: str) -> Any:
        """Return a JSON value, which forms send as a string; None when absent."""
        value = self.given.get(name)
        if not isinstance(value, str):
            return value
        try:
            return json.loads(value) if value else None
        except ValueError:
            raise ApiError(error, f"[ERROR] not JSON [json-pointer:/{name}]") from None
