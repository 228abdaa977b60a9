"""What may be typed at the prompt: a command from the table, or a line that is said."""

from collections.abc import Iterable
from dataclasses import dataclass

from bot.local.moments import EXAMPLES


@dataclass(frozen=True, slots=True)
class Command:
    """One row of the table; `usage` is its name and, in capitals, what must follow."""

    usage: str
    says: str

    @property
    def name(self) -> str:
        """The first word."""
        return self.usage.split()[0]

    @property
    def wants_more(self) -> bool:
        """Whether something must follow the first word."""
        return self.usage != self.name


COMMANDS = (
    Command("as NAME", "speak as this person (`people` lists them)"),
    Command("in CHANNEL", "speak in this channel; `in dm` writes to Spinkeeper directly"),
    Command("go to WHEN", f"let time go by: {EXAMPLES}"),
    Command("edit TEXT", "edit your last line"),
    Command("delete", "delete your last line"),
    Command("press LABEL", "press a button that you see"),
    Command("home", "open your Home tab"),
    Command("fill LABEL = VALUE; ...", "fill in the form in front of you, and send it"),
    Command("say TEXT", "say TEXT even where it begins like a command"),
    Command("people", "who is who"),
    Command("channels", "where one can write"),
    Command("help", "this list"),
    Command("quit", "leave (or Ctrl-D)"),
)
ANYTHING_ELSE = "Anything else is said by the person, in the channel, that the prompt names."
BY_NAME = {command.name: command for command in COMMANDS}


@dataclass(frozen=True, slots=True)
class Typed:
    """A command and what follows it; a plain line is the command `say`."""

    command: str
    argument: str = ""


class UsageError(Exception):
    """A command lacks what must follow it; the message is one sentence for a person."""


def parse(line: str) -> Typed | None:
    """What a typed line means; none for an empty one.

    A line that only begins with a command's word is said: "go team", "people say ...".
    Raises `UsageError` when what must follow is missing.
    """
    line = line.strip()
    first, _, rest = line.partition(" ")
    rest = rest.strip()
    command = BY_NAME.get(first if rest else first.casefold())
    if not line:
        return None
    if command is None or (rest and not command.wants_more):
        return Typed("say", line)
    if command.name == "go":
        return _go(line, rest)
    if command.name == "fill" and rest and "=" not in rest:
        return Typed("say", line)  # "fill in for Leo"
    if command.wants_more and not rest:
        raise UsageError(f"{command.usage}: {command.says}.")
    return Typed(command.name, rest)


def complete(line: str, people: Iterable[str], channels: Iterable[str]) -> list[str]:
    """What may stand for the last thing begun in `line`: commands, people or channels."""
    first, space, rest = line.lstrip().partition(" ")
    if not space:
        return [command.name for command in COMMANDS if command.name.startswith(first)]
    offered = {"as": people, "in": [*channels, "dm"]}.get(first, [])
    return [word for word in offered if word.casefold().startswith(rest.casefold())]


def _go(line: str, rest: str) -> Typed:
    """`go to WHEN` and `go +2h` are commands; "go team" and "go get them" are said."""
    _, to, when = rest.partition("to ")
    if rest.startswith("+"):
        return Typed("go", rest)
    if to and rest.startswith("to "):
        return Typed("go", when.strip())
    if rest in {"", "to"}:
        raise UsageError(f"go to WHEN: {BY_NAME['go'].says}.")
    return Typed("say", line)
