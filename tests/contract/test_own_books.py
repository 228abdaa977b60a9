"""Rule books of the club's own folder, named by a line."""

from pathlib import Path

from bot.local.server import StandIn
from core.store import Store
from tests.support.club import club_at
from tests.support.rulebooks import own_books
from tests.support.workspace import AppHost


def test_an_outing_may_go_by_a_book_of_the_clubs_own_folder(
    stand_in: StandIn, app_host: AppHost, store: Store, tmp_path: Path
) -> None:
    books = own_books(tmp_path)
    with club_at(stand_in, app_host, store, rulebooks=books) as club:
        before = club.say("dana", "can Leo throw sunday", club.staff)
        said = club.say("dana", "book hill-league for Leo on sunday", club.staff)
        asked = club.say("dana", "can Leo throw sunday", club.staff)

        # Pitch Smart has 95 pitches a day at 13-14; the invented league 90.
        assert "up to 95 pitches" in club.ws.replies(club.staff, before)[0].text
        named = club.ws.replies(club.staff, said)[0].text
        assert named.startswith("Rule book for Leo Ortiz on Sun 3 May: Hill League")
        assert "up to 90 pitches" in club.ws.replies(club.staff, asked)[0].text


def test_a_book_of_the_folder_that_is_gone_is_named_by_its_id(
    stand_in: StandIn, app_host: AppHost, store: Store, tmp_path: Path
) -> None:
    books = own_books(tmp_path)
    with club_at(stand_in, app_host, store, rulebooks=books) as club:
        (books / "hill-league.toml").unlink()
        said = club.say("dana", "book hill-league for Leo on sunday", club.staff)

        assert "hill-league" in club.ws.replies(club.staff, said)[0].text
