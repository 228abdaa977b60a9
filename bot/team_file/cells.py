"""The cells and values of the two files: how each kind is read, and what is said of a bad one."""

from datetime import date, datetime
from typing import Annotated
from zoneinfo import available_timezones

from pydantic import AfterValidator, BeforeValidator

from core.audience import LOWEST_ACCOUNT_AGE
from core.reading.coach_words import speaks_of_pain
from core.roster.quiet_hours import BEGINS, ENDS

#: A club may ask for more than Slack's lowest age, up to adulthood.
HIGHEST_ACCOUNT_AGE = 18
LONGEST_NAME = 80
#: Room for what a coach says of one activity on a rest day (characters).
LONGEST_WORDS = 200


def _text(value: object) -> str:
    if not isinstance(value, str) or not value.strip():
        raise ValueError("is empty; fill it in.")
    return _no_longer(value, LONGEST_NAME)


def _no_longer(value: str, longest: int) -> str:
    text = " ".join(value.split())
    if len(text) > longest:
        raise ValueError(f"is longer than {longest} characters; shorten it.")
    return text


def _words(value: object) -> str:
    if not isinstance(value, str):
        raise ValueError('must be words between quotes, like "hitting is fine".')
    if not value.strip():
        raise ValueError("is empty; fill it in, or leave the key out.")
    return _no_longer(value, LONGEST_WORDS)


def _texts(value: object) -> tuple[str, ...]:
    """A TOML array of texts, or one cell whose parts are separated by semicolons."""
    parts = value.split(";") if isinstance(value, str) else value
    if not isinstance(parts, list):
        raise ValueError('must be a list of names, like ["first", "second"].')
    return tuple(_text(part) for part in parts if not isinstance(part, str) or part.strip())


def _array(value: object) -> tuple[str, ...]:
    if isinstance(value, str):
        raise ValueError(f'must be a list, like ["{value}"].')
    return _texts(value)


def _optional_text(value: object) -> str | None:
    return _text(value) if isinstance(value, str) and value.strip() else None


def _day(value: object) -> date:
    if isinstance(value, date) and not isinstance(value, datetime):
        return value
    try:
        return date.fromisoformat(value.strip() if isinstance(value, str) else "")
    except ValueError:
        raise ValueError(
            f"“{value}” is no date that can be read one way only; write year-month-day, "
            "like 2012-06-01."
        ) from None


def _optional_day(value: object) -> date | None:
    return None if value is None or value == "" else _day(value)


def one_of(**names: str) -> BeforeValidator:
    """A validator that takes one of the names, in any case, and gives its stored value."""

    def read(value: object) -> str:
        typed = value.strip().casefold() if isinstance(value, str) else ""
        if typed not in names:
            raise ValueError(f"“{value}” is not known; write {_or(list(names))}.")
        return names[typed]

    return BeforeValidator(read)


def _or(words: list[str]) -> str:
    return f"{', '.join(words[:-1])} or {words[-1]}" if len(words) > 1 else words[0]


def _zone(value: str) -> str:
    if value not in available_timezones():
        raise ValueError(
            f"“{value}” is no IANA time zone; write one like America/Chicago (Area/City)."
        )
    return value


def _account_age(value: object) -> int:
    whole = isinstance(value, int) and not isinstance(value, bool)
    if not whole or not LOWEST_ACCOUNT_AGE <= int(str(value)) <= HIGHEST_ACCOUNT_AGE:
        raise ValueError(
            f"is {value}; write {LOWEST_ACCOUNT_AGE} to {HIGHEST_ACCOUNT_AGE}. Slack's terms "
            f"do not allow accounts under {LOWEST_ACCOUNT_AGE}; a club may only ask for more."
        )
    return int(str(value))


def _hour_of(offered: tuple[int, ...]) -> BeforeValidator:
    """One of the hours that a club may choose for its quiet hours."""

    def read(value: object) -> int:
        if isinstance(value, bool) or value not in offered:
            raise ValueError(
                f"is {value}; write {min(offered)} to {max(offered)}. Quiet hours may be longer "
                f"than 20 to 8, never shorter."
            )
        return int(str(value))

    return BeforeValidator(read)


def _grade(value: object) -> int | None:
    text = str(value).strip() if value is not None else ""
    if not text:
        return None
    if not text.isdecimal() or not 1 <= int(text) <= 12:
        raise ValueError(f"“{text}” is no school grade; write 1 to 12, or leave it empty.")
    return int(text)


def _at_least_one(value: tuple[str, ...]) -> tuple[str, ...]:
    if not value:
        raise ValueError("is empty; name at least one.")
    return value


def _of_no_pain(words: str | None) -> str | None:
    if words is not None and speaks_of_pain(words):
        raise ValueError(
            "speaks of pain, soreness or an injury; families and minors read these words, so put "
            "them in others."
        )
    return words


Text = Annotated[str, BeforeValidator(_text)]
OptionalText = Annotated[str | None, BeforeValidator(_optional_text)]
Texts = Annotated[tuple[str, ...], BeforeValidator(_texts)]
Array = Annotated[tuple[str, ...], BeforeValidator(_array)]
FullArray = Annotated[tuple[str, ...], AfterValidator(_at_least_one), BeforeValidator(_array)]
Day = Annotated[date, BeforeValidator(_day)]
OptionalDay = Annotated[date | None, BeforeValidator(_optional_day)]
Zone = Annotated[Text, AfterValidator(_zone)]
AccountAge = Annotated[int, BeforeValidator(_account_age)]
QuietFrom = Annotated[int, _hour_of(BEGINS)]
QuietTo = Annotated[int, _hour_of(ENDS)]
Grade = Annotated[int | None, BeforeValidator(_grade)]
#: The coach's own words; null where the key is left out.
Words = Annotated[str | None, AfterValidator(_of_no_pain), BeforeValidator(_words)]
