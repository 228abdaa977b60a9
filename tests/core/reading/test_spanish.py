"""Lines as Spanish-speaking baseball families type them. Word use: common practice, no source."""

import pytest

from tests.support.reading import entries_of, reading_of, reasons_of


@pytest.mark.parametrize(
    ("line", "entry"),
    [
        ("juego de atrapadas 40 tiros", {"kind": "catch", "pitches": 40}),
        ("unas 10 curvas en 45 pitcheos",
         {"pitches": 45, "breaking": 10, "curve": 10, "about": True}),
        ("bullpen 30 al ochenta por ciento", {"kind": "bullpen", "pitches": 30, "effort": 80}),
        ("30 pitcheos a medio gas", {"pitches": 30, "effort": 50}),
        ("15 spins de curva en catch", {"kind": "catch", "breaking": 15, "curve": 15}),
        ("tiré 61 pitcheos de los cuales 12 fueron curvas",
         {"pitches": 61, "breaking": 12, "curve": 12}),
        ("tire 40 bolas 12 curvas", {"pitches": 40, "breaking": 12, "curve": 12}),
        ("40 pitcheos 25 strikes 15 bolas", {"pitches": 40, "strikes": 25}),
        ("arm feels bien, 30 tiros, 6 curvas",
         {"pitches": 30, "breaking": 6, "curve": 6, "pain": []}),
        ("estoy cansado del brazo", {"tired": True}),
        ("60 pitcheos y el brazo bien gracias a Dios", {"pitches": 60, "pain": []}),
        ("lance 5 innings 70 pitcheos", {"kind": "game", "pitches": 70, "outs": 15}),
        ("mi hermano y yo tiramos 30 cada uno", {"pitches": 30}),
    ],
)  # fmt: skip
def test_a_line_is_read(line: str, entry: dict[str, object]) -> None:
    assert entries_of(line) == [entry]


@pytest.mark.parametrize(
    ("line", "reason"),
    [
        ("tire unas curvas y 30 rectas", "vague"),
        ("tire 45 no 47 pitcheos", "two_readings"),
        ("toda la semana 30 tiros diarios", "unclear_day"),
        ("no pasó de 40 pitcheos", "vague"),
    ],
)
def test_a_line_is_asked(line: str, reason: str) -> None:
    assert reason in reasons_of(line)


@pytest.mark.parametrize(
    "line",
    ["nada de rompientes para Eli hasta junio", "no breaking balls for Eli till june"],
)
def test_what_is_forbidden_for_days_to_come_is_no_count(line: str) -> None:
    assert entries_of(line, "coach") == []


def test_a_word_that_is_also_a_nickname_stays_a_name() -> None:
    entries = entries_of("Efra 69 lanz 11 curvas. Mundo 16 lanz 3 curvas", "coach")

    assert [entry["who"] for entry in entries] == ["Efra", "Mundo"]


def test_pain_is_not_gone_because_something_else_passed() -> None:
    entries = entries_of("ya paso con el doctor, hoy tiro 20, le duele el codo", "guardian")

    assert entries[-1]["pain"] == [{"site": "elbow"}]


def test_a_word_for_throwing_is_a_noun_after_its_number() -> None:
    assert entries_of("pitche 2 inings 29 picheo no dolor") == [
        {"kind": "game", "pitches": 29, "outs": 6, "pain": []}
    ]


def test_somebody_logged_for_is_named_after_the_word_for_the_log() -> None:
    assert entries_of("registro de Danilo: bullpen 30")[0]["who"] == "Danilo"


@pytest.mark.parametrize(
    ("line", "entry"),
    [
        ("setenta y un lanzamientos", {"pitches": 71}),
        ("catch 35 tiros al 50", {"kind": "catch", "pitches": 35, "effort": 50}),
        ("doble juego, lancé en los dos, 26 y 19 picheos", None),
    ],
)
def test_numbers_as_spoken(line: str, entry: dict[str, object] | None) -> None:
    entries = entries_of(line)

    assert entries == [entry] if entry else [one["pitches"] for one in entries] == [26, 19]


def test_the_speed_that_a_fastball_reached_is_no_count() -> None:
    assert entries_of("la recta llego a 74 hoy") == []


