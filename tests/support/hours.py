"""Letting simulated time go by in the club, with the bot's tick at every stop."""

from datetime import UTC, datetime, timedelta

from tests.support.club import Club


def chicago(day: str, clock: str) -> datetime:
    """A moment of the club's year 2026 in summer time, as UTC: "05-04", "07:00"."""
    local = datetime.fromisoformat(f"2026-{day}T{clock}")
    return (local + timedelta(hours=5)).replace(tzinfo=UTC)


def go_to(club: Club, moment: datetime) -> None:
    """Let time go by hour by hour, ticking at each and whenever something is due."""
    club.bot.tick(club.clock.now())
    while (now := club.clock.now()) < moment:
        due = club.bot.next_due(now)
        stops = [moment, now + timedelta(hours=1)]
        club.clock.set(min([*stops, *([due] if due is not None and due > now else [])]))
        club.bot.tick(club.clock.now())
    club.settle()


def skip_to(club: Club, moment: datetime) -> None:
    """Let time go by, ticking only when something is due: quick over days."""
    club.bot.tick(club.clock.now())
    while (now := club.clock.now()) < moment:
        due = club.bot.next_due(now)
        club.clock.set(min(moment, due) if due is not None and due > now else moment)
        club.bot.tick(club.clock.now())
    club.settle()


def start(club: Club) -> None:
    """The first tick, from which on the schedules count."""
    club.bot.tick(club.clock.now())
