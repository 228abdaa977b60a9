"""What stands in the calendars that families and staff carry: no word of why an arm rests."""

from core.calendar.feed import Item, ItemKind

#: A plain sentence in each day of an arm.
NOTES = {
    ItemKind.REST: "Rest from pitching by rule, as the pitching log stands. The coach decides the "
    "count. League and local rules govern.",
    ItemKind.NO_THROWING: "Ask the coach or a parent.",
}


def summary(item: Item) -> str:
    """What stands on the day."""
    if item.kind is ItemKind.REST:
        return f"{item.whose}: rest day"
    if item.kind is ItemKind.NO_THROWING:
        return f"{item.whose}: no throwing"
    if item.kind is ItemKind.EVENT:
        return f"{item.whose}: {item.title}"
    return f"{item.whose}: {item.kind}" + (f" ({item.title})" if item.title else "")


def note(item: Item) -> str:
    """The sentence under it; empty for a team's events."""
    return NOTES.get(item.kind, "")


def written(name: str, whose: str, events: int) -> str:
    """What an export wrote, for whoever typed the command."""
    return (
        f"{name}: {events} events for {whose}. The file shows how things stand now; export it "
        "again when they change. It is about a minor: send it to that family alone."
    )
