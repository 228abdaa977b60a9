"""Plays the season: the first weeks quietly, the last one act by act."""

from collections.abc import Callable, Iterable
from datetime import datetime, time
from itertools import groupby

from bot.local.clubhouse import Clubhouse
from bot.local.demo import Act
from bot.local.talk import Said

#: Shows what happened since it was called last.
Show = Callable[[], object]


def play_quietly(club: Clubhouse, acts: Iterable[Act], said: dict[str, Said]) -> None:
    """Let the acts happen; their messages go out once a day, which is quicker."""
    for _day, today in groupby(acts, lambda act: act.at.date()):
        for act in today:
            club.jump(_moment(club, act.at))
            perform(club, act, said)
        club.settle()


def play(club: Clubhouse, acts: Iterable[Act], said: dict[str, Said], show: Show) -> None:
    """Let the acts happen at their times, with all that is due in between, and show each."""
    for act in acts:
        let_time_pass(club, _moment(club, act.at), show)
        perform(club, act, said)
        club.settle()
        show()


def let_time_pass(club: Clubhouse, until: datetime, show: Show) -> None:
    """Let time go by up to `until` (aware) and show what the bot sends meanwhile."""
    for _moment_passed in club.pass_time(until):
        show()


def start_of_day(club: Clubhouse, act: Act) -> datetime:
    """Midnight before an act, local time."""
    return datetime.combine(act.at.date(), time(), club.zone)


def perform(club: Clubhouse, act: Act, said: dict[str, Said]) -> None:
    """Do one act now; `said` holds the lines by the acts that said them."""
    person = club.people[act.person]
    if act.do == "say":
        under = said[act.thread_of] if act.thread_of else None
        said[act.id] = club.say(person, club.place(act.where, person), act.text, under)
    elif act.of is not None and act.do == "edit":
        club.ws.edit(said[act.of], act.text)
    elif act.of is not None:
        club.delete(said[act.of])


def _moment(club: Clubhouse, local: datetime) -> datetime:
    return local.replace(tzinfo=club.zone)
