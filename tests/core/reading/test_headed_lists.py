"""Lists under headings, words that are names too, and counts told of all at the end."""

from tests.support.reading import entries_of, reading_of


def days_of(text: str) -> list[tuple[str | None, str | None, str | None]]:
    """Who, day and kind of each entry of a coach's line."""
    return [(e.get("who"), e.get("on"), e.get("kind")) for e in entries_of(text, "coach")]


def test_a_second_heading_ends_the_first() -> None:
    line = "Sat vs Dunmore\n- Finn 51p\n- Art 17p\nToday vs Pine Hollow\n- Rocco 60p\n- Leo 23p"

    assert days_of(line) == [
        ("Finn", "2026-08-08", "game"),
        ("Art", "2026-08-08", "game"),
        ("Rocco", None, "game"),
        ("Leo", None, "game"),
    ]


def test_a_game_may_head_the_names_of_a_day() -> None:
    line = "Saturday\nGame 1\nSilas 40 p\nGame 2\nIke 56 p\nSunday\nHank 38 p"

    assert days_of(line) == [
        ("Silas", "2026-08-08", "game"),
        ("Ike", "2026-08-08", "game"),
        ("Hank", "2026-08-09", "game"),
    ]


def test_kinds_head_the_names_below_them() -> None:
    line = "Pens\nLeo 25\nMax 30\nGames\nSam 60p 4ip\nLive\nJon 20p"

    assert [kind for _, _, kind in days_of(line)] == ["bullpen", "bullpen", "game", "live"]


def test_what_all_did_at_the_end_is_of_each() -> None:
    entries = entries_of("Leo 20 throws, Max 24 throws. all at 70%", "coach")

    assert [one["effort"] for one in entries] == [70, 70]
    assert [k for _, _, k in days_of("Leo 38p, Max 29p\nall games")] == ["game", "game"]


def test_a_day_off_for_everyone() -> None:
    assert entries_of("off day for everyone, rest those arms", "coach") == [
        {"who": "everyone", "kind": "off"}
    ]


def test_words_that_are_names_too() -> None:
    assert entries_of("Will on the 3rd: 4 ip 57 pitches", "coach")[0]["who"] == "Will"
    assert entries_of("Will relieved for an inning, 28 pitches", "coach")[0]["who"] == "Will"
    assert entries_of("JUNE THREW 26 PITCHES", "coach")[0]["who"] == "JUNE"
    assert reading_of("Will finally got 3 ip 40p", "coach").unread


def test_a_plan_and_a_supposition_are_no_log() -> None:
    assert reading_of("if Otis throws 75 tonight I'm buying", "coach").entries == ()
    assert entries_of("Hunter has 40 pitches left for today, Will has 55", "coach") == []


def test_a_count_told_again_with_its_name_is_put_right() -> None:
    line = "Cole 44 p 3 ip, Drew 31 p 2 ip. Sorry, Drew was 33 not 31"

    assert [one["pitches"] for one in entries_of(line, "coach")] == [44, 33]


def test_half_a_dozen_in_both_orders() -> None:
    assert entries_of("pen 24 pitches, a half dozen curves")[0]["curve"] == 6


def test_a_sore_left_side_leaves_no_curves() -> None:
    entry = entries_of("Leo 47p 8cb left shoulder pain 2/10 after", "coach")[0]

    assert (entry["curve"], entry["pain"][0]["side"]) == (8, "left")
