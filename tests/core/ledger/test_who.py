import pytest

from core.ledger.who import Arm, find, near

ARMS = [
    Arm(1, "Mateo Cruz", slack_id="U1"),
    Arm(2, "Sam Ruiz"),
    Arm(3, "Sam Oduya", also_called=("Sammy O",)),
    Arm(4, "José Peña"),
]


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("Mateo", [1]),
        ("mateo cruz", [1]),
        ("Cruz", [1]),
        ("Mateo C", [1]),
        ("Mateo C.", [1]),
        ("MATEO'S", [1]),
        ("<@U1>", [1]),
        ("<@U1|mateo>", [1]),
        ("Sam", [2, 3]),
        ("sam r", [2]),
        ("sammy o", [3]),
        ("jose", [4]),
        ("José\u200b Peña", [4]),
        ("\u202eMateo", [1]),
        ("Jose Pen\u0303a", [4]),
        ("Marcus", []),
        ("<@U9>", []),
    ],
)
def test_a_name_as_typed_finds_its_pitchers(typed: str, found: list[int]) -> None:
    assert [arm.pitcher_id for arm in find(typed, ARMS)] == found


def test_a_near_miss_is_offered_and_never_taken() -> None:
    assert find("Mteo", ARMS) == []
    assert [arm.name for arm in near("Mteo", ARMS)] == ["Mateo Cruz"]


def test_nobody_is_offered_for_a_name_like_no_other() -> None:
    assert near("Bartholomew", ARMS) == []
