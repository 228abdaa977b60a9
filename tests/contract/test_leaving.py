"""The app is taken away: sends and schedules stop, and the data goes after 14 days."""

from collections.abc import Callable, Iterator
from datetime import date, timedelta

import pytest
from sqlalchemy import func
from sqlmodel import select

from bot.access import find_installation, make_client
from bot.local.delivery import Delivery
from bot.local.server import StandIn
from bot.run import Bot, make_bot
from bot.settings import Settings
from bot.starting import remember_workspace
from core.ledger import NoticeKind
from core.model import OutboxMessage, Stored, Team, Workspace
from core.store import Store
from tests.support.club import Club, club_at
from tests.support.workspace import AppHost

GAME = "62p 11cb 4.1ip vs Summit no pain"
#: The club's clock stands on 2 May 2026, UTC.
GONE_ON = date(2026, 5, 16)


def workspace(club: Club) -> Workspace | None:
    with club.store.reading() as session:
        return session.get(Workspace, club.ws.team_id)


def delete_on(club: Club) -> date | None:
    found = workspace(club)
    return found.delete_on if found else None


def rows(club: Club) -> dict[str, int]:
    """How many rows each table holds; empty ones are left out."""
    with club.store.reading() as session:
        counts = {
            table.name: session.execute(select(func.count()).select_from(table)).scalar_one()
            for table in Stored.metadata.sorted_tables
        }
    return {name: count for name, count in counts.items() if count}


def take_away(club: Club, order: Callable[[list[Delivery]], list[Delivery]] = list) -> None:
    """Uninstall; the two events come in this order."""
    club.ws.courier.hold()
    club.ws.courier.release(order(club.ws.uninstall()))
    club.ws.settle()


def calls(club: Club) -> int:
    return len(club.ws.calls.all())


def start_again(club: Club) -> Bot:
    """Install the app again, and start the bot with the new token."""
    token = club.ws.reinstall()
    settings = Settings(api_url=club.ws.api_url)
    installation = find_installation(make_client(token, club.ws.api_url))
    remember_workspace(club.store, installation, settings, club.clock.now())
    return make_bot(settings, installation, club.clock, club.store)


ORDERS: dict[str, Callable[[list[Delivery]], list[Delivery]]] = {
    "tokens revoked first": list,
    "uninstalled first": lambda events: events[::-1],
    "only uninstalled": lambda events: events[1:],
    "only tokens revoked": lambda events: events[:1],
}


@pytest.mark.parametrize("order", ORDERS)
def test_sends_stop_at_once_and_the_day_of_deletion_is_put_down(either: Club, order: str) -> None:
    said = either.ws.say(either.people["mateo"], either.log, GAME)
    either.ws.settle()

    take_away(either, ORDERS[order])
    before = calls(either)
    either.bot.tick(either.clock.advance(timedelta(minutes=5)))
    either.bot.tick(either.clock.advance(timedelta(days=3)))

    assert calls(either) == before
    assert either.reaction(said) == []
    assert delete_on(either) == GONE_ON
    assert either.bot.next_due(either.clock.now()) is None


def test_told_twice_the_day_stays(either: Club) -> None:
    deliveries = either.ws.uninstall()
    either.ws.settle()
    either.clock.advance(timedelta(days=2))

    for delivery in reversed(deliveries):
        either.ws.courier.duplicate(delivery)
    either.ws.settle()

    assert all(delivery.status == "acknowledged" for delivery in deliveries)
    assert delete_on(either) == GONE_ON


def test_no_schedule_falls_due_any_more(club: Club) -> None:
    club.bot.tick(club.clock.now())  # the schedules begin
    take_away(club)

    for _ in range(9):
        club.bot.tick(club.clock.advance(timedelta(days=1)))

    with club.store.reading() as session:
        assert session.exec(select(OutboxMessage)).all() == []


@pytest.fixture
def any_club(stand_in: StandIn, app_host: AppHost, any_store: Store) -> Iterator[Club]:
    """The club on each database."""
    with club_at(stand_in, app_host, any_store) as running:
        yield running


def test_after_fourteen_days_no_row_of_the_workspace_is_left(any_club: Club) -> None:
    a_busy_week(any_club)
    with any_club.store.writing() as session:
        session.add(Workspace(id="TOTHER"))
        session.flush()
        session.add(
            Team(
                workspace_id="TOTHER", name="Others", time_zone="UTC", log_channel="C1",
                staff_channel="C2",
            )
        )  # fmt: skip
    take_away(any_club)
    on_day = any_club.clock.now()

    any_club.bot.daily.run(on_day + timedelta(days=13))
    assert len(rows(any_club)) > 15

    any_club.bot.daily.run(on_day + timedelta(days=14))
    assert rows(any_club) == {"workspace": 1, "team": 1}


