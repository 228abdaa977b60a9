"""The team's calendar in words: what was put on it, what was called off, what stands there."""

from collections.abc import Sequence
from datetime import date, time

from bot.wording.words import counted, day, listed, safe, sentences
from core.calendar.bring import Changes
from core.model import CalendarEntry, CalendarSource, EntryKind

KINDS = {EntryKind.GAME: ("game", "games"), EntryKind.PRACTICE: ("practice", "practices")}
ALREADY = "That is on the calendar already; nothing was changed."
TAKEN_BACK = "Taken back: the calendar is as it was before this line."
NO_MORE = (
    "I read no calendar address any more. What came from it is off the calendar; what the staff "
    "typed stays."
)
HOW = (
    "Put one on with “game sat 10am vs Summit” or “practice tue 5pm”, call one off with “no game "
    "sat”. “calendar https://…” reads a calendar address once a day."
)


def clock(at: time) -> str:
    """A time of day: "10 am", "5:30 pm", "noon"."""
    if at == time(12):
        return "noon"
    half = "am" if at.hour < 12 else "pm"
    minutes = f":{at.minute:02}" if at.minute else ""
    return f"{at.hour % 12 or 12}{minutes} {half}"


def entry(one: CalendarEntry) -> str:
    """One entry: "game Sat 9 May, 10 am, vs Summit"."""
    name = KINDS[EntryKind(one.kind)][0]
    return f"{name} {day(one.on)}{_when(one)}{_what(one)}"


def _when(one: CalendarEntry) -> str:
    if one.at is None:
        return ""
    if one.until is None:
        return f", {clock(one.at)}"
    return f", {clock(one.at)} to {clock(one.until)}"


def _what(one: CalendarEntry) -> str:
    if not one.title:
        return ""
    typed = one.line_id is not None and one.kind == EntryKind.GAME
    return f", vs {safe(one.title)}" if typed else f" ({safe(one.title)})"


def added(team: str, entries: Sequence[CalendarEntry]) -> str:
    """What a line put on the calendar."""
    if len(entries) > 4:
        first, last = entries[0], entries[-1]
        kinds = counted(len(entries), *KINDS[EntryKind(first.kind)])
        begins = f"{day(first.on)}{_when(first)}{_what(first)}"
        return f"On the calendar of {safe(team)}: {kinds}, from {begins}, to {day(last.on)}."
    return f"On the calendar of {safe(team)}: {'; '.join(entry(one) for one in entries)}."


def called_off(team: str, entries: Sequence[CalendarEntry]) -> str:
    """What a line called off."""
    return f"Called off for {safe(team)}: {'; '.join(entry(one) for one in entries)}."


def will_read(team: str) -> str:
    """An address was set; whether it can be read is told when it was."""
    return (
        f"I read that calendar for {safe(team)} within a minute or two and then once a day, and "
        "say here what I found. Whoever knows the address can read the calendar, so I repeat it "
        "nowhere."
    )


def was_read(team: str, source: CalendarSource, following: CalendarEntry | None) -> str:
    """What a calendar address holds, when it was read for the first time, or again."""
    told = [
        counted(source.games, *KINDS[EntryKind.GAME]),
        counted(source.practices, *KINDS[EntryKind.PRACTICE]),
    ]
    left_out = ""
    if source.left_out:
        left_out = (
            f" {counted(source.left_out, 'event')} left out: neither “game”, “vs” nor “practice” "
            "in the title."
        )
    coming = f" Next: {entry(following)}." if following is not None else ""
    return (
        f"I read the calendar of {safe(team)}: {listed(told)}.{left_out}{coming} I read it again "
        "once a day; “stop the calendar” ends that."
    )


def not_read(team: str, problem: str, was_read_before: bool) -> str:
    """A calendar address that could not be read; what stands is kept."""
    kept = "What came from it before stays on the calendar. " if was_read_before else ""
    return (
        f"I could not read the calendar of {safe(team)}: {PROBLEMS[problem]} {kept}I try again "
        "every two hours and say so when it works. “stop the calendar” ends that."
    )


#: Why a calendar cannot be used, and what to do.
PROBLEMS = {
    "address": "the address is no public https address. Copy the calendar's own link once more.",
    "not found": "nothing is there, or only for those who are signed in. Copy a link that works "
    "without signing in.",
    "no answer": "its server gave no answer. Check the address.",
    "too slow": "its server took too long.",
    "too large": "it is larger than 2 MB. Use the calendar of the team alone.",
    "no calendar": "what is there is no iCalendar file. Look for a link that ends in .ics or is "
    "called iCal.",
    "no events": "it holds no events.",
    "too often": "an event in it recurs within the hour, which no team does.",
    "too many": "it holds more than 2,000 events. Use the calendar of the team alone.",
}


def unclear(reason: str, about: str, choices: Sequence[str]) -> str:
    """Why a line changed nothing, and what to write."""
    if reason == "team":
        return (
            "I changed nothing yet: you coach more than one team. For which one is it? You can "
            "also add “for 14U”."
        )
    if reason == "moved":
        return (
            f"I changed nothing: I cannot move a {safe(about)}. Call it off and put it on anew, "
            f"for example “no {safe(about)} sat 10am”, then “{safe(about)} sat 11am vs Summit”."
        )
    if reason == "hour":
        times = listed([safe(one) for one in choices], last="or")
        return (
            f"I changed nothing yet: is “{safe(about)}” the time, {times}? A date reads as 5/10; a "
            "count needs the pitcher's name."
        )
    if reason == "https":
        return "I changed nothing: a calendar's address must begin with https:// or webcal://."
    if reason == "nothing":
        days = listed([day(date.fromisoformat(one)) for one in choices], last="or")
        return f"I changed nothing: there is no such {safe(about)} on the calendar on {days}."
    return (
        f"I changed nothing: “{safe(about)}” is not clear. Write for example “game sat 10am vs "
        "Summit”, “practice 5/12 5-7pm” or “doubleheader sun 9am vs Ridge”."
    )


def listing(team: str, entries: Sequence[CalendarEntry], until: date, *, for_staff: bool) -> str:
    """What stands on a calendar from today on; the staff read how to change it."""
    head = f"*Calendar of {safe(team)}*, until {day(until)}"
    rows = [f"• {entry(one)[0].upper()}{entry(one)[1:]}" for one in entries]
    return sentences([head, *(rows or ["Nothing is on it."]), HOW if for_staff else ""])


def imported(team: str, changes: Changes) -> str:
    """What an import changed, for whoever typed the command."""
    return (
        f"{team}: {counted(changes.games, 'game')} and {counted(changes.practices, 'practice')} in "
        f"the calendar, {changes.left_out} other events left out. {changes.new} new, "
        f"{changes.changed} changed, {changes.gone} called off."
    )
