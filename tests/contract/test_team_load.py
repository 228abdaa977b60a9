"""`spinkeeper team load` as somebody would run it, against a workspace and its database."""

import os
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest
from sqlmodel import col, func, select

from bot.clock import SystemClock
from bot.local.workspace import Workspace
from bot.manifest import make_manifest
from core.installing import install
from core.leaving import account_closed
from core.model import BotToken, Person, Pitcher, Team
from core.model import Workspace as Stored
from core.store import Store
from tests.support.rulebooks import own_books

ROOT = Path(__file__).parent.parent.parent
DEMO = ROOT / "fixtures" / "demo"


@pytest.fixture
def herons(ws: Workspace) -> Workspace:
    """The demo club's people and channels, with the app installed by its manifest."""
    ws.follow(make_manifest())
    known = tomllib.loads((DEMO / "people.toml").read_text())
    people = {one["key"]: ws.add_person(one["name"], name=one["handle"]) for one in known["people"]}
    for channel in known["channels"]:
        members = [people[who] for who in channel["members"]]
        ws.add_channel(channel["name"], members, private=channel["private"])
    return ws


def load(
    ws: Workspace, database: Path, *options: str, file: Path = DEMO / "team.toml", **more: str
) -> subprocess.CompletedProcess[str]:
    environment = {
        **os.environ,  # noqa: TID251 - handed on to a child process
        "SLACK_BOT_TOKEN": ws.bot_token,
        "SLACK_API_URL": ws.api_url,
        "SPINKEEPER_DATABASE_URL": f"sqlite:///{database}",
        **more,
    }
    return subprocess.run(
        [sys.executable, "-m", "bot.cli", "team", "load", str(file), *options],
        cwd=ROOT, env=environment, capture_output=True, text=True, timeout=60, check=False,
    )  # fmt: skip


def counts(database: Path) -> tuple[int, int]:
    store = Store(f"sqlite:///{database}")
    with store.reading() as session:
        teams = session.exec(select(func.count()).select_from(Team)).one()
        pitchers = session.exec(select(func.count()).select_from(Pitcher)).one()
    store.close()
    return teams, pitchers


def test_the_demo_club_loads_and_a_second_time_changes_nothing(
    herons: Workspace, tmp_path: Path
) -> None:
    database = tmp_path / "club.sqlite3"

    first = load(herons, database)
    second = load(herons, database)

    assert first.returncode == 0, first.stderr
    assert "Team added: Herons 17U" in first.stdout
    assert "added" not in second.stdout
    assert counts(database) == (2, 12)


def test_without_a_token_of_its_own_it_goes_by_the_installed_one(
    herons: Workspace, tmp_path: Path
) -> None:
    database = tmp_path / "club.sqlite3"
    neither = load(herons, database, SLACK_BOT_TOKEN="")
    assert neither.returncode == 2
    assert "the app is not installed in this database" in neither.stderr

    now = SystemClock().now()
    kept = BotToken(
        workspace_id=herons.team_id, token=herons.bot_token, bot_id="B1", bot_user_id="U1",
        app_id="A1", scopes="", installed_by="U2", installed_at=now,
    )  # fmt: skip
    store = Store(f"sqlite:///{database}")
    with store.writing() as session:
        install(session, Stored(id=herons.team_id), kept, now)
    store.close()
    loaded = load(herons, database, SLACK_BOT_TOKEN="")

    assert loaded.returncode == 0, loaded.stderr
    assert counts(database) == (2, 12)


def test_a_dry_run_writes_nothing(herons: Workspace, tmp_path: Path) -> None:
    database = tmp_path / "club.sqlite3"

    shown = load(herons, database, "--dry-run")

    assert shown.returncode == 0, shown.stderr
    assert "Pitcher added: Leo" in shown.stdout
    assert counts(database) == (0, 0)


def test_channels_and_people_that_slack_does_not_know_are_all_named(
    ws: Workspace, tmp_path: Path
) -> None:
    ended = load(ws, tmp_path / "club.sqlite3")

    assert ended.returncode == 2
    assert "17u-pitching-log" in ended.stderr
    assert "@dana" in ended.stderr
    assert counts(tmp_path / "club.sqlite3") == (0, 0)


def test_a_team_may_go_by_a_book_of_the_clubs_own_folder(herons: Workspace, tmp_path: Path) -> None:
    books = own_books(tmp_path)
    file = tmp_path / "team.toml"
    file.write_text((DEMO / "team.toml").read_text().replace('["pitch-smart"]', '["hill-league"]'))
    (tmp_path / "roster.csv").write_bytes((DEMO / "roster.csv").read_bytes())
    database = tmp_path / "club.sqlite3"

    without = load(herons, database, file=file)
    loaded = load(herons, database, file=file, SPINKEEPER_RULEBOOKS=str(books))

    assert "the rule book “hill-league” is not known" in without.stderr
    assert loaded.returncode == 0, loaded.stderr
    store = Store(f"sqlite:///{database}")
    with store.reading() as session:
        assert ["hill-league"] in [team.rule_books for team in session.exec(select(Team))]
    store.close()


def test_a_book_that_is_refused_stops_the_load_with_its_line(
    herons: Workspace, tmp_path: Path
) -> None:
    books = own_books(tmp_path)
    (books / "broken.toml").write_text('format = 1\nid = "broken"\n')
    database = tmp_path / "club.sqlite3"

    ended = load(herons, database, SPINKEEPER_RULEBOOKS=str(books))

    assert ended.returncode == 2
    assert "broken.toml was not taken. Line" in ended.stderr
    assert not database.exists()


def test_somebody_who_came_back_while_nobody_listened_is_not_made_twice(
    herons: Workspace, tmp_path: Path
) -> None:
    database = tmp_path / "club.sqlite3"
    load(herons, database)
    store = Store(f"sqlite:///{database}")
    with store.writing() as session:
        before = session.exec(select(Person).where(col(Person.slack_id).is_not(None))).all()
        account_closed(session, herons.team_id, str(before[0].slack_id))

    load(herons, database)

    with store.reading() as session:
        after = session.exec(select(Person).where(col(Person.slack_id).is_not(None))).all()
    store.close()
    assert {person.id for person in after} == {person.id for person in before}
