"""`python -m bot` without Slack: the demo club's last week, then, on a terminal, a prompt."""

import io
import sys
from collections.abc import Iterator
from pathlib import Path

from prompt_toolkit import PromptSession
from prompt_toolkit.completion import CompleteEvent, Completer, Completion
from prompt_toolkit.document import Document
from rich.console import Console

from bot.blocks.renderer import ASKED_REACTION, READ_REACTION
from bot.local.clubhouse import Clubhouse
from bot.local.commands import complete
from bot.local.demo import Act, DemoError, demo_folder, read_cast, read_season, split_season
from bot.local.errors import ScriptError
from bot.local.mrkdwn import emoji
from bot.local.opening import connected, open_clubhouse
from bot.local.overheard import overheard
from bot.local.people import read_roles
from bot.local.prompt import Prompt
from bot.local.replay import let_time_pass, play, play_quietly, start_of_day
from bot.local.show import Screen
from bot.local.talk import Said
from bot.settings import Settings

NEXT_STEP = (
    "That was the week. Run `python -m bot` in a terminal to type as anybody in the club; "
    "to connect Spinkeeper to Slack, see “Put it on Slack” in README.md."
)
WELCOME = (
    "Now type as anybody in the club, for example: 62p 11cb 4.1ip vs Summit no pain. "
    "`help` lists what else you can do; Ctrl-D leaves."
)


def run_local(settings: Settings) -> None:
    """Play the demo; with a terminal, stay for a prompt. Ctrl-C ends with status 130."""
    if isinstance(sys.stdout, io.TextIOWrapper):
        sys.stdout.reconfigure(errors="replace")  # a console without emoji gets question marks
    stays = sys.stdin.isatty() and sys.stdout.isatty()
    try:
        play_demo(settings, demo_folder(), Console(), stays=stays)
    except KeyboardInterrupt:
        raise SystemExit(130) from None
    except (DemoError, ScriptError) as wrong:
        print(wrong, file=sys.stderr)  # noqa: T201 - one sentence for the person who started it
        raise SystemExit(2) from wrong


def play_demo(settings: Settings, folder: Path, console: Console, *, stays: bool) -> None:
    """Play the season of `folder` on `console`, then ask for lines if it `stays`.

    Raises `DemoError` when the folder's files cannot be used.
    """
    acts = read_season(folder)
    quiet, shown = split_season(acts)
    said: dict[str, Said] = {}
    with overheard() as heard, open_clubhouse(settings, folder, acts[0].at) as club:
        screen = Screen(console, club, heard.take)
        _introduce(screen, folder, shown)
        play_quietly(club, quiet, said)
        let_time_pass(club, start_of_day(club, shown[0]), lambda: None)
        club.watch()
        with connected(club):
            play(club, shown, said, screen.show)
            screen.note()
            if stays:
                ask(club, screen)
            else:
                screen.note(NEXT_STEP)


def ask(club: Clubhouse, screen: Screen) -> None:
    """Let somebody at the terminal take part until they leave."""
    with club.bot.store.reading() as session:
        prompt = Prompt(club, screen, read_roles(session))
    screen.note(WELCOME)
    prompt.run(typed_lines(prompt, club))


def typed_lines(prompt: Prompt, club: Clubhouse) -> Iterator[str]:
    """The lines typed at the terminal, until Ctrl-D; Ctrl-C drops what was begun."""
    session: PromptSession[str] = PromptSession(completer=_Words(club), complete_while_typing=False)
    while True:
        try:
            yield session.prompt(lambda: f"\n{prompt.label()}\n> ")
        except KeyboardInterrupt:
            continue
        except EOFError:
            return


class _Words(Completer):
    """Completes commands, people and channels with Tab."""

    def __init__(self, club: Clubhouse) -> None:
        self._people = [*club.people, *(one.real_name for one in club.people.values())]
        self._channels = [*club.channels, *(one.name for one in club.channels.values())]

    def get_completions(self, document: Document, _event: CompleteEvent) -> Iterator[Completion]:
        """What may stand at the end of the line."""
        line = document.text_before_cursor
        begun = line.lstrip().partition(" ")
        last = begun[2] if begun[1] else begun[0]
        for word in complete(line, self._people, self._channels):
            yield Completion(word, start_position=-len(last))


def _introduce(screen: Screen, folder: Path, shown: list[Act]) -> None:
    first, last = shown[0].at, shown[-1].at
    read, asked = emoji(READ_REACTION), emoji(ASKED_REACTION)
    screen.note(
        f"Spinkeeper, local workspace: {read_cast(folder).workspace.name}, an invented club, "
        f"{first:%a} {first.day} {first:%b} to {last:%a} {last.day} {last:%b %Y}. Nothing leaves "
        "this computer, and the record is thrown away at the end."
    )
    screen.note(
        "You look over everybody's shoulder; on Slack each person sees only their own "
        f"conversations. {read} under a line: it is in the log. {asked}: something is asked."
    )
    screen.note()
