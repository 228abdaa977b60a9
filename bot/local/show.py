"""Shows the workspace in the terminal: one entry after the other, readable without colour."""

from collections.abc import Callable, Iterable
from datetime import date, datetime

from rich.console import Console
from rich.text import Text

from bot.local.clubhouse import Clubhouse
from bot.local.entries import Entry, Observer
from bot.local.moments import day_and_time
from bot.local.mrkdwn import as_text, emoji
from bot.local.records import Channel, Person

#: Wider lines are tiresome to read; in narrower ones nothing fits beside the time.
WIDEST, NARROWEST = 96, 40
INDENT = 7  # "20:45  "


class Screen:
    """Prints what happens in a clubhouse."""

    def __init__(
        self, console: Console, club: Clubhouse, problems: Callable[[], Iterable[str]] = tuple
    ) -> None:
        """Print to `console` what this club's people and bot do from `show` to `show`.

        `problems` gives what went wrong behind the screen since it was asked last.
        """
        self._console, self._club, self._problems = console, club, problems
        self._observer = Observer(club.ws)
        self._day: date | None = None
        self._time, self._gap = "", True

    def show(self) -> bool:
        """Print what happened since the last time; whether the bot did any of it."""
        entries = self._observer.entries(self._club.news())
        for entry in entries:
            self._entry(entry)
        if any(entry.by_bot for entry in entries):
            self._console.print()
            self._time, self._gap = "", True
        for problem in self._problems():
            self.note(f"! {problem}")
        return any(entry.by_bot or entry.emoji for entry in entries)

    def note(self, sentence: str = "", label: str = "") -> None:
        """Print a sentence of the terminal's own, all of it to the right of a label."""
        self._print(Text(sentence), label, " " * len(label))
        self._gap = not sentence

    def page(self, entry: Entry) -> None:
        """Print something that somebody looks at, and that nobody did."""
        self._entry(entry)
        self._console.print()
        self._time, self._gap = "", True

    def where(self, person: Person, channel: Channel) -> str:
        """Who speaks where, as the prompt says it."""
        place = f"in #{channel.name}" if channel.name else "→ Spinkeeper (direct message)"
        return f"{day_and_time(self._club.local_now)}  {person.real_name} {place}"

    def _entry(self, entry: Entry) -> None:
        moment = self._moment(entry)
        self._new_day(moment.date())
        self._gap = False
        time = moment.strftime("%H:%M")
        stamp = time if time != self._time or not entry.by_bot else ""
        self._time = time
        head = Text(entry.head, style="green" if entry.by_bot else "cyan")
        pictures = " ".join(emoji(name) for name in entry.emoji)
        head.append(f"  {pictures}" if pictures else "")
        self._print(head, f"{stamp:{INDENT}}", " " * INDENT)
        self._body(entry)

    def _body(self, entry: Entry) -> None:
        edge = " " * INDENT + ("│ " if entry.by_bot else "")
        if entry.body:
            self._print(as_text(entry.body, self._observer.name_of), edge, edge)
        if entry.buttons:
            labels = "  ".join(f"[{label}]" for label in entry.buttons)
            self._print(Text(labels), edge, edge)

    def _print(self, text: Text, first: str, edge: str) -> None:
        """Print wrapped text; the first row begins with `first`, the others with `edge`."""
        rows = text.wrap(self._console, self._width - len(edge))
        for number, row in enumerate(rows):
            line = Text(edge if number else first, style="dim").append_text(row)
            line.rstrip()
            self._console.print(line, soft_wrap=True, highlight=False)

    def _new_day(self, day: date) -> None:
        if day != self._day:
            if not self._gap:
                self._console.print()
            title = f"── {day:%A} {day.day} {day:%B} "
            self._console.print(Text(f"{title:─<{self._width}}", style="bold"), soft_wrap=True)
            self._day = day

    def _moment(self, entry: Entry) -> datetime:
        if entry.ts is None:
            return self._club.local_now
        return datetime.fromtimestamp(float(entry.ts), self._club.zone)

    @property
    def _width(self) -> int:
        return min(max(self._console.width, NARROWEST), WIDEST)
