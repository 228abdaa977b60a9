"""Long lines, many questions, and names as people really write them: Slack takes every message."""

import unicodedata
from datetime import timedelta

import pytest
from sqlmodel import col, select

from core.model import Line, Outing, Pitcher
from tests.support.club import Club

#: Slack's limits (docs.slack.dev, Block Kit reference and chat.postMessage).
BLOCKS_OF_A_MESSAGE = 50
#: Undocumented; reported at 12,000 to 13,200 characters (slackapi/bolt-js issues 2509, 2867).
CHARACTERS_IN_BLOCKS = 12_000


def refusals(club: Club) -> list[tuple[str, str | None]]:
    return [(call.method, call.error) for call in club.ws.calls.all() if not call.ok]


def too_large(club: Club) -> list[str]:
    """The messages of the bot that Slack would not take or would cut."""
    found = []
    for call in club.ws.calls.of("chat.postMessage") + club.ws.calls.of("chat.update"):
        blocks = call.args.get("blocks") or []
        size = sum(len(block.get("text", {}).get("text", "")) for block in blocks)
        if len(blocks) > BLOCKS_OF_A_MESSAGE or size > CHARACTERS_IN_BLOCKS:
            found.append(f"{len(blocks)} blocks, {size} characters")
        if len(call.args["text"]) > 40_000:
            found.append("text")
    return found


def outings(club: Club) -> list[Outing]:
    with club.store.reading() as session:
        return list(session.exec(select(Outing).order_by(col(Outing.id))))


@pytest.mark.parametrize(
    "line",
    [
        "Mateo 62p 11cb vs Summit " + " ".join(str(number) for number in range(13, 133)),
        "; ".join(f"Zed{chr(97 + n % 26)}{n} {30 + n}p vs Summit" for n in range(120)),
        "; ".join(f"Sam {20 + n % 40}p vs Summit" for n in range(120)),
        "Mateo 62p 11cb vs Summit, note: " + "very good game " * 240,
        "\n".join(f"Leo {20 + n % 40}p on {4 + n // 28}/{1 + n % 28}" for n in range(120)),
    ],
    ids=["stray numbers", "unknown names", "two Sams", "a note of 3,600 characters", "120 outings"],
)
def test_whatever_is_asked_or_listed_fits_into_slacks_limits(either: Club, line: str) -> None:
    said = either.say("dana", line, either.staff)
    either.bot.tick(either.clock.advance(timedelta(days=1)))
    either.settle()

    assert said.delivery.status == "acknowledged"
    assert refusals(either) == []
    assert too_large(either) == []
    with either.store.reading() as session:
        assert session.exec(select(Line)).one().text == line


def test_a_hundred_and_twenty_outings_are_summed_up_and_looked_up(club: Club) -> None:
    for n in range(120):
        on = f"{3 + n // 30}/{1 + n % 30}"
        club.ws.say(club.people["mateo"], club.log, f"bullpen {20 + n % 30} pitches on {on}")
        if n % 20 == 19:
            club.settle()

    club.tell_bot("mateo", "how many did I throw this year")
    club.tell_bot("dana", "mix for Mateo")
    for _ in range(9):
        club.bot.tick(club.clock.advance(timedelta(days=1)))
        club.settle()

    assert refusals(club) == []
    assert too_large(club) == []


def rename(club: Club, name: str) -> None:
    with club.store.writing() as session:
        leo = session.exec(select(Pitcher).where(Pitcher.name == "Leo Ortiz")).one()
        leo.name = name
        session.add(leo)


@pytest.mark.parametrize(
    ("name", "typed"),
    [
        ("José Núñez", unicodedata.normalize("NFD", "José")),
        (unicodedata.normalize("NFD", "José Núñez"), "José"),
        ("José Núñez", "Jose"),
        ("Leo Ortiz", "Le\u200bo"),
        ("Leo Ortiz", "\u202aLeo\u202c"),
        ("Leo Ortiz", "LEO"),
        ("דניאל כהן", "דניאל"),
        ("عمر ناصر", "\u2067عمر\u2069"),
        ("Leo 👩‍👩‍👧‍👦 Ortiz", "Leo"),
    ],
)
def test_a_name_is_the_same_however_it_is_written(club: Club, name: str, typed: str) -> None:
    rename(club, name)

    club.say("dana", f"{typed} 45p 6cb vs Summit", club.staff)

    (outing,) = outings(club)
    assert outing.pitches == 45
    with club.store.reading() as session:
        assert session.get_one(Pitcher, outing.pitcher_id).name == name
    assert refusals(club) == []


def test_a_number_with_an_invisible_sign_in_it_is_one_number(club: Club) -> None:
    typed = "6\u200b2p 1\u00ad1cb 4.\u20601ip vs Summit no pain"

    club.say("mateo", typed)

    (outing,) = outings(club)
    assert (outing.pitches, outing.breaking, outing.outs) == (62, 11, 13)
    with club.store.reading() as session:
        assert session.exec(select(Line)).one().text == typed  # kept as typed


def test_a_long_name_is_cut_between_characters_as_people_see_them(club: Club) -> None:
    with club.store.writing() as session:
        sams = session.exec(select(Pitcher).where(col(Pitcher.name).startswith("Sam"))).all()
        for sam in sams:
            sam.name = f"Sam {sam.name[4]}{'👩‍👩‍👧‍👦' * 20}"
            session.add(sam)

    said = club.say("dana", "Sam 40p 5cb vs Summit", club.staff)

    (asked,) = club.ws.replies(club.staff, said)
    rows = [block for block in asked.blocks if block["type"] == "actions"]
    labels = [element["text"]["text"] for row in rows for element in row["elements"]]
    cut = [label for label in labels if label.endswith("…")]
    assert len(cut) == 2
    assert all(label.removesuffix("…").endswith("👩‍👩‍👧‍👦") for label in cut)
    assert all(len(label) <= 75 for label in labels)
    assert refusals(club) == []
