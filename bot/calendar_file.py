"""Items of a calendar as an iCalendar file (RFC 5545); the format is left to a library."""

from collections.abc import Iterable
from datetime import datetime, timedelta
from typing import Any

from bot.wording import feed as say
from core.calendar.feed import Item

PRODUCT = "-//Spinkeeper//Pitching log//EN"


def as_ics(items: Iterable[Item], name: str, now: datetime) -> bytes:
    """The file: CRLF lines of at most 75 bytes, folded; made at `now` (UTC)."""
    from icalendar import Calendar, vText  # imported here: most processes write no file

    calendar = Calendar()
    calendar.add("prodid", PRODUCT)
    calendar.add("version", "2.0")
    calendar.add("x-wr-calname", vText(name))  # what programs show, beside the standard
    for item in items:
        calendar.add_component(_event(item, now))
    return bytes(calendar.to_ical())


def _event(item: Item, now: datetime) -> Any:
    from icalendar import Event

    event = Event()
    event.add("uid", item.uid)
    event.add("dtstamp", item.changed_at or now)
    event.add("sequence", item.sequence)
    event.add("summary", say.summary(item))
    event.add("class", "PRIVATE")
    if item.starts is not None:
        event.add("dtstart", item.starts)
        if item.ends is not None and item.ends > item.starts:
            event.add("dtend", item.ends)
    else:
        event.add("dtstart", item.first)
        event.add("dtend", item.last + timedelta(days=1))  # exclusive: 3.6.1
        event.add("transp", "TRANSPARENT")
    if say.note(item):
        event.add("description", say.note(item))
    if not item.is_of_an_arm:
        event.add("status", "CANCELLED" if item.cancelled else "CONFIRMED")
    return event
