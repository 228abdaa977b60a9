"""The prompt, with the real bot behind it: lines typed, and what the screen shows of them."""

import logging
from collections.abc import Iterator
from dataclasses import replace
from itertools import islice

import pytest
from prompt_toolkit.application import create_app_session
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput

from bot.local.commands import COMMANDS
from bot.local.overheard import overheard
from bot.local.terminal import ask, typed_lines
from tests.support.clubhouse import Table, table


@pytest.fixture(scope="module")
def shared() -> Iterator[Table]:
    """One club for the tests that only look, or say what others do not hear of."""
    with table() as at_table:
        yield at_table


@pytest.fixture
def fresh() -> Iterator[Table]:
    """A club in which nothing was said."""
    with table() as at_table:
        yield at_table


def test_a_line_is_said_by_the_person_in_the_channel_and_answered(fresh: Table) -> None:
    out = fresh.type("as mateo", "62p 11cb 4.1ip vs Summit no pain")

    assert "18:01  Mateo Rivas in #17u-pitching-log  ⚾\n       62p 11cb 4.1ip" in out
    assert "       Spinkeeper → Mateo Rivas (direct message)\n" in out
    assert "│ Read: 62 pitches, 11 breaking balls" in out


def test_an_edit_corrects_and_a_deletion_takes_back_the_last_line(fresh: Table) -> None:
    fresh.type("as mateo", "in dm", "62p 11cb 4.1ip vs Summit no pain")

    edited = fresh.type("edit 63p 11cb 4.1ip vs Summit no pain")
    deleted = fresh.type("delete")
    again = fresh.type("delete")

    assert "Mateo Rivas edits the line in the direct message to:\n       63p" in edited
    assert "Spinkeeper edits its answer to Mateo Rivas:\n" in edited
    assert "│ Read: 63 pitches" in edited
    assert "│ Taken back: this line no longer counts." in deleted
    assert again == "Mateo Rivas has not said anything yet.\n"


def test_pain_is_told_to_staff_and_guardian_and_never_in_the_log_channel(fresh: Table) -> None:
    out = fresh.type("as mateo", "elbow pain 4/10")

    assert "Spinkeeper in #17u-staff\n       │ Pain report. Mateo Rivas: elbow 4/10" in out
    assert "Spinkeeper → Elena Rivas (direct message)\n" in out
    assert "Spinkeeper in #17u-pitching-log" not in out


def test_time_goes_on_and_what_falls_due_is_shown(fresh: Table) -> None:
    fresh.type("go to 21:00", "as mateo", "in dm", "elbow pain 3/10", "delete")

    out = fresh.type("go to tomorrow 09:00")

    assert out.startswith("── Sunday 31 May ─")
    assert "\n08:00  Spinkeeper → Elena Rivas (direct message)\n" in out
    assert fresh.prompt.label() == "Sun 31 May 09:00  Mateo Rivas → Spinkeeper (direct message)"


def test_when_nothing_falls_due_it_says_so(fresh: Table) -> None:
    assert fresh.type("go to +2h") == "Spinkeeper sends nothing until Sat 30 May 20:00.\n"


def test_talk_that_is_left_alone_says_so(fresh: Table) -> None:
    out = fresh.type("see you all tomorrow")

    assert out.endswith("Spinkeeper says nothing to that.\n")


def test_a_button_is_pressed_by_its_label(fresh: Table) -> None:
    ws, mateo = fresh.club.ws, fresh.club.people["mateo"]
    button = {"type": "button", "action_id": "yes", "text": {"type": "plain_text", "text": "Today"}}
    fresh.type("as mateo", "in dm", "off today")
    message = ws.dm_messages(mateo)[-1]
    ws.state.keep_message(replace(message, blocks=({"type": "actions", "elements": [button]},)))

    wrong = fresh.type("in log17", "press Tomorrow")
    before = len(ws.courier.all)
    fresh.club.ws.courier.hold()  # nobody listens to this button: only what is sent is looked at
    fresh.type("press today")
    pressed = ws.courier.all[before].payload
    ws.courier.drop_held()

    assert wrong == "There is no button “Tomorrow”; there is: Today.\n"
    assert pressed["actions"][0]["action_id"] == "yes"


def test_a_slash_command_is_no_message_and_only_its_author_sees_the_answer(fresh: Table) -> None:
    out = fresh.type("as dana", "in staff17", "/spinkeeper help")

    assert "18:01  Spinkeeper → Dana Mercer (seen by nobody else in #17u-staff)\n" in out
    assert "│ " in out.partition("seen by nobody else")[2]
    assert fresh.club.ws.messages("17u-staff") == []


