"""Ages on a date, and month-and-day texts."""

import re
from datetime import date
from typing import Any

_MONTH_DAY = re.compile(r"^(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$")


def age_on(born: date, on: date) -> int:
    """Whole years lived on a date; one born on 29 February is a year older on 1 March.

    Raises ValueError for a date before the birth.
    """
    if on < born:
        raise ValueError(f"the birth date {born} lies after {on}: correct the birth date")
    return on.year - born.year - ((on.month, on.day) < (born.month, born.day))


def month_day(value: Any) -> Any:
    """Check a text such as "08-31"; "birthday" and other values pass on to the next check."""
    if not isinstance(value, str) or value == "birthday":
        return value
    if not _MONTH_DAY.match(value):
        raise ValueError(f'write month and day with two digits each, such as "08-31", not {value}')
    date(2000, *(int(part) for part in value.split("-")))
    return value
