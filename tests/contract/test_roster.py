"""The roster in Slack: one pitcher by form, many by a file, moves; what the family hears."""

from datetime import date
from typing import Any

import pytest
from sqlmodel import Session, select

from bot.local.records import Message
from core.ledger.people import guardians_of, teams_of
from core.model import Errand, Matter, Membership, OutboxMessage, Person, Pitcher, Team, key
from tests.support.club import Club
from tests.support.taps import action_id, labels, tap

NEW: dict[str, Any] = {
    "name": "Rio Vale",
    "also_called": "Ri; Rocket",
    "birth_date": "2012-07-01",
    "throws": "L",
    "guardians": ["U"],
    "guardians_on_file": "Old Vale",
}
HEADER = (
    "name,teams,birth date,throws,breaking pitch,consent date,account,guardians,"
    "who calls pitches,also called\n"
)


@pytest.fixture
def noon(club: Club) -> Club:
    """The club at noon on a Monday, when families may be written to."""
    club.clock.set(club.clock.now().replace(day=4, hour=17))
    return club


def open_roster(club: Club, who: str = "dana", what: str = "add", name: str | None = None) -> None:
    person = club.people[who]
    club.ws.command(person, club.log, "/spinkeeper", "roster")
    club.settle()
    chosen = {"what": what}
    if name is not None:
        with club.store.reading() as session:
            chosen["who"] = str(key(_pitcher(session, name)))
    club.ws.submit(person, chosen)
    club.settle()


def fill(club: Club, who: str = "dana", **values: Any) -> dict[str, str]:
    answer = club.ws.submit(club.people[who], values)
    errors = club.ws.errors_of(answer)
    club.settle()
    return errors


def new(club: Club, **changed: Any) -> dict[str, Any]:
    return {**NEW, "guardians": [club.people["visitor"].id], **changed}


def _pitcher(session: Session, name: str) -> Pitcher:
    return session.exec(select(Pitcher).where(Pitcher.name == name)).one()


def last(club: Club, who: str) -> Message:
    """The bot's newest message to somebody."""
    mine = club.ws.dm_messages(club.people[who])
    return [one for one in mine if one.user == club.ws.bot.id][-1]


def test_a_pitcher_is_added_by_form_and_the_guardian_is_asked(noon: Club) -> None:
    open_roster(noon)
    assert fill(noon, **new(noon)) == {}

    with noon.store.reading() as session:
        rio = _pitcher(session, "Rio Vale")
        assert rio.birth_date == date(2012, 7, 1)
        assert (rio.throws, rio.also_called) == ("L", ["Ri", "Rocket"])
        assert {one.name for one in guardians_of(session, {key(rio)})} == {"Vic Stray", "Old Vale"}
        assert [team.name for team in teams_of(session, {key(rio)})] == ["Herons"]
    assert "May I keep Rio Vale's pitching record?" in last(noon, "visitor").text


def test_his_line_counts_once_the_guardian_agreed(noon: Club) -> None:
    open_roster(noon)
    fill(noon, **new(noon))
    noon.say("dana", "Rio pen 20 pitches", noon.staff)

    tap(noon, "visitor", last(noon, "visitor"), "I agree")

    noon.tell_bot("dana", "how many did Rio throw today")
    assert "20" in last(noon, "dana").text


@pytest.mark.parametrize(
    ("changed", "block", "says"),
    [
        ({"birth_date": None}, "birth_date", "date of birth is needed"),
        ({"birth_date": "1990-01-01"}, "birth_date", "5 to 22"),
        ({"guardians": [], "guardians_on_file": ""}, "guardians", "needs a guardian"),
        ({"account": "visitor"}, "account", "Too young for an account"),
        ({"birth_date": "2009-01-01", "account": "mateo"}, "account", "another pitcher's"),
        ({"birth_date": "2009-01-01", "account": "joan"}, "account", "must be adults"),
        ({"name": "Leo Ortiz", "birth_date": "2012-06-01"}, "name", "on file already"),
    ],
)
def test_what_cannot_be_is_said_at_the_field_and_nothing_is_kept(
    noon: Club, changed: dict[str, Any], block: str, says: str
) -> None:
    if "account" in changed:
        changed = {**changed, "account": noon.people[changed["account"]].id}
    open_roster(noon)

    errors = fill(noon, **new(noon, **changed))

    assert says in errors[block]
    assert "Nothing was changed" in errors[block]
    with noon.store.reading() as session:
        assert len(session.exec(select(Pitcher)).all()) == 5
        assert session.exec(select(Person).where(Person.name == "")).all() == []