@pytest.mark.parametrize(
    ("line", "sentence"),
    [
        ("as Nobody", "Nobody here is called “Nobody”"),
        ("as caleb", "“caleb” fits several: write as caleb_w or caleb_n."),
        ("as Leo", "Leo Rivas has no account (Slack asks for an age of 16); for him log: Elena"),
        ("in attic", "There is no channel “attic”: write in log17,"),
        ("in staff", "“staff” fits several: write in 17u-staff or 14u-staff."),
        ("go to never", "“never” is no time I know"),
        ("press Yes", "Dana Mercer sees no buttons."),
        ("edit", "edit TEXT: edit your last line."),
    ],
)
def test_what_cannot_be_done_is_one_sentence(shared: Table, line: str, sentence: str) -> None:
    out = shared.type("as dana", line)

    assert " ".join(out.split()).startswith(sentence)


def test_somebody_who_is_not_in_the_channel_speaks_where_they_are(shared: Table) -> None:
    shared.type("as dana", "in 17u-staff", "as Carmen Delgado")
    inside = shared.prompt.label()
    refused = shared.type("in staff17")

    assert inside.endswith("Carmen Delgado in #14u-pitching-log")
    assert refused.startswith("Carmen Delgado is not in #17u-staff")


def test_help_lists_the_table_and_people_and_channels_list_the_club(shared: Table) -> None:
    helped, people = shared.type("help"), shared.type("people")
    channels = shared.type("as dana", "channels")

    assert all(f"{command.usage} " in helped for command in COMMANDS)
    assert "mateo     Mateo Rivas        pitcher\n" in people
    assert "elena     Elena Rivas        guardian of Mateo Rivas and Leo Rivas\n" in people
    assert "-         Leo Rivas          pitcher, logged by Elena Rivas\n" in people
    assert "log17     #17u-pitching-log  public, 17 people, you are in\n" in channels


def test_quit_ends_and_what_follows_is_not_done(shared: Table) -> None:
    assert shared.type("quit", "help") == ""


def test_ctrl_c_drops_a_line_and_ctrl_d_leaves(shared: Table) -> None:
    with create_pipe_input() as keys, create_app_session(input=keys, output=DummyOutput()):
        keys.send_text("half a line\x03help\r\x04")

        lines = list(islice(typed_lines(shared.prompt, shared.club), 5))

    assert lines == ["help"]


def test_at_the_terminal_one_is_welcomed_and_stays_until_ctrl_d(fresh: Table) -> None:
    with create_pipe_input() as keys, create_app_session(input=keys, output=DummyOutput()):
        keys.send_text("as owen\roff today\r\x04")

        ask(fresh.club, fresh.screen)

    assert fresh.shown().startswith("Now type as anybody in the club")
    assert "18:01  Owen Tarrant in #17u-pitching-log  ⚾\n       off today\n" in fresh.shown()


def test_tab_completes_a_name_at_the_terminal(shared: Table) -> None:
    with create_pipe_input() as keys, create_app_session(input=keys, output=DummyOutput()):
        keys.send_text("as mate\t\r\x04")

        lines = list(islice(typed_lines(shared.prompt, shared.club), 5))

    assert lines[0].casefold().startswith("as mate")


def test_the_log_stays_off_the_screen_and_what_went_wrong_is_kept(
    capsys: pytest.CaptureFixture[str],
) -> None:
    with overheard() as heard:
        logging.getLogger("slack_bolt.App").warning("an unused token")
        logging.getLogger("bot.outbox.deliver").warning("message 5: refused\nTraceback")
        logging.getLogger("slack_bolt.App").error("failed")

    assert heard.take() == ["bot.outbox.deliver: message 5: refused", "slack_bolt.App: failed"]
    assert capsys.readouterr() == ("", "")


def test_the_home_tab_is_read_and_its_buttons_are_pressed(fresh: Table) -> None:
    read = fresh.type("as mateo", "home")
    opened = fresh.type("press Log catch play")
    answered = fresh.type("fill throws = 30; Spins (breaking balls) = 12")

    assert "Home tab of Mateo Rivas" in read
    assert "[Log a game]  [Log a bullpen]  [Log catch play]  [Report pain]" in read
    assert "Spinkeeper opens a form for Mateo Rivas: Log catch play" in opened
    assert "│ Read: 30 throws, 12 breaking balls" in answered
    assert "• Catch play, Sat 30 May: 30 throws, 12 breaking balls" in fresh.type("home")


def test_a_form_is_opened_by_the_command_and_complains_at_its_inputs(fresh: Table) -> None:
    opened = fresh.type("as mateo", "/spinkeeper log")
    wrong = fresh.type("fill Pitches = 20; Strikes = 30")
    unknown = fresh.type("fill Runs = 3")

    assert "Spinkeeper opens a form for Mateo Rivas: Log a game" in opened
    assert "strikes: This cannot be: check it against the other counts." in wrong
    assert unknown.startswith("There is no “Runs”; there is: what was it?, day, pitches")