def a_busy_week(club: Club) -> None:
    club.bot.tick(club.clock.now())
    club.say("mateo", "58p 31cb vs Summit, elbow pain 4/10")
    club.tell_bot("carmen", "Leo 45 pitches 20 curves vs Summit")
    edited = club.say("dana", "Sam R 30p 5cb, Mateo bullpen 20", club.staff)
    club.edit(edited, "Sam R 31p 5cb, Mateo bullpen 20")
    club.say("dana", "limit Leo 45 until 5/20", club.staff)
    club.say("dana", "set mix 18% for Mateo", club.staff)
    for _ in range(4):
        club.bot.tick(club.clock.advance(timedelta(days=1)))
        club.ws.settle()


def test_a_start_with_a_token_that_works_lifts_all_of_it(either: Club) -> None:
    said = either.ws.say(either.people["mateo"], either.log, GAME)
    either.ws.settle()
    take_away(either)
    either.clock.advance(timedelta(days=13))

    again = start_again(either)
    assert delete_on(either) is None
    again.tick(either.clock.now())
    again.daily.run(either.clock.advance(timedelta(days=30)))

    assert either.reaction(said) == ["baseball"]
    assert len(either.heard("mateo")) == 1
    assert rows(either)["outing"] == 1


def test_what_slack_says_late_of_an_earlier_installation_changes_nothing(club: Club) -> None:
    club.ws.courier.hold()
    late = club.ws.uninstall()
    club.clock.advance(timedelta(hours=1))
    start_again(club)

    club.ws.courier.release(late)
    club.ws.settle()

    assert delete_on(club) is None


def test_a_persons_own_token_revoked_leaves_the_bot_where_it_is(club: Club) -> None:
    event = {"type": "tokens_revoked", "tokens": {"oauth": [club.people["dana"].id], "bot": []}}

    club.ws.deliver("events_api", club.ws.event_callback(event))
    said = club.say("mateo", GAME)

    assert delete_on(club) is None
    assert club.reaction(said) == ["baseball"]


def test_a_token_that_is_found_dead_stops_sends_and_no_crash_follows(either: Club) -> None:
    either.ws.subscriptions -= {"tokens_revoked", "app_uninstalled"}  # Slack does not get through
    said = either.ws.say(either.people["mateo"], either.log, GAME)
    either.ws.settle()
    either.ws.uninstall()

    either.bot.tick(either.clock.now())
    after_one = calls(either)
    for _ in range(3):
        either.bot.tick(either.clock.advance(timedelta(hours=6)))

    assert calls(either) == after_one
    assert delete_on(either) is None  # a wrong token alone deletes no child's record
    again = start_again(either)
    again.tick(either.clock.now())
    assert either.reaction(said) == ["baseball"]


def test_a_line_that_comes_after_the_deletion_is_acknowledged_and_not_kept(either: Club) -> None:
    places = (either.log, either.ws.dm(either.people["mateo"]))
    said = [either.say("mateo", GAME, where) for where in places]
    take_away(either)
    either.bot.daily.run(either.clock.advance(timedelta(days=14)))

    late = [either.ws.courier.duplicate(one.delivery) for one in said]
    either.ws.settle()

    assert [delivery.status for delivery in late] == ["acknowledged"] * 2
    assert rows(either) == {}


def test_installed_anew_after_the_deletion_it_begins_with_nothing(club: Club) -> None:
    club.say("mateo", GAME)
    take_away(club)
    club.bot.daily.run(club.clock.advance(timedelta(days=14)))

    start_again(club)

    assert rows(club) == {"workspace": 1}


def test_a_closed_account_is_written_to_no_more_and_its_record_stays(either: Club) -> None:
    either.say("mateo", "20 pitches vs Summit no pain")
    either.ws.change_person(either.people["elena"], deleted=True)
    either.ws.settle()

    either.say("mateo", "elbow hurts 4/10")

    assert either.heard("elena") == []
    assert [call for call in either.ws.calls.all() if call.error == "user_disabled"] == []
    (told,) = [text for text in either.in_staff_channel() if "Pain report" in text]
    assert "Elena" in told  # named as somebody who has not been told
    assert len(either.heard("mateo")) == 2


def test_an_account_that_is_opened_again_is_written_to_again(club: Club) -> None:
    for closed in (True, False):
        club.ws.change_person(club.people["elena"], deleted=closed)
        club.ws.settle()

    club.say("mateo", "elbow hurts 4/10")

    assert len(club.heard("elena")) == 1


def test_a_profile_that_changes_changes_nothing(club: Club) -> None:
    (delivery,) = club.ws.change_person(club.people["visitor"], real_name="Vic Strayed")
    club.ws.settle()

    assert delivery.status == "acknowledged"
    assert club.heard("visitor") == []


def test_the_answer_of_a_line_that_is_owed_to_a_closed_account_is_given_up(club: Club) -> None:
    club.ws.say(club.people["mateo"], club.log, GAME)
    club.ws.settle()
    club.ws.change_person(club.people["mateo"], deleted=True)

    club.settle()
    club.settle()

    refused = [call for call in club.ws.calls.all() if call.error == "user_disabled"]
    assert len(refused) == 1
    with club.store.reading() as session:
        answers = select(OutboxMessage.state).where(OutboxMessage.kind == NoticeKind.ANSWER)
        assert session.exec(answers).one() == "failed"
