"""The morning after a game: one quiet question, to whoever keeps the score, once."""

import copy
from datetime import timedelta

import pytest
from sqlalchemy import delete
from sqlmodel import col, select

from bot.due import Due
from core.ledger import NoticeKind
from core.model import GameAnswer, Membership, MessageState, OutboxMessage, Person, Role, Team, key
from tests.support.club import Club
from tests.support.hours import chicago, skip_to, start
from tests.support.taps import answer_to, labels, tap

PRESSED = "press.nobody_else.0"
GOLDEN = """\
*Game of Sat 9 May* (Summit): who else pitched? I have no line of Mateo Cruz yet. One line is \
enough: “Mateo Cruz 45 pitches 6 curves 5/9”. I ask this only once."""


def play_three_games(club: Club) -> None:
    """Mateo and Sam Ruiz pitch in two of the last three games, Leo in none; a game is planned."""
    start(club)
    for line in (
        "Mateo 30p 3cb 4/24 vs Ridge",
        "Sam Ruiz 20p 2cb 4/24 vs Ridge",
        "Mateo 20p 3cb 4/28 vs Ridge",
        "Sam Ruiz 20p 2cb 5/1 vs Ridge",
        "Sam Oduya 20p 1cb 5/1 vs Ridge",
    ):
        club.say("priya", line)
    club.say("dana", "game 5/9 10am vs Summit", club.staff)


def the_next_morning(club: Club, clock: str = "08:30") -> None:
    """Let it become 08:30 of Sunday 10 May."""
    club.clock.set(max(club.clock.now(), chicago("05-10", "07:00")))
    skip_to(club, chicago("05-10", clock))


def questions(club: Club, who: str = "priya") -> list[str]:
    return [text for text in club.heard(who) if text.startswith("*Game of")]


def states(club: Club) -> list[str]:
    with club.store.reading() as session:
        rows = select(OutboxMessage.state).where(OutboxMessage.kind == NoticeKind.POST_GAME)
        return list(session.exec(rows.order_by(col(OutboxMessage.id))))


def test_the_scorekeeper_is_asked_at_half_past_eight_the_next_morning(club: Club) -> None:
    play_three_games(club)
    club.clock.set(chicago("05-09", "14:00"))
    club.say("priya", "Sam Ruiz 40p 4cb, Sam Oduya 20p 1cb vs Summit")

    the_next_morning(club, "08:29")
    before = questions(club)
    the_next_morning(club)

    assert before == []
    assert questions(club) == [GOLDEN]
    assert labels(answer_to(club, "priya")) == ["Nobody else", "Log counts"]


def test_where_no_count_is_in_it_asks_who_pitched(club: Club) -> None:
    play_three_games(club)

    the_next_morning(club)

    (text,) = questions(club)
    assert "who pitched? I have no line of Mateo Cruz, Sam Oduya or Sam Ruiz yet." in text
    assert "Leo" not in text


def test_nobody_else_is_a_tap_and_stands_there_in_words(club: Club) -> None:
    play_three_games(club)
    the_next_morning(club)

    tap(club, "priya", answer_to(club, "priya"), "Nobody else")
    tap_again = answer_to(club, "priya")

    assert tap_again.text == (
        "Game of Sat 9 May: nobody else pitched, says Priya Venn. If somebody did after all, log "
        "a line as usual."
    )
    assert labels(tap_again) == []


def test_lines_that_come_in_later_answer_it(club: Club) -> None:
    play_three_games(club)
    the_next_morning(club)

    for name in ("Mateo", "Sam Ruiz", "Sam Oduya"):
        club.say("priya", f"{name} 20p 4cb yesterday vs Summit")

    mine = [message.text for message in club.ws.dm_messages(club.people["priya"])]
    assert "Game of Sat 9 May: every count is in now. Thank you." in mine


