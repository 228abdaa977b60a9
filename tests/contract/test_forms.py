"""Forms for those who do not type lines: one screen, prefilled, answered like a typed line."""

import pytest

from tests.support.club import Club
from tests.support.phone import call, fill, form, is_open
from tests.support.taps import answer_to, labels, tap


def pitcher_id(club: Club, name: str) -> str:
    """The stored value of a pitcher in a form's choice."""
    for view in (one for person in club.people.values() for one in club.ws.open_views(person)):
        for block in view.content["blocks"]:
            for option in (block.get("element") or {}).get("options", []):
                if option["text"]["text"] == name:
                    return str(option["value"])
    raise LookupError(name)


def test_a_pitcher_logs_his_game_by_a_form_and_reads_the_same_answer(club: Club) -> None:
    club.ws.shortcut(club.people["mateo"], "log")
    club.settle()

    assert form(club, "mateo").splitlines() == [
        "Log a game",
        "What was it?: Game",
        "Day: 2026-05-02",
        "Pitches",
        "Curveballs",
        "Sliders",
        "Changeups",
        "Strikes",
        "Innings pitched, such as 4.1",
        "Leave empty what nobody counted.",
    ]
    assert fill(club, "mateo", pitches="62", curve="11", innings="4.1") == {}

    (answer,) = club.heard("mateo")
    assert answer.startswith("*Game, Sat 2 May*\nRead: 62 pitches, 11 breaking balls")
    assert "Breaking balls: 11 of 62 = 18 %." in answer
    assert labels(answer_to(club, "mateo")) == ["Fix", "Undo"]
    assert club.in_log_channel() == []
    assert not is_open(club, "mateo")


def test_a_form_is_undone_and_fixed_like_a_line(club: Club) -> None:
    call(club, "mateo", "log")
    fill(club, "mateo", pitches="26")
    tap(club, "mateo", answer_to(club, "mateo"), "Fix")
    fill(club, "mateo", pitches="62")

    assert "Read: 62 pitches" in club.heard("mateo")[0]

    tap(club, "mateo", answer_to(club, "mateo"), "Undo")

    assert club.heard("mateo") == ["Taken back: this line no longer counts."]


def test_a_coach_chooses_the_pitcher_and_two_of_one_first_name_do_not_mix(club: Club) -> None:
    call(club, "dana", "bullpen")
    assert "Ben Abara" not in str(club.ws.top_view(club.people["dana"]).content["blocks"][0])
    assert "No consent on file, so nothing is counted: Ben Abara." in form(club, "dana")
    chosen = pitcher_id(club, "Sam Oduya")

    fill(club, "dana", who=chosen, pitches="24", curve="6", effort="75")

    (answer,) = club.heard("dana")
    assert answer.startswith("*Sam Oduya* · Bullpen, Sat 2 May")
    assert "24 pitches" in answer


def test_a_form_for_several_pitchers_wants_one(club: Club) -> None:
    call(club, "dana", "bullpen")

    assert list(fill(club, "dana", pitches="24")) == ["who"]
    assert is_open(club, "dana")
    assert club.heard("dana") == []


def test_a_guardian_of_one_child_has_nothing_to_choose(club: Club) -> None:
    call(club, "elena", "catch")
    assert "Who" not in form(club, "elena").splitlines()

    fill(club, "elena", throws="30", spins="12", effort="50")

    assert club.heard("elena")[0].startswith("*Mateo Cruz* · Catch play, Sat 2 May")
    assert "30 throws" in club.heard("elena")[0]


@pytest.mark.parametrize(
    ("values", "block"),
    [
        ({}, "pitches"),
        ({"pitches": "20", "curve": "30"}, "curve"),
        ({"pitches": "20", "strikes": "21"}, "strikes"),
        ({"pitches": "20", "innings": "4.7"}, "innings"),
        ({"pitches": "20", "on": "2026-05-03"}, "on"),
        ({"pitches": "20", "on": "2025-05-02"}, "on"),
    ],
)
def test_what_cannot_be_is_said_at_the_input_and_nothing_is_saved(
    club: Club, values: dict[str, str], block: str
) -> None:
    call(club, "mateo", "log")

    assert list(fill(club, "mateo", **values)) == [block]
    assert is_open(club, "mateo")
    assert club.heard("mateo") == []


def test_a_form_sent_twice_is_one_outing(club: Club) -> None:
    call(club, "mateo", "log")
    mateo = club.people["mateo"]
    view = club.ws.top_view(mateo)

    first = club.ws.submit(mateo, {"pitches": "62"})
    club.ws.deliver("interactive", first.payload)
    club.settle()

    assert view.id == first.payload["view"]["id"]
    assert len(club.heard("mateo")) == 1
    assert "62 pitches" in club.heard("mateo")[0]


