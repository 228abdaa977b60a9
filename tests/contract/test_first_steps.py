"""An empty workspace: from the first opening of Home to the first line that is counted."""

from collections.abc import Iterator
from typing import Any

import pytest
from sqlmodel import select

from bot.local.records import Channel, Message, Person
from bot.local.server import StandIn
from core.model import AuditEntry, Membership, Outing, Pitcher, Role, Team
from core.store import Store
from tests.support.club import Club, club_at
from tests.support.taps import labels, tap
from tests.support.workspace import AppHost


@pytest.fixture(params=["http", "socket"])
def empty(
    request: pytest.FixtureRequest, stand_in: StandIn, app_host: AppHost, store: Store
) -> Iterator[Club]:
    """The workspace with its people and channels, and no team; at noon on a Monday."""
    socket = request.param == "socket"
    with club_at(stand_in, app_host, store, socket=socket, seeded=False) as club:
        club.clock.set(club.clock.now().replace(day=4, hour=17))
        club.people["ada"] = club.ws.add_person("Ada Owner", is_owner=True, tz="America/Denver")
        yield club


def open_home(club: Club, who: str) -> None:
    club.ws.open_home(club.people[who])
    club.settle()


def last(club: Club, who: str) -> Message:
    mine = club.ws.dm_messages(club.people[who])
    return [one for one in mine if one.user == club.ws.bot.id][-1]


def channels(club: Club, *, bot: bool = True, private: bool = True) -> tuple[Channel, Channel]:
    ada = club.people["ada"]
    log = club.ws.add_channel("log", [ada, club.people["joan"]], bot=bot)
    return log, club.ws.add_channel("coaches", [ada], private=private, bot=bot)


def set_up(club: Club, log: Channel, staff: Channel, **changed: Any) -> dict[str, str]:
    tap(club, "ada", last(club, "ada"), "Set up the team")
    values = {
        "name": "Herons 12U",
        "age_group": "12U",
        "log_channel": log.id,
        "staff_channel": staff.id,
        **changed,
    }
    answer = club.ws.submit(club.people["ada"], values)
    errors = club.ws.errors_of(answer)
    club.settle()
    return errors


def the_team(club: Club) -> Team:
    with club.store.reading() as session:
        return session.exec(select(Team)).one()


def test_from_an_empty_workspace_to_the_first_counted_line(empty: Club) -> None:
    log, staff = channels(empty)
    open_home(empty, "ada")
    assert "Welcome to Spinkeeper" in last(empty, "ada").text
    home = empty.ws.home(empty.people["ada"])
    assert home is not None
    assert "open.new_team.0" in str(home.content)

    tap(empty, "ada", last(empty, "ada"), "Set up the team")
    shown = str(empty.ws.top_view(empty.people["ada"]).content)
    assert "America/Denver" in shown
    assert "Slack's terms allow" in shown
    assert "Pitch Smart" in shown
    empty.ws.submit(
        empty.people["ada"],
        {"name": "Herons 12U", "log_channel": log.id, "staff_channel": staff.id},
    )
    empty.settle()
    team = the_team(empty)
    assert (team.time_zone, team.rule_books, team.account_age) == (
        "America/Denver", ["pitch-smart"], 16,
    )  # fmt: skip
    assert "I am in both channels" in last(empty, "ada").text

    tap(empty, "ada", last(empty, "ada"), "Add a pitcher")
    empty.ws.submit(
        empty.people["ada"],
        {
            "name": "Rio Vale",
            "birth_date": "2014-07-01",
            "guardians": [empty.people["joan"].id],
        },
    )
    empty.settle()
    tap(empty, "joan", last(empty, "joan"), "I agree")
    said = empty.say("ada", "Rio 30 pitches 3 cb vs Summit today", log)

    assert empty.reaction(said) == ["baseball"]
    with empty.store.reading() as session:
        assert session.exec(select(Outing.pitches)).all() == [30]


def test_who_is_no_admin_is_told_once_whom_to_ask(empty: Club) -> None:
    open_home(empty, "dana")
    open_home(empty, "dana")

    assert empty.heard("dana") == [last(empty, "dana").text]
    assert "Ask an owner or admin" in last(empty, "dana").text
    empty.ws.command(empty.people["dana"], empty.log, "/spinkeeper", "team")
    empty.settle()
    assert empty.ws.open_views(empty.people["dana"]) == []


def test_an_admin_is_welcomed_once_however_often_he_looks(empty: Club) -> None:
    for _ in range(3):
        open_home(empty, "ada")

    assert len(empty.heard("ada")) == 1


def test_with_a_team_an_admin_takes_no_role(empty: Club) -> None:
    log, staff = channels(empty)
    empty.people["eve"] = empty.ws.add_person("Eve Admin", is_admin=True)
    open_home(empty, "eve")
    first = last(empty, "eve")
    open_home(empty, "ada")
    set_up(empty, log, staff)

    tap_closed = empty.ws.press(empty.people["eve"], first, "open.new_team.0")
    tap_closed.wait()
    empty.settle()

    view = empty.ws.top_view(empty.people["eve"]).content
    assert "An owner or admin of the workspace sets up the first team" in str(view)
    with empty.store.reading() as session:
        held = session.exec(select(Membership.role)).all()
    assert held == [Role.COACH]


