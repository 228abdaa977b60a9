"""The prompt: type as anybody in the club, and see what the bot does about it."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from datetime import timedelta

from bot.local.buttons import find_button
from bot.local.clubhouse import Clubhouse
from bot.local.commands import ANYTHING_ELSE, COMMANDS, Typed, UsageError, parse
from bot.local.entries import home_entry
from bot.local.errors import ScriptError
from bot.local.filling import filled
from bot.local.moments import MomentError, day_and_time, parse_moment
from bot.local.people import NobodyError, Roles, find_channel, find_person
from bot.local.records import Channel, Person
from bot.local.replay import let_time_pass
from bot.local.show import Screen

#: What goes by between two lines that are typed.
A_MOMENT = timedelta(minutes=1)


@dataclass(frozen=True, slots=True)
class Seat:
    """Who speaks, and where: a channel's key or "dm"."""

    person: Person
    where: str


class Prompt:
    """Does what is typed; `seat` says who speaks next, and where."""

    def __init__(self, club: Clubhouse, screen: Screen, roles: Roles) -> None:
        """Begin as the first person of the first channel."""
        self._club, self._screen, self._roles = club, screen, roles
        first = next(iter(club.channels))
        self.seat = Seat(club.ws.state.person(club.channels[first].members[0]), first)
        self._do: dict[str, Callable[[str], object]] = {
            "as": self._as,
            "in": self._in,
            "go": self._go,
            "edit": self._edit,
            "delete": self._delete,
            "press": self._press,
            "home": self._home,
            "fill": self._fill,
            "say": self._say,
            "people": self._people,
            "channels": self._channels,
            "help": self._help,
        }

    def run(self, lines: Iterable[str]) -> None:
        """Do every line until there is no more, or until `quit`."""
        for line in lines:
            try:
                typed = parse(line)
                if typed is not None and typed.command == "quit":
                    return
                if typed is not None:
                    self.do(typed)
            except (UsageError, MomentError, NobodyError, ScriptError) as wrong:
                self._screen.note(str(wrong))

    def do(self, typed: Typed) -> None:
        """Do one command; raises the error that says in a sentence why it cannot be done."""
        self._do[typed.command](typed.argument)

    def label(self) -> str:
        """The simulated time, who speaks and where."""
        return self._screen.where(self.seat.person, self._channel)

    @property
    def _channel(self) -> Channel:
        return self._club.place(self.seat.where, self.seat.person)

    def _as(self, words: str) -> None:
        person = find_person(words, self._club.people, self._roles)
        where = self.seat.where
        if where != "dm" and person.id not in self._club.channels[where].members:
            where = next(iter(self._places_of(person)), "dm")
        self.seat = Seat(person, where)

    def _in(self, words: str) -> None:
        where = find_channel(words, self._club.channels)
        name, theirs = self.seat.person.real_name, self._places_of(self.seat.person)
        if where != "dm" and where not in theirs:
            raise NobodyError(
                f"{name} is not in #{self._club.channels[where].name}; "
                f"{name} can write in {', '.join([*theirs, 'dm'])}."
            )
        self.seat = replace(self.seat, where=where)

    def _places_of(self, person: Person) -> list[str]:
        return [which for which, one in self._club.channels.items() if person.id in one.members]

    def _go(self, words: str) -> None:
        shown: list[bool] = []
        until = parse_moment(words, self._club.local_now)
        let_time_pass(self._club, until, lambda: shown.append(self._screen.show()))
        if not any(shown):
            self._screen.note(f"Spinkeeper sends nothing until {day_and_time(until)}.")

    def _say(self, text: str) -> None:
        self._moment_passes()
        if text.startswith("/"):  # Slack takes it for a command, not for a message
            self._club.command(self.seat.person, self._channel, text)
        else:
            self._club.say(self.seat.person, self._channel, text)
        self._answered()

    def _edit(self, text: str) -> None:
        said = self._club.last_said(self.seat.person)
        self._moment_passes()
        self._club.ws.edit(said, text)
        self._answered()

    def _delete(self, _nothing: str) -> None:
        said = self._club.last_said(self.seat.person)
        self._moment_passes()
        self._club.delete(said)
        self._answered()

    def _press(self, label: str) -> None:
        person = self.seat.person
        found = find_button(self._club.ws, person, self._channel, label)
        self._moment_passes()
        found.press(self._club.ws, person)
        self._answered()

    def _home(self, _nothing: str) -> None:
        person = self.seat.person
        self._moment_passes()
        self._club.ws.open_home(person)
        self._club.settle()
        self._screen.show()
        view = self._club.ws.home(person)
        if view is not None:
            self._screen.page(home_entry(person.real_name, view))

    def _fill(self, typed: str) -> None:
        person, ws = self.seat.person, self._club.ws
        values = filled(ws.top_view(person).content["blocks"], typed)
        self._moment_passes()
        sent = ws.submit(person, values)
        self._club.settle()
        for block, complaint in ws.errors_of(sent).items():
            self._screen.note(complaint, f"{block}: ")
        self._answered()

    def _moment_passes(self) -> None:
        let_time_pass(self._club, self._club.clock.now() + A_MOMENT, self._screen.show)

    def _answered(self) -> None:
        self._club.settle()
        if not self._screen.show():
            self._screen.note("Spinkeeper says nothing to that.")

    def _people(self, _nothing: str) -> None:
        for which, person in self._club.people.items():
            self._row(which, person.real_name, self._roles.of.get(person.id, ""))
        for name, others in self._roles.logged_for.items():
            who = ", ".join(others) or "the staff"
            self._row("-", name, f"pitcher, logged by {who}")

    def _channels(self, _nothing: str) -> None:
        for which, channel in self._club.channels.items():
            mine = ", you are in" if self.seat.person.id in channel.members else ""
            people = len(channel.members) - 1
            self._row(which, f"#{channel.name}", f"{channel.kind}, {people} people{mine}")
        self._row("dm", "Spinkeeper", "direct message")

    def _row(self, which: str, name: str, says: str) -> None:
        self._screen.note(says, f"{which:<9} {name:<18} ")

    def _help(self, _nothing: str) -> None:
        width = max(len(command.usage) for command in COMMANDS) + 2
        for command in COMMANDS:
            self._screen.note(command.says, f"{command.usage:{width}}")
        self._screen.note(ANYTHING_ELSE)