def test_only_the_staff_may_open_the_roster(noon: Club) -> None:
    for who in ("mateo", "elena", "priya"):
        noon.ws.command(noon.people[who], noon.log, "/spinkeeper", "roster")
        noon.settle()
        assert noon.ws.open_views(noon.people[who]) == []


def test_a_birth_date_is_kept_and_never_shown_when_he_is_changed(noon: Club) -> None:
    open_roster(noon, what="change", name="Leo Ortiz")
    assert "2012-06-01" not in str(noon.ws.top_view(noon.people["dana"]).content)

    assert fill(noon, also_called="Lefty") == {}

    with noon.store.reading() as session:
        leo = _pitcher(session, "Leo Ortiz")
        assert leo.birth_date == date(2012, 6, 1)
        assert leo.also_called == ["Lefty"]
        assert {one.name for one in guardians_of(session, {key(leo)})} == {
            "Carmen Ortiz",
            "Tom Ortiz",
        }


def test_a_guardian_taken_off_sees_nothing_any_more(noon: Club) -> None:
    noon.say("carmen", "Leo 40 pitches 6 curves vs Summit")
    open_roster(noon, what="change", name="Leo Ortiz")
    fill(noon, guardians=[noon.people["visitor"].id])

    noon.tell_bot("carmen", "when can Leo pitch")

    assert "40" not in last(noon, "carmen").text


def second_team(club: Club) -> int:
    with club.store.writing() as session:
        team = Team(
            workspace_id=club.ws.team_id, name="Otters", time_zone="America/Chicago",
            log_channel="C-OTTERS", staff_channel="C-OTTERS-STAFF", rule_books=["pitch-smart"],
        )  # fmt: skip
        session.add(team)
        session.flush()
        return key(team)


def test_a_second_team_is_told_to_the_family_who_may_withdraw(noon: Club) -> None:
    otters = second_team(noon)
    open_roster(noon, what="move", name="Leo Ortiz")
    assert "The record stays with the pitcher" in str(noon.ws.top_view(noon.people["dana"]).content)

    assert fill(noon, move="also", to=str(otters)) == {}

    with noon.store.reading() as session:
        leo = _pitcher(session, "Leo Ortiz")
        assert {one.name for one in teams_of(session, {key(leo)})} == {"Herons", "Otters"}
    assert "The coaches of Herons and Otters see it" in last(noon, "carmen").text
    assert labels(last(noon, "carmen")) == ["Withdraw consent"]
    with noon.store.reading() as session:
        told = session.exec(
            select(OutboxMessage.kind).where(OutboxMessage.destination == "C-OTTERS-STAFF")
        ).all()
    assert told == ["matter"]


def test_who_leaves_keeps_his_record_and_the_family_hears_it(noon: Club) -> None:
    noon.say("carmen", "Leo 40 pitches 6 curves vs Summit")
    open_roster(noon, what="move", name="Leo Ortiz")
    fill(noon, move="leaves")

    assert "is on no team here now" in last(noon, "carmen").text
    with noon.store.reading() as session:
        assert teams_of(session, {key(_pitcher(session, "Leo Ortiz"))}) == []


def test_a_move_without_a_team_is_refused_at_the_field(noon: Club) -> None:
    open_roster(noon, what="move", name="Leo Ortiz")

    assert "Choose the team" in fill(noon, move="moves")["to"]


# Many at once


def drop(club: Club, text: str | bytes, who: str = "dana", name: str = "roster.csv") -> Message:
    person = club.people[who]
    club.ws.drop_file(person, club.ws.dm(person), name, text)
    club.settle()
    return last(club, who)


RIO = "Rio Vale,herons,2012-07-01,L,none,,,Joan Oduya,pitcher,Ri\n"


def test_a_dropped_file_is_shown_first_and_applied_at_a_word(noon: Club) -> None:
    shown = drop(noon, HEADER + RIO)
    assert "This would change. Nothing is changed yet" in shown.text
    assert "Pitcher added: Rio Vale" in shown.text
    assert labels(shown) == ["Apply it", "Cancel"]
    with noon.store.reading() as session:
        assert len(session.exec(select(Pitcher)).all()) == 5

    tap(noon, "dana", shown, "Apply it")

    assert noon.ws.message(shown).text.startswith("*Done.*")
    with noon.store.reading() as session:
        assert _pitcher(session, "Rio Vale").throws == "L"
        assert "2012" not in str([one.data for one in session.exec(select(Matter))])
    assert "Rio Vale" in last(noon, "joan").text