def test_the_bot_asks_to_be_invited_where_it_is_not(empty: Club) -> None:
    log, staff = channels(empty, bot=False)
    open_home(empty, "ada")
    set_up(empty, log, staff)

    asks = last(empty, "ada")
    assert f"I am not in <#{log.id}> yet" in asks.text
    assert f"I am not in <#{staff.id}> yet" in asks.text
    assert labels(asks)[0] == "Look again"

    for channel in (log, staff):
        empty.ws.invite_app(channel, empty.people["ada"])
    tap(empty, "ada", asks, "Look again")

    assert "I am in both channels" in empty.ws.message(asks).text


def test_a_staff_channel_that_is_open_is_not_used(empty: Club) -> None:
    log, staff = channels(empty, private=False)
    open_home(empty, "ada")
    set_up(empty, log, staff)

    assert f"<#{staff.id}> is open to everybody" in last(empty, "ada").text
    assert the_team(empty).staff_channel == empty.people["ada"].id

    real = empty.ws.add_channel("real-staff", [empty.people["ada"]], private=True)
    tap(empty, "ada", last(empty, "ada"), "Team settings")
    empty.ws.submit(empty.people["ada"], {"staff_channel": real.id})
    empty.settle()

    assert the_team(empty).staff_channel == real.id
    assert "I am in both channels" in last(empty, "ada").text


@pytest.mark.parametrize(
    ("changed", "block"),
    [
        ({"time_zone": "Denver"}, "time_zone"),
        ({"staff_channel": "log"}, "log_channel"),
        ({"name": "   "}, "name"),
        ({"rule_books": []}, "rule_books"),
    ],
)
def test_what_cannot_be_is_said_at_the_field(
    empty: Club, changed: dict[str, Any], block: str
) -> None:
    log, staff = channels(empty)
    changed = {name: log.id if value == "log" else value for name, value in changed.items()}
    open_home(empty, "ada")

    errors = set_up(empty, log, staff, **changed)

    assert "Nothing was changed" in errors[block]
    with empty.store.reading() as session:
        assert session.exec(select(Team)).all() == []


def a_team_with_a_pitcher_of_16(club: Club) -> Person:
    log, staff = channels(club)
    open_home(club, "ada")
    set_up(club, log, staff)
    tap(club, "ada", last(club, "ada"), "Add a pitcher")
    mateo = club.people["mateo"]
    club.ws.submit(
        club.people["ada"],
        {
            "name": "Mateo Cruz",
            "birth_date": "2009-06-01",
            "account": mateo.id,
            "guardians": [club.people["elena"].id],
        },
    )
    club.settle()
    return mateo


def test_settings_are_changed_by_the_coach_with_a_history(empty: Club) -> None:
    a_team_with_a_pitcher_of_16(empty)
    for age in ("17", "18"):
        empty.ws.command(empty.people["ada"], empty.log, "/spinkeeper", "team")
        empty.settle()
        empty.ws.submit(empty.people["ada"], {"account_age": age})
        empty.settle()

    empty.ws.command(empty.people["ada"], empty.log, "/spinkeeper", "team")
    empty.settle()
    shown = str(empty.ws.top_view(empty.people["ada"]).content)
    assert "Ada Owner" in shown
    assert "17 → 18" in shown
    assert "16 → 17" in shown
    with empty.store.reading() as session:
        entries = session.exec(select(AuditEntry).where(AuditEntry.subject == "team")).all()
        assert [one.after.get("account_age") for one in entries] == [16, 17, 18]


def test_a_raised_age_takes_the_account_and_keeps_the_record(empty: Club) -> None:
    a_team_with_a_pitcher_of_16(empty)
    empty.ws.command(empty.people["ada"], empty.log, "/spinkeeper", "team")
    empty.settle()
    empty.ws.submit(empty.people["ada"], {"account_age": "17"})
    empty.settle()

    with empty.store.reading() as session:
        pitcher = session.exec(select(Pitcher)).one()
        assert (pitcher.name, pitcher.person_id) == ("Mateo Cruz", None)


def test_a_coach_of_a_team_file_is_welcomed_once(club: Club) -> None:
    open_home(club, "dana")
    open_home(club, "dana")

    (text,) = [one for one in club.heard("dana") if one.startswith("*Welcome.*")]
    assert "You coach Herons" in text
    assert labels(last(club, "dana")) == [
        "Add a pitcher",
        "Many from a CSV",
        "Roles",
        "Team settings",
    ]


def test_a_coach_with_an_empty_roster_is_led_to_the_first_pitcher(empty: Club) -> None:
    open_home(empty, "ada")
    assert set_up(empty, *channels(empty)) == {}

    empty.tell_bot("ada", "who can throw today")

    assert last(empty, "ada").text == (
        "Your roster holds no pitcher yet. Add the first one, then ask me again."
    )
    assert labels(last(empty, "ada")) == ["Add a pitcher"]


def test_a_hello_before_the_set_up_points_to_it(empty: Club) -> None:
    empty.tell_bot("joan", "hi")

    assert "open my Home tab and press “Set up the team”" in empty.heard("joan")[-1]
