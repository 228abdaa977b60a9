"""Counts that may be speeds, plans or another day's, and columns named at the end."""

from tests.support.reading import entries_of, reasons_of


def test_hit_sixty_of_named_pitchers_is_asked() -> None:
    assert reasons_of("Jace and Cody both hit 60 today", "coach") == {"two_readings"}


def test_a_list_after_who_has_pens_tomorrow_is_asked() -> None:
    assert reasons_of("who has pens tomorrow? Jace 25, Cody 25", "coach") == {"two_readings"}


def test_a_day_off_between_two_pitchers_days_is_asked() -> None:
    line = "Sun: Jace 55p 4ip; Mon: off; Tue: Cody pen 25"

    assert reasons_of(line, "coach") == {"two_readings"}


def test_a_level_of_ten_after_the_pain_is_no_date() -> None:
    line = "18 pitches in the pen before he said his lat was sore. 3/10, left side."
    entry = entries_of(line, "coach")[0]

    assert (entry["pain"][0]["severity"], "on" in entry) == (3, False)


def test_columns_may_be_named_at_the_end() -> None:
    line = "Jace 4.0/58/11, Cody 2.1/36/5 (ip/p/cb)"

    assert [(one["outs"], one["pitches"], one["curve"]) for one in entries_of(line, "coach")] == [
        (12, 58, 11),
        (7, 36, 5),
    ]


def test_a_site_hit_and_then_told_of_is_one() -> None:
    line = "He took a liner off the shin in the 2nd, 48 pitches. Shin is a 5"

    assert entries_of(line, "guardian")[0]["pain"] == [{"site": "shin", "severity": 5}]
