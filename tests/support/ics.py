"""Small iCalendar files for tests, written by hand as RFC 5545 prescribes."""


def event(*lines: str) -> str:
    """One VEVENT with these content lines."""
    return "\r\n".join(["BEGIN:VEVENT", "DTSTAMP:20260401T000000Z", *lines, "END:VEVENT"])


def calendar(*events: str, head: str = "") -> bytes:
    """A VCALENDAR with these events."""
    begin = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Example//Test//EN"]
    rows = [*begin, *([head] if head else []), *events, "END:VCALENDAR", ""]
    return "\r\n".join(rows).encode()


def game(uid: str, start: str, title: str = "Game vs Summit", *more: str) -> str:
    """A game of two hours."""
    return event(f"UID:{uid}", f"DTSTART{start}", "DURATION:PT2H", f"SUMMARY:{title}", *more)
