"""`spinkeeper calendar import`: a file into a team's calendar, a second time nothing."""

from datetime import UTC, date, datetime
from pathlib import Path

import pytest
from sqlmodel import Session

from bot.calendar_command import CommandError, import_calendar
from bot.settings import Settings
from core.calendar.days import entries
from core.model import Team, Workspace
from core.store import Store
from tests.support.ics import calendar, game

NOW = datetime(2026, 5, 4, 12, tzinfo=UTC)


@pytest.fixture
def settings(store: Store) -> Settings:
    with store.writing() as session:
        session.add(Workspace(id="T1"))
        session.flush()
        _add(session, "Herons 14U")
        _add(session, "Herons 17U")
    return Settings(database_url=str(store.engine.url))


def _add(session: Session, name: str) -> None:
    session.add(
        Team(
            workspace_id="T1", name=name, time_zone="America/Chicago", log_channel=f"L{name}",
            staff_channel=f"S{name}",
        )
    )  # fmt: skip


def test_a_file_is_imported_and_a_second_time_changes_nothing(
    settings: Settings, store: Store, tmp_path: Path
) -> None:
    file = tmp_path / "season.ics"
    file.write_bytes(calendar(game("s", ":20260509T150000Z"), game("r", ":20260510T150000Z")))

    first = import_calendar(settings, "17u", str(file), NOW)
    second = import_calendar(settings, "17u", str(file), NOW)

    assert first == (
        "Herons 17U: 2 games and 0 practices in the calendar, 0 other events left out. "
        "2 new, 0 changed, 0 called off."
    )
    assert second.endswith("0 new, 0 changed, 0 called off.")
    with store.reading() as session:
        found = entries(session, [2], date(2026, 5, 1), date(2026, 5, 31))
    assert [one.on.day for one in found] == [9, 10]


@pytest.mark.parametrize(
    ("team", "source", "said"),
    [
        ("herons", "season.ics", "Which team is “herons”? The teams: Herons 14U, Herons 17U."),
        ("17u", "nowhere.ics", "nowhere.ics cannot be read: No such file or directory."),
        ("17u", "page.ics", "Nothing was changed: what is there is no iCalendar file."),
    ],
)
def test_what_cannot_be_done_is_one_sentence(
    settings: Settings, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, team: str, source: str,
    said: str,
) -> None:  # fmt: skip
    monkeypatch.chdir(tmp_path)
    Path("season.ics").write_bytes(calendar(game("s", ":20260509T150000Z")))
    Path("page.ics").write_text("<html>")

    with pytest.raises(CommandError) as wrong:
        import_calendar(settings, team, source, NOW)

    assert str(wrong.value).startswith(said)
