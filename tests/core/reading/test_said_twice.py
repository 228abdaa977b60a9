"""A count told twice, told of others or told of some of the pitches: it is counted once."""

import pytest

from tests.support.reading import entries_of, reasons_of


@pytest.mark.parametrize(
    "line",
    [
        "dad counted 55, I counted 55",
        "i think 55? scorebook says 55",
        "El abuelo contó 55 y yo también 55",
    ],
)
def test_two_who_agree_give_one_count(line: str) -> None:
    assert entries_of(line, "guardian") == [{"pitches": 55}]


@pytest.mark.parametrize("line", ["El abuelo contó 55 y yo 57", "55 pitches, brother 55"])
def test_a_number_that_may_be_anothers_is_asked_about(line: str) -> None:
    assert reasons_of(line, "guardian")


@pytest.mark.parametrize(
    "line",
    ["28 pitches 6 curves and 4 of em in the dirt", "28 picheos, 6 curvas, 4 de ellas al piso"],
)
def test_how_some_of_the_curves_came_out_is_no_count(line: str) -> None:
    assert entries_of(line) == [{"pitches": 28, "breaking": 6, "curve": 6}]


def test_none_of_them_is_a_count_of_none() -> None:
    assert entries_of("threw 17, none of them curves") == [
        {"pitches": 17, "breaking": 0, "curve": 0}
    ]


def test_who_is_saved_for_is_nobody_of_the_entry() -> None:
    assert "who" not in entries_of("closed it out for Ty, 12 pitches 1 ip")[0]
    assert entries_of("12 pitches for Ty")[0]["who"] == "Ty"
    assert entries_of("Leo closed it out for Ty, 12 pitches", "coach")[0]["who"] == "Leo"


def test_an_inning_called_by_its_number_alone_is_no_game() -> None:
    line = "20 picheos en el primer inning y 15 en el segundo, 35 en total"
    assert entries_of(line) == [{"pitches": 35}]
    games = entries_of("20 en el primer juego y 15 en el segundo")
    assert [entry["pitches"] for entry in games] == [20, 15]