def test_where_everybody_is_in_nothing_is_asked_and_that_is_on_record(club: Club) -> None:
    play_three_games(club)
    club.clock.set(chicago("05-09", "14:00"))
    club.say("priya", "Mateo 40p 4cb, Sam Ruiz 20p 1cb, Sam Oduya 15p 1cb vs Summit")

    the_next_morning(club, "12:00")

    assert questions(club) == []
    assert states(club) == [MessageState.DROPPED]


def test_who_rested_or_was_not_cleared_is_not_waited_for(club: Club) -> None:
    play_three_games(club)
    club.clock.set(chicago("05-08", "18:00"))
    club.say("mateo", "80p 10cb vs Ridge")
    club.say("sam_r", "elbow hurts 6/10")
    club.clock.set(chicago("05-09", "14:00"))
    club.say("priya", "Sam Oduya 15p 1cb vs Summit")

    the_next_morning(club, "12:00")

    assert questions(club) == []


def test_without_a_scorekeeper_the_staff_channel_is_asked(club: Club) -> None:
    play_three_games(club)
    with club.store.writing() as session:
        rows = select(Membership).where(Membership.role == Role.SCOREKEEPER)
        session.delete(session.exec(rows).one())

    the_next_morning(club)

    assert any(text.startswith("*Game of Sat 9 May*") for text in club.in_staff_channel())
    assert questions(club) == []


def test_a_game_that_was_called_off_asks_nothing(club: Club) -> None:
    play_three_games(club)
    club.say("dana", "no game 5/9", club.staff)

    the_next_morning(club, "12:00")

    assert states(club) == []


def test_five_processes_ask_once(club: Club) -> None:
    play_three_games(club)
    club.clock.set(chicago("05-10", "08:30"))

    for _process in range(5):
        Due(club.store).owe(club.clock.now())

    assert len(states(club)) == 1


@pytest.mark.parametrize(
    ("back_at", "asked"), [("05-10T22:00", 1), ("05-11T18:00", 1), ("05-12T09:00", 0)]
)
def test_a_process_that_was_down_asks_late_but_never_at_night_nor_too_late(
    club: Club, back_at: str, asked: int
) -> None:
    play_three_games(club)
    day, clock = back_at.split("T")

    club.clock.set(chicago(day, clock))
    club.bot.tick(club.clock.now())
    at_once = len(questions(club))
    skip_to(club, chicago(day, clock) + timedelta(hours=12))

    assert len(questions(club)) == asked
    assert at_once == (0 if clock == "22:00" else asked)


@pytest.mark.parametrize("who", ["elena", "mateo"])
def test_nobody_else_may_say_so(club: Club, who: str) -> None:
    play_three_games(club)
    the_next_morning(club)
    pressed = club.ws.press(club.people["priya"], answer_to(club, "priya"), PRESSED)
    forged = copy.deepcopy(pressed.payload)
    club.settle()
    with club.store.writing() as session:
        session.execute(delete(GameAnswer))
    forged["user"]["id"] = club.people[who].id
    club.ws.deliver("interactive", forged)
    club.settle()

    with club.store.reading() as session:
        assert session.exec(select(GameAnswer)).all() == []


def test_the_scorekeeper_of_that_day_is_asked_where_there_are_two(club: Club) -> None:
    play_three_games(club)
    with club.store.writing() as session:
        team = session.exec(select(Team)).one()
        joan = session.exec(select(Person).where(Person.name == "Joan Oduya")).one()
        session.add(
            Membership(
                workspace_id=team.workspace_id, team_id=key(team), person_id=key(joan),
                role=Role.SCOREKEEPER,
            )
        )  # fmt: skip
    club.clock.set(chicago("05-09", "14:00"))
    club.say("joan", "Sam Ruiz 40p 4cb, Sam Oduya 20p 1cb vs Summit")

    the_next_morning(club)

    assert questions(club, "joan") == [GOLDEN]
    assert questions(club) == []