def test_a_small_word_after_a_round_number_joins_it_only_by_and() -> None:
    assert entries_of("treinta lanzamientos, una entrada") == [
        {"kind": "game", "pitches": 30, "outs": 3}
    ]


@pytest.mark.parametrize(
    ("line", "entry"),
    [
        ("cien lanzamientos", {"pitches": 100}),
        ("ciento cinco lanzamientos", {"pitches": 105}),
        ("treintaidos rectas", {"fastball": 32}),
        ("tire como 14 curvas de 62",
         {"pitches": 62, "breaking": 14, "curve": 14, "about": True}),
        ("catch con el Chuy 25 tiros 8 curvas al 60",
         {"kind": "catch", "pitches": 25, "breaking": 8, "curve": 8, "effort": 60}),
        ("de 30 tiros 12 con giro", {"pitches": 30, "breaking": 12}),
    ],
)  # fmt: skip
def test_counts_and_company(line: str, entry: dict[str, object]) -> None:
    assert entries_of(line) == [entry]


@pytest.mark.parametrize("line", ["ayer 50 hoy 20", "no, fueron 40", "32r 8c"])
def test_bare_numbers_that_may_be_a_log_are_asked(line: str) -> None:
    assert "unknown_number" in reasons_of(line)


def test_speeds_of_two_pitches_are_no_counts() -> None:
    assert entries_of("mi recta 70 mi curva 58 mph") == []


@pytest.mark.parametrize(
    ("line", "entry"),
    [
        ("49 lanz 31 st 9 cur 4 cam 3.2 ent",
         {"kind": "game", "pitches": 49, "breaking": 9, "curve": 9, "changeup": 4, "strikes": 31,
          "outs": 11}),
        ("3 entradas y 2/3, 49 lanzamientos", {"kind": "game", "pitches": 49, "outs": 11}),
        ("49 lanzamientos, 9 curvas y 4 de esas strike",
         {"pitches": 49, "breaking": 9, "curve": 9, "breaking_strikes": 4}),
        ("tire 45, 60% strikes", {"pitches": 45, "strikes": 27}),
    ],
)  # fmt: skip
def test_strikes_and_thirds(line: str, entry: dict[str, object]) -> None:
    assert entries_of(line) == [entry]


@pytest.mark.parametrize(
    "line",
    ["tire 30 en la manana y 25 en la tarde", "2 bullpens de 20", "poquitas curvas hoy, 45 tiros"],
)
def test_more_than_one_outing_or_a_vague_count_is_asked(line: str) -> None:
    assert reasons_of(line)


@pytest.mark.parametrize(
    ("line", "lang"),
    [("Dom 34p 5cb, elbow felt tight", "en"), ("Al 26 pitches 4 sliders", "en"),
     ("arm feels bien", "es"), ("5 knuckle 30 rectas", "es")],
)  # fmt: skip
def test_the_language_is_told_by_words_and_not_by_names(line: str, lang: str) -> None:
    assert reading_of(line).lang == lang


def test_a_date_stands_as_weekday_and_number_before_a_colon() -> None:
    entries = entries_of("Sábado 8: Iker 62 lanz; domingo 9: Saúl 55 lanz", "coach")

    assert [entry["on"] for entry in entries] == ["2026-08-08", "2026-08-09"]


@pytest.mark.parametrize(
    "line", ["son 120 por niño para el torneo", "Dante descansa hasta el jueves"]
)
def test_fees_and_rests_to_come_are_no_log(line: str) -> None:
    assert entries_of(line, "coach") == []


def test_outs_beside_the_inning_in_which_somebody_left_are_asked() -> None:
    assert "two_readings" in reasons_of(
        "Iker salió en la 4ta con 62 lanzamientos y 2 outs", "coach"
    )


def test_arms_that_rest_today_and_the_hour_of_a_bullpen() -> None:
    assert [entry["kind"] for entry in entries_of("Rubén y Andrés descansan hoy", "coach")] == [
        "off",
        "off",
    ]
    assert entries_of("a las 9 bullpen de 30") == [{"kind": "bullpen", "pitches": 30}]
    assert entries_of("Pedro descansa el domingo", "coach") == []
