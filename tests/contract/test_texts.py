"""What people type beside plain lines: pictures, emoji, novels, nonsense and mischief."""

import json
from typing import Any

import pytest
from sqlmodel import select

from core.model import Line, LineState, Outing, Person, Pitcher, Team, Workspace
from tests.support.club import Club


@pytest.fixture
def club(either: Club) -> Club:
    """Everything here holds over each transport."""
    return either


def line(club: Club) -> Line:
    with club.store.reading() as session:
        return session.exec(select(Line)).one()


def outings(club: Club) -> list[Outing]:
    with club.store.reading() as session:
        return list(session.exec(select(Outing)))


def sent_to_slack(club: Club) -> str:
    """Every word that left for Slack."""
    return json.dumps([call.args for call in club.ws.calls.all()], ensure_ascii=False)


def event(club: Club, who: str, **fields: Any) -> dict[str, Any]:
    return {
        "type": "message", "user": club.people[who].id, "ts": "1777762800.000100",
        "channel": club.log.id, "channel_type": "channel", **fields,
    }  # fmt: skip


def test_the_caption_of_a_picture_is_read(club: Club) -> None:
    club.ws.photo(club.people["mateo"], club.log, "62p 11cb vs Summit")
    club.settle()

    assert [one.pitches for one in outings(club)] == [62]


@pytest.mark.parametrize(
    "text", [{"text": ""}, {"text": None}, {}], ids=["empty", "null", "absent"]
)
def test_a_picture_without_words_is_kept_and_answered_once(
    club: Club, text: dict[str, Any]
) -> None:
    for ts in ("1777762800.000100", "1777762801.000100"):
        picture = event(club, "mateo", subtype="file_share", files=[{"id": "F1"}], ts=ts, **text)
        sent = club.ws.deliver("events_api", club.ws.event_callback(picture))
        club.settle()
        assert sent.status == "acknowledged"

    with club.store.reading() as session:
        assert len(session.exec(select(Line)).all()) == 2
    (answer,) = club.heard("mateo")
    assert "I read words only" in answer


def test_an_emoji_alone_is_kept_and_answered_once(club: Club) -> None:
    club.say("mateo", ":baseball: :muscle:")
    club.say("mateo", "🔥🔥")

    (answer,) = club.heard("mateo")
    assert "an emoji alone logs nothing" in answer
    assert outings(club) == []


def test_a_line_over_four_thousand_characters_is_kept_whole_and_not_read(club: Club) -> None:
    text = "62p 11cb vs Summit " + "great game " * 400

    said = club.say("mateo", text)

    assert line(club).text == text
    assert outings(club) == []
    assert club.reaction(said) == ["question"]
    assert "longer than 4,000 characters" in club.heard("mateo")[0]
    assert len(club.heard("mateo")[0]) < 1000


def test_forty_thousand_characters_are_acknowledged(club: Club) -> None:
    said = club.say("mateo", "x" * 40_000)

    assert said.delivery.status == "acknowledged"
    assert len(line(club).text) == 40_000


@pytest.mark.parametrize(
    ("typed", "word"),
    [
        ("62p 70cb vs Summit", "70"),
        ("62p 11cb 9.4ip vs Summit", "9.4"),
        ("-3 pitches vs Summit", "3"),
        ("40p vs Summit 14 ip", "14"),
        ("99999999999999999999 pitches vs Summit", "99999999999999999999"),
        ("3000000000p vs Summit", "3000000000"),
    ],
)
def test_an_impossible_count_is_asked_in_one_sentence_and_not_stored(
    club: Club, typed: str, word: str
) -> None:
    said = club.say("mateo", typed)

    assert line(club).text == typed
    assert line(club).state in {LineState.ASKED, LineState.NOT_READ}
    assert club.reaction(said) == ["question"]
    (answer,) = club.heard("mateo")
    assert word in answer or "I could not read this line" in answer
    assert all(one.pitches is None or 0 <= one.pitches <= 62 for one in outings(club))
    assert all(one.breaking is None or one.breaking <= 62 for one in outings(club))


