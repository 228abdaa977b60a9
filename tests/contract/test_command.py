"""The command, and the same words in direct messages and mentions."""

import pytest
from sqlmodel import select

from bot.local.faults import Refused
from bot.wording.command import GROUPS
from bot.wording.command import WORDS as HELP
from core.ledger.command_words import WORDS, Does, Word, word_alone
from core.model import PitcherTeam
from tests.support.club import Club
from tests.support.phone import call, form, is_open
from tests.support.taps import answer_to, labels, tap


def test_the_help_has_a_line_for_each_word_of_the_table_and_no_other() -> None:
    assert list(HELP) == [word.name for word in WORDS]


@pytest.mark.parametrize("word", WORDS, ids=lambda word: word.name)
def test_every_word_does_what_the_table_says(club: Club, word: Word) -> None:
    answer = call(club, "dana", word.name)

    match word.does:
        case Does.FORM:
            assert is_open(club, "dana")
            assert answer == ""
        case Does.HELP:
            assert "*roll call*" in answer
        case Does.ASK | Does.LINE | Does.LAST:
            assert answer == "I have it: the answer is in our direct message."
            assert len(club.heard("dana")) == 1
            assert "I keep the pitching log." not in club.heard("dana")[0]
    assert club.in_log_channel() == []


def test_every_word_is_in_one_group() -> None:
    assert sorted(one for group in GROUPS.values() for one in group) == sorted(HELP)


@pytest.mark.parametrize(("who", "first"), [
    ("dana", ["who", "left", "roll call", "log", "pain", "settings"]),
    ("mateo", ["log", "bullpen", "catch", "pain", "rest", "undo"]),
    ("elena", ["log", "bullpen", "catch", "pain", "rest", "undo"]),
])  # fmt: skip
def test_the_help_is_short_and_help_all_has_the_rest(
    club: Club, who: str, first: list[str]
) -> None:
    club.tell_bot(who, "help")
    club.tell_bot(who, "what can you do")
    club.tell_bot(who, "help all")

    short, asked, long = club.heard(who)
    assert short == asked
    assert _words_in(short) == first
    assert "`help all`" in short
    assert len(short.splitlines()) <= 9
    names = {word for word in HELP if f" {word}," in short or f" {word}." in short}
    assert {*_words_in(short), *names, "help"} == set(_words_in(long))
    assert "\n*Ask*\n" in long
    assert call(club, who, "help all") == long


def test_the_help_of_a_staff_without_pitchers_begins_with_the_set_up(club: Club) -> None:
    with club.store.writing() as session:
        for row in session.exec(select(PitcherTeam)).all():
            session.delete(row)
    club.tell_bot("dana", "what can you do")

    assert _words_in(club.heard("dana")[-1])[:3] == ["add", "roster", "team"]


def _words_in(told: str) -> list[str]:
    return [line.split("*")[1] for line in told.splitlines() if line.startswith("•")]


def test_help_names_what_that_person_may_use(club: Club) -> None:
    coach, pitcher, scorer = (call(club, who, "help") for who in ("dana", "mateo", "priya"))

    assert call(club, "mateo") == pitcher
    assert "*who*: who can throw today" in coach
    assert "*who*" not in pitcher
    assert "*pain*: report pain; only adults who must know are told" in pitcher
    assert [line.split("*")[1] for line in scorer.splitlines() if line.startswith("•")] == [
        "log", "counts", "undo", "help",
    ]  # fmt: skip
    assert "“can Leo go sunday”" in coach
    assert "“can Leo go sunday”" not in pitcher


def test_a_line_after_the_command_is_logged_like_one_that_was_typed(club: Club) -> None:
    assert call(club, "mateo", "62p 11cb 4.1ip vs Summit").startswith("I have it")

    (answer,) = club.heard("mateo")
    assert answer.startswith("*Game, Sat 2 May*\nRead: 62 pitches, 11 breaking balls")
    assert labels(answer_to(club, "mateo")) == ["Fix", "Undo"]
    tap(club, "mateo", answer_to(club, "mateo"), "Undo")
    assert club.heard("mateo") == ["Taken back: this line no longer counts."]


def test_a_command_that_comes_twice_is_one_line(club: Club) -> None:
    delivery = club.ws.command(club.people["mateo"], club.log, "/spinkeeper", "pen 24 pitches")
    club.settle()
    club.ws.deliver("slash_commands", delivery.payload)
    club.settle()

    assert len(club.heard("mateo")) == 1


