"""Pain is read first and never lost."""

import pytest

from tests.support.reading import entries_of, reading_of, reasons_of


@pytest.mark.parametrize(
    "line",
    [
        "elbow pain 4/10",
        "elbow hurts, 4 out of 10",
        "pain: 4. where: elbow.",
        "my elbow is like a 4",
        "out of 10 my elbow pain is like a 4 rn",
        "elbow hurts, maybe a 4",
    ],
)
def test_site_and_severity(line: str) -> None:
    assert entries_of(line) == [{"pain": [{"site": "elbow", "severity": 4}]}]


@pytest.mark.parametrize(
    "line",
    ["no pain", "arm felt good", "pain 0", "arm isn't sore", "elbow pain is gone", "no soreness"],
)
def test_no_pain(line: str) -> None:
    assert entries_of(f"45 pitches, {line}") == [{"pitches": 45, "pain": []}]


def test_soreness_side_and_time_are_kept() -> None:
    assert entries_of("left elbow sore after the game, 2/10") == [
        {"pain": [{"site": "elbow", "severity": 2, "side": "left", "when": "after", "sore": True}]}
    ]


def test_two_sites_are_two_pains_and_the_arm_is_where_it_hurts() -> None:
    assert entries_of("elbow and wrist hurt") == [{"pain": [{"site": "elbow"}, {"site": "wrist"}]}]
    assert entries_of("my arm hurts at the elbow") == [{"pain": [{"site": "elbow"}]}]


def test_a_painful_site_beside_a_painless_one() -> None:
    assert entries_of("no pain in the elbow but the shoulder is a 3") == [
        {"pain": [{"site": "shoulder", "severity": 3}]}
    ]


def test_last_weeks_pain_and_other_peoples_are_no_part() -> None:
    assert entries_of("last week my shoulder hurt, today no pain") == [{"pain": []}]
    assert entries_of("their pitcher had elbow pain") == []


@pytest.mark.parametrize(
    "line",
    [
        "he says 0 but is holding his arm",
        "says it doesnt hurt but keeps rubbing his elbow",
        "arm 8/10",
        "a little sore",
        "my elbow is on fire",
        "elbow and wrist sore, 3/10",
        "should i throw if my elbow hurts",
        "arm was tight, it felt off, pain somewhere",
    ],
)
def test_pain_that_cannot_be_placed_is_asked_and_never_called_none(line: str) -> None:
    reading = reading_of(f"45 pitches. {line}")

    assert "unclear_pain" in {unread.reason for unread in reading.unread} or reading.entries[0].pain
    assert all(entry.pain != () for entry in reading.entries)


def test_a_severity_over_ten_is_impossible_but_the_pain_stays() -> None:
    assert entries_of("elbow pain") == [{"pain": [{"site": "elbow"}]}]
    assert reasons_of("elbow pain 11/10") == {"impossible"}


def test_a_bad_arm_is_never_a_good_one() -> None:
    for word in ("bad", "hard", "ugly", "awful", "hanging"):
        assert all(entry.pain != () for entry in reading_of(f"arm felt {word}").entries)


@pytest.mark.parametrize(
    ("line", "tired"), [("arm is dead", True), ("arm not tired", False), ("tired arm", True)]
)
def test_a_tired_arm(line: str, tired: bool) -> None:
    assert entries_of(line) == [{"tired": tired}]


@pytest.mark.parametrize(
    "line", ["need some elbow grease sat 8am", "no pain no gain", "that loss hurt my feelings"]
)
def test_idioms_are_no_pain(line: str) -> None:
    assert entries_of(line) == []


def test_each_person_of_a_sentence_has_their_own_pain() -> None:
    entries = entries_of("Leo 30p elbow 3/10, Max 25p no pain, Sam shoulder sore", "coach")

    assert [entry["pain"] for entry in entries] == [
        [{"site": "elbow", "severity": 3}],
        [],
        [{"site": "shoulder", "sore": True}],
    ]


def test_a_roll_of_arms_says_whose_arm_is_good() -> None:
    entries = entries_of("Arm check: Leo good, Max elbow pain 3, Sam no pain", "coach")

    assert [entry["pain"] for entry in entries] == [[], [{"site": "elbow", "severity": 3}], []]


@pytest.mark.parametrize(
    "line", ["dice que 0 dolor pero se está agarrando el codo", "no pain but elbow is on fire"]
)
def test_no_pain_is_not_taken_while_pain_is_unclear(line: str) -> None:
    reading = reading_of(line, "guardian")

    assert reading.unread
    assert all(entry.pain is None for entry in reading.entries)