def test_somebody_on_no_team_is_told_once_and_the_line_is_kept(club: Club) -> None:
    club.say("visitor", "62p 11cb vs Summit")
    club.say("visitor", "58p 9cb vs Summit")

    (answer,) = club.heard("visitor")
    assert answer.startswith("I don't know you as part of a team yet")
    assert outings(club) == []
    with club.store.reading() as session:
        assert len(session.exec(select(Line)).all()) == 2


def test_talk_of_somebody_on_no_team_is_left_alone(club: Club) -> None:
    club.say("visitor", "see you all on saturday")

    assert club.heard("visitor") == []


def test_somebody_who_joins_a_team_and_edits_reads_own_record_only(club: Club) -> None:
    said = club.say("visitor", "62p 11cb vs Summit")
    with club.store.writing() as session:
        newcomer = Person(
            workspace_id=club.ws.team_id, slack_id=club.people["visitor"].id, name="Vic Stray"
        )
        session.add(newcomer)
        session.flush()
        ben = session.exec(select(Pitcher).where(Pitcher.name == "Ben Abara")).one()
        ben.person_id = newcomer.id

    club.edit(said, "64p 11cb vs Summit")

    assert line(club).author_id is not None
    assert "no consent is on file" in club.heard("visitor")[-1]


def test_a_bot_that_knows_no_team_says_how_to_begin(club: Club) -> None:
    with club.store.writing() as session:
        session.merge(Workspace(id="T-OTHER"))
        session.flush()
        session.exec(select(Team)).one().workspace_id = "T-OTHER"

    club.tell_bot("visitor", "hello?")
    club.tell_bot("visitor", "anybody there?")

    answers = club.heard("visitor")
    assert len(answers) == 2
    for answer in answers:
        assert "open my Home tab and press “Set up the team”" in answer


NAMES = (
    "<!channel> Vale",
    "<@U12345678> Vale",
    "<https://evil.example|Vale>",
    "Ann & Bob Vale",
    "\u202eelaV oeL",
    "Le\u200bo Vale",
    "\u2066Leo\u2069 Vale",
    "*Leo* _Vale_ ~x~ `code`",
    "Leo\nVale",
)


@pytest.mark.parametrize("name", NAMES)
def test_a_name_comes_out_inert(club: Club, name: str) -> None:
    with club.store.writing() as session:
        leo = session.exec(select(Pitcher).where(Pitcher.name == "Leo Ortiz")).one()
        leo.name = name
        leo.also_called = ["Leo"]
        session.add(leo)

    club.say("carmen", "Leo 45 pitches 6 curves vs Summit, elbow pain 4/10")

    sent = sent_to_slack(club)
    assert "<!" not in sent
    assert "<@" not in sent
    assert "<http" not in sent
    assert not any(mark in sent for mark in "\u202e\u2066\u2069\u200b")
    assert "&amp;amp;" not in sent
    assert not any(sign in sent for sign in ("`", "~", "*Leo*", "_Vale_"))


@pytest.mark.parametrize(
    "mischief",
    ["<!channel> Zed 40p vs Summit", "Z<!here>d 40p 5cb", "`Zed` *bold* 40 of & <@U99999999>",
     "62p 11cb 8 <!everyone>", "\u202e62p 11cb 7 zorks", "<https://evil.example|click> 44 zorks"],
)  # fmt: skip
def test_words_quoted_back_come_out_inert(club: Club, mischief: str) -> None:
    club.ws.say(club.people["dana"], club.staff, mischief, literal=True)
    club.settle()
    club.ws.say(club.people["mateo"], club.log, mischief)
    club.settle()

    sent = sent_to_slack(club)
    assert "<!" not in sent
    assert "<@" not in sent
    assert "<http" not in sent
    assert "\u202e" not in sent


def test_a_text_with_escaped_characters_is_stored_as_typed(club: Club) -> None:
    club.ws.say(club.people["mateo"], club.log, "62p & 11cb <3 vs Summit", literal=True)
    club.settle()

    assert line(club).text == "62p & 11cb <3 vs Summit"


@pytest.mark.parametrize("text", ["62p\x00 11cb", "62p \ud83d"])
def test_text_that_no_database_takes_is_stored_all_the_same(club: Club, text: str) -> None:
    sent = club.ws.deliver("events_api", club.ws.event_callback(event(club, "mateo", text=text)))
    club.settle()

    assert sent.status == "acknowledged"
    assert line(club).text.startswith("62p")