@pytest.mark.parametrize(
    ("typed", "begins"),
    [
        ("log 62p 11cb vs Summit", "*Game, Sat 2 May*"),
        ("bullpen 24 pitches", "*Bullpen, Sat 2 May*"),
        ("catch 30 throws 12 spins", "*Catch play, Sat 2 May*"),
        ("pain elbow 4/10", "Thank you for saying so: elbow 4/10"),
        ("rest", "Rest done"),
        ("mix", "*Mateo Cruz*, Sat 2 May"),
        ("when can I pitch", "Rest done"),
    ],
)
def test_a_word_with_more_after_it_is_the_whole_line(club: Club, typed: str, begins: str) -> None:
    call(club, "mateo", typed)

    assert club.heard("mateo")[0].startswith(begins)


def test_a_name_after_a_word_fills_the_pitcher_in(club: Club) -> None:
    call(club, "dana", "log leo")
    assert "Who: Leo Ortiz" in form(club, "dana")

    call(club, "dana", "rest Leo")
    assert club.heard("dana")[0].startswith("Leo Ortiz: rest done")


def test_an_unknown_word_gets_the_nearest_and_is_not_kept(club: Club) -> None:
    answer = call(club, "mateo", "bulpen")

    assert answer.startswith(
        "I don't know “bulpen”, so nothing was counted. Did you mean *bullpen*?"
    )
    assert (
        "You can say: log, bullpen, catch, pain, rest, mix, innings, stats, undo, my data, "
        "consent, delete my data, calendar, help."
    ) in answer
    assert club.heard("mateo") == []
    assert "Did you mean" not in call(club, "mateo", "xylophone")
    assert "<!channel>" not in call(club, "mateo", "<!channel> hello")


def test_a_word_for_others_is_refused_with_ones_own(club: Club) -> None:
    answer = call(club, "mateo", "roll call")

    assert answer.startswith("“roll call” is not for you here. You can say: log, bullpen")
    assert not is_open(club, "mateo")


def test_somebody_whom_no_team_knows_is_told_how_to_get_in(club: Club) -> None:
    assert call(club, "visitor", "62p 11cb").endswith("then open my Home tab.")
    assert club.heard("visitor") == []


def test_a_word_in_a_direct_message_offers_the_form_as_a_button(club: Club) -> None:
    club.tell_bot("mateo", "log")
    assert club.heard("mateo") == ["*Log*: log one pitcher's game, by a form."]

    tap(club, "mateo", answer_to(club, "mateo"), "Open the form")

    assert form(club, "mateo").startswith("Log a game")


def test_a_mention_is_answered_directly_not_in_the_channel(club: Club) -> None:
    club.say("dana", f"<@{club.ws.bot.id}> who")
    club.say("mateo", f"<@{club.ws.bot.id}> bullpen")

    assert club.heard("dana")[0].startswith("*Sat 2 May*: 4 of 4 arms have their rest done.")
    assert club.heard("mateo")[0].startswith("*Bullpen*")
    assert club.in_log_channel() == []


def test_rest_asks_the_bot_when_and_tells_the_log_of_a_day_off(club: Club) -> None:
    club.tell_bot("mateo", "rest")
    club.tell_bot("mateo", "rest today")

    assert club.heard("mateo")[0].startswith("Rest done, up to 105 pitches")
    assert club.heard("mateo")[1].startswith("*Day off, Sat 2 May*")


def test_words_in_the_log_channel_are_talk_among_people(club: Club) -> None:
    for word in ("log", "who", "plan", "mix", "help"):
        club.say("mateo", word)

    assert club.heard("mateo") == []
    assert club.in_log_channel() == []


@pytest.mark.parametrize("typed", ["left the field early", "who is coming to practice", "rest up"])
def test_more_than_a_word_is_no_word(club: Club, typed: str) -> None:
    club.tell_bot("dana", typed)

    no_word = ("I keep the pitching log.", "I can't answer that one.")
    assert club.heard("dana")[0].startswith(no_word)


def test_pain_alone_in_a_direct_message_is_heard_as_pain(club: Club) -> None:
    club.tell_bot("mateo", "pain")

    assert word_alone("pain") is not None
    assert "I keep the pitching log." not in club.heard("mateo")[0]
    tap(club, "mateo", answer_to(club, "mateo"), "Report pain")
    assert form(club, "mateo").startswith("Report pain")


def test_a_trigger_that_ran_out_is_told_and_nothing_breaks(club: Club) -> None:
    mateo = club.people["mateo"]
    club.ws.faults.order("views.open", Refused("expired_trigger_id"))
    assert call(club, "mateo", "log") == (
        "That took too long, so the form did not open. Nothing is lost: please press again."
    )

    club.ws.faults.order("views.open", Refused("expired_trigger_id"))
    club.ws.shortcut(mateo, "log")
    club.settle()
    assert club.heard("mateo")[-1].startswith("That took too long, so the form did not open.")


def test_the_command_works_over_socket_mode(socket_club: Club) -> None:
    call(socket_club, "mateo", "62p 11cb vs Summit")

    assert socket_club.heard("mateo")[0].startswith("*Game, Sat 2 May*")