def test_the_roll_call_leaves_out_who_was_not_there(club: Club) -> None:
    call(club, "dana", "roll call")
    assert "Who was there: Leo Ortiz, Mateo Cruz, Sam Oduya, Sam Ruiz" in form(club, "dana")
    there = [
        option["value"]
        for block in club.ws.top_view(club.people["dana"]).content["blocks"]
        for option in (block.get("element") or {}).get("options", [])
        if option["text"]["text"] in {"Leo Ortiz", "Sam Ruiz"}
    ]

    assert fill(club, "dana", there=there, throws="30", spins="12") == {}

    (answer,) = club.heard("dana")
    assert "Leo Ortiz" in answer
    assert "Sam Ruiz" in answer
    assert "Mateo Cruz" not in answer
    assert "Ben Abara" not in answer


def test_the_scorekeeper_fills_in_a_game_and_the_staff_read_it(club: Club) -> None:
    call(club, "priya", "counts")
    leo, mateo = pitcher_id(club, "Leo Ortiz"), pitcher_id(club, "Mateo Cruz")

    wrong = fill(
        club, "priya", who1=leo, pitches1="45", breaking1="6", innings1="3.1",
        who2=leo, pitches2="20",
    )  # fmt: skip
    assert list(wrong) == ["who2"]
    assert fill(club, "priya", who1=leo, pitches1="45", breaking1="50") == {
        "breaking1": "This cannot be: check it against the other counts. Nothing was changed."
    }
    fill(
        club, "priya", who1=leo, pitches1="45", breaking1="6", innings1="3.1",
        who2=mateo, pitches2="20", more="Sam Ruiz 12p 2cb",
    )  # fmt: skip

    (answer,) = club.heard("priya")
    for told in ("*Leo Ortiz* · Game", "*Mateo Cruz* · Game", "*Sam Ruiz* · Game"):
        assert told in answer
    assert "45 pitches, 6 breaking balls, 3.1 innings" in answer
    # The share and the rest are no business of a scorekeeper's.
    assert "Breaking balls:" not in answer
    assert "Pitch Smart" not in answer
    assert "*Leo Ortiz* · Game" in club.in_staff_channel()[0]


def test_what_is_typed_into_a_form_calls_nobody(club: Club) -> None:
    call(club, "priya", "counts")

    fill(club, "priya", more="<!channel> Zed <@U1> 12p 2cb")

    told = [*club.heard("priya"), *club.in_staff_channel()]
    assert told
    assert not any("<!channel>" in text or "<@U1>" in text for text in told)
    assert club.in_log_channel() == []


def test_pain_by_a_form_goes_to_the_adults_and_nowhere_else(club: Club) -> None:
    call(club, "mateo", "pain")
    assert "have a licensed clinician look before any more" in form(club, "mateo")

    fill(club, "mateo", site="elbow", side="right", severity="4", when="after")

    (staff,) = club.in_staff_channel()
    assert staff.startswith("*Pain report.* Mateo Cruz: right elbow 4/10")
    assert "Mateo should stop throwing today." in club.heard("elena")[0]
    assert club.heard("mateo")[0].startswith("Thank you for saying so: right elbow 4/10")
    assert club.in_log_channel() == []


def test_a_place_of_the_body_without_sides_has_none(club: Club) -> None:
    call(club, "mateo", "pain")

    assert list(fill(club, "mateo", site="back", side="left")) == ["side"]


def test_a_scorekeeper_logs_games_alone(club: Club) -> None:
    call(club, "priya", "log")
    assert "What was it?" not in form(club, "priya")

    for word in ("bullpen", "pain", "roll call"):
        assert "is not for you here" in call(club, "priya", word)
    assert call(club, "visitor", "log").startswith("I keep the pitching log of a team")


def test_the_menu_of_a_line_opens_its_form_for_who_may_change_it(club: Club) -> None:
    said = club.say("mateo", "26p 11cb vs Summit")

    club.ws.message_shortcut(club.people["sam_r"], said, "fix_line")
    club.settle()
    assert "nothing in this line that you may change" in form(club, "sam_r")

    club.ws.message_shortcut(club.people["mateo"], said, "fix_line")
    club.settle()
    fill(club, "mateo", pitches="62")
    assert "Read: 62 pitches, 11 breaking balls" in club.heard("mateo")[0]


def test_of_a_line_with_two_outings_one_is_chosen_first(club: Club) -> None:
    said = club.say("dana", "Leo 45p vs Summit, Mateo 30p vs Summit", club.staff)
    (answer,) = club.ws.replies(club.staff, said)
    club.ws.message_shortcut(club.people["dana"], answer, "fix_line")
    club.settle()
    assert form(club, "dana").startswith("Which one?\nWhich outing?: Leo Ortiz · Game, Sat 2 May")
    mateo = [
        option["value"]
        for option in club.ws.top_view(club.people["dana"]).content["blocks"][0]["element"][
            "options"
        ]
        if option["text"]["text"].startswith("Mateo")
    ]

    fill(club, "dana", outing=mateo[0])
    assert form(club, "dana").startswith("Put it right")
    fill(club, "dana", pitches="33")

    (answer,) = club.ws.replies(club.staff, said)
    assert "33 pitches" in answer.text
    assert "45 pitches" in answer.text


def test_forms_work_over_socket_mode(socket_club: Club) -> None:
    call(socket_club, "mateo", "log")

    fill(socket_club, "mateo", pitches="62")

    assert "Read: 62 pitches" in socket_club.heard("mateo")[0]
