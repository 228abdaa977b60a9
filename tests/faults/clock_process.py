"""A bot in a process of its own that ticks when it is told to: one ISO moment a line.

Run with one JSON object as argument. Says "ready", and "done" after each tick.
"""

import json
import sys
from datetime import datetime

from bot.access import find_installation, make_client
from bot.clock import SimulatedClock
from bot.run import make_bot
from bot.settings import Settings
from core.store import Store


def main(given: dict[str, str]) -> None:
    settings = Settings(api_url=given["api_url"])
    installation = find_installation(make_client(given["bot_token"], settings.api_url))
    clock = SimulatedClock(datetime.fromisoformat(given["now"]))
    bot = make_bot(settings, installation, clock, Store(given["database"]))
    say("ready")
    for line in sys.stdin:
        clock.set(datetime.fromisoformat(line.strip()))
        bot.tick(clock.now())
        say("done")


def say(word: str) -> None:
    sys.stdout.write(f"{word}\n")
    sys.stdout.flush()


if __name__ == "__main__":
    main(json.loads(sys.argv[1]))
