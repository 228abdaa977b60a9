"""What a heading says of each, counts of strikes, and other people's staffs."""

from tests.support.reading import entries_of, reading_of, reasons_of


def test_a_heading_tells_of_each() -> None:
    line = "scrimmage vs Rivertown, 2 innings each: Theo 28, Nash 33"

    assert [(one["pitches"], one["outs"]) for one in entries_of(line, "coach")] == [
        (28, 6),
        (33, 6),
    ]
    entries = entries_of("25 each in pens: Leo 6 cb, Max 5 cb", "coach")
    assert [(one["kind"], one["pitches"], one["curve"]) for one in entries] == [
        ("bullpen", 25, 6),
        ("bullpen", 25, 5),
    ]


def test_both_games_at_the_end_is_the_kind_of_both() -> None:
    entries = entries_of("Leo 45p, Max 30p. Both games.", "coach")

    assert [one["kind"] for one in entries] == ["game", "game"]
    assert reasons_of("2 cb both games") == {"two_readings"}


def test_strikes_over_curves_with_a_stroke() -> None:
    entry = entries_of("47 pitches 3 inn 7/9 curves for strikes")[0]

    assert (entry["curve"], entry["breaking_strikes"]) == (9, 7)


def test_two_days_off_in_a_row() -> None:
    entries = entries_of("off sun, off mon, catch tues 45 throws")

    assert [(one["kind"], one["on"]) for one in entries] == [
        ("off", "2026-08-09"),
        ("off", "2026-08-10"),
        ("catch", "2026-08-11"),
    ]


def test_another_staff_is_nobody_of_ours() -> None:
    line = "Hawks threw 3 pitchers, 140 total. Leo 44p"

    assert entries_of(line, "coach") == [{"who": "Leo", "pitches": 44}]
    assert entries_of("they used 5 arms, 30 for Leo", "coach") == [{"who": "Leo", "pitches": 30}]


def test_a_count_that_should_be_another_is_not_dropped() -> None:
    assert reading_of("Emil's count should be 47, I had it as 41. vs Gulls.", "coach").unread


def test_a_rule_of_an_age_group_counts_nothing() -> None:
    assert entries_of("No breaking balls for 12U, 75 pitch max", "coach") == []


def test_a_few_today() -> None:
    assert entries_of("Only 14 today, flat ground", "guardian") == [
        {"kind": "catch", "pitches": 14}
    ]
