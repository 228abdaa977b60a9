"""Days side by side, a day's practice beside a game, dates as numbers, and days to come."""

import pytest

from tests.support.reading import entries_of, reasons_of


@pytest.mark.parametrize(
    "line",
    [
        "mon wed and fri 10 curves each day in catch play",
        "mon, wed and fri catch 10 curves each",
        "lun, mie y vie 10 curvas cada dia jugando catch",
    ],
)
def test_three_days_are_three_entries(line: str) -> None:
    read = entries_of(line)
    assert [entry.get("on") for entry in read] == ["2026-08-10", None, "2026-08-07"]
    assert {entry["kind"] for entry in read} == {"catch"}


@pytest.mark.parametrize(
    "line",
    [
        "Sat 55 pitches vs Three Oaks, Sunday just catch, 20 throws",
        "El sábado 55 picheos contra Tres Ceibas, el domingo solo catch, 20 tiros",
    ],
)
def test_a_day_and_a_kind_head_the_count_that_follows(line: str) -> None:
    assert entries_of(line) == [
        {"kind": "game", "on": "2026-08-08", "pitches": 55},
        {"kind": "catch", "on": "2026-08-09", "pitches": 20},
    ]


def test_a_days_practice_without_a_count_is_asked_about() -> None:
    assert reasons_of("tue game 40p, wed catch, thu pen 20") == {"vague"}


def test_a_kind_told_of_one_is_no_heading_for_the_next() -> None:
    assert reasons_of("Leo sun pen 20, mon catch 30 throws, Max sun 22", "coach")


@pytest.mark.parametrize(
    ("line", "day"),
    [
        ("el 3 vs Garza Mora tiré 50 picheos", "2026-08-03"),
        ("el 10 tiré 50 picheos", "2026-08-10"),
        ("fue el 10, 50 picheos", "2026-08-10"),
    ],
)
def test_the_day_of_the_month_of_ones_own_outing(line: str, day: str) -> None:
    [entry] = entries_of(line)
    assert (entry["on"], entry["pitches"]) == (day, 50)


def test_a_number_that_may_be_a_shirt_is_asked_about() -> None:
    assert reasons_of("el 10 tiró 50 picheos", "guardian")


@pytest.mark.parametrize(
    "line",
    [
        "la final es el 14 a las 10",
        "el juego es el 15",
        "El viernes cada pitcher tira bullpen de 30",
        "Friday every pitcher throws a 30 pitch pen",
        "everyone throws 30 on monday in the pen",
        "Se cambió el juego de las 9 a las 11:15",
        "Anoche tenía 38 de fiebre",
    ],
)
def test_what_is_to_come_is_no_log(line: str) -> None:
    assert entries_of(line, "coach") == []


@pytest.mark.parametrize(
    "line", ["El viernes Leo tira 30 en el bullpen", "Fri he throws 3 innings"]
)
def test_a_present_verb_beside_a_weekday_is_asked_about(line: str) -> None:
    assert "unclear_day" in reasons_of(line, "coach")


def test_a_month_before_counts_is_somebody_and_before_a_colon_a_date() -> None:
    assert [
        entry["who"] for entry in entries_of("Julio 4 ent 58 lanz\nAbril 2 ent 27 lanz", "coach")
    ] == [
        "Julio",
        "Abril",
    ]
    assert entries_of("Julio 30: Leo 40 picheos", "coach") == [
        {"who": "Leo", "on": "2026-07-30", "pitches": 40}
    ]


@pytest.mark.parametrize("line", ["vs cerro azul 71 picheos", "VS CERRO AZUL 71 PICHEOS"])
def test_an_opponent_may_begin_with_a_word_of_the_trade(line: str) -> None:
    assert entries_of(line) == [{"kind": "game", "pitches": 71}]


@pytest.mark.parametrize(
    "line",
    [
        "Catch play Mon and Tue: Reid 30 each day, Max 20 each day",
        "Mon and Tue catch: Reid 30 each, Max 20 each",
    ],
)
def test_days_before_a_colon_stand_over_every_name(line: str) -> None:
    assert [(entry["who"], entry["on"]) for entry in entries_of(line, "coach")] == [
        ("Reid", "2026-08-10"),
        ("Reid", "2026-08-11"),
        ("Max", "2026-08-10"),
        ("Max", "2026-08-11"),
    ]


def test_days_before_a_colon_without_each_are_asked_about() -> None:
    assert reasons_of("Sat and Sun: Leo 20, Max 30", "coach")


@pytest.mark.parametrize(
    "line", ["descanso mañana, hoy 30 picheos", "rest day tomorrow, today 30p"]
)
def test_a_rest_to_come_is_no_day_off(line: str) -> None:
    assert entries_of(line) == [{"pitches": 30}]


def test_a_rest_today_before_a_plan_is_a_day_off() -> None:
    assert entries_of("rest day today tomorrow pen 30") == [{"kind": "off"}]


def test_the_game_of_a_day_is_no_count() -> None:
    assert entries_of("el juego del 16 se pasó a las 3", "guardian") == []
    assert entries_of("el juego del 9, 40 picheos") == [
        {"kind": "game", "on": "2026-08-09", "pitches": 40}
    ]
