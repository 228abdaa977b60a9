"""The demo club opened for a test: a short season of its own, or none."""

import io
import json
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path

from rich.console import Console

from bot.local.clubhouse import Clubhouse
from bot.local.demo import demo_folder
from bot.local.opening import connected, open_clubhouse
from bot.local.people import read_roles
from bot.local.prompt import Prompt
from bot.local.show import Screen
from bot.settings import Settings

#: Saturday 30 May 2026, 18:00 in the club's zone.
START = datetime.fromisoformat("2026-05-30T18:00")


class Table:
    """Somebody at the prompt: types lines, and reads what the screen shows of them."""

    def __init__(self, club: Clubhouse) -> None:
        self.club = club
        self._paper = io.StringIO()
        self.screen = Screen(Console(file=self._paper, width=80), club)
        with club.bot.store.reading() as session:
            self.prompt = Prompt(club, self.screen, read_roles(session))
        club.watch()

    def type(self, *lines: str) -> str:
        """Type lines; gives what is shown."""
        self._paper.seek(0)
        self._paper.truncate()
        self.prompt.run(lines)
        return self.shown()

    def shown(self) -> str:
        """What is shown since lines were typed last."""
        return self._paper.getvalue()


@contextmanager
def table() -> Iterator[Table]:
    """The demo club with nothing said yet, the bot connected by Socket Mode."""
    with open_clubhouse(Settings(), demo_folder(), START) as club:
        club.jump(START.replace(tzinfo=club.zone))
        with connected(club):
            yield Table(club)


def write_demo(folder: Path, acts: list[dict[str, str]]) -> Path:
    """The demo's club with a season of these acts, in a folder of its own."""
    for name in ("people.toml", "team.toml", "roster.csv"):
        shutil.copy(demo_folder() / name, folder / name)
    lines = [json.dumps({"id": f"s{number}"} | act) for number, act in enumerate(acts)]
    (folder / "season.jsonl").write_text("\n".join(lines), encoding="utf-8")
    return folder
