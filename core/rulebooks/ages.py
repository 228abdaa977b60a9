"""Ages on a date, and how a file writes a month and day or an hour."""

import re
from datetime import date
from typing import Any

_HOUR = re.compile(r"^([01]\d|2[0-3]):[0-5]\d$")
_MONTH_DAY = re.compile(r"^(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$")


def age_on(born: date, on: date) -> int:
    """Whole years lived on a date; one born on 29 February is a year older on 1 March.

    Raises ValueError for a date before the birth.
    """
    if on < born:
        raise ValueError(f"the birth date {born} lies after {on}: correct the birth date")
    return on.year - born.year - ((on.month, on.day) < (born.month, born.day))


def month_day(value: Any) -> Any:
    """Check a text such as "08-31"."""
    if not isinstance(value, str) or not _MONTH_DAY.match(value):
        raise ValueError(f'write month and day with two digits each, such as "08-31", not {value}')
    try:
        date(2000, *(int(part) for part in value.split("-")))
    except ValueError:
        raise ValueError(f"no month has a day {value}: correct it") from None
    return value


def age_from(value: Any) -> Any:
    """Check what the age goes by: "birthday", or a month and day."""
    return value if value == "birthday" else month_day(value)


def day_start(value: Any) -> Any:
    """Check when a day begins: "midnight", "game", or an hour such as "04:00"."""
    if value in ("midnight", "game") or (isinstance(value, str) and _HOUR.match(value)):
        return value
    raise ValueError(f'write "midnight", "game", or an hour of 24 such as "04:00", not {value}')
