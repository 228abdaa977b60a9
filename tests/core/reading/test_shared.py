"""What a line says of several pitchers at once, before their names or after them."""

import pytest

from tests.support.reading import entries_of, reasons_of


@pytest.mark.parametrize(
    ("line", "shared"),
    [
        ("leo pen 30 / sam pen 24 / both at 80%", {"effort": 80}),
        ("pens: Leo 30, Max 24. All arms feel good", {"pain": []}),
        ("pens: Leo 30, Max 24, no pain for either", {"pain": []}),
        ("pens: Leo 30, Max 24, no curves for either of them", {"breaking": 0, "curve": 0}),
        ("no curves from anybody. pens: Leo 30, Max 24", {"breaking": 0, "curve": 0}),
        ("pens: Leo 30, Max 24. no breaking balls", {"breaking": 0}),
        ("pens at 80%: Leo 30, Max 24", {"effort": 80}),
    ],
)
def test_a_statement_for_all_is_in_every_entry(line: str, shared: dict[str, object]) -> None:
    entries = entries_of(line, "coach")

    assert [entry["pitches"] for entry in entries] == [30, 24]
    assert all(shared.items() <= entry.items() for entry in entries)


def test_counts_of_both_that_clash_are_asked() -> None:
    assert "two_readings" in reasons_of("Leo 30p 2cb, Max 20p, both 4 cb", "coach")


def test_bracketed_column_names_explain_the_numbers_after_each_name() -> None:
    assert entries_of("Pens (pitches/curves): Leo 25/6, Max 30/8", "coach") == [
        {"who": "Leo", "kind": "bullpen", "pitches": 25, "breaking": 6, "curve": 6},
        {"who": "Max", "kind": "bullpen", "pitches": 30, "breaking": 8, "curve": 8},
    ]


def test_numbers_of_one_pitcher_are_no_parts_of_anothers_count() -> None:
    assert "unknown_number" in reasons_of("Leo 58 (9) Max 24 (2) Sam 11 (0)", "coach")


@pytest.mark.parametrize("line", ["-3 pitches vs Summit", "62p -11cb"])
def test_a_negative_count_is_impossible(line: str) -> None:
    assert "impossible" in reasons_of(line)


@pytest.mark.parametrize("line", ["threw a bullpen", "40 something pitches", "Leo off all week"])
def test_half_a_log_is_asked_about(line: str) -> None:
    assert reasons_of(line, "coach")
