"""Home tabs at midnight: they come to the new day by themselves, once, for who opens them."""

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from datetime import datetime, timedelta

from sqlmodel import col, select

from bot.due import Due
from core.model import OutboxMessage, Team
from tests.support.club import Club
from tests.support.hours import chicago, skip_to, start
from tests.support.phone import home, shown

MIDNIGHT = chicago("05-06", "00:00")


def published(club: Club, who: str) -> int:
    """How often somebody's Home tab was published."""
    calls = club.ws.calls.of("views.publish")
    return sum(call.args["user_id"] == club.people[who].id for call in calls)


def wanted(club: Club) -> dict[str, int]:
    """By slot, how often each Home tab was owed."""
    with club.store.reading() as session:
        rows = select(OutboxMessage.slot, OutboxMessage.wanted)
        homes = session.exec(rows.where(col(OutboxMessage.slot).startswith("home/")))
        return dict(homes.all())


def test_rest_is_done_at_midnight_on_a_home_that_nobody_opened_again(club: Club) -> None:
    # 62 pitches at 17 ask for three days of rest (Pitch Smart, 17-18): from Wednesday 6 May.
    start(club)
    club.say("mateo", "62p 11cb 4.1ip vs Summit")
    home(club, "mateo")
    home(club, "dana")
    skip_to(club, MIDNIGHT - timedelta(minutes=1))
    assert "Not on Tue 5 May; earliest Wed 6 May by rule." in shown(club, "mateo")
    before = published(club, "mateo")

    skip_to(club, MIDNIGHT + timedelta(minutes=5))

    assert "Not on" not in shown(club, "mateo")
    assert published(club, "mateo") == before + 1
    assert "*Wed 6 May*" in shown(club, "dana")


def test_of_several_processes_one_brings_the_homes_to_the_day(club: Club) -> None:
    start(club)
    home(club, "mateo")
    home(club, "dana")
    before = wanted(club)
    club.clock.set(MIDNIGHT)
    processes = [Due(club.store) for _ in range(4)]

    with ThreadPoolExecutor(4) as threads:
        list(threads.map(lambda due: due.owe(MIDNIGHT), processes))

    assert wanted(club) == {slot: number + 1 for slot, number in before.items()}
    assert len(before) == 2
    Due(club.store).owe(MIDNIGHT + timedelta(hours=3))
    assert wanted(club) == {slot: number + 1 for slot, number in before.items()}


def test_a_home_that_nobody_opened_for_a_month_stays_until_it_is_opened(club: Club) -> None:
    start(club)
    home(club, "mateo")
    home(club, "elena")
    club.clock.advance(timedelta(days=20))
    home(club, "elena")
    before = wanted(club)

    _owe_at(club, chicago("06-02", "00:00"))

    after = wanted(club)
    mateo, elena = (f"home/{club.people[who].id}" for who in ("mateo", "elena"))
    assert after[mateo] == before[mateo]
    assert after[elena] == before[elena] + 1


def test_another_teams_midnight_leaves_the_homes_of_this_one_alone(club: Club) -> None:
    start(club)
    home(club, "mateo")
    with club.store.writing() as session:
        session.add(
            Team(
                workspace_id=club.ws.team_id, name="Otters", time_zone="America/New_York",
                log_channel="C-OTTERS", staff_channel="C-OTTERS-STAFF",
            )
        )  # fmt: skip
    _owe_at(club, MIDNIGHT - timedelta(hours=2))
    before = wanted(club)

    _owe_at(club, MIDNIGHT - timedelta(hours=1))
    assert wanted(club) == before
    _owe_at(club, MIDNIGHT)
    assert wanted(club) == {slot: number + 1 for slot, number in before.items()}


def test_a_home_without_dates_is_not_owed_at_midnight(club: Club) -> None:
    start(club)
    home(club, "visitor")
    home(club, "priya")
    before = wanted(club)

    skip_to(club, MIDNIGHT)

    assert wanted(club) == before


def _owe_at(club: Club, moment: datetime) -> None:
    club.clock.set(moment)
    owe: Callable[[datetime], None] = Due(club.store).owe
    owe(moment)