def test_that_a_file_is_being_applied_is_told_before_anything_is_looked_up(noon: Club) -> None:
    shown = drop(noon, HEADER + RIO)
    before = len(noon.ws.calls.all())

    noon.ws.press(noon.people["dana"], shown, action_id(shown, "Apply it"))
    noon.ws.settle()
    noon.settle_now()

    assert noon.ws.message(shown).text == "Applying it…"
    assert noon.ws.calls.all()[before].method == "chat.update"
    noon.settle()
    assert noon.ws.message(shown).text.startswith("*Done.*")


def test_over_socket_mode_a_file_is_read_and_applied(socket_club: Club) -> None:
    socket_club.clock.set(socket_club.clock.now().replace(day=4, hour=17))
    shown = drop(socket_club, HEADER + RIO)

    tap(socket_club, "dana", shown, "Apply it")

    with socket_club.store.reading() as session:
        assert _pitcher(session, "Rio Vale").throws == "L"


def test_cancel_changes_nothing_and_forgets_the_file(noon: Club) -> None:
    shown = drop(noon, HEADER + RIO)

    tap(noon, "dana", shown, "Cancel")

    assert "Nothing was changed" in noon.ws.message(shown).text
    with noon.store.reading() as session:
        assert len(session.exec(select(Pitcher)).all()) == 5
        assert [one.data for one in session.exec(select(Matter))] == [{}]


def test_errors_stand_by_row_in_words(noon: Club) -> None:
    wrong = (
        "Rio Vale,herons,1/6/2012,L,none,,,Joan Oduya,pitcher,\n"
        "Kit Moss,otters,2012-07-01,R,none,,,Nobody Known,pitcher,\n"
    )

    text = drop(noon, HEADER + wrong).text

    assert "I changed nothing" in text
    assert "roster, line 2" in text
    assert "write year-month-day" in text
    assert "line 3: Kit Moss: no team has the key “otters”" in text
    assert "nobody in Slack is called “Nobody Known”" in text


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"\xff\xfe\x00bad", "no text in UTF-8"),
        ("x" * 200_001, "larger than 200 kB"),
        ("no header\n1\n", "is not known"),
    ],
)
def test_a_file_that_is_no_roster_is_said_so(noon: Club, content: str | bytes, says: str) -> None:
    assert says in drop(noon, content).text


def test_without_the_scope_it_offers_to_paste(noon: Club) -> None:
    noon.ws.grant(set(noon.ws.scopes or ()) - {"files:read"})

    assert "paste the roster instead" in drop(noon, HEADER + RIO).text


def test_a_file_of_somebody_else_changes_nothing(noon: Club) -> None:
    drop(noon, HEADER + RIO, who="elena")

    with noon.store.reading() as session:
        assert session.exec(select(Matter)).all() == []
    assert "I read words only" in last(noon, "elena").text


def test_a_file_event_that_comes_twice_is_read_once(noon: Club) -> None:
    dana = noon.people["dana"]
    said = noon.ws.drop_file(dana, noon.ws.dm(dana), "roster.csv", HEADER + RIO)
    noon.settle()
    noon.ws.courier.redeliver(said.delivery)
    noon.settle()

    with noon.store.reading() as session:
        assert len(session.exec(select(Matter)).all()) == 1


def test_a_file_that_waits_is_forgotten_after_a_day(noon: Club) -> None:
    shown = drop(noon, HEADER + RIO)
    noon.clock.set(noon.clock.now().replace(day=5, hour=18))
    noon.settle()

    assert "more than a day old" in noon.ws.message(shown).text
    with noon.store.reading() as session:
        assert "Rio" not in str([one.data for one in session.exec(select(Matter))])
        assert all(one.done_at for one in session.exec(select(Errand)))


def test_a_short_roster_is_pasted(noon: Club) -> None:
    open_roster(noon, what="paste")
    assert fill(noon, csv=HEADER + RIO) == {}

    tap(noon, "dana", last(noon, "dana"), "Apply it")

    with noon.store.reading() as session:
        assert _pitcher(session, "Rio Vale").throws == "L"


def test_another_coach_of_another_team_cannot_be_reached_through_a_file(noon: Club) -> None:
    """Only the teams of whoever sends it are in the file's sight."""
    second_team(noon)
    with noon.store.reading() as session:
        assert len(session.exec(select(Membership)).all()) == 2

    text = drop(noon, HEADER + RIO.replace("herons", "otters")).text

    assert "no team has the key “otters”; the keys are herons" in text
