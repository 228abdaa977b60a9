"""What a line says: entries, and what could not be read, as plain values."""

from dataclasses import dataclass, fields
from datetime import date
from enum import StrEnum


class UnreadReason(StrEnum):
    """Why a part of a line was not read; the bot puts it in words."""

    UNKNOWN_NUMBER = "unknown_number"  # a number that nothing in the line explains
    UNKNOWN_PITCH = (
        "unknown_pitch"  # a count of something that is no one pitch type ("12 offspeed")
    )
    TWO_READINGS = "two_readings"  # two values, or two meanings, fit
    VAGUE = "vague"  # a count without a number ("a few curves", "over 60")
    IMPOSSIBLE = "impossible"  # counts that contradict each other or the rules of arithmetic
    UNLIKELY = "unlikely"  # possible, but far outside what is seen in a game
    UNKNOWN_KIND = "unknown_kind"  # throwing whose kind the line leaves open ("threw bp")
    UNCLEAR_PAIN = "unclear_pain"  # pain words that fit no body site, or contradict each other
    UNCLEAR_DAY = "unclear_day"  # a day that could be two days, or lies ahead
    UNKNOWN_WORD = "unknown_word"  # a word beside a count that may change what it means
    UNCLEAR_PERSON = "unclear_person"  # counts that could be more than one person's
    TOO_LONG = "too_long"  # over 4,000 characters: nothing was read


@dataclass(frozen=True, slots=True)
class Detail:
    """What clashed with what: `field` was `value`, against `limit_field` at `limit`.

    "70 breaking balls of 62 pitches" is ("breaking", 70, "pitches", 62).
    """

    field: str
    value: int | None = None
    limit_field: str | None = None
    limit: int | None = None


@dataclass(frozen=True, slots=True)
class Unread:
    """A part of the line, as typed, that needs a question."""

    text: str
    reason: UnreadReason
    detail: Detail | None = None


@dataclass(frozen=True, slots=True)
class Pain:
    """One painful site; severity 0-10 only when a number was given."""

    site: str
    severity: int | None = None
    side: str | None = None
    when: str | None = None
    sore: bool = False

    def as_json(self) -> dict[str, object]:
        """The stated keys alone."""
        stated = {
            "site": self.site,
            "severity": self.severity,
            "side": self.side,
            "when": self.when,
        }
        out: dict[str, object] = {key: value for key, value in stated.items() if value is not None}
        return out | ({"sore": True} if self.sore else {})


@dataclass(frozen=True, slots=True)
class Entry:
    """One outing, practice, day off or pain report. None means that the line does not say."""

    who: str | None = None
    except_: tuple[str, ...] = ()
    kind: str | None = None
    on: date | None = None
    pitches: int | None = None
    breaking: int | None = None
    curve: int | None = None
    slider: int | None = None
    changeup: int | None = None
    fastball: int | None = None
    strikes: int | None = None
    breaking_strikes: int | None = None
    outs: int | None = None
    caught_outs: int | None = None
    effort: int | None = None
    pain: tuple[Pain, ...] | None = None
    about: bool = False
    tired: bool | None = None
    day_named: bool = False  # the line names a day for it, the posted day included

    def says_something(self) -> bool:
        """Whether any key is stated."""
        if self.pitches is not None or self.kind is not None:
            return True  # most do, and it is quick to see
        return self != (_DAY_ALONE if self.day_named else _NOTHING)

    def as_json(self) -> dict[str, object]:
        """The stated keys alone, by their names in the line format (`except`, ISO dates)."""
        out: dict[str, object] = {}
        for field in fields(self):
            value = getattr(self, field.name)
            if field.name == "day_named":
                continue
            if value is not None and value != _UNSTATED.get(field.name):
                out[field.name.rstrip("_")] = _plain(value)
        return out


@dataclass(frozen=True, slots=True)
class Reading:
    """What a line says. While `unread` is not empty, ask before using what depends on it."""

    entries: tuple[Entry, ...]
    unread: tuple[Unread, ...]
    lang: str


_NOTHING, _DAY_ALONE = Entry(), Entry(day_named=True)
_UNSTATED: dict[str, object] = {"except_": (), "about": False}


def _plain(value: object) -> object:
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, tuple):
        return [item.as_json() if isinstance(item, Pain) else item for item in value]
    return value
